// The command line of Stile. Decides nothing: every command calls a use case of application/.
#include <CLI/CLI.hpp>
#include <iostream>

#include "cli/clinic_options.h"

int main(int argumentCount, char** arguments) {
  using namespace stile::cli;
  CLI::App app{"Stile screens a client before exercise and makes a conservative starter plan.\n"
               "It supports, and does not replace, licensed judgement and local protocols."};
  app.set_version_flag("--version", "stile " STILE_VERSION);
  app.require_subcommand(1);
  Shared shared;
  app.add_option("--content", shared.content, "folder with questionnaires/ and rules/");
  app.fallthrough();

  const Command commands[] = {addScreen(app, shared), addPapers(app, shared), addQuestions(app, shared),
                              addBlank(app, shared),
                              addFacts(app, shared),
                              addCheck(app, shared),
                              addForm(app, shared),
                              addRuleBook(app, shared),
                              addEvaluate(app, shared),
                              addValidate(app, shared),
                              addInterview(app, shared),
                              addFigures(app, shared),
                              addClinicCreate(app, shared),
                              addClinicians(app, shared),
                              addClients(app, shared),
                              addWorklist(app, shared),
                              addUpkeep(app, shared)};
  try {
    app.parse(argumentCount, arguments);
  } catch (const CLI::ParseError& trouble) {
    const bool wasAsked = trouble.get_exit_code() == 0;  // --help, --version
    app.exit(trouble, std::cout, std::cerr);
    return static_cast<int>(wasAsked ? Exit::Done : Exit::Usage);
  }
  for (const Command& command : commands)
    if (command.app->parsed()) return static_cast<int>(command.run());
  return static_cast<int>(Exit::Usage);
}
