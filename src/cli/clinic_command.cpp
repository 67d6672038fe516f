// stile clinic and stile clinician: makes a clinic file, and says who may sign in.
#include <CLI/CLI.hpp>

#include "cli/clinic_options.h"
#include "cli/passphrase.h"

namespace stile::cli {
namespace {

struct PersonOptions {
  std::string handle, name, profession, role = "clinician";
  int newPassphraseFd = -1;

  void addTo(CLI::App& command) {
    command.add_option("handle", handle, "sign-in name: small letters and digits; readable in the file")->required();
    command.add_option("--name", name, "full name")->required();
    command.add_option("--profession", profession, "profession, as on papers")->required();
    command.add_option("--role", role, "assistant (enters), clinician (signs) or lead")->check(CLI::IsMember({"assistant", "clinician", "lead"}));
    command.add_option("--new-passphrase-fd", newPassphraseFd, "read the new passphrase from this file descriptor (asked for if left out)");
  }
  records::Clinician clinician() const { return {handle, name, profession, *records::roleOf(role), false, false, {}}; }
};

Command addClinician(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { PersonOptions person; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("add", "set up a clinician");
  options->addTo(*command);
  options->person.addTo(*command);
  return {command, [options, &shared] {
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            const auto passphrase = readNewPassphrase(options->person.newPassphraseFd, "New passphrase of " + options->person.handle);
            if (!passphrase) return report(passphrase.failure());
            return outcome(clinic.value()->file().addClinician(options->person.clinician(), passphrase.value()), options->person.handle + " may sign in");
          }};
}

Command addPassphrase(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { int newPassphraseFd = -1; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("passphrase", "change one's own passphrase");
  options->addTo(*command);
  command->add_option("--new-passphrase-fd", options->newPassphraseFd, "read the new passphrase from this file descriptor (asked for if left out)");
  return {command, [options, &shared] {
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            const auto passphrase = readNewPassphrase(options->newPassphraseFd, "New passphrase of " + options->handle);
            if (!passphrase) return report(passphrase.failure());
            return outcome(clinic.value()->file().changePassphrase(passphrase.value()), "the passphrase of " + options->handle + " was changed");
          }};
}

Command addRevoke(CLI::App& group, const Shared& shared) {
  struct Options : ClinicOptions { std::string whom; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("revoke", "end the rights of a clinician; what is written from then on has a new key");
  options->addTo(*command);
  command->add_option("handle", options->whom, "sign-in name")->required();
  return {command, [options, &shared] {
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            return outcome(clinic.value()->file().revoke(options->whom), options->whom + " may no longer sign in");
          }};
}

Command addList(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<ClinicOptions>();
  CLI::App* command = group.add_subcommand("list", "who may sign in");
  options->addTo(*command);
  return {command, [options, &shared] {
            auto clinic = options->open(shared, true);
            if (!clinic) return report(clinic.failure());
            std::string text;
            for (const auto& one : clinic.value()->file().clinicians()) {
              if (one.isRecovery) continue;
              text += one.handle + "\t" + one.name + "\t" + one.profession + "\t" + records::idOf(one.role) + (one.isRevoked ? "\trights ended" : "") + "\n";
            }
            return output(text);
          }};
}

}  // namespace

Command addClinicCreate(CLI::App& app, const Shared& shared) {
  struct Options { std::string file; PersonOptions person; };
  auto options = std::make_shared<Options>();
  CLI::App* group = app.add_subcommand("clinic", "a clinic file: create it, its settings, its content");
  group->require_subcommand(1);
  CLI::App* command = group->add_subcommand("create", "make a clinic file with its first clinician");
  command->add_option("--file", options->file, "name of the new file")->required();
  options->person.addTo(*command);
  std::vector<Command> commands = addClinicSettings(*group, shared);
  commands.push_back({command, [options] {
            const auto passphrase = readNewPassphrase(options->person.newPassphraseFd, "Passphrase of " + options->person.handle);
            if (!passphrase) return report(passphrase.failure());
            const auto phrase = application::Clinic::create({options->file, options->person.handle, passphrase.value(), false}, options->person.clinician());
            if (!phrase) return report(phrase.failure());
            return output(options->file + " was made.\n\nRecovery phrase (shown this once; write it on paper and lock it away):\n\n  " + phrase.value() +
                          "\n\nIf every passphrase is lost, it sets up a new clinician. Whoever has it can read everything.\n");
          }});
  return {group, [commands] { return runParsed(commands); }};
}

Command addClinicians(CLI::App& app, const Shared& shared) {
  CLI::App* group = app.add_subcommand("clinician", "who may sign in: list, add, passphrase, revoke");
  group->require_subcommand(1);
  const std::vector<Command> commands{addList(*group, shared), addClinician(*group, shared), addPassphrase(*group, shared), addRevoke(*group, shared)};
  return {group, [commands] { return runParsed(commands); }};
}

}  // namespace stile::cli
