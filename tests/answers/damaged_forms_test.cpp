// Strangers' forms and responses, damaged at random: whatever they are, loading, validating and walking
// come to an end without a crash, and whatever is completed satisfies its form.
#include <cstdlib>
#include <random>
#include <vector>

#include "answers/validate_response.h"
#include "standard_cases.h"
#include "walk.h"

using namespace stile;

namespace {

std::vector<std::string> linesOf(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

std::string joined(const std::vector<std::string>& lines) {
  std::string text;
  for (const auto& line : lines) text += line + "\n";
  return text;
}

/// Indented one value a line, so that lines can be dropped, doubled, exchanged and replaced.
std::string damaged(const std::vector<std::string>& lines, std::mt19937& random) {
  auto copy = lines;
  const auto pick = [&] { return random() % copy.size(); };
  const int times = 1 + static_cast<int>(random() % 3);
  for (int i = 0; i < times && copy.size() > 4; ++i) {
    switch (random() % 4) {
      case 0:
        copy.erase(copy.begin() + static_cast<std::ptrdiff_t>(pick()));
        break;
      case 1:
        std::swap(copy[pick()], copy[pick()]);
        break;
      default: {
        // Another value for the same member, of the kind some other line has.
        const auto value = [](const std::string& line) { return line.find(": "); };
        std::string& line = copy[pick()];
        const std::string other = copy[pick()];
        if (value(line) == std::string::npos || value(other) == std::string::npos) break;
        const bool hasComma = line.ends_with(',');
        std::string from = other.substr(value(other) + 2);
        if (from.ends_with(',')) from.pop_back();
        if (from == "{" || from == "[" || line.ends_with('{') || line.ends_with('[')) break;
        line = line.substr(0, value(line) + 2) + from + (hasComma ? "," : "");
      }
    }
  }
  return joined(copy);
}

int scale() {
  const char* text = std::getenv("STILE_TEST_SCALE");
  return text ? std::max(1, std::atoi(text)) : 1;
}

}  // namespace

TEST_CASE("Damaged forms and responses of the standard are refused or followed, and never more") {
  const auto path = sample::standards() / "response-validation-cases.json";
  if (!sample::isHere(path)) return;
  base::Issues issues;
  const auto cases = json::Document::parse(sample::textOf(path), path.filename().string(), issues);
  REQUIRE(cases);
  std::mt19937 random(20261125);
  int loaded = 0;
  int completed = 0;
  for (std::size_t i = 0; i < cases->root().size(); ++i) {
    const json::Node row = cases->root().at(i);
    const auto supporting = row.find("supporting");
    if (!supporting || supporting->size() == 0) continue;
    json::Writer form, response;
    form.copy(supporting->at(0));
    response.copy(*row.find("resource"));
    const auto formLines = linesOf(form.text());
    const auto responseLines = linesOf(response.text());
    if (formLines.size() > 400) continue;  // walking it many times takes too long here
    for (int k = 0; k < 6 * scale(); ++k) {
      base::Issues ignored;
      const std::string text = damaged(formLines, random);
      const auto forms = questionnaire::FormSet::loadAny({{"form.json", text}}, ignored);
      const auto document = json::Document::parse(damaged(responseLines, random), "response.json", ignored);
      if (document) answers::validateResponse(document->root(), forms);
      if (ignored.hasErrors() || forms.forms().empty()) continue;
      ++loaded;
      const auto walked = sample::walk(*forms.forms().front(), sample::Way::First);
      if (!walked.response) continue;
      ++completed;
      CAPTURE(text, *walked.response);
      const auto result = json::Document::parse(*walked.response, "walked.json", ignored);
      REQUIRE(result);
      CHECK_FALSE(answers::validateResponse(result->root(), forms).hasErrors());
    }
  }
  CHECK(loaded >= 20);
  CHECK(completed >= 10);
}
