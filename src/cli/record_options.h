// What every command on one client's record shares.
#pragma once

#include <CLI/CLI.hpp>
#include <vector>

#include "application/clinic_document.h"
#include "cli/clinic_options.h"

namespace stile::cli {

/// Options of a command on one client.
struct RecordOptions : ClinicOptions {
  std::string client, date;
  void addTo(CLI::App& command) {
    ClinicOptions::addTo(command);
    command.add_option("client", client, "id, the beginning of one, or part of the name")->required();
    command.add_option("--date", date, "day, YYYY-MM-DD (today if left out)");
  }
};

/// Opens the file, finds the client and the day, and runs `work(clinic, id, day)`.
template <class Work>
Exit onClient(const Shared& shared, const RecordOptions& options, Work work) {
  const auto day = dayOf(options.date);
  if (!day) return report(day.failure());
  auto clinic = options.open(shared);
  if (!clinic) return report(clinic.failure());
  const auto id = clinic.value()->idOf(options.client);
  if (!id) return report(id.failure());
  return work(*clinic.value(), id.value(), day.value());
}

/// The same with the content, in which the clinic's own choices of policies stand:
/// `work(clinic, content, id, day)`.
template <class Work>
Exit onClientWithContent(const Shared& shared, const RecordOptions& options, Work work) {
  return onClient(shared, options, [&](application::Clinic& clinic, const std::string& id, base::Date day) {
    Shared own = shared;
    own.policies = application::clinicDocument(clinic).settings.policies;
    const auto content = contentFor(own);
    if (!content) return report(content.failure());
    return work(clinic, *content.value(), id, day);
  });
}

Command addClientInterview(CLI::App& group, const Shared& shared);
/// papers, paper.
std::vector<Command> addClientPapers(CLI::App& group, const Shared& shared);
/// The commands that ask and decide: draft, answers, screen, ask, reply, prefill.
std::vector<Command> addAnswering(CLI::App& group, const Shared& shared);

}  // namespace stile::cli
