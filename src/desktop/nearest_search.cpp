#include "desktop/nearest_search.h"

#include "documents/decision_words.h"
#include "facts/fact_display.h"

namespace stile::desktop {
namespace {

using interview::Direction;
using interview::NearestChange;

std::string answerWords(const interview::FormQuestion& question, const interview::PossibleAnswer& answer) {
  if (answer.codes.empty()) {
    facts::Fact fact;
    fact.value = answer.value;
    fact.reason = answer.why;
    return facts::display(*question.fact, fact);
  }
  std::vector<std::string> options;
  for (const std::string& code : answer.codes) {
    const auto* option = question.fact->option(code);
    options.push_back(option == nullptr ? code : option->display);
  }
  return documents::listed(options);
}

}  // namespace

std::string nearestSentence(const interview::Ground& ground, const NearestChange& change, Direction direction) {
  const std::string which = direction == Direction::Milder ? "milder" : "stricter";
  if (change.kind == NearestChange::Kind::Stopped) return {};
  if (change.kind == NearestChange::Kind::MoreThanThree) return "No one, two or three other answers would make the decision " + which + ".";
  std::string words;
  for (const auto& one : change.changes) {
    const auto& question = ground.questions().at(one.question);
    words += (words.empty() ? "" : ", and ") + std::string("“") + question.item->text + "” " + answerWords(question, one.answer);
  }
  return documents::capitalized(which) + " with " + (change.changes.size() == 1 ? "one other answer: " : std::to_string(change.changes.size()) + " other answers: ") + words + ".";
}

NearestSearch::NearestSearch(interview::Session& session, std::function<void(NearestWords)> done)
    : thread_([&ground = session.ground(), facts = session.position().facts(), given = session.given(), done = std::move(done)](std::stop_token stop) {
        interview::Position position(ground, facts);
        NearestWords words;
        for (const Direction direction : {Direction::Stricter, Direction::Milder}) {
          const auto found = interview::nearestChange(position, given, direction, stop);
          if (stop.stop_requested()) return;
          (direction == Direction::Milder ? words.milder : words.stricter) = nearestSentence(ground, found, direction);
        }
        done(std::move(words));
      }) {}

}  // namespace stile::desktop
