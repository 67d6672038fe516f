// stile screen: one client's answers in, the decision out.
#include <CLI/CLI.hpp>

#include "application/show_screening.h"
#include "cli/command.h"

namespace stile::cli {

Command addScreen(CLI::App& app, const Shared& shared) {
  struct Options : ClientOptions { bool json = false; };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("screen", "screen one client and print the decision");
  options->addTo(*command);
  options->addEditsTo(*command);
  command->add_flag("--json", options->json, "as JSON (schema: src/exchange/screening.schema.json)");
  return {command, [options, &shared] {
            const auto screened = screenFiles(shared, *options);
            if (!screened) return report(screened.failure());
            const Screened& one = screened.value();
            return output(options->json ? application::screeningAsJson(*one.screening, *one.content, one.askedBack)
                                        : application::screeningAsText(*one.screening, *one.content, one.askedBack));
          }};
}

}  // namespace stile::cli
