// stile form: a form to fill in by hand, from any questionnaire.
#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/write_books.h"
#include "cli/command.h"

namespace stile::cli {

Command addForm(CLI::App& app, const Shared& shared) {
  struct Options : application::BookOptions {
    std::string name = "clinic";
  };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("form", "a form to fill in by hand, from any questionnaire");
  command->add_option("name", options->name, "name of the form (clinic if left out)");
  command->add_option("--into", options->path, "file to write, .pdf or .html; text on the screen if left out");
  command->add_option("--settings", options->settingsFile, "what the clinic says of itself, a JSON file");
  command->add_flag("--home", options->isForHome, "to be filled in at home: without the acute questions");
  return {command, [options, &shared] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            base::Issues issues;
            const auto written =
                application::writeForm(*content.value(), application::contentFolder(shared.content, STILE_INSTALLED_CONTENT),
                                       options->name, *options, issues);
            print(issues);
            if (!written) return report(written.failure());
            return output(written.value());
          }};
}

}  // namespace stile::cli
