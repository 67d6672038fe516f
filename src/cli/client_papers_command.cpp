// stile client papers, paper: papers of the last screening, kept as they went out.
#include "application/client_papers.h"

#include "application/content_folder.h"
#include "cli/paper_style.h"
#include "cli/record_options.h"

namespace stile::cli {
namespace {

using application::Clinic;

Command addIssuing(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { application::PaperOptions papers; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("papers", "write the papers of the last screening, and keep them in the record");
  options->addTo(*command);
  addPaperStyle(*command, options->papers);
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              base::Issues issues;
              const auto written = application::issuePapers(clinic, id, content, application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), options->papers, day, issues);
              print(issues);
              return written ? output(written.value()) : report(written.failure());
            });
          }};
}

Command addPaper(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string entry, to; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("paper", "take an issued paper out of the record, as it went out");
  options->addTo(*command);
  command->add_option("entry", options->entry, "id of the paper's entry")->required();
  command->add_option("--to", options->to, "name of the file to write")->required();
  return {command, [options, &shared] {
            return onClient(shared, *options, [&](Clinic& clinic, const std::string& id, base::Date) {
              const auto bytes = application::readPaper(clinic, id, options->entry);
              if (!bytes) return report(bytes.failure());
              const auto written = application::writeFile(options->to, bytes.value());
              return written ? output(options->to + "\n") : report(written.failure());
            });
          }};
}

Command addLetter(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions { std::string letter, to; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("letter", "write the letter that an event drafted, and keep it in the record");
  options->addTo(*command);
  command->add_option("letter", options->letter, "id of the drafted letter's entry")->required();
  command->add_option("--to", options->to, "name of the file to write: .pdf, .html, or text for any other")->required();
  return {command, [options, &shared] {
            return onClientWithContent(shared, *options, [&](Clinic& clinic, const screening::Content& content, const std::string& id, base::Date day) {
              base::Issues issues;
              const auto written = application::issueEventLetter(clinic, id, options->letter, content, application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), options->to, day, issues);
              print(issues);
              return written ? output(options->to + "\nWhen it is sent: stile client file … eventLetterSettled\n") : report(written.failure());
            });
          }};
}

}  // namespace

std::vector<Command> addClientPapers(CLI::App& group, const Shared& shared) {
  return {addIssuing(group, shared), addPaper(group, shared), addLetter(group, shared)};
}

}  // namespace stile::cli
