// stile clinic settings, adopt: what the clinic says of itself, and which content its lead approved.
#include <CLI/CLI.hpp>

#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "application/content_folder.h"
#include "application/paper_texts.h"
#include "cli/clinic_options.h"

namespace stile::cli {
namespace {

struct SettingsOptions : ClinicOptions {
  std::string from, date;
};

Exit showSettings(const application::Clinic& clinic) {
  const auto document = application::clinicDocument(clinic);
  return output(document.text.empty() ? "The clinic file says nothing of the clinic yet.\n" : document.text + (document.text.ends_with('\n') ? "" : "\n"));
}

Exit saveSettings(application::Clinic& clinic, const SettingsOptions& options, const Shared& shared) {
  const auto day = dayOf(options.date);
  if (!day) return report(day.failure());
  base::Issues issues;
  const auto text = application::readFile(options.from);
  if (!text) return report(text.failure());
  const auto settings = application::loadSettings(options.from, issues);
  print(issues);
  if (!settings) return report(settings.failure());
  std::string logo;
  if (!settings.value().logo.empty()) {
    auto read = application::readLogo(options.from, settings.value().logo);
    if (!read) return report(read.failure());
    logo = std::move(read).value();
  }
  // Choices that the content does not offer are refused here, not at the next client.
  Shared own = shared;
  own.policies = settings.value().policies;
  if (const auto content = contentFor(own); !content) return report(content.failure());
  return outcome(application::saveClinicSettings(clinic, text.value(), options.from, logo, day.value(), issues), "Saved");
}

/// For the lead: where clinicians and rules disagree. No client is named, so it runs beside a session.
Command addOverridden(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<ClinicOptions>();
  CLI::App* command = group.add_subcommand("overridden", "rules that clinicians set aside in more than a fifth of the screenings in which they fired");
  options->addTo(*command);
  return {command, [options, &shared] {
            auto clinic = options->open(shared, true);
            if (!clinic) return report(clinic.failure());
            const auto often = application::oftenOverridden(*clinic.value());
            if (!often) return report(often.failure());
            std::string text;
            for (const auto& one : often.value())
              text += one.rule + "\tset aside " + std::to_string(one.overridden) + " of " + std::to_string(one.fired) + " times\n";
            return output(text.empty() ? "No rule is set aside that often.\n" : text);
          }};
}

}  // namespace

std::vector<Command> addClinicSettings(CLI::App& group, const Shared& shared) {
  auto options = std::make_shared<SettingsOptions>();
  CLI::App* settings = group.add_subcommand("settings", "show what the clinic says of itself, or put it in");
  options->addTo(*settings);
  settings->add_option("from", options->from, "a file as for --settings; the logo it names is kept too");
  settings->add_option("--date", options->date, "day, YYYY-MM-DD (today if left out)");
  Command show{settings, [options, &shared] {
                 auto clinic = options->open(shared, options->from.empty());
                 if (!clinic) return report(clinic.failure());
                 return options->from.empty() ? showSettings(*clinic.value()) : saveSettings(*clinic.value(), *options, shared);
               }};
  auto lead = std::make_shared<SettingsOptions>();
  CLI::App* adopt = group.add_subcommand("adopt", "the lead approves the rules and questionnaires in use; signed");
  lead->addTo(*adopt);
  adopt->add_option("--date", lead->date, "day, YYYY-MM-DD (today if left out)");
  Command approve{adopt, [lead, &shared] {
                    const auto day = dayOf(lead->date);
                    if (!day) return report(day.failure());
                    auto clinic = lead->open(shared);
                    if (!clinic) return report(clinic.failure());
                    Shared own = shared;
                    own.policies = application::clinicDocument(*clinic.value()).settings.policies;
                    const auto content = contentFor(own);
                    if (!content) return report(content.failure());
                    return outcome(application::adoptContent(*clinic.value(), *content.value(), day.value()), "content " + content.value()->version + " is approved");
                  }};
  return {show, approve, addOverridden(group, shared)};
}

}  // namespace stile::cli
