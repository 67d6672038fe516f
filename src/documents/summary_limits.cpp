#include "documents/summary_limits.h"

#include "documents/decision_words.h"
#include "documents/limit_words.h"

namespace stile::documents {
namespace {

/// A row of more letters goes on in another, so that it can be broken.
constexpr std::size_t kLongest = 360;

/// `isList`: short limits of one kind run on in one paragraph; otherwise each is a line.
LimitRows rowsOf(const std::vector<LimitLine>& lines, const FindingNumbers& numbers, bool isList, std::size_t mostCited) {
  LimitRows rows;
  std::string lastCertain, lastOpen;  // a term that stands in the row above is not repeated
  for (const LimitLine& line : lines) {
    const bool isCertain = line.isCertain();
    auto& into = isCertain ? rows.certain : rows.open;
    const std::string cited = isCertain ? numbers.cite(line.holders, mostCited) : "";
    std::string text = isList ? uncapitalized(line.text) : asSentence(line.text);
    text += cited.empty() ? "" : " " + cited;
    auto& last = isCertain ? lastCertain : lastOpen;
    if (last != line.term) {
      last = line.term;
      into.push_back({line.term, {isList ? capitalized(text) : text}, {}});
    } else if (isList && into.back().text.front().size() < kLongest) {
      into.back().text.front() += "; " + text;
    } else {
      if (isList) into.back().text.front() += ";";
      into.push_back({"", {text}, {}});
    }
  }
  for (auto* some : {&rows.certain, &rows.open})
    for (Row& row : *some)
      if (isList && !row.text.front().ends_with(';')) row.text.front() = asSentence(row.text.front());
  return rows;
}

}  // namespace

LimitRows limitRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers, std::size_t cited) {
  return rowsOf(limitLinesOf(screening, rules), numbers, true, cited);
}

LimitRows checkRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers, std::size_t cited) {
  return rowsOf(checkLinesOf(screening, rules), numbers, false, cited);
}

}  // namespace stile::documents
