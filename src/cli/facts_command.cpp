// stile facts: the fact dictionary as a table, for those who write rules.
#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "facts/fact_table.h"

namespace stile::cli {

Command addFacts(CLI::App& app, const Shared& shared) {
  auto json = std::make_shared<bool>(false);
  CLI::App* command = app.add_subcommand("facts", "the fact dictionary as a table");
  command->add_flag("--json", *json, "as JSON");
  return {command, [json, &shared] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            const auto& dictionary = content.value()->dictionary;
            return output(*json ? facts::tableAsJson(dictionary) : facts::tableAsText(dictionary));
          }};
}

}  // namespace stile::cli
