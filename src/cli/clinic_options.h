// What every command on a clinic file shares: which file, who signs in, how the passphrase comes.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "application/clinic.h"
#include "cli/command.h"

namespace stile::cli {

struct ClinicOptions {
  std::string file;
  std::string handle;
  int passphraseFd = -1;

  void addTo(CLI::App& command);
  /// Asks for the passphrase and opens; notices are printed on the error stream.
  base::Result<std::unique_ptr<application::Clinic>> open(const Shared& shared, bool isBeside = false) const;
  base::Result<application::ClinicAccess> access(bool isBeside = false) const;
};

/// --date, or today.
base::Result<base::Date> dayOf(const std::string& text);
/// Prints the identifier and the outcome of a use case that gives nothing to show.
Exit outcome(const base::Result<bool>& done, const std::string& said);

/// The commands on a clinic file.
Command addClinicCreate(CLI::App& app, const Shared& shared);
/// settings, adopt.
std::vector<Command> addClinicSettings(CLI::App& group, const Shared& shared);
Command addClinicians(CLI::App& app, const Shared& shared);
Command addClients(CLI::App& app, const Shared& shared);
Command addWorklist(CLI::App& app, const Shared& shared);
Command addUpkeep(CLI::App& app, const Shared& shared);

/// Runs whichever of `commands` was given.
Exit runParsed(const std::vector<Command>& commands);

}  // namespace stile::cli
