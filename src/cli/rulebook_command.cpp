// stile rulebook: every rule in words, as tables.
#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/write_books.h"
#include "cli/command.h"

namespace stile::cli {

Command addRuleBook(CLI::App& app, const Shared& shared) {
  auto options = std::make_shared<application::BookOptions>();
  CLI::App* command = app.add_subcommand("rulebook", "every rule in words: if, then, if unknown, sources");
  command->add_option("--into", options->path, "file to write, .pdf or .html; text on the screen if left out");
  command->add_option("--settings", options->settingsFile, "what the clinic says of itself, a JSON file");
  return {command, [options, &shared] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            base::Issues issues;
            const auto written = application::writeRuleBook(
                *content.value(), application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), *options, issues);
            print(issues);
            if (!written) return report(written.failure());
            return output(written.value());
          }};
}

}  // namespace stile::cli
