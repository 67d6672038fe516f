// stile check: is the content fit to screen with? Every trouble with its place.
#include <CLI/CLI.hpp>

#include "cli/command.h"

namespace stile::cli {

Command addCheck(CLI::App& app, const Shared& shared) {
  CLI::App* command = app.add_subcommand("check", "check questionnaires and rules");
  return {command, [&shared] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            const auto& checked = *content.value();
            return output("Content " + checked.version + ": " + std::to_string(checked.forms.forms().size()) + " forms, " +
                          std::to_string(checked.dictionary.size()) + " facts, " + std::to_string(checked.rules.rules.size()) +
                          " rules, " + std::to_string(checked.library.exercises.size()) + " exercises. Nothing to mend.\n");
          }};
}

}  // namespace stile::cli
