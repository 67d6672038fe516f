#include "facts/dictionary.h"
#include "base/near_names.h"

#include <algorithm>


namespace stile::facts {

using expression::Value;
using expression::ValueKind;

const char* toText(FactType type) {
  switch (type) {
    case FactType::Boolean:
      return "boolean";
    case FactType::Integer:
      return "integer";
    case FactType::Decimal:
      return "decimal";
    case FactType::Quantity:
      return "quantity";
    case FactType::Code:
      return "code";
    case FactType::Date:
      return "date";
    case FactType::Text:
      return "text";
  }
  return "";
}

const char* toText(Concern concern) {
  switch (concern) {
    case Concern::True:
      return "true";
    case Concern::False:
      return "false";
    case Concern::Rising:
      return "rising";
    case Concern::Falling:
      return "falling";
    case Concern::OutsideRange:
      return "outside-range";
    case Concern::None:
      return "none";
  }
  return "";
}

const char* toText(UnknownAs unknownAs) {
  switch (unknownAs) {
    case UnknownAs::Cautious:
      return "cautious";
    case UnknownAs::Gate:
      return "gate";
    case UnknownAs::Lowest:
      return "lowest";
    case UnknownAs::Optional:
      return "optional";
  }
  return "";
}

const char* toText(DerivedKind kind) {
  switch (kind) {
    case DerivedKind::None:
      return "answer";
    case DerivedKind::Expression:
      return "expression";
    case DerivedKind::Elapsed:
      return "elapsed";
    case DerivedKind::Summary:
      return "summary";
    case DerivedKind::Norm:
      return "norm";
    case DerivedKind::Mean:
      return "mean";
    case DerivedKind::Worst:
      return "worst";
    case DerivedKind::Last:
      return "last";
    case DerivedKind::Score:
      return "score";
    case DerivedKind::Option:
      return "option";
    case DerivedKind::ClassMember:
      return "class";
  }
  return "";
}

Value Definition::valueWhenNotApplicable() const {
  if (whenNotApplicable) return *whenNotApplicable;
  return type == FactType::Boolean ? Value::boolean(false) : Value::ofNotApplicable(valueType.kind);
}

const OptionDefinition* Definition::option(std::string_view optionCode) const {
  const auto found = std::find_if(options.begin(), options.end(),
                                  [&](const OptionDefinition& option) { return option.code == optionCode; });
  return found == options.end() ? nullptr : &*found;
}

const Definition* Dictionary::find(std::string_view id) const {
  const auto found = bySlot_.find(id);
  return found == bySlot_.end() ? nullptr : &at(found->second);
}

int Dictionary::groupIndex(std::string_view group) const {
  const auto found = std::find(groups_.begin(), groups_.end(), group);
  return found == groups_.end() ? -1 : static_cast<int>(found - groups_.begin());
}

const NormTable* Dictionary::norm(std::string_view id) const {
  const auto found =
      std::find_if(norms_.begin(), norms_.end(), [&](const NormTable& table) { return table.id == id; });
  return found == norms_.end() ? nullptr : &*found;
}

std::optional<expression::Symbol> Dictionary::symbol(std::string_view name, std::string_view within) const {
  const Definition* definition = find(name);
  if (!definition) return std::nullopt;
  expression::Symbol symbol;
  symbol.slot = definition->slot;
  symbol.type = definition->valueType;
  for (const OptionDefinition& option : definition->options) symbol.options.push_back(option.code);
  if (!definition->retiredFor.empty()) {
    symbol.usable = "it is retired; use %" + definition->retiredFor;
  } else if (definition->isMultiple) {
    symbol.usable = "it may have several answers; use its option facts";
    const int first = definition->options.empty() ? -1 : definition->options[0].slot;
    if (first >= 0) symbol.usable += ", such as %" + at(first).id;
  } else if (!definition->group.empty() && definition->group != within) {
    symbol.usable = "it belongs to each repetition of the group " + definition->group +
                    "; read it through a summary, mean, worst or last, or with forEach";
  }
  return symbol;
}

std::optional<expression::Symbol> Dictionary::lookup(std::string_view name) const {
  return symbol(name, {});
}

std::vector<std::string> Dictionary::similar(std::string_view name) const {
  std::vector<std::string_view> names;
  names.reserve(definitions_.size());
  for (const Definition& definition : definitions_) names.push_back(definition.id);
  return base::nearNames(name, names);
}

std::optional<expression::Symbol> Dictionary::GroupView::lookup(std::string_view name) const {
  return dictionary_.symbol(name, group_);
}

}  // namespace stile::facts
