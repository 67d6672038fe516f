#include "expression/function_table.h"

#include <algorithm>
#include <map>

namespace stile::expression {
namespace {

const std::map<std::string_view, const FunctionEntry*>& table() {
  static const auto entries = [] {
    std::map<std::string_view, const FunctionEntry*> result;
    for (const auto functions :
         {existenceFunctions(), filteringFunctions(), subsettingFunctions(), combiningFunctions(),
          conversionFunctions(), textFunctions(), matchingFunctions(), encodingFunctions(), mathFunctions(),
          aggregateFunctions(), temporalFunctions(), boundaryFunctions(), typeFunctions(), treeFunctions(),
          fhirFunctions()}) {
      for (const FunctionEntry& entry : functions) result.emplace(entry.name, &entry);
    }
    return result;
  }();
  return entries;
}

}  // namespace

const FunctionEntry* findFunction(std::string_view name) {
  const auto found = table().find(name);
  return found == table().end() ? nullptr : found->second;
}

std::vector<std::string_view> functionNames() {
  std::vector<std::string_view> names;
  for (const auto& [name, entry] : table()) names.push_back(name);
  return names;
}

Collection Call::onItem(std::size_t i, const Item& item, std::size_t index, const Collection* total) {
  const Collection self{item};
  return machine.evaluateApart(at(i), {&self, static_cast<long long>(index), total ? total : scope.total});
}

const std::string* Call::text() const {
  const Item* item = single();
  if (!item) return nullptr;
  if (!item->isText()) fail(syntax.text + "() is asked of a text only", "make a text of it with toString()");
  return &item->text();
}

std::optional<std::string> Call::textArgument(std::size_t i) {
  const Collection value = argument(i);
  const Item* item = machine.single(value, at(i));
  if (!item) return std::nullopt;
  if (!item->isText()) machine.fail(at(i), syntax.text + "() takes a text here");
  machine.budget().scan(item->text().size());
  return item->text();
}

std::optional<long long> Call::integerArgument(std::size_t i) {
  const Collection value = argument(i);
  const Item* item = machine.single(value, at(i));
  if (!item) return std::nullopt;
  if (!item->isInteger()) machine.fail(at(i), syntax.text + "() takes an Integer here");
  return item->integer();
}

std::optional<bool> Call::booleanArgument(std::size_t i) {
  const Collection value = argument(i);
  return machine.truth(value, at(i));
}

}  // namespace stile::expression
