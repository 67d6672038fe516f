#include "questionnaire/form_loader.h"

#include <algorithm>
#include <set>
#include <tuple>
#include <utility>

#include "base/near_names.h"
#include "questionnaire/canonical.h"
#include "questionnaire/expression_reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/form_checker.h"
#include "questionnaire/item_reader.h"
#include "questionnaire/own_form_checker.h"

namespace stile::questionnaire {
namespace {

std::string nameOf(const std::string& file) {
  const std::size_t slash = file.find_last_of('/');
  std::string name = slash == std::string::npos ? file : file.substr(slash + 1);
  constexpr std::string_view kEnding = ".json";
  if (name.ends_with(kEnding)) name.resize(name.size() - kEnding.size());
  return name;
}

std::string whereText(const base::Place& place) {
  return place.file + " line " + std::to_string(place.line);
}

void appendOnce(const base::Issues& from, base::Issues& to) {
  std::set<std::tuple<std::string, int, int, std::string, std::string>> seen;
  for (const base::Issue& issue : from.all()) {
    const auto& place = issue.place;
    if (seen.emplace(place.file, place.line, place.column, issue.subject, issue.message).second)
      to.add(issue);
  }
}

}  // namespace

FormLoader::FormLoader(const std::map<std::string, std::string>& files, Rules rules, base::Issues& issues)
    : files_(files), rules_(rules), issues_(issues) {}

std::vector<std::shared_ptr<const Form>> FormLoader::load() {
  for (const auto& [file, text] : files_) readSource(file, text);
  checkUrls();
  std::vector<std::shared_ptr<const Form>> forms;
  for (const auto& source : sources_) {
    if (source->isRoot) forms.push_back(assemble(*source));
  }
  // Modules that no form takes in are read all the same, for their issues.
  for (const auto& source : sources_) {
    if (!source->isRoot && !source->isTakenIn) assemble(*source);
  }
  appendOnce(found_, issues_);
  return forms;
}

void FormLoader::readSource(const std::string& file, const std::string& text) {
  const auto document = json::Document::parse(text, file, found_);
  if (!document) return;
  const json::Node root = document->root();
  auto source = std::make_unique<Source>(root);
  source->name = nameOf(file);
  source->document = document;
  json::ObjectReader reader(root, source->name, found_);
  if (!reader.isObject()) return;
  const std::string type = requireWords(reader, "resourceType");
  if (type != "Questionnaire") {
    if (!type.empty()) {
      reader.issue(*reader.find("resourceType"), "this is a " + type + ", not a Questionnaire",
                   "move it elsewhere");
    }
    return;
  }
  source->url = rules_ == Rules::OwnContent ? requireWords(reader, "url") : reader.string("url");
  source->version = reader.string("version");
  source->title = reader.string("title");
  readStatus(reader);
  if (source->url.find('|') != std::string::npos) {
    reader.issue(*reader.find("url"), "the url holds a |", "write the version in \"version\"");
  }
  if (const auto rules = reader.find("implicitRules")) {
    reader.issue(*rules, "implicit rules are not understood", "remove implicitRules");
  }
  if (const auto period = reader.find("effectivePeriod")) {
    const auto from = period->find("start");
    const auto until = period->find("end");
    if (from && from->isString()) source->effectiveFrom = from->string();
    if (until && until->isString()) source->effectiveUntil = until->string();
  }
  source->items = reader.array("item");
  if (source->items.empty()) reader.issue(root, "the form has no items", "add \"item\" with the questions");
  readExtensions(reader, *source);
  acceptUnused(reader, {"id",
                        "meta",
                        "implicitRules",
                        "language",
                        "text",
                        "contained",
                        "url",
                        "identifier",
                        "version",
                        "name",
                        "title",
                        "derivedFrom",
                        "status",
                        "experimental",
                        "subjectType",
                        "date",
                        "publisher",
                        "contact",
                        "description",
                        "useContext",
                        "jurisdiction",
                        "purpose",
                        "copyright",
                        "approvalDate",
                        "lastReviewDate",
                        "effectivePeriod",
                        "code"});
  reader.finish();
  sources_.push_back(std::move(source));
}

void FormLoader::readStatus(json::ObjectReader& reader) {
  const std::string status = requireWords(reader, "status");
  static const std::vector<std::string> kStatuses{"draft", "active", "retired", "unknown"};
  if (status.empty() || std::find(kStatuses.begin(), kStatuses.end(), status) != kStatuses.end()) return;
  reader.issue(*reader.find("status"), "\"" + status + "\" is no status of a Questionnaire",
               base::didYouMean(status, kStatuses, "use draft, active, retired or unknown"));
}

void FormLoader::readExtensions(json::ObjectReader& reader, Source& source) {
  Extensions extensions(reader, extension_url::kRenderingCritical);
  readExpectation(reader, extensions, source);
  readRenderingCritical(reader);
  source.variables = readVariables(extensions, source.name, found_);
  source.constraints = readConstraints(extensions, source.name, found_);
  source.launchContext = readLaunchContext(extensions);
  if (rules_ == Rules::OwnContent && !(source.variables.empty() && source.constraints.empty())) {
    reader.issue(reader.node(), "variables and constraints of a form are not supported",
                 "write rules instead; they are three-valued");
  }
}

void FormLoader::readRenderingCritical(json::ObjectReader& reader) {
  for (const json::Node& modifier : reader.array("modifierExtension")) {
    const auto url = modifier.find("url");
    if (!url || !url->isString() || url->string() != extension_url::kRenderingCritical) continue;
    const auto named = modifier.find("valueCanonical");
    const std::string name = named && named->isString() ? named->string() : std::string();
    if (isFollowed(name)) continue;
    reader.issue(named ? *named : modifier,
                 "the form says that nobody may show it who does not follow the extension " + name,
                 "that extension is not followed here; use a form without it");
  }
}

void FormLoader::readExpectation(json::ObjectReader& reader, Extensions& extensions, Source& source) {
  const auto code = extensions.only(extension_url::kAssembleExpectation, "valueCode", json::Kind::String);
  if (!code) return;
  source.isRoot = code->string() != "assemble-child";
  source.isModule = code->string() != "assemble-root";
  if (code->string() != "assemble-child" && code->string() != "assemble-root" &&
      code->string() != "assemble-root-or-child") {
    source.isModule = false;
    reader.issue(*code, "\"" + code->string() + "\" is no expectation of assembly",
                 "use assemble-child for a module, or leave the extension out");
  }
}

void FormLoader::checkUrls() {
  std::map<std::string, const Source*> byUrl;
  for (const auto& source : sources_) {
    if (source->url.empty()) continue;
    const auto [known, isNew] = byUrl.emplace(source->url, source.get());
    if (!isNew) {
      found_.error(source->place, source->name,
                   "the url " + source->url + " is also that of " + known->second->name,
                   "give each Questionnaire a url of its own");
    }
  }
}

FormLoader::Source* FormLoader::sourceOf(const std::string& canonical) {
  const Canonical wanted = splitCanonical(canonical);
  for (const auto& source : sources_) {
    if (source->url == wanted.url && !wanted.url.empty() &&
        (wanted.version.empty() || wanted.version == source->version)) {
      return source.get();
    }
  }
  return nullptr;
}

std::shared_ptr<const Form> FormLoader::assemble(Source& source) {
  Assembly assembly;
  assembly.form = std::make_shared<Form>();
  Form& form = *assembly.form;
  form.url_ = source.url;
  form.version_ = source.version;
  form.name_ = source.name;
  form.title_ = source.title;
  form.variables_ = source.variables;
  form.constraints_ = source.constraints;
  form.launchContext_ = source.launchContext;
  form.effectiveFrom_ = source.effectiveFrom;
  form.effectiveUntil_ = source.effectiveUntil;
  form.documents_.push_back(source.document);
  assembly.open.push_back(&source);
  addItems(source.items, nullptr, form.items_, assembly);
  connectConditions(form.items_, form);
  // A module alone lacks the questions before it, so its conditions are checked within forms only.
  if (!source.isRoot) return assembly.form;
  const bool isOwn = rules_ == Rules::OwnContent;
  checkForm(form, isOwn ? base::Severity::Error : base::Severity::Note, found_);
  if (isOwn) {
    checkOwnForm(form, found_);
  } else {
    noteOddities(form, found_);
  }
  return assembly.form;
}

void FormLoader::addItems(const std::vector<json::Node>& nodes, Item* parent, Items& into,
                          Assembly& assembly) {
  for (const json::Node& node : nodes) addItem(node, parent, into, assembly);
}

void FormLoader::addItem(json::Node node, Item* parent, Items& into, Assembly& assembly) {
  ReadItem read = readItem(node, assembly.open.back()->valueSets, found_);
  if (!read.item || !isNewLinkId(*read.item, assembly)) return;
  if (!read.module.empty()) {
    takeIn(read.module, *read.item, parent, into, assembly);
    return;
  }
  if (read.isHelp && parent) {
    parent->help += (parent->help.empty() ? "" : " ") + read.item->text;
    parent->helpLinkId = read.item->linkId;
    return;
  }
  Item* item = read.item.get();
  item->parent = parent;
  item->topic = assembly.open.back()->url;
  into.push_back(std::move(read.item));
  assembly.form->inOrder_.push_back(item);
  assembly.form->byLinkId_.emplace(item->linkId, item);
  addItems(read.children, item, item->items, assembly);
}

void FormLoader::takeIn(const std::string& canonical, const Item& placeholder, Item* parent, Items& into,
                        Assembly& assembly) {
  Source* module = sourceOf(canonical);
  const auto issue = [&](std::string message, std::string remedy) {
    found_.error(placeholder.place, placeholder.linkId, std::move(message), std::move(remedy));
  };
  if (!module) {
    std::vector<std::string> urls;
    for (const auto& source : sources_) {
      if (source->isModule) urls.push_back(source->url);
    }
    issue("the module " + canonical + " is missing",
          base::didYouMean(canonical, urls, "add the file of the module, or remove this place"));
    return;
  }
  module->isTakenIn = true;
  if (std::find(assembly.open.begin(), assembly.open.end(), module) != assembly.open.end()) {
    std::string chain;
    for (const Source* open : assembly.open) chain += open->name + " -> ";
    issue("the modules take each other in: " + chain + module->name, "remove one of these places");
    return;
  }
  if (!module->isModule) {
    issue(module->name + " is not marked as a module",
          "give it the extension " + std::string(extension_url::kAssembleExpectation) + " assemble-child");
  }
  if (std::find(assembly.done.begin(), assembly.done.end(), module) != assembly.done.end()) {
    issue("the module " + module->name + " is taken in twice", "keep one of the places");
    return;
  }
  assembly.done.push_back(module);
  assembly.form->documents_.push_back(module->document);
  assembly.open.push_back(module);
  addItems(module->items, parent, into, assembly);
  assembly.open.pop_back();
}

void FormLoader::connectConditions(Items& items, const Form& form) {
  for (const auto& item : items) {
    for (EnableWhen& condition : item->enableWhen) condition.asked = form.find(condition.question);
    connectConditions(item->items, form);
  }
}

bool FormLoader::isNewLinkId(const Item& item, Assembly& assembly) {
  if (item.linkId.empty()) return true;  // said already
  const auto [known, isNew] = assembly.linkIds.emplace(item.linkId, item.place);
  if (!isNew) {
    found_.error(item.place, item.linkId, "the linkId \"" + item.linkId + "\" stands twice in the form",
                 "the other one is in " + whereText(known->second) + "; an answer must have one place");
  }
  return isNew;
}

}  // namespace stile::questionnaire
