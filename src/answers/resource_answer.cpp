#include "answers/resource_answer.h"

#include <algorithm>
#include <string>
#include <string_view>

#include "expression/type_model.h"
#include "json/reader.h"
#include "questionnaire/extension.h"

namespace stile::answers {
namespace {

using questionnaire::Item;

/// Bytes behind a base64 text; nullopt when it is none. White space is allowed, as FHIR has it.
std::optional<std::size_t> decodedSize(std::string_view text) {
  std::size_t digits = 0;
  std::size_t padding = 0;
  for (const char c : text) {
    if (c == ' ' || c == '\t' || c == '\r' || c == '\n') continue;
    const bool isDigit =
        (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '+' || c == '/';
    if (c == '=') {
      ++padding;
    } else if (!isDigit || padding > 0) {
      return std::nullopt;
    } else {
      ++digits;
    }
  }
  constexpr std::size_t kGroup = 4;
  if ((digits + padding) % kGroup != 0 || padding > 2) return std::nullopt;
  return digits * 3 / kGroup;
}

std::string alternatives(const std::vector<std::string>& words) {
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? "" : " or ") + word;
  return list;
}

bool isId(std::string_view text) {
  constexpr std::size_t kLongestId = 64;
  return !text.empty() && text.size() <= kLongestId && std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '.';
  });
}

/// The type named by `Type/id`, `https://…/Type/id` or either with `/_history/version`; "" when the
/// text has another form (a fragment, a urn).
std::string typeNamedBy(std::string_view reference) {
  if (const std::size_t history = reference.find("/_history/"); history != std::string_view::npos) {
    reference = reference.substr(0, history);
  }
  if (reference.starts_with('#') || reference.starts_with("urn:")) return {};
  const std::size_t slash = reference.rfind('/');
  if (slash == std::string_view::npos || !isId(reference.substr(slash + 1))) return {};
  const std::string_view before = reference.substr(0, slash);
  const std::size_t start = before.rfind('/');
  const std::string_view name = start == std::string_view::npos ? before : before.substr(start + 1);
  const bool isName = !name.empty() && name.front() >= 'A' && name.front() <= 'Z' &&
                      name.find_first_of(".:?") == std::string_view::npos;
  return isName ? std::string(name) : std::string();
}

bool isResource(const std::string& type) {
  const expression::ModelType* found = expression::r4Model().find(type);
  return found && found->isResource;
}

}  // namespace

bool checkAttachment(json::Node value, const Item& question, base::Issues& issues) {
  json::ObjectReader reader(value, question.linkId, issues);
  if (!reader.isObject()) return false;
  const std::size_t before = issues.all().size();
  reader.find("id");
  reader.find("extension");
  const std::string type = reader.string("contentType");
  const std::string data = reader.string("data");
  auto size = reader.integer("size");
  questionnaire::acceptUnused(
      reader, {"contentType", "language", "data", "url", "size", "hash", "title", "creation"});
  reader.finish();
  const auto bytes = decodedSize(data);
  if (!data.empty() && !bytes)
    reader.issue(*reader.find("data"), "the data is no base64", "encode the file again");
  if (!size && bytes && !data.empty()) size = static_cast<long long>(*bytes);
  const auto& allowed = question.mimeTypes;
  if (!allowed.empty() && std::find(allowed.begin(), allowed.end(), type) == allowed.end()) {
    reader.issue(value,
                 "a file of the type " + (type.empty() ? std::string("(none)") : type) + " is not taken here",
                 "give a file of the type " + alternatives(allowed));
  }
  if (question.maxSizeBytes && size && base::Rational(*size) > *question.maxSizeBytes) {
    reader.issue(value,
                 "the file has " + std::to_string(*size) + " bytes, more than the " +
                     question.maxSizeBytes->toText() + " allowed",
                 "give a smaller file");
  }
  return issues.all().size() == before;
}

bool checkReference(json::Node value, const Item& question, base::Issues& issues) {
  json::ObjectReader reader(value, question.linkId, issues);
  if (!reader.isObject()) return false;
  const std::size_t before = issues.all().size();
  reader.find("id");
  reader.find("extension");
  const std::string reference = reader.string("reference");
  const std::string stated = reader.string("type");
  questionnaire::acceptUnused(reader, {"reference", "type", "identifier", "display"});
  reader.finish();
  if (reference.empty() && !reader.find("identifier") && !reader.find("display")) {
    reader.issue(value, "the reference names nothing", "give reference, identifier or display");
  }
  std::string type = typeNamedBy(reference);
  if (!type.empty() && !isResource(type)) {
    reader.issue(*reader.find("reference"), "there is no resource type " + type + " in FHIR R4",
                 "write the reference as Type/id");
  } else if (!type.empty() && !stated.empty() && type != stated) {
    reader.issue(*reader.find("type"), "the reference names a " + type + ", its type says " + stated,
                 "make the two agree");
  }
  if (type.empty()) type = stated;
  const auto& allowed = question.referenceTypes;
  if (!type.empty() && !allowed.empty() && std::find(allowed.begin(), allowed.end(), type) == allowed.end()) {
    reader.issue(value, "a reference to the type " + type + " is not taken here",
                 "refer to " + alternatives(allowed));
  }
  return issues.all().size() == before;
}

}  // namespace stile::answers
