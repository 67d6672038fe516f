#include "plan/doses.h"

namespace stile::plan {

const EffortRow* Library::Doses::effort(Section section, limits::Rung rung) const {
  for (const EffortRow& row : efforts) {
    if (row.section == section && row.rung == rung) return &row;
  }
  return nullptr;
}

const std::vector<std::string>& Library::Doses::sentencesOf(std::string_view key) const {
  static const std::vector<std::string> none;
  const auto at = sentences.find(key);
  return at == sentences.end() ? none : at->second;
}

std::string Library::Doses::phrase(std::string_view key, const std::map<std::string, std::string>& slots) const {
  const auto at = phrases.find(key);
  if (at == phrases.end()) return {};
  std::string text = at->second;
  for (const auto& [name, value] : slots) {
    const std::string slot = "{" + name + "}";
    for (std::size_t found = text.find(slot); found != std::string::npos; found = text.find(slot, found + value.size()))
      text.replace(found, slot.size(), value);
  }
  return text;
}

std::string Library::Doses::counted(std::string_view key, const base::Rational& number,
                                    const std::map<std::string, std::string>& slots) const {
  const std::string one = std::string(key) + "One";
  return phrase(number == base::Rational(1) && phrases.count(one) != 0 ? std::string_view(one) : key, slots);
}

std::string wordsFor(const Library::Doses& doses, const base::Rational& low, const base::Rational& high) {
  std::vector<std::string> names;
  for (const EffortAnchor& anchor : doses.anchors) {
    if (anchor.to >= low && anchor.from <= high) names.push_back(anchor.name);
  }
  if (names.empty()) return {};
  return names.size() == 1 ? names.front() : doses.phrase("range", {{"low", names.front()}, {"high", names.back()}});
}

}  // namespace stile::plan
