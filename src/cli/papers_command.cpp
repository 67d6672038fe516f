// stile papers: screens one client, prints the summary and writes the papers.
// stile client papers: the same for the last screening of a record.
#include <CLI/CLI.hpp>

#include "application/client_papers.h"
#include "application/write_papers.h"
#include "cli/command.h"
#include "cli/record_options.h"

namespace stile::cli {
namespace {

/// Options of how the papers look and go out; who they are for is the command's own.
void addStyle(CLI::App& command, application::PaperOptions& options) {
  command.add_option("--into", options.folder, "folder for the papers")->required();
  command.add_option("--settings", options.settingsFile, "what the clinic says of itself, a JSON file");
  command.add_option("--text", options.textPoints, "14, 18 or 24: size of the client's papers in points");
  command.add_flag("--black", options.isBlackOnly, "the client's papers in black only");
  command.add_option("--language", options.language, "of the client's papers, such as es");
  command.add_option("--to", options.physician, "whom the letter is addressed to, name and place");
  command.add_option("--referrer", options.referrer, "who sent the client: writes an outcome letter too");
  command.add_option_function<std::string>("--format", [&options](const std::string& format) {
    options.html = format != "pdf";
    options.pdf = format != "html";
  }, "html or pdf (both if left out)")->check(CLI::IsMember({"html", "pdf"}));
}

}  // namespace

Command addPapers(CLI::App& app, const Shared& shared) {
  struct Options : ClientOptions, application::PaperOptions {};
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("papers", "screen one client and write the papers");
  options->addTo(*command);
  addStyle(*command, *options);
  options->addEditsTo(*command);
  command->add_option("--client", options->client.name, "name on the papers");
  command->add_option("--born", options->client.born, "date of birth on the papers, in words");
  command->add_option("--record", options->client.record, "record number on the papers");
  return {command, [options, &shared] {
            const auto screened = screenFiles(shared, *options);
            if (!screened) return report(screened.failure());
            const Screened& one = screened.value();
            options->screenAgain = [&](const screening::Content& content) { return screenWith(content, *options); };
            base::Issues issues;
            const auto written = application::writePapers(*one.screening, *one.content, one.askedBack,
                                                          application::contentFolder(shared.content, STILE_INSTALLED_CONTENT),
                                                          *options, issues);
            print(issues);
            if (!written) return report(written.failure());
            return output(written.value());
          }};
}

Command addClientPapers(CLI::App& group, const Shared& shared) {
  struct Options : RecordOptions, application::PaperOptions { using RecordOptions::client; };
  auto options = std::make_shared<Options>();
  CLI::App* command = group.add_subcommand("papers", "write the papers of the last screening, with what was overridden and signed");
  static_cast<RecordOptions&>(*options).addTo(*command);
  addStyle(*command, *options);
  return {command, [options, &shared] {
            const auto content = contentFor(shared);
            if (!content) return report(content.failure());
            return onClient(shared, *options, [&](application::Clinic& clinic, const std::string& id, base::Date) {
              base::Issues issues;
              const auto written = application::writeClientPapers(clinic, id, *content.value(),
                                                                  application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), *options, issues);
              print(issues);
              return written ? output(written.value()) : report(written.failure());
            });
          }};
}

}  // namespace stile::cli
