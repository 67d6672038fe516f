// Screenings for the tests of papers: invented people run through the project's own content, and
// screenings made by hand where the drawing needs an exact state.
#pragma once

#include <deque>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <stdexcept>
#include <string>

#include "documents/handout_texts.h"
#include "documents/letter_texts.h"
#include "documents/summary.h"
#include "facts/fact_set.h"
#include "json/document.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// The person of the demonstration.
inline const records::PaperClient kMaren{"Maren Oakshott", "14 March 1963", "0417"};

inline bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

inline std::string fileText(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) throw std::runtime_error("cannot read " + path.string());
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void orThrow(const base::Issues& issues) {
  std::string all;
  for (const auto& issue : issues.all())
    if (issue.severity == base::Severity::Error) all += toText(issue) + "\n";
  if (!all.empty()) throw std::runtime_error(all);
}

/// Loaded once.
inline const screening::Content& content() {
  static const screening::Content loaded = [] {
    std::map<std::string, std::string> files;
    const std::filesystem::path root = STILE_SOURCE_DIR;
    for (const char* part : {"rules", "questionnaires"})
      for (const auto& entry : std::filesystem::recursive_directory_iterator(root / part))
        if (entry.path().extension() == ".json")
          files[std::filesystem::relative(entry.path(), root).generic_string()] = fileText(entry.path());
    base::Issues issues;
    auto result = screening::Content::load(files, issues);
    orThrow(issues);
    return result;
  }();
  return loaded;
}

inline const HandoutTexts& handoutTexts() {
  static const HandoutTexts texts = [] {
    base::Issues issues;
    auto loaded = HandoutTexts::load(fileText(std::filesystem::path(STILE_SOURCE_DIR) / "rules/handout.json"),
                                     "handout.json", issues);
    orThrow(issues);
    return loaded;
  }();
  return texts;
}

inline records::ClinicSettings clinicSettings() {
  base::Issues issues;
  return records::ClinicSettings::load(
      fileText(std::filesystem::path(STILE_SOURCE_DIR) / "tests/data/tarnside-settings.json"), "settings",
      issues);
}

inline const base::Date kToday = *base::Date::of(2026, 11, 25);

/// tests/documents/people/<name>.json, screened on 25 November 2026.
inline screening::Screening screened(const std::string& name) {
  base::Issues issues;
  const auto path = std::filesystem::path(STILE_SOURCE_DIR) / "tests/documents/people" / (name + ".json");
  const auto document = json::Document::parse(fileText(path), name, issues);
  orThrow(issues);
  auto facts = facts::factsFromPlain(content().dictionary, content().forms, document->root(), kToday, issues);
  orThrow(issues);
  return screening::screen(content(), std::move(facts), {}, kToday);
}

/// A screening made by hand: every rung as asked for, with findings that hold it.
class HandMade {
 public:
  HandMade() : facts_(content().dictionary) {}

  /// Adds a certain finding and gives its index.
  std::size_t finding(const std::string& title, rules::KeyKind key, const std::string& say,
                      limits::Action action = limits::Action::None) {
    rules::Rule rule = content().rules.rules.front();
    rule.title = title;
    rule.until.key = key;
    rule.until.say = say;
    rules_.push_back(std::move(rule));
    rules::Finding finding;
    finding.rule = &rules_.back();
    finding.standing = rules::Standing::Certain;
    finding.full.action = finding.reach.action = finding.floor.action = action;
    findings_.push_back(std::move(finding));
    return findings_.size() - 1;
  }
  rules::Finding& at(std::size_t index) { return findings_[index]; }

  HandMade& rung(limits::Bay bay, limits::Rung rung, screening::RungState state,
                 std::vector<std::size_t> held = {}) {
    screening::RungView view;
    view.bay = bay;
    view.rung = rung;
    view.state = state;
    for (const std::size_t i : held)
      view.reasons.push_back({i, findings_[i].rule->until.say, findings_[i].rule->until.key});
    rungs_.push_back(std::move(view));
    return *this;
  }
  HandMade& everyRung(screening::RungState state, std::vector<std::size_t> held = {}) {
    for (const auto bay : limits::kBays)
      for (const auto each : {limits::Rung::Light, limits::Rung::Moderate, limits::Rung::Vigorous})
        rung(bay, each, state, held);
    return *this;
  }

  screening::Screening make(limits::Action now = limits::Action::None,
                            limits::Action could = limits::Action::None,
                            limits::PerBay<limits::Rung> floor = {},
                            limits::PerBay<limits::Rung> reach = {}) {
    screening::Screening made{.date = kToday,
                              .facts = facts_,
                              .findings = findings_,
                              .coverage = {},
                              .floor = {},
                              .reach = {},
                              .rungs = rungs_,
                              .openQuestions = {},
                              .policies = {},
                              .planBecause = {},
                              .plan = {},
                              .heldPlan = {},
                              .ifGranted = {}};
    made.floor.usable = floor;
    made.reach.usable = reach;
    made.reach.limits.action = now;
    made.couldBecome = could;
    for (const auto& finding : findings_) made.reach.limits = join(made.reach.limits, finding.reach);
    return made;
  }

 private:
  facts::FactSet facts_;
  std::deque<rules::Rule> rules_;
  std::vector<rules::Finding> findings_;
  std::vector<screening::RungView> rungs_;
};

/// Loaded once, and checked against the rules.
inline const LetterTexts& letterTexts() {
  static const LetterTexts texts = [] {
    base::Issues issues;
    auto loaded = LetterTexts::load(fileText(std::filesystem::path(STILE_SOURCE_DIR) / "rules/letters.json"), "letters.json", issues);
    orThrow(issues);
    orThrow(loaded.check(content().rules, content().dictionary));
    return loaded;
  }();
  return texts;
}

}  // namespace stile::documents
