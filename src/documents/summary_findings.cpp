#include "documents/summary_findings.h"

#include <algorithm>
#include <tuple>

#include "documents/decision_words.h"
#include "documents/ladder_words.h"
#include "documents/limit_words.h"

namespace stile::documents {
namespace {

using limits::Rung;
using rules::Finding;
using rules::Standing;
using screening::RungState;
using screening::RungView;
using screening::Screening;

constexpr std::size_t kReasonsShown = 4;

Rung leftOpen(const limits::Limits& limits) {
  Rung left = Rung::Vigorous;
  for (const limits::Bay bay : limits::kBays)
    left = std::min({left, limits.ceiling[bay], leftOpenBy(limits.clearance[bay])});
  return left;
}

/// Gravest first; file order among equals.
std::vector<const Finding*> sorted(const Screening& screening, Standing standing) {
  std::vector<const Finding*> list;
  for (const Finding& finding : screening.findings)
    if (finding.standing == standing) list.push_back(&finding);
  const auto weight = [](const Finding* finding) {
    return std::tuple(-static_cast<int>(finding->full.action), static_cast<int>(leftOpen(finding->full)),
                      -static_cast<int>(finding->full.bans.size() + finding->full.caps.size()));
  };
  std::stable_sort(list.begin(), list.end(),
                   [&](const Finding* a, const Finding* b) { return weight(a) < weight(b); });
  return list;
}

std::vector<std::string> restsOn(const Finding& finding, bool onlyUnknown) {
  std::vector<std::string> lines;
  std::size_t more = 0;
  for (const rules::Reason& reason : finding.reasons) {
    if (onlyUnknown && !reason.isUnknown) continue;
    if (lines.size() < kReasonsShown)
      lines.push_back(reason.label + (reason.label.ends_with("?") ? " " : ": ") +
                      (reason.value.empty() ? facts::toText(reason.why) : reason.value));
    else
      ++more;
  }
  if (more > 0) lines.push_back("and " + std::to_string(more) + " more");
  return lines;
}

/// The reasons in one line. Policies are named under a heading of their own.
std::string joinedReasons(const screening::Screening& screening, const Finding& finding) {
  std::string text;
  std::size_t shown = 0, more = 0;
  for (const rules::Reason& reason : finding.reasons) {
    if (reason.slot >= 0 && screening.facts.dictionary().at(reason.slot).isPolicy()) continue;
    if (shown++ >= kReasonsShown) {
      ++more;
      continue;
    }
    text += (text.empty() ? "" : " · ") + reason.label + (reason.label.ends_with("?") ? " " : ": ") +
            (reason.value.empty() ? facts::toText(reason.why) : reason.value);
  }
  return more > 0 ? text + " · and " + std::to_string(more) + " more" : text;
}

/// The rungs in words: "light and moderate, both bays", "aerobic: moderate; strength: light".
std::string rungNames(const std::vector<const RungView*>& views) {
  limits::PerBay<std::vector<std::string>> rungs;
  for (const RungView* view : views) rungs[view->bay].push_back(wordsOf(view->rung));
  if (rungs.aerobic == rungs.strength)
    return rungs.aerobic.size() == 3 ? "every rung" : listed(rungs.aerobic) + ", both bays";
  std::string names;
  for (const limits::Bay bay : limits::kBays)
    if (!rungs[bay].empty())
      names += (names.empty() ? "" : "; ") + std::string(wordsOf(bay)) + " " + listed(rungs[bay]);
  return names;
}

/// The same for a reader: the reasons that are shown are the same.
bool isSameReason(const RungView& a, const RungView& b) {
  if (a.state != b.state) return false;
  const std::size_t shown = std::min(a.reasons.size(), kReasonsShown);
  if (shown != std::min(b.reasons.size(), kReasonsShown)) return false;
  for (std::size_t i = 0; i < shown; ++i)
    if (a.reasons[i].finding != b.reasons[i].finding) return false;
  return true;
}

}  // namespace

std::vector<Block> rowsThenCompact(std::vector<Row> rows, std::size_t shown) {
  if (rows.empty()) return {};
  if (rows.size() <= shown + 1) return {{Rows{std::move(rows)}}};
  std::vector<Row> rest(std::make_move_iterator(rows.begin() + static_cast<std::ptrdiff_t>(shown)),
                        std::make_move_iterator(rows.end()));
  rows.resize(shown);
  return {{Rows{std::move(rows)}}, {Rows{std::move(rest), true}}};
}

namespace {

bool isOfMedicines(const rules::Rule& rule) {
  return rule.file.find("/medicines/") != std::string::npos;
}

}  // namespace

std::vector<Row> certainFindingRows(const Screening& screening, SourceList& sources, FindingNumbers& numbers,
                                    bool ofMedicines) {
  std::vector<Row> rows;
  for (const Finding* finding : sorted(screening, Standing::Certain)) {
    if (isOfMedicines(*finding->rule) != ofMedicines) continue;
    Row row{std::to_string(numbers.number(*finding)) + "  " + titleOf(*finding), {finding->say.clinician}, {}};
    std::string fine = joinedReasons(screening, *finding);
    if (const std::string cited = sources.cite(finding->rule->sources); !cited.empty())
      fine += (fine.empty() ? "[" : " [") + cited + "]";
    row.fine.push_back(fine);
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> openFindingRows(const Screening& screening, SourceList& sources) {
  std::vector<Row> rows;
  for (const Finding* finding : sorted(screening, Standing::Open)) {
    Row row{titleOf(*finding), {finding->say.clinician}, {}};
    if (finding->unsureCall > limits::Action::None)
      row.text.push_back(std::string("Asked, and not sure: ") + wordsOf(finding->unsureCall) + ".");
    else if (finding->full.action > limits::Action::None && finding->counted != rules::IfUnknown::Pass)
      row.text.push_back(std::string("Could become ") + wordsOf(finding->full.action) + ".");
    row.note = restsOn(*finding, true);
    if (const std::string cited = sources.cite(finding->rule->sources); !cited.empty())
      row.note.push_back("[" + cited + "]");
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<Row> rungRows(const Screening& screening) {
  std::vector<Row> rows;
  std::vector<const RungView*> done;
  for (const RungView& view : screening.rungs) {
    if (view.state == RungState::Open) continue;
    if (std::any_of(done.begin(), done.end(),
                    [&](const RungView* other) { return isSameReason(*other, view); }))
      continue;
    done.push_back(&view);
    std::vector<const RungView*> alike;
    std::size_t reasons = 0;
    for (const RungView& other : screening.rungs) {
      if (!isSameReason(view, other)) continue;
      alike.push_back(&other);
      reasons = std::max(reasons, other.reasons.size());
    }
    Row row{capitalized(rungNames(alike)) + (view.state == RungState::Shut ? ": shut" : ": not yet known"),
            {},
            {}};
    for (std::size_t i = 0; i < view.reasons.size() && i < kReasonsShown; ++i)
      row.text.push_back(keyWords(screening, view.reasons[i]));
    if (reasons > kReasonsShown)
      row.text.push_back("And " + counted(reasons - kReasonsShown, "more finding") + ", see below.");
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace stile::documents
