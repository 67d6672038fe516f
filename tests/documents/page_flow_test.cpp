// How slices fall onto pages and into columns, and which words stay on one line.
#include <catch2/catch.hpp>

#include <string>

#include "documents/unbroken.h"
#include "pdf_words.h"

using namespace stile::documents;

namespace {

/// Compact rows of so many words each, told apart by number.
Document paperOf(std::size_t rows, std::size_t words) {
  Document paper;
  paper.title = "Columns";
  paper.reader = Reader::Clinician;
  Rows list;
  list.isCompact = true;
  for (std::size_t i = 0; i < rows; ++i) {
    Row row;
    row.term = "Row" + std::to_string(i + 1);
    std::string text;
    for (std::size_t word = 0; word < words; ++word)
      text += (word == 0 ? "" : " ") + std::string("word") + std::to_string(word);
    row.text.push_back(text);
    list.rows.push_back(row);
  }
  paper.sections.push_back({"", {{list}}});
  return paper;
}

/// Where each "RowN" stands: page and the left edge in points.
std::vector<std::pair<int, double>> placesOf(const Document& paper, std::size_t rows) {
  const Folder folder;
  const auto path = folder / "paper.pdf";
  std::ofstream(path, std::ios::binary) << madeOf(paper);
  const std::string boxes = ran("pdftotext -bbox '" + path.string() + "' - 2>/dev/null");
  std::vector<std::pair<int, double>> places(rows, {0, 0});
  int page = 0;
  for (std::size_t at = 0; (at = boxes.find('<', at)) != std::string::npos; ++at) {
    if (boxes.compare(at, 6, "<page ") == 0) ++page;
    if (boxes.compare(at, 6, "<word ") != 0) continue;
    const std::size_t word = boxes.find(">Row", at);
    if (word == std::string::npos || boxes.find('<', at + 1) < word) continue;
    const std::size_t left = boxes.find("xMin=\"", at) + 6;
    places.at(std::stoul(boxes.substr(word + 4)) - 1) = {page, std::stod(boxes.substr(left))};
  }
  return places;
}

}  // namespace

TEST_CASE("rows fill the left column of a page, then its right one, then the next page") {
  constexpr std::size_t kRows = 90;
  const auto places = placesOf(paperOf(kRows, 20), kRows);
  CHECK(places.front() == std::pair(1, places.front().second));
  CHECK(places.back().first >= 2);
  for (std::size_t i = 1; i < kRows; ++i) {
    const auto [page, left] = places[i];
    const auto [pageBefore, leftBefore] = places[i - 1];
    INFO("row " << i + 1);
    REQUIRE(page > 0);
    // Never back: not to an earlier page, and to the left only with a new page.
    CHECK((page > pageBefore || left >= leftBefore - 0.5));
    CHECK(page - pageBefore <= 1);
  }
}

TEST_CASE("on its last page the two columns are about as tall as each other") {
  constexpr std::size_t kRows = 9;
  const auto places = placesOf(paperOf(kRows, 20), kRows);
  std::size_t left = 0;
  for (const auto& place : places) left += place.second < 200 ? 1 : 0;
  CHECK((left == 4 || left == 5));
}

TEST_CASE("a number keeps its unit, a date its year, a telephone number its groups") {
  const auto together = [](std::string_view text) {
    std::vector<std::string> found;
    for (const auto& [from, to] : unbrokenRanges(text)) found.emplace_back(text.substr(from, to - from));
    return found;
  };
  using Found = std::vector<std::string>;
  CHECK(together("start only from 5.0 mmol/L when well") == Found{"5.0 mmol/L"});
  CHECK(together("Call 01632 960 417 now") == Found{"01632 960 417"});
  CHECK(together("on 25 November 2026 at home") == Found{"25 November 2026"});
  CHECK(together("Clinic · 4 Mill Row") == Found{"Clinic ·", "4 Mill"});
  CHECK(together("no number at all").empty());
  CHECK(together("").empty());
  CHECK(together("version 2026.11-df1c5bed of it") == Found{"2026.11-df1c5bed"});
  CHECK(together("in the years 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16").front().size() <= 24);
}
