// stile screen: one client's answers in, the decision out.
#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "documents/summary.h"
#include "documents/text_writer.h"
#include "exchange/screening_json.h"

namespace stile::cli {

Command addScreen(CLI::App& app, const Shared& shared) {
  struct Options : ClientOptions { bool json = false; };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("screen", "screen one client and print the decision");
  options->addTo(*command);
  command->add_flag("--json", options->json, "as JSON (schema: src/exchange/screening.schema.json)");
  return {command, [options, &shared] {
            const auto screened = screenFiles(shared, *options);
            if (!screened) return report(screened.failure());
            const Screened& one = screened.value();
            if (options->json) return output(exchange::toJson(*one.screening, *one.content, one.askedBack));
            const auto summary = documents::summaryOf(*one.screening, *one.content, {}, {}, one.askedBack);
            return output(documents::toText(summary));
          }};
}

}  // namespace stile::cli
