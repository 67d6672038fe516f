#include "rules/sentence.h"

#include "facts/fact_table.h"

namespace stile::rules {
namespace {

/// Calls `text` with each plain stretch and `slot` with each id between braces.
template <class OnText, class OnSlot>
void walk(const std::string& sentence, OnText text, OnSlot slot) {
  std::size_t at = 0;
  while (at < sentence.size()) {
    const auto open = sentence.find('{', at);
    const auto close = open == std::string::npos ? open : sentence.find('}', open);
    if (close == std::string::npos) break;
    text(sentence.substr(at, open - at));
    slot(sentence.substr(open + 1, close - open - 1));
    at = close + 1;
  }
  text(sentence.substr(at));
}

}  // namespace

std::vector<std::string> slotsIn(const std::string& sentence) {
  std::vector<std::string> ids;
  walk(sentence, [](const std::string&) {}, [&](std::string id) { ids.push_back(std::move(id)); });
  return ids;
}

std::string fillIn(const std::string& sentence, const facts::FactSet& facts, const std::string& group, int repetition) {
  std::string filled;
  walk(
      sentence, [&](const std::string& text) { filled += text; },
      [&](const std::string& id) {
        const facts::Definition* definition = facts.dictionary().find(id);
        if (definition == nullptr) {
          filled += "not known";
          return;
        }
        const bool inGroup = !definition->group.empty() && definition->group == group;
        filled += facts::display(*definition, inGroup ? facts.at(definition->slot, repetition) : facts.at(definition->slot));
      });
  return filled;
}

}  // namespace stile::rules
