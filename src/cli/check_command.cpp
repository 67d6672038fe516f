// stile check: is the content fit to screen with? Every trouble with its place.
#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/translated_papers.h"
#include "cli/command.h"

namespace stile::cli {

Command addCheck(CLI::App& app, const Shared& shared) {
  CLI::App* command = app.add_subcommand("check", "check questionnaires and rules");
  auto isFull = std::make_shared<bool>(false);
  command->add_flag("--translations", *isFull, "name every sentence that is not translated, or changed since");
  return {command, [&shared, isFull] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            const auto& checked = *content.value();
            base::Issues issues;
            const auto languages =
                application::translationStatus(application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), *isFull, issues);
            print(issues);
            if (!languages) return report(languages.failure());
            return output("Content " + checked.version + ": " + std::to_string(checked.forms.forms().size()) + " forms, " +
                          std::to_string(checked.dictionary.size()) + " facts, " + std::to_string(checked.rules.rules.size()) +
                          " rules, " + std::to_string(checked.library.exercises.size()) + " exercises. Nothing to mend.\n" + languages.value());
          }};
}

}  // namespace stile::cli
