// One small document through both writers.
#include <catch2/catch.hpp>

#include "base/utf8.h"
#include "documents/html_writer.h"
#include "documents/text_writer.h"

using namespace stile;
using namespace stile::documents;

namespace {

Document sample() {
  Document paper;
  paper.title = "Sample & paper";
  paper.clinic = "Tarnside Movement Clinic";
  paper.about = {"25 November 2026"};
  Section section{"First", {}, false};
  section.blocks.push_back(
      {Paragraph{"A sentence that is long enough to be broken into several lines when it is set for a "
                 "terminal of eighty columns.",
                 "Lead:"}});
  section.blocks.push_back(
      {Rows{{{"Term", {"one", "two"}, {"because"}}, {"A term that is long", {"text"}, {}}}}});
  section.blocks.push_back({Table{"Week",
                                  {"Tick", "Mon", "Tue"},
                                  {{{"Walk", CellKind::Text}, {"", CellKind::TickBox}, {"", CellKind::Rest}}},
                                  true}});
  section.blocks.push_back({List{{"first <step>", "second"}, true}});
  section.blocks.push_back({Box{BoxKind::Emergency, "Call 112 now if", {{List{{"it hurts"}, false}}}}});
  section.blocks.push_back({Fold{"and 2 more", {{Paragraph{"hidden words", ""}}}}});
  section.blocks.push_back({Columns{{{{Paragraph{"left", ""}}}, {{Paragraph{"right", ""}}}}, {1, 1}}});
  section.blocks.push_back({Figure{{100, 20, "Picture", "What it shows", {}}, {"+--+"}}});
  section.blocks.push_back({WriteLine{"Name"}});
  paper.sections.push_back(std::move(section));
  paper.footer = {"Caution."};
  return paper;
}

}  // namespace

TEST_CASE("text: headings are underlined, lines keep within the columns") {
  const std::string text = toText(sample());
  CHECK(has(text, "Sample & paper\n==============\n"));
  CHECK(has(text, "First\n-----\n"));
  CHECK(has(text, "Term                one\n                    two\n                    [because]\n"));
  CHECK(has(text, "Walk  [ ]  rest\n"));
  CHECK(has(text, "1. first <step>\n2. second\n"));
  CHECK(has(text, "! Call 112 now if\n! - it hurts\n"));
  CHECK(has(text, "+--+\n"));
  CHECK(text.ends_with("Caution.\n"));
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t end = text.find('\n', at);
    CHECK(base::countCodePoints(text.substr(at, end - at)) <= 80);
    at = end + 1;
  }
}

TEST_CASE("text: folded parts show their title only, and every word to the checks") {
  CHECK(has(toText(sample()), "and 2 more"));
  CHECK_FALSE(has(toText(sample()), "hidden words"));
  CHECK(has(wordsOf(sample()), "hidden words"));
  CHECK(has(wordsOf(sample()), "several lines when it is set for a terminal of eighty columns."));
}

TEST_CASE("HTML: one file, no scripts, nothing fetched, language and landmarks in place") {
  const std::string html = toHtml(sample());
  CHECK(html.rfind("<!DOCTYPE html>\n<html lang=\"en\">", 0) == 0);
  CHECK_FALSE(has(html, "<script"));
  CHECK_FALSE(has(html, "src="));
  CHECK_FALSE(has(html, "href="));
  CHECK_FALSE(has(html, "@import"));
  for (const char* part :
       {"<header>", "<main>", "<footer>", "<title>Sample &amp; paper</title>", "@page{size:A4",
        "<th scope=\"col\">Mon</th>", "<th scope=\"row\">Walk</th>", "role=\"img\"",
        "<details>\n<summary>and 2 more</summary>", "first &lt;step&gt;", "class=\"box emergency\"",
        "aria-label=\"box to tick\"", "font-family:\"Clear Sans\""})
    CHECK(has(html, part));
  CHECK(toHtml(sample()) == html);
}

TEST_CASE("HTML: a name cannot break out of its place") {
  Document paper = sample();
  paper.client = "</style><b>\"x\\";
  const std::string html = toHtml(paper);
  CHECK_FALSE(has(html, "</style><b>"));
  CHECK(has(html, "&lt;/style&gt;&lt;b&gt;&quot;x\\"));
}
