// stile client: one client's record.
#include <CLI/CLI.hpp>
#include <iostream>

#include "application/client_events.h"
#include "application/client_screening.h"
#include "application/client_signing.h"
#include "application/client_timeline.h"
#include "application/compare_content.h"
#include "application/content_folder.h"
#include "application/screen_again.h"
#include "cli/record_options.h"

namespace stile::cli {
namespace {

using application::Clinic;

Exit shown(const base::Result<std::string>& text) { return text ? output(text.value()) : report(text.failure()); }

Command addClient(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { std::string from; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("add", "add a client");
  options->addTo(*command);
  command->add_option("from", options->from, "the client as JSON; - reads the standard input")->required();
  return {command, [options, &shared] {
            const auto text = application::readFile(options->from);
            if (!text) return report(text.failure());
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            base::Issues issues;
            const auto added = application::addClient(*clinic.value(), text.value(), options->from, issues);
            print(issues);
            if (!added) return report(added.failure());
            for (const std::string& same : added.value().couldBeSame) std::cerr << "stile: could be the same person as " << same << '\n';
            return output(added.value().id + "\n");
          }};
}

Command addChange(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string from; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("change", "name, contacts or physician anew");
  options->addTo(*command);
  command->add_option("from", options->from, "the client as JSON; - reads the standard input")->required();
  return {command, [options, &shared] {
            const auto text = application::readFile(options->from);
            if (!text) return report(text.failure());
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) {
              base::Issues issues;
              const auto done = application::changeClient(clinic, id, text.value(), options->from, issues);
              print(issues);
              return outcome(done, "changed");
            });
          }};
}

Command addBuild(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions {
    std::string build;
  };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("build", "which figure the client wants to see in drawings");
  options->addTo(*command);
  command->add_option("build", options->build, "slight, sturdy, or clinic for the clinic's own choice")
      ->required()
      ->check(CLI::IsMember({"slight", "sturdy", "clinic"}));
  return {command, [options, &shared] {
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) {
              return outcome(application::chooseBuild(clinic, id, movement::buildOf(options->build)),
                             "Saved");
            });
          }};
}

Command addFind(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { std::string part; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("find", "clients by part of the name or record number");
  options->addTo(*command);
  command->add_option("part", options->part, "part of the name; all clients if left out");
  return {command, [options, &shared] {
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            std::string text;
            for (const auto* line : clinic.value()->find(options->part))
              text += line->id + "\t" + line->card.name() + "\tborn " + line->card.born + "\t" + line->card.state + (line->card.mergedInto.empty() ? "" : "\tmerged") + "\n";
            return output(text);
          }};
}

/// A command that shows a text made of the record alone.
Command addShowing(CLI::App& group, const Shared& shared, const char* name, const char* about, base::Result<std::string> (*make)(Clinic&, const std::string&, base::Date)) {
  auto options = std::make_shared<RecordOptions>();
  CLI::App* command = group.add_subcommand(name, about);
  options->addTo(*command);
  return {command, [options, make, &shared] {
            return onClient(shared, *options, [make](Clinic& clinic, const std::string& id, base::Date day) { return shown(make(clinic, id, day)); });
          }};
}

/// What is left open all the same when somebody signs off.
void warn(Clinic& clinic, const std::string& id) {
  const auto work = application::RecordWork::open(clinic, id);
  if (!work) return;
  for (const std::string& matter : application::openMatters(work.value().folded())) std::cerr << "stile: " << matter << '\n';
}

/// Files an event and prints the letter that was drafted about it.
Exit putEvent(Clinic& clinic, const std::string& id, const std::string& text, const std::string& file) {
  base::Issues issues;
  const auto event = application::fileEvent(clinic, id, text, file, issues);
  print(issues);
  if (!event) return report(event.failure());
  const auto& one = event.value();
  return output(one.entry + "\n\nThe plan waits; screen again.\n\nDraft of a letter (" + one.letter + "):\n\n" + one.letterText + "\n" +
                (one.mayBeSent ? "" : "\nThe client has not agreed to share with the physician: ask before it is sent.\n"));
}

/// Compares what a referral names with what the client said.
Command addReconcile(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string referral; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("reconcile", "medicines of a referral against those of the last screening");
  options->addTo(*command);
  command->add_option("referral", options->referral, "id of the referral's entry")->required();
  return {command, [options, &shared] {
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) {
              const auto found = application::compareMedicines(clinic, id, options->referral);
              if (!found) return report(found.failure());
              std::string text;
              for (const std::string& one : found.value().onlyReferred) text += "only in the referral: " + one + "\n";
              for (const std::string& one : found.value().onlyTold) text += "only told by the client: " + one + "\n";
              return output((text.empty() ? "No medicine differs.\n" : text) + "Settle it: stile client file … referralReconciled\n");
            });
          }};
}

Command addFile(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string kind, from; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("file", "file what happened: signOff, override, consent, event, checkIn and more");
  options->addTo(*command);
  command->add_option("kind", options->kind, "kind of entry; a wrong one lists them all")->required();
  command->add_option("from", options->from, "the entry as JSON; - reads the standard input")->required();
  return {command, [options, &shared] {
            const auto text = application::readFile(options->from);
            if (!text) return report(text.failure());
            const auto put = [&](Clinic& clinic, const std::string& id, const application::OverrideRules& rules) {
              base::Issues issues;
              const auto entry = application::fileEntry(clinic, id, options->kind, text.value(), options->from, rules, issues);
              print(issues);
              if (!entry) return report(entry.failure());
              if (options->kind == "signOff") warn(clinic, id);
              return output(entry.value() + "\n");
            };
            if (options->kind == "event")
              return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) { return putEvent(clinic, id, text.value(), options->from); });
            if (options->kind != "override") return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) { return put(clinic, id, {}); });
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date) {
              return put(clinic, id, application::overrideRulesOf(content));
            });
          }};
}

/// What an edited copy of the rules would change.
Command addRuleComparison(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string folder; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("compare-rules", "what an edited copy of the content would change for a client; nothing is filed");
  options->addTo(*command);
  command->add_option("folder", options->folder, "the edited copy: a folder with questionnaires/ and rules/")->required();
  return {command, [options, &shared] {
            base::Issues issues;
            const auto edited = application::loadContent(options->folder, issues);
            print(issues);
            if (!edited) return report(edited.failure());
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              const auto compared = application::compareContent(clinic, id, content, *edited.value(), day);
              return compared ? output(application::toText(compared.value())) : report(compared.failure());
            });
          }};
}

Command addErase(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string yes; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("erase", "take a client out of the file for good");
  options->addTo(*command);
  command->add_option("--really", options->yes, "the date of birth, so that nobody is erased by mistake")->required();
  return {command, [options, &shared] {
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) {
              if (clinic.client(id)->card.born != options->yes)
                return report({base::FailureKind::Usage, "--really " + options->yes + ": this is not the client's date of birth; nothing was erased"});
              const auto erased = application::eraseClient(clinic, id);
              if (!erased) return report(erased.failure());
              return output(std::to_string(erased.value()) + " record(s) erased. Backups made before still hold the client: let them go in their turn.\n");
            });
          }};
}

Command addMerge(CLI::App& group, const Shared& shared, bool isUndo) {
  struct Options : RecordOptions { std::string other; };
  auto options = std::make_shared<Options>();
  CLI::App* command = isUndo ? group.add_subcommand("unmerge", "undo a merge") : group.add_subcommand("merge", "two records are one person");
  options->addTo(*command);
  command->add_option("other", options->other, "the record that rests from then on: its id, or the beginning of it")->required();
  return {command, [options, isUndo, &shared] {
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date day) {
              const auto other = clinic.idOf(options->other);
              if (!other) return report(other.failure());
              const auto done = isUndo ? application::undoMerge(clinic, id, other.value(), day) : application::mergeClients(clinic, id, other.value(), day);
              return outcome(done, isUndo ? "two records again" : "merged; \"stile client unmerge\" undoes it");
            });
          }};
}

}  // namespace

Command addClients(CLI::App& app, const Shared& shared) {
  CLI::App* group = app.add_subcommand("client", "a client's record in a clinic file");
  group->require_subcommand(1);
  std::vector<Command> commands{addClient(*group, shared), addChange(*group, shared),
                                addBuild(*group, shared),  addFind(*group, shared),
                                addFile(*group, shared),   addErase(*group, shared)};
  commands.push_back(addReconcile(*group, shared));
  commands.push_back(addMerge(*group, shared, false));
  commands.push_back(addMerge(*group, shared, true));
  commands.push_back(addShowing(*group, shared, "show", "what stands today", &application::showClient));
  commands.push_back(addShowing(*group, shared, "changes", "what differs between the last two screenings",
                                [](Clinic& clinic, const std::string& id, base::Date) { return application::whatChanged(clinic, id); }));
  commands.push_back(addShowing(*group, shared, "history", "what happened and when, the newest first", &application::clientTimeline));
  commands.push_back(addRuleComparison(*group, shared));
  commands.push_back(addShowing(*group, shared, "export", "everything of one client as JSON",
                                [](Clinic& clinic, const std::string& id, base::Date) { return application::exportClient(clinic, id); }));
  commands.push_back(addClientInterview(*group, shared));
  for (Command& command : addClientPapers(*group, shared)) commands.push_back(std::move(command));
  for (Command& command : addAnswering(*group, shared)) commands.push_back(std::move(command));
  return {group, [commands] { return runParsed(commands); }};
}

}  // namespace stile::cli
