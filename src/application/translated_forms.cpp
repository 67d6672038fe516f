#include "application/translated_forms.h"

#include <filesystem>

#include "application/content_folder.h"
#include "json/document.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;
using json::Kind;
using json::Node;

constexpr const char *kForms = "questionnaires/", *kClinicians = "clinician";
/// A clinician's word within a client's module.
constexpr const char* kLookedUp = "medicineLookedUp";

std::string phrasesOf(const std::string& language) {
  return "rules/phrases/" + language + ".json";
}

std::string stringIn(Node node, const char* member) {
  const auto found = node.isObject() ? node.find(member) : std::nullopt;
  return found && found->isString() ? found->string() : std::string();
}

/// A display item that stands for a module taken in is no sentence: the module's own group is.
bool standsForModule(Node item) {
  const auto extensions = item.find("extension");
  for (std::size_t i = 0; extensions && i < extensions->size(); ++i)
    if (stringIn(extensions->at(i), "url").ends_with("subQuestionnaire")) return true;
  return false;
}

class FormTranslator {
 public:
  explicit FormTranslator(PhraseUse& phrases) : phrases_(phrases) {}

  std::string rewrite(Node root) {
    json::Writer writer(0);
    write(writer, root, "", "");
    return writer.text();
  }

 private:
  /// `sentence` is the key of the member `text` or `display` in here, "" where it is none of a client's.
  void write(json::Writer& writer, Node node, const std::string& linkId, const std::string& sentence) {
    if (node.kind() == Kind::Object) return writeObject(writer, node, linkId, sentence);
    if (node.kind() != Kind::Array) return static_cast<void>(writer.copy(node));
    writer.beginArray();
    for (std::size_t i = 0; i < node.size(); ++i) write(writer, node.at(i), linkId, sentence);
    writer.endArray();
  }

  void writeObject(json::Writer& writer, Node node, const std::string& linkId, const std::string& sentence) {
    const std::string own = stringIn(node, "linkId"), code = stringIn(node, "code");
    const std::string item = own.empty() ? linkId : own;
    writer.beginObject();
    for (std::size_t i = 0; i < node.size(); ++i) {
      const std::string& member = node.keyAt(i);
      const Node value = node.at(i);
      writer.key(member);
      const bool isText = member == "text" && !own.empty() && !standsForModule(node);
      const bool isOption = member == "display" && sentence == "option" && !code.empty();
      if (value.isString() && !value.string().empty() && (isText || isOption) && !item.starts_with(kLookedUp))
        writer.string(phrases_.say(value, "forms." + item + (isText ? ".text" : ".options." + code)));
      else
        write(writer, value, item, member == "answerOption" ? "option" : member == "item" ? "" : sentence);
    }
    writer.endObject();
  }

  PhraseUse& phrases_;
};

}  // namespace

bool isFormForClients(const std::string& file) {
  if (!file.starts_with(kForms)) return false;
  const std::string name = std::filesystem::path(file).stem().string();
  return name.find(kClinicians) == std::string::npos && name != "tests" && name != "clearance-reply";
}

std::map<std::string, std::string> translatedForms(const std::map<std::string, std::string>& files,
                                                   const Translation& translation, TranslationCount& count,
                                                   base::Issues& issues) {
  std::map<std::string, std::string> forms;
  PhraseUse phrases(translation, count, issues);
  for (const auto& [file, text] : files) {
    if (!file.starts_with(kForms)) continue;
    const std::string name = std::filesystem::path(file).filename().string();
    const auto document = isFormForClients(file) ? json::Document::parse(text, file, issues) : nullptr;
    forms[name] = document ? FormTranslator(phrases).rewrite(document->root()) : text;
  }
  phrases.checkUnused([](const std::string& key) { return isFormPhrase(key); });
  return forms;
}

base::Result<FormInLanguage> formInLanguage(const std::string& contentFolder, const std::string& form,
                                            const std::string& language) {
  const auto files = readContentFolder(contentFolder);
  if (!files) return files.failure();
  base::Issues issues;
  const auto translation = Translation::load(files.value(), language, issues);
  if (!translation)
    return Failure{FailureKind::Usage, "there is no " + phrasesOf(language) + " in the content"};
  TranslationCount count;
  const auto forms =
      questionnaire::FormSet::loadAny(translatedForms(files.value(), *translation, count, issues), issues);
  if (issues.hasErrors())
    return Failure{FailureKind::Refused,
                   "the questions in \"" + language + "\" have errors: " + issues.all().front().message};
  for (const auto& one : forms.forms())
    if (one->name() == form)
      return FormInLanguage{one, translation->isReviewed ? std::string() : translation->notice};
  return Failure{FailureKind::Usage, "there is no form \"" + form + "\" in the content"};
}

bool hasTranslation(const std::string& contentFolder, const std::string& language) {
  std::error_code ignored;
  return std::filesystem::is_regular_file(std::filesystem::path(contentFolder) / phrasesOf(language),
                                          ignored);
}

}  // namespace stile::application
