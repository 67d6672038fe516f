// Everything clinicians own, loaded and checked once: forms, facts, rules, exercises, doses.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "base/issue.h"
#include "expression/program.h"
#include "facts/dictionary.h"
#include "facts/fact_set.h"
#include "facts/reference.h"
#include "plan/library.h"
#include "questionnaire/form.h"
#include "rules/measuring.h"
#include "rules/rule_set.h"

namespace stile::screening {

/// Someone this program is not for.
struct Refusal {
  std::optional<expression::Program> when;
  std::string message, remedy;
};

/// rules/intended-use.json: for whom this is, the label of the content, the caution on every paper.
struct IntendedUse {
  std::string label;        ///< of this state of the content, e.g. "2026.11"
  std::string caution;      ///< stands on every paper
  std::string notReviewed;  ///< stands beside content that no licensed clinician has reviewed
  std::vector<Refusal> refusals;

  static IntendedUse load(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                          base::Issues& issues);
  /// The first refusal that is certainly true, or nullptr.
  const Refusal* refusalOf(const facts::FactSet& facts) const;
};

struct Content {
  std::string version;  ///< label and hash over sorted paths and bytes, e.g. "2026.11-3f9c2a10"
  questionnaire::FormSet forms;
  facts::Dictionary dictionary;
  rules::RuleSet rules;
  plan::Library library;
  IntendedUse intendedUse;
  facts::Reference reference;
  std::vector<rules::Measuring> measuring;  ///< how values are taken, in the order they are taken in

  /// `files` maps paths such as "rules/facts/acute.json" to text. Content with errors must not
  /// be used to screen.
  static Content load(const std::map<std::string, std::string>& files, base::Issues& issues);
};

}  // namespace stile::screening
