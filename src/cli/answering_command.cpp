// stile client draft, answers, screen, ask, reply, prefill: from answers to a filed decision.
#include <CLI/CLI.hpp>
#include <iostream>

#include "application/client_screening.h"
#include "application/content_folder.h"
#include "application/screen_again.h"
#include "cli/record_options.h"

namespace stile::cli {
namespace {

using application::Clinic;

Command addDraft(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string from; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("draft", "save a draft of answers");
  options->addTo(*command);
  command->add_option("from", options->from, "a response or plain facts; - reads the standard input")->required();
  return {command, [options, &shared] {
            const auto text = application::readFile(options->from);
            if (!text) return report(text.failure());
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date day) {
              base::Issues issues;
              const auto done = application::saveDraft(clinic, id, {options->from == "-" ? "standard input" : options->from, text.value()}, day, issues);
              print(issues);
              return outcome(done, "Saved");
            });
          }};
}

Command addAnswers(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<RecordOptions>();
  CLI::App* command = group.add_subcommand("answers", "take answers from the standard input, one object of facts a line; each line is saved before \"Saved\" is printed");
  options->addTo(*command);
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              auto session = application::AnswerSession::open(clinic, id, content, day);
              if (!session) return report(session.failure());
              std::string line;
              Exit last = Exit::Done;
              while (std::getline(std::cin, line)) {
                if (line.find_first_not_of(" \t\r") == std::string::npos) continue;
                base::Issues issues;
                const auto done = session.value().save(line, issues);
                print(issues);
                const Exit exit = outcome(done, "Saved");
                // A line that is refused is told and the next one taken; a file that fails ends it.
                if (exit != Exit::Done) last = exit;
                if (exit == Exit::File || exit == Exit::Secret) return exit;
              }
              return last;
            });
          }};
}

Command addScreening(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions, EditOptions { std::vector<std::string> files; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("screen", "screen the draft, or files, with the replies in the record, and file it");
  options->addTo(*command);
  command->add_option("files", options->files, "responses or plain facts; the draft if left out");
  options->addEditsTo(*command);
  return {command, [options, &shared] {
            std::vector<application::Input> inputs;
            for (const std::string& file : options->files) {
              auto text = application::readFile(file);
              if (!text) return report(text.failure());
              inputs.push_back({file == "-" ? "standard input" : file, std::move(text).value()});
            }
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              base::Issues issues;
              const auto edits = options->edits(issues);
              if (!edits) return print(issues), report(edits.failure());
              const auto filed = application::screenAndFile(clinic, id, content, inputs, day, issues, application::DraftAfter::Removed, edits.value());
              print(issues);
              if (!filed) return report(filed.failure());
              if (!filed.value().actionRecord.empty())
                std::cerr << "stile: somebody must act today; the action record " << filed.value().actionRecord << " stays open until it is complete\n";
              return output(filed.value().text + "\nFiled as " + filed.value().entry + ", not yet signed off.\n");
            });
          }};
}

Command addAsk(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string to, form; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("ask", "ask a physician about what waits for a clearance; prints the request's id");
  options->addTo(*command);
  command->add_option("--to", options->to, "the physician")->required();
  command->add_option("--reply-form", options->form, "write the reply form to be filled in to this file");
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              const auto asked = application::askPhysician(clinic, id, content, options->to, day);
              if (!asked) return report(asked.failure());
              if (!options->form.empty())
                if (const auto written = application::writeFile(options->form, asked.value().blankReply); !written) return report(written.failure());
              return output(asked.value().request + "\n");
            });
          }};
}

Command addReply(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string request, from; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("reply", "take in a physician's reply");
  options->addTo(*command);
  command->add_option("request", options->request, "id of the request")->required();
  command->add_option("from", options->from, "a response to the form clearance-reply; - reads the standard input")->required();
  return {command, [options, &shared] {
            const auto text = application::readFile(options->from);
            if (!text) return report(text.failure());
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              base::Issues issues;
              const auto entry = application::fileReply(clinic, id, options->request, content, {options->from, text.value()}, day, issues);
              print(issues);
              return entry ? output(entry.value() + "\n") : report(entry.failure());
            });
          }};
}

Command addPrefill(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<RecordOptions>();
  CLI::App* command = group.add_subcommand("prefill", "a new draft out of the last screening, every value \"not confirmed\"");
  options->addTo(*command);
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              return outcome(application::prefill(clinic, id, content.dictionary, day), "Saved");
            });
          }};
}

}  // namespace

std::vector<Command> addAnswering(CLI::App& group, const Shared& shared) {
  return {addDraft(group, shared), addAnswers(group, shared), addScreening(group, shared), addAsk(group, shared), addReply(group, shared), addPrefill(group, shared)};
}

}  // namespace stile::cli
