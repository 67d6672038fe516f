#include "desktop/decision_view.h"

#include <algorithm>
#include <set>

#include "documents/decision_words.h"
#include "documents/ladder_words.h"
#include "documents/limit_words.h"
#include "documents/override_words.h"
#include "facts/fact_display.h"

namespace stile::desktop {
namespace {

using limits::Rung;
using rules::Finding;
using rules::Standing;
using screening::RungState;
using screening::Screening;

constexpr std::size_t kReasonsShown = 4, kHoldersShown = 3;
constexpr std::size_t kNoteFindings = 8, kNoteLines = 7;

bool isPolicy(const Screening& screening, const rules::Reason& reason) {
  return reason.slot >= 0 && screening.facts.dictionary().at(reason.slot).isPolicy();
}

std::string reasonWords(const rules::Reason& reason) {
  return reason.label + (reason.label.ends_with("?") ? " " : ": ") + (reason.value.empty() ? std::string(facts::toText(reason.why)) : reason.value);
}

HoldLine holdLine(const Screening& screening, const screening::RungReason& reason) {
  const Finding& finding = screening.findings[reason.finding];
  HoldLine line{documents::keyWords(screening, reason), {}, -1};
  // What is not known comes first: it is what the client can still be asked.
  for (const bool wantsUnknown : {true, false})
    for (const rules::Reason& one : finding.reasons)
      if (line.slot < 0 && one.isUnknown == wantsUnknown && one.slot >= 0 && !isPolicy(screening, one)) {
        line.slot = one.slot;
        line.link = reasonWords(one);
      }
  return line;
}

std::string holderTitles(const std::vector<const Finding*>& holders) {
  std::string titles;
  for (std::size_t i = 0; i < holders.size() && i < kHoldersShown; ++i) titles += (titles.empty() ? "" : " · ") + documents::titleOf(*holders[i]) + (holders[i]->standing == Standing::Certain ? "" : " (not settled)");
  if (holders.size() > kHoldersShown) titles += " · and " + std::to_string(holders.size() - kHoldersShown) + " more";
  return titles.empty() ? "a physician's reply" : titles;
}

std::vector<LimitRow> rowsOf(const std::vector<documents::LimitLine>& lines) {
  std::vector<LimitRow> rows;
  std::string last;  // a term that stands in the row above is not repeated
  for (const auto& line : lines) {
    rows.push_back({line.term == last ? "" : line.term, documents::asSentence(line.text), holderTitles(line.holders)});
    last = line.term;
  }
  return rows;
}

std::string joined(const std::set<std::string>& sentences) {
  std::string text;
  for (const std::string& one : sentences) text += (text.empty() ? "" : " ") + documents::asSentence(documents::capitalized(one));
  return text;
}

/// A line for each term; what goes beyond a screen is counted.
void addFolded(std::string& note, const std::string& what, const std::vector<LimitRow>& rows) {
  std::vector<std::string> lines;
  for (const LimitRow& row : rows) {
    if (row.term.empty() && !lines.empty())
      lines.back() += " " + row.text;
    else
      lines.push_back((row.term.empty() ? "" : row.term + ": ") + row.text);
  }
  for (std::size_t i = 0; i < lines.size() && i < kNoteLines; ++i) note += lines[i] + "\n";
  if (lines.size() > kNoteLines) note += what + "s beyond these: " + std::to_string(lines.size() - kNoteLines) + "; they stand on the screening summary.\n";
}

}  // namespace

std::vector<RungHolds> rungHoldsOf(const Screening& screening) {
  std::vector<RungHolds> all;
  std::set<std::size_t> said;
  for (const Rung rung : {Rung::Vigorous, Rung::Moderate, Rung::Light}) {
    RungHolds holds{rung, {}, 0};
    std::set<std::size_t> here;
    for (const limits::Bay bay : limits::kBays) {
      const auto* view = documents::rungAt(screening, bay, rung);
      if (view == nullptr || view->state == RungState::Open) continue;
      for (const auto& reason : view->reasons) {
        if (said.contains(reason.finding) || !here.insert(reason.finding).second) continue;
        if (holds.lines.size() < kHoldsShown)
          holds.lines.push_back(holdLine(screening, reason));
        else
          ++holds.more;
      }
    }
    said.insert(here.begin(), here.end());
    all.push_back(std::move(holds));
  }
  return all;
}

std::vector<FindingRow> findingRowsOf(const Screening& screening) {
  std::vector<const Finding*> sorted;
  for (const Finding& finding : screening.findings) sorted.push_back(&finding);
  const auto weight = [](const Finding* finding) {
    Rung left = Rung::Vigorous;
    for (const limits::Bay bay : limits::kBays) left = std::min({left, finding->full.ceiling[bay], leftOpenBy(finding->full.clearance[bay])});
    return std::tuple(finding->standing == Standing::Open, -static_cast<int>(finding->full.action), static_cast<int>(left));
  };
  std::stable_sort(sorted.begin(), sorted.end(), [&](const Finding* a, const Finding* b) { return weight(a) < weight(b); });
  std::vector<FindingRow> rows;
  for (const Finding* finding : sorted) {
    FindingRow row{documents::titleOf(*finding), finding->say.clinician, {}, finding->standing == Standing::Certain, finding->rule->id};
    std::size_t shown = 0, more = 0;
    for (const auto& reason : finding->reasons) {
      if (isPolicy(screening, reason)) continue;
      if (shown++ < kReasonsShown)
        row.because += (row.because.empty() ? "" : " · ") + reasonWords(reason);
      else
        ++more;
    }
    if (more > 0) row.because += " · and " + std::to_string(more) + " more";
    rows.push_back(std::move(row));
  }
  return rows;
}

std::vector<LimitRow> limitRowsOf(const Screening& screening, const screening::Content& content) {
  return rowsOf(documents::limitLinesOf(screening, content.rules));
}

std::vector<LimitRow> checkRowsOf(const Screening& screening, const screening::Content& content) {
  return rowsOf(documents::checkLinesOf(screening, content.rules));
}

std::vector<LimitRow> referralRowsOf(const Screening& screening, const screening::Content& content) {
  std::vector<LimitRow> rows;
  for (const auto& [service, referral] : screening.reach.limits.referrals)
    rows.push_back({documents::capitalized(documents::termWords(content.rules.vocabulary.services, service, false)),
                    documents::capitalized(documents::wordsOf(referral.within)) + ". " + joined(referral.why), joined(referral.ask)});
  return rows;
}

std::string noteOf(const Screening& screening, const screening::Content& content, const records::DecisionNotes& notes) {
  std::string note = "Exercise screening, " + screening.date.toLongText() + "\n" + documents::decisionSentence(screening) + "\n" +
                     documents::actionSentence(screening) + "\n";
  std::string titles;
  std::size_t certain = 0;
  for (const FindingRow& row : findingRowsOf(screening))
    if (row.isCertain && ++certain <= kNoteFindings) titles += (titles.empty() ? "" : "; ") + row.title;
  if (certain > kNoteFindings) titles += "; and " + std::to_string(certain - kNoteFindings) + " more";
  note += "Findings: " + (titles.empty() ? "none" : titles) + ".\n";
  for (const auto& one : notes.overrides) {
    const auto* rule = content.rules.find(one.rule);
    note += (rule == nullptr ? one.rule : documents::capitalized(rule->title)) + ": " + documents::overrideWords(one) + "\n";
  }
  addFolded(note, "Limit", limitRowsOf(screening, content));
  addFolded(note, "Check", checkRowsOf(screening, content));
  std::vector<LimitRow> referrals = referralRowsOf(screening, content);
  for (LimitRow& row : referrals) row.term = "Referral, " + row.term;
  addFolded(note, "Referral", referrals);
  for (const auto& one : notes.signOffs) note += "Signed off by " + one.by + ", " + one.date.toLongText() + ".\n";
  return note + "Rules " + content.version + ". Supports, and does not replace, licensed judgement.\n";
}

}  // namespace stile::desktop
