#include "application/scripted_interview.h"

#include "interview/typed_answer.h"
#include "questionnaire/item_type.h"

namespace stile::application {
namespace {

using answers::Answer;
using interview::FormQuestion;
using interview::QuestionRef;

class Speaker {
 public:
  Speaker(ClientInterview& interview, json::Node says) : interview_(interview), session_(interview.session()), says_(says) {}

  base::Result<bool> next() {
    const interview::Prompt prompt = *session_.prompt();
    if (prompt.anotherOf >= 0) return interview_.another(hasAnother(prompt.anotherOf));
    if (!prompt.isList()) return single(prompt.questions.front());
    std::set<QuestionRef> yes;
    for (const QuestionRef& ref : prompt.questions)
      if (const auto said = sayOf(ref); said && said->isBoolean() && said->boolean()) yes.insert(ref);
    return interview_.answerList(yes);
  }

 private:
  bool hasAnother(int group) const {
    const std::string& id = session_.ground().dictionary().groups()[static_cast<std::size_t>(group)];
    const auto list = says_.find(id);
    const auto at = session_.response().repetitions.find(id);
    // While a list is open, one more repetition stands in the response than was begun.
    const std::size_t begun = at == session_.response().repetitions.end() ? 0 : static_cast<std::size_t>(at->second) - 1;
    return list && list->isArray() && list->size() > begun;
  }

  std::optional<json::Node> sayOf(const QuestionRef& ref) const {
    const FormQuestion& question = session_.question(ref);
    if (question.group < 0 || ref.repetition < 0) return says_.find(question.item->linkId);
    const auto list = says_.find(question.fact->group);
    if (!list || static_cast<std::size_t>(ref.repetition) >= list->size()) return std::nullopt;
    return list->at(static_cast<std::size_t>(ref.repetition)).find(question.item->linkId);
  }

  static Answer ofCode(const std::string& code) {
    Answer answer;
    answer.code = code;
    return answer;
  }

  /// What the script says, or what stands for saying nothing; empty = not sure.
  std::vector<Answer> answersTo(const QuestionRef& ref) const {
    const FormQuestion& question = session_.question(ref);
    const auto said = sayOf(ref);
    std::vector<Answer> given;
    if (question.item->type == questionnaire::ItemType::Boolean) {
      Answer answer;
      answer.boolean = said && said->isBoolean() && said->boolean();
      given.push_back(answer);
    } else if (questionnaire::isChoice(question.item->type)) {
      if (said && said->isString()) given.push_back(ofCode(said->string()));
      for (std::size_t i = 0; said && said->isArray() && i < said->size(); ++i) given.push_back(ofCode(said->at(i).string()));
      for (const auto& option : question.item->options)
        if (given.empty() && option.isExclusive) given.push_back(ofCode(option.code));
    } else if (said) {
      given = interview::readTyped(question, said->isString() ? said->string() : said->numberText()).answers;
    }
    return given;
  }

  base::Result<bool> single(const QuestionRef& ref) {
    auto given = answersTo(ref);
    base::Issues issues;
    if (!given.empty()) {
      auto taken = interview_.answer(ref, std::move(given), issues, true);
      if (!taken || taken.value()) return taken;
    }
    return interview_.skip(answers::Absence::NotSure);
  }

  ClientInterview& interview_;
  interview::Session& session_;
  json::Node says_;
};

}  // namespace

base::Result<bool> answerAll(ClientInterview& interview, json::Node says, int most) {
  Speaker speaker(interview, says);
  for (int step = 0; interview.session().prompt() != nullptr && (most == 0 || step < most); ++step)
    if (const auto taken = speaker.next(); !taken) return taken;
  return true;
}

}  // namespace stile::application
