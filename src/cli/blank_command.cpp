// stile blank: an empty response to start from; for the clearance reply, with what the letter asks.
#include <CLI/CLI.hpp>

#include "answers/response.h"
#include "application/clearance_request.h"
#include "cli/command.h"

namespace stile::cli {

Command addBlank(CLI::App& app, const Shared& shared) {
  struct Options { std::string form = "clinic"; std::string date; std::vector<std::string> client; };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("blank", "a blank response to a form, to start from");
  command->add_option("form", options->form, "clinic, telephone or clearance-reply");
  command->add_option("--date", options->date, "day of the response, YYYY-MM-DD (today if left out)");
  command->add_option("--for", options->client, "clearance-reply only: files of the client whose findings it answers");
  return {command, [options, &shared] {
            if (!options->client.empty()) {
              ClientOptions client;
              client.files = options->client;
              client.date = options->date;
              const auto screened = screenFiles(shared, client);
              if (!screened) return report(screened.failure());
              return output(application::blankReply(*screened.value().screening, *screened.value().content));
            }
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            const auto* form = content.value()->forms.byName(options->form);
            if (form == nullptr)
              return report({base::FailureKind::Usage, options->form + ": there is no such form; use clinic, telephone or clearance-reply"});
            const auto date = options->date.empty() ? std::optional(today()) : base::Date::parse(options->date);
            if (!date) return report({base::FailureKind::Usage, "--date " + options->date + ": write a day as YYYY-MM-DD"});
            return output(answers::blankResponse(*form, *date));
          }};
}

}  // namespace stile::cli
