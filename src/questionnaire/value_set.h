// Value sets that come within the form itself: contained ValueSets and CodeSystems.
//
// What a form does not carry would need a terminology server; such a list is "not the whole list",
// and answers to it are kept and told, never refused. For src/questionnaire only.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/item.h"

namespace stile::questionnaire {

/// Value sets may take each other in; deeper than this the list is left incomplete.
inline constexpr int kMaxValueSetDepth = 8;
/// Parts of value sets looked at in one form; past this its lists are left incomplete.
inline constexpr std::size_t kMaxValueSetSteps = 10'000;

struct CodeList {
  std::vector<Option> options;
  bool isComplete = true;  ///< every code of the value set is in `options`
  bool isFound = true;     ///< false: the form does not hold this value set
};

/// The contained resources of one Questionnaire.
class ContainedValueSets {
 public:
  explicit ContainedValueSets(json::Node questionnaire);

  /// The codes of `canonical`: `#id`, or the url of a contained value set. An expansion counts before
  /// a definition; abstract codes are left out.
  CodeList codesOf(std::string_view canonical) const;

 private:
  const json::Node* resource(std::string_view type, std::string_view canonical) const;
  CodeList codesOf(std::string_view canonical, int depth) const;
  CodeList compose(json::Node compose, int depth) const;
  CodeList part(json::Node part, int depth) const;

  std::vector<json::Node> resources_;
  mutable std::size_t steps_ = 0;
};

}  // namespace stile::questionnaire
