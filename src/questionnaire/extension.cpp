#include "questionnaire/extension.h"

namespace stile::questionnaire {

Extensions::Extensions(json::ObjectReader& element) : element_(element) {
  element.string("id");
  for (const json::Node& modifier : element.array("modifierExtension")) {
    const auto url = modifier.find("url");
    const std::string name = url && url->isString() ? " " + url->string() : std::string();
    element.issue(modifier, "the modifier extension" + name + " is not understood here",
                  "remove it; what it changes about this element would be lost");
  }
  for (const json::Node& extension : element.array("extension")) {
    const auto url = extension.find("url");
    if (!url || !url->isString() || url->string().empty()) {
      element.issue(extension, "an extension has no url", "give it the url that says what it is");
      continue;
    }
    list_.emplace_back(url->string(), extension);
  }
}

std::vector<json::Node> Extensions::all(std::string_view url) const {
  std::vector<json::Node> found;
  for (const auto& [name, node] : list_) {
    if (name == url) found.push_back(node);
  }
  return found;
}

std::optional<json::Node> Extensions::only(std::string_view url, std::string_view member, json::Kind kind) {
  const auto found = each(url, member, kind);
  if (found.size() > 1) {
    element_.issue(found[1], "the extension " + std::string(url) + " stands here twice", "keep one of them");
  }
  if (found.empty()) return std::nullopt;
  return found.front();
}

std::vector<json::Node> Extensions::each(std::string_view url, std::string_view member, json::Kind kind) {
  std::vector<json::Node> values;
  for (const json::Node& extension : all(url)) {
    const auto value = extension.find(member);
    if (value && value->kind() == kind) {
      values.push_back(*value);
    } else {
      element_.issue(value ? *value : extension,
                     "the extension " + std::string(url) + " needs a proper " + std::string(member),
                     "write its value in the member " + std::string(member));
    }
  }
  return values;
}

std::string requireWords(json::ObjectReader& element, std::string_view member) {
  std::string words = element.requireString(member);
  const auto found = element.find(member);
  if (words.empty() && found && found->isString()) {
    element.issue(*found, "\"" + std::string(member) + "\" is empty", "write its value");
  }
  return words;
}

void acceptUnused(json::ObjectReader& element, std::initializer_list<std::string_view> members) {
  for (const std::string_view member : members) {
    element.find(member);
    element.find("_" + std::string(member));
  }
}

CodingParts readCoding(json::Node node, const std::string& subject, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  CodingParts parts;
  if (!reader.isObject()) return parts;
  reader.find("id");
  reader.find("extension");
  parts.system = reader.string("system");
  parts.code = requireWords(reader, "code");
  parts.display = reader.string("display");
  acceptUnused(reader, {"system", "version", "code", "display", "userSelected"});
  reader.finish();
  return parts;
}

}  // namespace stile::questionnaire
