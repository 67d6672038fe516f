#include "application/screen_client.h"

#include "answers/response.h"
#include "application/content_folder.h"
#include "application/policy_choices.h"
#include "exchange/edits_json.h"
#include "json/document.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

constexpr const char* kReplyForm = "clearance-reply";

/// Sorts the inputs into responses, clearance replies and at most one plain facts object.
class InputReader {
 public:
  InputReader(const screening::Content& content, base::Issues& issues) : content_(content), issues_(issues) {}

  void read(const Input& input) {
    auto document = json::Document::parse(input.text, input.name, issues_);
    if (!document) return;
    documents_.push_back(document);
    readNode(document->root());
  }

  /// Plain facts and responses do not mix: the same fact would have two sources and no order.
  facts::FactSet facts(base::Date today) {
    if (plain_ && !responses_.empty())
      issues_.error(plain_->place(), "", "plain facts and responses cannot be given together", "give one or the other");
    if (plain_) return facts::factsFromPlain(content_.dictionary, content_.forms, *plain_, today, issues_);
    return facts::factsFromResponses(content_.dictionary, content_.forms, responses_, today, issues_);
  }

  const std::vector<screening::ClearanceReply>& replies() const { return replies_; }

 private:
  void readNode(json::Node node) {
    if (node.isArray()) {
      for (std::size_t i = 0; i < node.size(); ++i) readNode(node.at(i));
      return;
    }
    const auto type = node.find("resourceType");
    if (!type || !type->isString()) return readPlain(node);
    if (type->string() == "Bundle") return readBundle(node);
    if (type->string() != "QuestionnaireResponse") {
      issues_.error(type->place(), "", "a " + type->string() + " cannot be screened",
                    "give a QuestionnaireResponse, a Bundle of them, or plain facts");
      return;
    }
    auto response = answers::loadResponse(node, content_.forms, issues_);
    if (!response) return;
    if (response->form->name() == kReplyForm) {
      for (auto& reply : screening::repliesIn(*response, issues_)) replies_.push_back(std::move(reply));
      return;
    }
    responses_.push_back(std::move(*response));
  }

  void readBundle(json::Node bundle) {
    const auto entries = bundle.find("entry");
    for (std::size_t i = 0; entries && i < entries->size(); ++i)
      if (const auto resource = entries->at(i).find("resource")) readNode(*resource);
  }

  void readPlain(json::Node node) {
    if (!node.isObject())
      issues_.error(node.place(), "", "this is neither a response nor an object of facts",
                    "see \"Plain facts\" in DEVELOPERS.md");
    else if (plain_)
      issues_.error(node.place(), "", "two objects of plain facts were given", "put all facts into one object");
    else
      plain_ = node;
  }

  const screening::Content& content_;
  base::Issues& issues_;
  std::vector<std::shared_ptr<const json::Document>> documents_;
  std::vector<answers::Response> responses_;
  std::vector<screening::ClearanceReply> replies_;
  std::optional<json::Node> plain_;
};

}  // namespace

base::Result<std::shared_ptr<const screening::Content>> loadContent(const std::string& folder, base::Issues& issues, const PolicyChoices& policies) {
  auto files = readContentFolder(folder);
  if (!files) return files.failure();
  choosePolicies(files.value(), policies, issues);
  auto content = std::make_shared<const screening::Content>(screening::Content::load(files.value(), issues));
  if (issues.hasErrors())
    return Failure{FailureKind::Refused, folder + ": the content has errors, so nothing is screened with it"};
  return content;
}

base::Result<screening::Screening> screenClient(const screening::Content& content, const std::vector<Input>& inputs,
                                                base::Date today, base::Issues& issues) {
  InputReader reader(content, issues);
  for (const Input& input : inputs) reader.read(input);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "the input has errors, so nothing was screened"};
  facts::FactSet facts = reader.facts(today);
  if (const auto* refusal = content.intendedUse.refusalOf(facts))
    issues.error({inputs.empty() ? "" : inputs.front().name, 0, 0, {}}, "", refusal->message, refusal->remedy);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, "the input has errors, so nothing was screened"};
  return screening::screen(content, std::move(facts), reader.replies(), today);
}

plan::Edits readEdits(const std::string& text, const std::string& name, base::Issues& issues) {
  return exchange::readEdits(text, name, issues);
}

std::string editsAsJson(const plan::Edits& edits) { return exchange::editsAsJson(edits); }

base::Result<bool> editPlan(const screening::Content& content, screening::Screening& screening, const plan::Edits& edits,
                            base::Issues& issues) {
  screening::Screening edited = screening;
  const auto refused = screening::editPlan(content, edited, edits);
  for (const auto& one : refused) {
    const plan::Edit& edit = edits.list[one.index];
    issues.error({}, idOf(edit.kind) + (" " + edit.exercise), one.because, one.needsOverride ? "give the reason for going beyond it" : "leave it out");
  }
  if (!refused.empty()) return Failure{FailureKind::Refused, "the plan was not changed as asked"};
  screening = std::move(edited);
  return true;
}

std::vector<screening::ClearanceReply> repliesIn(const screening::Content& content, const std::vector<Input>& inputs) {
  base::Issues ignored;
  InputReader reader(content, ignored);
  for (const Input& input : inputs) reader.read(input);
  return reader.replies();
}

}  // namespace stile::application
