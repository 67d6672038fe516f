// stile validate: do responses satisfy their forms? Any FHIR R4 files, not only ours.
#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/validate_files.h"
#include "cli/command.h"
#include "questionnaire/moment.h"

namespace stile::cli {

Command addValidate(CLI::App& app, const Shared& shared) {
  struct Options {
    std::vector<std::string> files;
    std::string now;
    bool asJson = false;
  };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("validate", "hold questionnaire responses against their forms");
  command
      ->add_option(
          "file", options->files,
          "FHIR R4 QuestionnaireResponses, and Questionnaires to hold them against (the content's forms "
          "if none is given); - reads the standard input")
      ->required();
  command->add_option("--now", options->now,
                      "the moment for today() and now() in forms, such as 2026-11-25T10:30:00+00:00");
  command->add_flag("--json", options->asJson, "the result as JSON");
  return {command, [options, &shared] {
            const std::string now = options->now.empty() ? today().toText() + "T00:00:00Z" : options->now;
            if (!questionnaire::momentOf(now) || now.find('T') == std::string::npos)
              return report(
                  {base::FailureKind::Usage, "--now " + now + ": write it like 2026-11-25T10:30:00+00:00"});
            std::vector<application::Input> inputs;
            for (const std::string& file : options->files) {
              auto text = application::readFile(file);
              if (!text) return report(text.failure());
              inputs.push_back({file == "-" ? "standard input" : file, std::move(text).value()});
            }
            std::shared_ptr<const screening::Content> content;
            if (!application::holdsForm(inputs)) {
              auto loaded = contentFor(shared);
              if (!loaded) return report(loaded.failure());
              content = loaded.value();
            }
            const auto verdicts =
                application::validateFiles(inputs, content ? content->forms : questionnaire::FormSet(), now);
            const Exit written = output(options->asJson ? toJson(verdicts) : toText(verdicts));
            if (written != Exit::Done) return written;
            return areAcceptable(verdicts) ? Exit::Done : Exit::Refused;
          }};
}

}  // namespace stile::cli
