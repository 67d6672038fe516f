#include "plan/phrase.h"

namespace stile::plan {

std::string filledIn(std::string text, const std::map<std::string, std::string>& slots) {
  for (const auto& [name, value] : slots) {
    const std::string slot = "{" + name + "}";
    for (std::size_t found = text.find(slot); found != std::string::npos;
         found = text.find(slot, found + value.size()))
      text.replace(found, slot.size(), value);
  }
  return text;
}

}  // namespace stile::plan
