// stile papers: screens one client, prints the summary and writes the papers.
#include <CLI/CLI.hpp>

#include "application/paper_texts.h"
#include "application/write_papers.h"
#include "cli/command.h"
#include "cli/paper_style.h"

namespace stile::cli {
Command addPapers(CLI::App& app, const Shared& shared) {
  struct Options : ClientOptions, application::PaperOptions {};
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("papers", "screen one client and write the papers");
  options->addTo(*command);
  command->add_option("--settings", options->settingsFile, "what the clinic says of itself, a JSON file");
  addPaperStyle(*command, *options);
  options->addEditsTo(*command);
  command->add_option("--client", options->client.name, "name on the papers");
  command->add_option("--born", options->client.born, "date of birth on the papers, 1963-03-14 or in words");
  command->add_option("--record", options->client.record, "record number on the papers");
  return {command, [options, &shared] {
            base::Issues issues;
            Shared own = shared;
            if (!options->settingsFile.empty()) {
              const auto settings = application::loadSettings(options->settingsFile, issues);
              print(issues);
              if (!settings) return report(settings.failure());
              own.policies = settings.value().policies;
            }
            const auto screened = screenFiles(own, *options);
            if (!screened) return report(screened.failure());
            const Screened& one = screened.value();
            options->screenAgain = [&](const screening::Content& content) { return screenWith(content, *options); };
            const auto written = application::writePapers(*one.screening, *one.content, one.askedBack,
                                                          application::contentFolder(shared.content, STILE_INSTALLED_CONTENT),
                                                          *options, issues);
            print(issues);
            if (!written) return report(written.failure());
            return output(written.value().text);
          }};
}

}  // namespace stile::cli
