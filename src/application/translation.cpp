#include "application/translation.h"

#include <algorithm>
#include <vector>

#include "json/document.h"
#include "json/reader.h"
#include "rules/sentence.h"

namespace stile::application {
namespace {

using json::Kind;
using json::Node;
using Path = std::vector<std::string>;

std::string joined(const Path& path) {
  std::string key;
  for (const std::string& part : path) key += (key.empty() ? "" : ".") + part;
  return key;
}

bool isOneOf(const std::string& word, std::initializer_list<const char*> words) {
  return std::any_of(words.begin(), words.end(), [&](const char* one) { return word == one; });
}

/// Sentences that clients read, by the place where they stand.
bool isForClients(const Path& path) {
  if (path.empty()) return false;
  const std::string& first = path.front();
  const std::string& last = path.back();
  const std::string second = path.size() > 1 ? path[1] : "";
  if (first == "handout") return isOneOf(second, {"titles", "headings", "phrases"}) || isOneOf(last, {"say", "what", "instead"});
  if (first == "doses")
    return second == "phrases" || (second == "sentences" && last == "say") || last == "client" ||
           (second == "effortScale" && last == "name") || (second == "efforts" && last == "words");
  if (first == "wishes") return second == "phrases" || isOneOf(last, {"said", "firstStep"});
  if (first == "easing") return last == "client";
  if (first == "vocabulary") return isOneOf(last, {"client", "instead"});
  if (first == "exercises") {
    if (path.size() == 3) return isOneOf(last, {"title", "equipmentWords"});
    return last == "client" || (path.size() == 4 && path[2] == "steps") || (path.size() == 5 && path[2] == "setups" && last == "words");
  }
  return isOneOf(first, {"rules", "checks"}) && last == "client";
}

/// Files whose keys begin with the name of the file; in the others ids are enough.
std::string stemOf(const std::string& file) {
  for (const char* name : {"handout", "doses", "easing", "vocabulary", "wishes"})
    if (file == std::string("rules/") + name + ".json") return name;
  return "";
}

bool hasClientSentences(const std::string& file) {
  if (!stemOf(file).empty()) return true;
  for (const char* folder : {"exercises", "screening", "conditions", "medicines", "measurements", "function"})
    if (file.starts_with(std::string("rules/") + folder + "/")) return true;
  return false;
}

class Translator {
 public:
  Translator(PhraseUse& phrases, base::Issues& issues) : phrases_(phrases), issues_(issues) {}

  std::string rewrite(const std::string& file, const std::string& text) {
    const auto document = json::Document::parse(text, file, issues_);
    if (!document) return text;
    json::Writer writer(0);
    Path path;
    if (const std::string stem = stemOf(file); !stem.empty()) path.push_back(stem);
    write(writer, document->root(), path);
    return writer.text();
  }

 private:
  void write(json::Writer& writer, Node node, Path& path) {
    switch (node.kind()) {
      case Kind::Object:
        writer.beginObject();
        for (std::size_t i = 0; i < node.size(); ++i) {
          writer.key(node.keyAt(i));
          path.push_back(node.keyAt(i));
          write(writer, node.at(i), path);
          path.pop_back();
        }
        writer.endObject();
        break;
      case Kind::Array:
        writer.beginArray();
        for (std::size_t i = 0; i < node.size(); ++i) {
          const Node one = node.at(i);
          const auto id = one.isObject() ? one.find("id") : std::nullopt;
          path.push_back(id && id->isString() ? id->string() : std::to_string(i));
          write(writer, one, path);
          path.pop_back();
        }
        writer.endArray();
        break;
      case Kind::String:
        writer.string(isForClients(path) && !node.string().empty() ? phrases_.say(node, joined(path)) : node.string());
        break;
      default:
        writer.copy(node);
    }
  }

  PhraseUse& phrases_;
  base::Issues& issues_;
};

}  // namespace

std::string PhraseUse::say(Node sentence, const std::string& key) {
  const std::string& original = sentence.string();
  ++count_.sentences;
  const auto found = translation_.texts.find(key);
  if (found == translation_.texts.end()) {
    ++count_.missing;
    count_.toDo.push_back(key);
    return translation_.missing + original;
  }
  used_.insert(key);
  if (found->second.of != original) {
    ++count_.changed;
    count_.toDo.push_back(key);
    return translation_.missing + original;
  }
  auto had = rules::slotsIn(original), has = rules::slotsIn(found->second.say);
  std::sort(had.begin(), had.end());
  std::sort(has.begin(), has.end());
  if (had != has) issues_.error(sentence.place(), key, "the translation has other slots than the sentence", "use the same slots in braces");
  return found->second.say;
}

void PhraseUse::checkUnused(const std::function<bool(const std::string&)>& isOfPart) {
  for (const auto& [key, text] : translation_.texts)
    if (isOfPart(key) && !used_.contains(key)) issues_.error({}, key, "this key names no sentence for clients", "correct it or take it out");
}

bool isFormPhrase(const std::string& key) { return key.starts_with("forms."); }

namespace {

void addTexts(Translation& translation, json::ObjectReader& reader, base::Issues& issues) {
  const auto node = reader.require("texts");
  for (std::size_t i = 0; node && i < node->size(); ++i) {
    json::ObjectReader one(node->at(i), node->keyAt(i), issues);
    Phrase phrase{one.requireString("of"), one.requireString("say")};
    one.finish();
    if (!translation.texts.emplace(node->keyAt(i), std::move(phrase)).second)
      reader.issue(node->at(i), "the key " + node->keyAt(i) + " stands in another file too", "leave it in one of them");
  }
}

}  // namespace

std::optional<Translation> Translation::load(const std::map<std::string, std::string>& files, const std::string& language,
                                             base::Issues& issues) {
  const std::string main = "rules/phrases/" + language + ".json", folder = "rules/phrases/" + language + "/";
  const auto first = files.find(main);
  if (first == files.end()) return std::nullopt;
  Translation translation;
  const auto document = json::Document::parse(first->second, main, issues);
  if (!document) return translation;
  json::ObjectReader reader(document->root(), "translation", issues);
  translation.language = reader.requireString("language");
  translation.notice = reader.requireString("notice");
  translation.missing = reader.requireString("missing");
  if (const auto node = reader.require("reviewed")) {
    json::ObjectReader reviewed(*node, "reviewed", issues);
    reviewed.requireString("date");
    reviewed.requireString("by");
    translation.isReviewed = reviewed.boolean("licensed").value_or(false);
    reviewed.finish();
  }
  reader.finish();
  for (const auto& [file, text] : files) {
    if (!file.starts_with(folder)) continue;
    const auto part = json::Document::parse(text, file, issues);
    if (!part) continue;
    json::ObjectReader partReader(part->root(), "translation", issues);
    addTexts(translation, partReader, issues);
    partReader.finish();
  }
  return translation;
}

std::map<std::string, std::string> translated(const std::map<std::string, std::string>& files,
                                              const Translation& translation, TranslationCount& count,
                                              base::Issues& issues) {
  std::map<std::string, std::string> result = files;
  PhraseUse phrases(translation, count, issues);
  Translator translator(phrases, issues);
  for (auto& [file, text] : result)
    if (hasClientSentences(file)) text = translator.rewrite(file, text);
  phrases.checkUnused([](const std::string& key) { return !isFormPhrase(key); });
  return result;
}

}  // namespace stile::application
