#include "questionnaire/extension.h"

#include <algorithm>
#include <array>

namespace stile::questionnaire {

Extensions::Extensions(json::ObjectReader& element, std::string_view understood) : element_(element) {
  element.string("id");
  for (const json::Node& modifier : element.array("modifierExtension")) {
    const auto url = modifier.find("url");
    if (!understood.empty() && url && url->isString() && url->string() == understood) continue;
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

bool isFollowed(std::string_view url) {
  using namespace extension_url;
  static constexpr std::array kFollowed{kHidden,
                                        kUnit,
                                        kUnitOption,
                                        kOptionExclusive,
                                        kMinValue,
                                        kMaxValue,
                                        kMinQuantity,
                                        kMaxQuantity,
                                        kMinLength,
                                        kMaxDecimalPlaces,
                                        kMinOccurs,
                                        kMaxOccurs,
                                        kRegex,
                                        kMaxSize,
                                        kMimeType,
                                        kReferenceResource,
                                        kVariable,
                                        kConstraint,
                                        kTargetConstraint,
                                        kEnableWhenExpression,
                                        kCalculatedExpression,
                                        kOptionsToggle};
  return std::find(kFollowed.begin(), kFollowed.end(), url) != kFollowed.end();
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

namespace {

CodingParts codingParts(json::Node node, const std::string& subject, bool needsCode, base::Issues& issues) {
  json::ObjectReader reader(node, subject, issues);
  CodingParts parts;
  if (!reader.isObject()) return parts;
  reader.find("id");
  reader.find("extension");
  parts.system = reader.string("system");
  parts.display = reader.string("display");
  const bool isOpen = !needsCode && !parts.display.empty() && !reader.find("code");
  if (!isOpen) parts.code = requireWords(reader, "code");
  acceptUnused(reader, {"system", "version", "code", "display", "userSelected"});
  reader.finish();
  return parts;
}

/// Calls `use` with every extension object of the element.
template <class Use>
void forEachExtension(json::Node element, Use use) {
  const auto list = element.find("extension");
  for (std::size_t i = 0; list && list->isArray() && i < list->size(); ++i) {
    const auto url = list->at(i).find("url");
    if (url && url->isString()) use(url->string(), list->at(i));
  }
}

}  // namespace

CodingParts readCoding(json::Node node, const std::string& subject, base::Issues& issues) {
  return codingParts(node, subject, true, issues);
}

CodingParts readOpenCoding(json::Node node, const std::string& subject, base::Issues& issues) {
  return codingParts(node, subject, false, issues);
}

Translations translationsOf(json::Node element, std::string_view member) {
  Translations translations;
  const auto twin = element.find("_" + std::string(member));
  if (!twin) return translations;
  forEachExtension(*twin, [&](const std::string& url, json::Node extension) {
    if (url != extension_url::kTranslation) return;
    std::string language;
    std::string content;
    forEachExtension(extension, [&](const std::string& part, json::Node value) {
      for (const char* name : {"valueCode", "valueString", "valueMarkdown"}) {
        const auto words = value.find(name);
        if (words && words->isString()) (part == "lang" ? language : content) = words->string();
      }
    });
    if (!language.empty() && !content.empty()) translations[language] = content;
  });
  return translations;
}

std::optional<base::Rational> numberIn(json::Node element, std::initializer_list<std::string_view> urls) {
  std::optional<base::Rational> number;
  forEachExtension(element, [&](const std::string& url, json::Node extension) {
    for (const std::string_view wanted : urls) {
      const auto value = extension.find("valueDecimal");
      if (!number && url == wanted && value && value->isNumber()) number = value->number();
    }
  });
  return number;
}

std::string stringIn(json::Node element, std::string_view url) {
  std::string words;
  forEachExtension(element, [&](const std::string& name, json::Node extension) {
    const auto value = extension.find("valueString");
    if (name == url && value && value->isString() && words.empty()) words = value->string();
  });
  return words;
}

}  // namespace stile::questionnaire
