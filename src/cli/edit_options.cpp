#include "cli/edit_options.h"

#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/screen_client.h"

namespace stile::cli {

void EditOptions::addEditsTo(CLI::App& command) {
  const auto take = [this, &command](plan::EditKind kind, const char* words) {
    command
        .add_option_function<std::vector<std::string>>(
            std::string("--") + idOf(kind),
            [this, kind](const std::vector<std::string>& exercises) {
              for (const std::string& exercise : exercises) given_.list.push_back({kind, exercise, "", ""});
            },
            words)
        ->allow_extra_args(false);
  };
  command
      .add_option_function<std::vector<std::string>>(
          "--swap",
          [this](const std::vector<std::string>& pairs) {
            for (const std::string& pair : pairs) {
              const auto at = pair.find('=');
              if (at == std::string::npos)
                throw CLI::ValidationError("--swap " + pair, "write the two exercises as this=for-that");
              given_.list.push_back({plan::EditKind::Swap, pair.substr(0, at), pair.substr(at + 1), ""});
            }
          },
          "an exercise of the plan and one for the same purpose to take its place: this=for-that")
      ->allow_extra_args(false);
  take(plan::EditKind::Pin, "an exercise that shall be in the plan");
  take(plan::EditKind::Drop, "an exercise, or a purpose, that shall not be in the plan");
  take(plan::EditKind::Add, "an exercise to do besides the others");
  command.add_option("--override", reason_, "the reason for taking what the limits do not allow");
  command.add_option("--by", given_.by, "who changes the plan, as it is printed");
  command.add_option("--edits", file_, "the same changes as a JSON file");
}

base::Result<plan::Edits> EditOptions::edits(base::Issues& issues) const {
  plan::Edits edits;
  if (!file_.empty()) {
    const auto text = application::readFile(file_);
    if (!text) return text.failure();
    edits = application::readEdits(text.value(), file_, issues);
    if (issues.hasErrors())
      return base::Failure{base::FailureKind::Refused, file_ + ": the edits cannot be read"};
  }
  if (!given_.by.empty()) edits.by = given_.by;
  for (plan::Edit edit : given_.list) {
    edit.overrideReason = reason_;
    edits.list.push_back(std::move(edit));
  }
  return edits;
}

}  // namespace stile::cli
