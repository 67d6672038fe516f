// stile interview: asks one question after the other and keeps every answer in a response file.
#include <CLI/CLI.hpp>

#include "application/interview_file.h"
#include "cli/command.h"
#include "cli/interview_talk.h"
#include "cli/interview_words.h"

namespace stile::cli {
namespace {

struct InterviewOptions {
  std::string file, form, date;
  bool isLineInput = false;
};

void close(Terminal& terminal, interview::Session& session, const InterviewOptions& options, bool isFinished) {
  terminal.say("");
  terminal.say(isFinished ? "That was the last question." : "Stopped here.");
  terminal.say(inWords(session.closing()));
  terminal.say(decisionInWords(session));
  for (const auto& ref : session.heldBy()) terminal.say("- Held by: " + session.question(ref).item->text, 2);
  const auto progress = session.progress();
  const auto counted = [](int count, const std::string& what) { return std::to_string(count) + " " + what + (count == 1 ? ", " : "s, "); };
  terminal.say(counted(progress.shown, "screen") + counted(progress.answered, "answer") + std::to_string(progress.skipped) + " without an answer. The response is in " + options.file + ".");
  terminal.say(isFinished ? "Next: stile papers " + options.file + " --into FOLDER" : "To go on: stile interview " + options.file);
}

Exit interviewWith(const InterviewOptions& options, const Shared& shared) {
  const auto content = contentFor(shared);
  if (!content) return report(content.failure());
  auto date = options.date.empty() ? std::optional(today()) : base::Date::parse(options.date);
  if (!date) return report({base::FailureKind::Usage, "--date " + options.date + ": write a day as YYYY-MM-DD"});
  base::Issues issues;
  auto draft = application::readDraft(*content.value(), options.file, issues);
  print(issues);
  if (!draft) return report(draft.failure());
  const std::string wanted = options.form.empty() ? "clinic" : options.form;
  const questionnaire::Form* form = draft.value() ? draft.value()->form : content.value()->forms.byName(wanted);
  if (form == nullptr) return report({base::FailureKind::Usage, wanted + ": there is no such form; use clinic or telephone"});
  if (draft.value() && !options.form.empty() && form->name() != options.form)
    return report({base::FailureKind::Usage, options.file + ": this is a response to the form " + form->name() + "; leave --form out"});
  if (draft.value() && draft.value()->authored && options.date.empty()) {
    // Answers count as of the day they were given; another day is another response.
    if (*draft.value()->authored != *date)
      return report({base::FailureKind::Refused, options.file + ": begun on " + draft.value()->authored->toText() +
                                                     "; go on with it by --date, or begin a new file for today"});
  } else if (draft.value() && draft.value()->authored) {
    date = draft.value()->authored;
  }
  interview::Session session(*content.value(), *form, *date, {}, {}, draft.value() ? &*draft.value() : nullptr);
  Terminal terminal(options.isLineInput);
  InterviewTalk talk(session, terminal, [&] { return application::saveDraft(options.file, session.response(), false); });
  const auto end = talk.run();
  if (!end) return report(end.failure());
  const bool isFinished = end.value() == InterviewTalk::End::Finished;
  if (auto failure = application::saveDraft(options.file, session.response(), isFinished)) return report(*failure);
  close(terminal, session, options, isFinished);
  return Exit::Done;
}

}  // namespace

Command addInterview(CLI::App& app, const Shared& shared) {
  auto options = std::make_shared<InterviewOptions>();
  CLI::App* command = app.add_subcommand("interview", "ask the questions that matter, one by one, and keep the answers in a file");
  command->add_option("file", options->file, "the response file: new, or one to go on with")->required();
  command->add_option("--form", options->form, "clinic (the default) or telephone");
  command->add_option("--date", options->date, "day of the interview, YYYY-MM-DD (today if left out)");
  command->add_flag("--lines", options->isLineInput, "end every answer with Enter, also at a keyboard");
  return {command, [options, &shared] { return interviewWith(*options, shared); }};
}

}  // namespace stile::cli
