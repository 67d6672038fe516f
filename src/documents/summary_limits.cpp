#include "documents/summary_limits.h"

#include "documents/decision_words.h"
#include "documents/limit_words.h"

namespace stile::documents {
namespace {

/// `isList`: short limits of one kind run on in one paragraph; otherwise each is a line.
LimitRows rowsOf(const std::vector<LimitLine>& lines, const FindingNumbers& numbers, bool isList) {
  LimitRows rows;
  std::string lastCertain, lastOpen;  // a term that stands in the row above is not repeated
  for (const LimitLine& line : lines) {
    const bool isCertain = line.isCertain();
    auto& into = isCertain ? rows.certain : rows.open;
    const std::string cited = isCertain ? numbers.cite(line.holders) : "";
    std::string text = isList ? uncapitalized(line.text) : asSentence(line.text);
    text += cited.empty() ? "" : " " + cited;
    auto& last = isCertain ? lastCertain : lastOpen;
    if (last != line.term) {
      last = line.term;
      into.push_back({line.term, {isList ? capitalized(text) : text}, {}});
    } else if (isList) {
      into.back().text.front() += "; " + text;
    } else {
      into.push_back({"", {text}, {}});
    }
  }
  return rows;
}

}  // namespace

LimitRows limitRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers) {
  return rowsOf(limitLinesOf(screening, rules), numbers, true);
}

LimitRows checkRowsOf(const screening::Screening& screening, const rules::RuleSet& rules, const FindingNumbers& numbers) {
  return rowsOf(checkLinesOf(screening, rules), numbers, false);
}

}  // namespace stile::documents
