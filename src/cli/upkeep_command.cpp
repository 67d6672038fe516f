// stile file: verify, back up, try a restore.
#include <CLI/CLI.hpp>

#include "cli/clinic_options.h"

namespace stile::cli {
namespace {

Command addVerify(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { std::string mark; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("verify", "whether everything is as it was written; may run beside a session");
  options->addTo(*command);
  command->add_option("--mark", options->mark, "a mark printed earlier: shows whether the whole file was put back");
  return {command, [options, &shared] {
            auto clinic = options->open(shared, true);
            if (!clinic) return report(clinic.failure());
            const auto checked = clinic.value()->file().verify(options->mark);
            if (!checked.isClean()) return report({base::FailureKind::File, options->file + ": " + checked.trouble});
            return output(options->file + ": " + std::to_string(checked.journalEntries) + " lines of the journal, " + std::to_string(checked.records) +
                          " records, " + std::to_string(checked.entries) + " entries, " + std::to_string(checked.signatures) +
                          " signatures: all fit.\nMark: " + checked.mark + "\n");
          }};
}

Command addBackup(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { std::string into; int keep = 14; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("backup", "a verified copy; may run beside a session");
  options->addTo(*command);
  command->add_option("--into", options->into, "folder of the backups")->required();
  command->add_option("--keep", options->keep, "how many to keep (14 if left out)")->check(CLI::Range(1, 10000));
  return {command, [options, &shared] {
            auto clinic = options->open(shared, true);
            if (!clinic) return report(clinic.failure());
            const auto made = clinic.value()->file().backup(options->into, static_cast<std::size_t>(options->keep));
            if (!made) return report(made.failure());
            return output(made.value() + "\nMark: " + clinic.value()->file().mark() + "\n");
          }};
}

Command addDrill(CLI::App& group) {
  struct Options : ClinicOptions { std::string mark; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("drill", "try a restore: open a backup as a copy, verify it, read every client");
  options->addTo(*command);
  command->add_option("--mark", options->mark, "the mark printed with the backup");
  return {command, [options] {
            const auto access = options->access();
            if (!access) return report(access.failure());
            const auto said = application::restoreDrill(access.value(), options->mark);
            return said ? output(said.value()) : report(said.failure());
          }};
}

}  // namespace

Command addUpkeep(CLI::App& app, const Shared& shared) {
  CLI::App* group = app.add_subcommand("file", "upkeep of a clinic file: verify, backup, drill");
  group->require_subcommand(1);
  const std::vector<Command> commands{addVerify(*group, shared), addBackup(*group, shared), addDrill(*group)};
  return {group, [commands] { return runParsed(commands); }};
}

}  // namespace stile::cli
