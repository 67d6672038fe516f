// stile figures: the contact sheet of the exercise figures, as one page.
#include <CLI/CLI.hpp>

#include "application/content_folder.h"
#include "application/figure_sheet.h"
#include "cli/command.h"

namespace stile::cli {

Command addFigures(CLI::App& app, const Shared& shared) {
  CLI::App* command = app.add_subcommand("figures", "draw the exercises on one page (HTML)");
  struct Options {
    application::FigureSheetOptions sheet;
    bool isSlight = false;
    bool areNumbers = false;
    std::string to;
  };
  auto options = std::make_shared<Options>();
  command->add_option("exercise", options->sheet.exercises, "ids of exercises; all if left out");
  command->add_option("--to", options->to, "file to write; the standard output if left out");
  command->add_flag("--slight", options->isSlight, "the slighter of the two builds");
  command->add_flag("--mirrored", options->sheet.isMirrored, "the other side");
  command->add_flag("--eased", options->sheet.hasEased, "eased forms as well");
  command->add_option("--smaller", options->sheet.smallerPercent, "each also done smaller: percent of the full movement")
      ->check(CLI::Range(1, 99));
  command->add_flag("--numbers", options->areNumbers,
                    "numbers instead of names, for a reader who is to guess");
  return {command, [&shared, options] {
            const auto files = application::readContentFolder(
                application::contentFolder(shared.content, STILE_INSTALLED_CONTENT));
            if (!files) return report(files.failure());
            application::FigureSheetOptions sheet = options->sheet;
            sheet.build = options->isSlight ? movement::Build::Slight : movement::Build::Sturdy;
            sheet.hasTitles = !options->areNumbers;
            base::Issues issues;
            const std::string page = application::figureSheet(files.value(), sheet, issues);
            print(issues);
            if (options->to.empty()) {
              if (const Exit exit = output(page); exit != Exit::Done) return exit;
            } else if (const auto written = application::writeFile(options->to, page); !written) {
              return report(written.failure());
            }
            return issues.hasErrors() ? Exit::Refused : Exit::Done;
          }};
}

}  // namespace stile::cli
