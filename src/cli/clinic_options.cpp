#include "cli/clinic_options.h"

#include <CLI/CLI.hpp>
#include <iostream>

#include "application/content_folder.h"
#include "cli/passphrase.h"

namespace stile::cli {

void ClinicOptions::addTo(CLI::App& command) {
  command.add_option("--file", file, "the clinic file")->required();
  command.add_option("--as", handle, "sign-in name (\"recovery\" with the recovery phrase)")->required();
  command.add_option("--passphrase-fd", passphraseFd, "read the passphrase from this file descriptor (asked for if left out)");
}

base::Result<application::ClinicAccess> ClinicOptions::access(bool isBeside) const {
  auto passphrase = readPassphrase(passphraseFd, "Passphrase of " + handle);
  if (!passphrase) return passphrase.failure();
  return application::ClinicAccess{file, handle, std::move(passphrase).value(), isBeside};
}

base::Result<std::unique_ptr<application::Clinic>> ClinicOptions::open(const Shared& shared, bool isBeside) const {
  const auto given = access(isBeside);
  if (!given) return given.failure();
  base::Issues issues;
  auto clinic = application::Clinic::open(given.value(), application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), issues);
  print(issues);
  if (clinic)
    for (const std::string& notice : clinic.value()->notices()) std::cerr << "stile: " << notice << '\n';
  return clinic;
}

base::Result<base::Date> dayOf(const std::string& text) {
  if (text.empty()) return today();
  const auto day = base::Date::parse(text);
  if (!day) return base::Failure{base::FailureKind::Usage, "--date " + text + ": write a day as YYYY-MM-DD"};
  return *day;
}

Exit outcome(const base::Result<bool>& done, const std::string& said) { return done ? output(said + "\n") : report(done.failure()); }

Exit runParsed(const std::vector<Command>& commands) {
  for (const Command& command : commands)
    if (command.app->parsed()) return command.run();
  return Exit::Usage;
}

}  // namespace stile::cli
