#include "documents/summary_findings.h"

#include <algorithm>
#include <tuple>

#include "documents/decision_words.h"
#include "documents/ladder_words.h"
#include "documents/limit_words.h"
#include "documents/override_words.h"
#include "documents/summary_record.h"

namespace stile::documents {
namespace {

using limits::Rung;
using rules::Finding;
using rules::Standing;
using screening::RungState;
using screening::RungView;
using screening::Screening;

constexpr std::size_t kReasonsShown = 4;
constexpr std::size_t kRungReasons = 3;

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

/// The facts in one line. Policies are named under a heading of their own.
std::string joinedReasons(const screening::Screening& screening, const Finding& finding, std::size_t most) {
  std::string text;
  std::size_t shown = 0, more = 0;
  for (const rules::Reason& reason : finding.reasons) {
    if (reason.slot >= 0 && screening.facts.dictionary().at(reason.slot).isPolicy()) continue;
    if (shown++ >= most) {
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

/// With more open findings than these, answers are missing throughout: what each would say is in the rule
/// book, and dozens of pages of it help nobody.
constexpr std::size_t kMostOpenInFull = 80;

/// The same for a reader: the reasons that are shown are the same.
bool isSameReason(const RungView& a, const RungView& b) {
  if (a.state != b.state) return false;
  const std::size_t shown = std::min(a.reasons.size(), kRungReasons);
  if (shown != std::min(b.reasons.size(), kRungReasons)) return false;
  for (std::size_t i = 0; i < shown; ++i)
    if (a.reasons[i].finding != b.reasons[i].finding) return false;
  return true;
}

bool isOfMedicines(const Finding& finding) {
  return finding.rule->file.find("/medicines/") != std::string::npos;
}

/// What clinicians decided in place of this finding.
std::vector<std::string> overridesOf(const Finding& finding, const records::DecisionNotes& notes) {
  std::vector<std::string> lines;
  for (const records::OverrideNote& note : notes.overrides)
    if (note.rule == finding.rule->id) lines.push_back(overrideWords(note));
  return lines;
}

std::string numbered(const Finding& finding, const FindingNumbers& numbers) {
  return std::to_string(numbers.of(finding)) + "  " + titleOf(finding);
}

/// What the finding says, without its title where it begins with that ("Heart failure: how to work" and
/// "Heart failure: effort by feel"): the title stands before it.
std::string saidAfterTitle(const Finding& finding) {
  const std::string &said = finding.say.clinician, &title = finding.rule->title;
  const std::string lead = title.substr(0, title.find(':')) + ": ";
  return said.starts_with(lead) ? capitalized(said.substr(lead.size())) : said;
}

}  // namespace

std::size_t openFindings(const Screening& screening) {
  return sorted(screening, Standing::Open).size();
}

FindingNumbers numbersOf(const Screening& screening) {
  FindingNumbers numbers;
  for (const bool ofMedicines : {false, true})
    for (const Finding* finding : sorted(screening, Standing::Certain))
      if (isOfMedicines(*finding) == ofMedicines) numbers.add(*finding);
  return numbers;
}

std::vector<Row> briefFindingRows(const Screening& screening, const FindingNumbers& numbers,
                                  const records::DecisionNotes& notes, const Brief& brief, bool ofMedicines) {
  const std::size_t most = ofMedicines ? brief.medicines : brief.findings;
  std::vector<Row> rows;
  std::vector<std::string> others;
  std::size_t told = 0, folded = 0;
  for (const Finding* finding : sorted(screening, Standing::Certain)) {
    if (isOfMedicines(*finding) != ofMedicines) continue;
    const auto overrides = overridesOf(*finding, notes);
    if (told >= most && overrides.empty()) {
      if (folded++ < brief.titles) others.push_back(numbered(*finding, numbers));
      continue;
    }
    ++told;
    Row row{numbered(*finding, numbers), {saidAfterTitle(*finding)}, {}};
    if (const std::string because = joinedReasons(screening, *finding, brief.reasons); !because.empty())
      row.fine.push_back("Because: " + asSentence(because));
    row.fine.insert(row.fine.end(), overrides.begin(), overrides.end());
    rows.push_back(std::move(row));
  }
  if (folded > others.size()) others.push_back("and " + std::to_string(folded - others.size()) + " more in the annex");
  addRunOn(rows, "And " + std::to_string(folded) + " of less weight", others, "; ");
  return rows;
}

std::vector<Row> fullFindingRows(const Screening& screening, SourceList& sources, const FindingNumbers& numbers,
                                 const records::DecisionNotes& notes) {
  std::vector<Row> rows;
  for (const bool ofMedicines : {false, true})
    for (const Finding* finding : sorted(screening, Standing::Certain)) {
      if (isOfMedicines(*finding) != ofMedicines) continue;
      Row row{numbered(*finding, numbers), {saidAfterTitle(*finding)}, {}};
      std::string fine = joinedReasons(screening, *finding, finding->reasons.size());
      if (const std::string cited = sources.cite(finding->rule->sources); !cited.empty())
        fine += (fine.empty() ? "[" : " [") + cited + "]";
      row.fine = overridesOf(*finding, notes);
      row.fine.insert(row.fine.begin(), fine);
      rows.push_back(std::move(row));
    }
  return rows;
}

std::vector<Row> openFindingRows(const Screening& screening, SourceList& sources) {
  std::vector<Row> rows;
  const auto open = sorted(screening, Standing::Open);
  if (open.size() > kMostOpenInFull) {
    std::vector<std::string> titles;
    for (const Finding* finding : open) {
      const std::string cited = sources.cite(finding->rule->sources);
      titles.push_back(titleOf(*finding) + (cited.empty() ? "" : " [" + cited + "]"));
    }
    addRunOn(rows, "By name, for so much is unknown", titles, "; ");
    return rows;
  }
  for (const Finding* finding : open) {
    Row row{titleOf(*finding), {saidAfterTitle(*finding)}, {}};
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

std::vector<Row> rungRows(const Screening& screening, const FindingNumbers& numbers) {
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
    for (std::size_t i = 0; i < view.reasons.size() && i < kRungReasons; ++i) {
      const int number = numbers.of(screening.findings[view.reasons[i].finding]);
      row.text.push_back((number > 0 ? "(" + std::to_string(number) + ") " : "") + keyWords(screening, view.reasons[i]));
    }
    if (reasons > kRungReasons) row.text.push_back("And " + counted(reasons - kRungReasons, "more finding") + ".");
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace stile::documents
