// stile client interview: the questions that matter, one by one, each answer saved in the clinic file
// before the next is asked.
#include "application/client_interview.h"
#include "cli/interview_talk.h"
#include "cli/interview_words.h"
#include "cli/record_options.h"

namespace stile::cli {
namespace {

struct ClientInterviewOptions : RecordOptions {
  std::string form;
  bool isLineInput = false, screensAtEnd = false;
};

Exit fileScreening(application::ClientInterview& interview) {
  base::Issues issues;
  const auto filed = interview.complete(issues);
  print(issues);
  if (!filed) return report(filed.failure());
  return output(filed.value().text + "\nFiled as " + filed.value().entry + ", not yet signed off.\n");
}

/// Same-day action and emergencies are in the record before anything else is asked.
std::optional<base::Failure> fileIfUrgent(application::ClientInterview& interview, Terminal& terminal) {
  if (!interview.isUrgent()) return std::nullopt;
  base::Issues issues;
  const auto filed = interview.fileUrgent(issues);
  print(issues);
  if (!filed) return filed.failure();
  if (!filed.value().actionRecord.empty())
    terminal.say("Filed at once; the action record " + filed.value().actionRecord + " stays open until it is complete.");
  return std::nullopt;
}

Exit holdInterview(application::ClientInterview& interview, const ClientInterviewOptions& options) {
  interview::Session& session = interview.session();
  Terminal terminal(options.isLineInput);
  const auto save = [&]() -> std::optional<base::Failure> {
    const auto done = interview.save();
    return done ? fileIfUrgent(interview, terminal) : std::optional(done.failure());
  };
  const auto lastTime = [&](const interview::QuestionRef& ref) { return interview.lastTime().of(session.question(ref).item->linkId, ref.repetition); };
  const auto end = InterviewTalk(session, terminal, save, lastTime).run();
  if (!end) return report(end.failure());
  const bool isFinished = end.value() == InterviewTalk::End::Finished;
  terminal.say("");
  terminal.say(isFinished ? "That was the last question." : "Stopped here; every answer is in the clinic file.");
  terminal.say(inWords(session.closing()));
  terminal.say(decisionInWords(session));
  for (const auto& ref : session.heldBy()) terminal.say("- Held by: " + session.question(ref).item->text, 2);
  if (isFinished && options.screensAtEnd) return fileScreening(interview);
  terminal.say(isFinished ? "Next: stile client screen" : "To go on: the same command again.");
  return Exit::Done;
}

}  // namespace

Command addClientInterview(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<ClientInterviewOptions>();
  CLI::App* command = group.add_subcommand("interview", "ask the questions that matter, one by one; every answer is saved in the clinic file");
  options->addTo(*command);
  command->add_option("--form", options->form, "clinic (the default) or telephone");
  command->add_flag("--lines", options->isLineInput, "end every answer with Enter, also at a keyboard");
  command->add_flag("--screen", options->screensAtEnd, "screen and file after the last question");
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [&](application::Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              const auto interview = application::ClientInterview::open(clinic, id, content, options->form, day);
              return interview ? holdInterview(*interview.value(), *options) : report(interview.failure());
            });
          }};
}

}  // namespace stile::cli
