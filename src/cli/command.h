// What every command shares: where output goes, how issues are shown, the exit codes.
#pragma once

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "application/screen_client.h"
#include "base/date.h"
#include "base/issue.h"
#include "base/result.h"
#include "cli/edit_options.h"

namespace CLI {
class App;
}

namespace stile::cli {

/// Exit codes; they never count anything.
enum class Exit { Done = 0, Usage = 2, Refused = 3, File = 4, Secret = 5, Promise = 6 };

/// Set by the command line, shared by all commands.
struct Shared {
  std::string content;  ///< --content, or ""
  application::PolicyChoices policies;  ///< of the clinic whose settings are at hand
};

/// A command registers itself and leaves behind what to run.
using Run = std::function<Exit()>;
struct Command {
  CLI::App* app = nullptr;
  Run run;
};

Command addScreen(CLI::App& app, const Shared& shared);
Command addPapers(CLI::App& app, const Shared& shared);
Command addQuestions(CLI::App& app, const Shared& shared);
Command addBlank(CLI::App& app, const Shared& shared);
Command addFacts(CLI::App& app, const Shared& shared);
Command addForm(CLI::App& app, const Shared& shared);
Command addRuleBook(CLI::App& app, const Shared& shared);
Command addInterview(CLI::App& app, const Shared& shared);
Command addFigures(CLI::App& app, const Shared& shared);
Command addCheck(CLI::App& app, const Shared& shared);
Command addEvaluate(CLI::App& app, const Shared& shared);
Command addValidate(CLI::App& app, const Shared& shared);

/// The options of a command that screens one client.
struct ClientOptions : EditOptions {
  std::vector<std::string> files;
  std::string date;
  void addTo(CLI::App& command);
};

/// A screening with the content it was made with.
struct Screened {
  std::shared_ptr<const screening::Content> content;
  base::Issues askedBack;
  std::shared_ptr<const screening::Screening> screening;
};

/// Reads everything and screens. On trouble the issues are printed and the failure is returned.
base::Result<Screened> screenFiles(const Shared& shared, const ClientOptions& options);

/// Screens the same files with other content; says nothing of values to ask back a second time.
base::Result<screening::Screening> screenWith(const screening::Content& content, const ClientOptions& options);

/// Content of the folder chosen by --content; issues are printed.
base::Result<std::shared_ptr<const screening::Content>> contentFor(const Shared& shared);

/// Prints the issues (one block each, on the error stream).
void print(const base::Issues& issues);
/// Prints a failure and gives its exit code.
Exit report(const base::Failure& failure);
/// Writes results to standard output; Exit::File when that is not possible (a full disk).
Exit output(const std::string& text);

/// The civil date of this machine, for faces only.
base::Date today();

}  // namespace stile::cli
