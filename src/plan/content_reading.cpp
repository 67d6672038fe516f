#include "plan/content_reading.h"

#include "expression/json_origin.h"

namespace stile::plan {

std::vector<std::string> ContentReading::sourcesOf(json::ObjectReader& reader) {
  auto list = reader.strings("sources");
  if (list.empty()) reader.issue(reader.node(), "no source", "name one, or \"common practice, no source\"");
  for (const auto& id : list) sources_.emplace_back(id, reader.node().place());
  return list;
}

base::Rational ContentReading::requireNumber(json::ObjectReader& reader, std::string_view key) {
  if (!reader.require(key)) return 0;
  return reader.number(key).value_or(base::Rational(0));
}

int ContentReading::requireInteger(json::ObjectReader& reader, std::string_view key) {
  if (!reader.require(key)) return 0;
  const auto value = reader.integer(key).value_or(0);
  if (value >= 0 && value <= 100000) return static_cast<int>(value);
  reader.issue(reader.node(), "\"" + std::string(key) + "\" is out of bounds", "use a whole number up to 100000");
  return 0;
}

std::optional<limits::Rung> ContentReading::rung(json::ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto value = limits::rungOf(id);
  if (!value && !id.empty()) reader.issue(reader.node(), "\"" + id + "\" is no rung");
  return value;
}

std::optional<Section> ContentReading::section(json::ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto value = sectionOf(id);
  if (!value && !id.empty()) reader.issue(reader.node(), "\"" + id + "\" is no section");
  return value;
}

std::optional<expression::Program> ContentReading::program(json::ObjectReader& reader, std::string_view key,
                                                    const expression::Type& type) {
  const auto node = reader.find(key);
  if (!node) return std::nullopt;
  if (!node->isString()) {
    reader.issue(*node, "\"" + std::string(key) + "\" must be an expression in quotes");
    return std::nullopt;
  }
  const expression::JsonOrigin origin(*node);
  return expression::Program::compile(node->string(), dictionary_, type, origin, reader.subject(), issues_);
}

int ContentReading::slotOf(json::ObjectReader& reader, std::string_view key) {
  const std::string id = reader.requireString(key);
  const auto* definition = dictionary_.find(id);
  if (definition == nullptr && !id.empty()) reader.issue(reader.node(), "there is no fact \"" + id + "\"");
  return definition == nullptr ? -1 : definition->slot;
}

}  // namespace stile::plan
