// stile questions: what is still to be asked, in the order that settles most.
#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "json/document.h"

namespace stile::cli {
namespace {

std::string asText(const screening::Screening& screening) {
  if (screening.openQuestions.empty()) return "No open question.\n";
  std::string text;
  for (const auto& question : screening.openQuestions) {
    text += question.factId + "\t" + question.label + " (" + facts::toText(question.why) + ")";
    if (question.couldBecome > limits::Action::Routine) text += std::string("; could become ") + limits::idOf(question.couldBecome);
    if (question.shutsRungs) text += "; keeps rungs shut";
    text += "\n";
  }
  return text;
}

std::string asJson(const screening::Screening& screening) {
  json::Writer writer;
  writer.beginArray();
  for (const auto& question : screening.openQuestions) {
    writer.beginObject().member("fact", question.factId).member("label", question.label);
    writer.member("unknown", facts::idOf(question.why)).member("couldBecome", limits::idOf(question.couldBecome));
    writer.member("holdsRungs", question.shutsRungs).endObject();
  }
  writer.endArray();
  return writer.text();
}

}  // namespace

Command addQuestions(CLI::App& app, const Shared& shared) {
  struct Options : ClientOptions { bool json = false; };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("questions", "the open questions for a client, those that matter most first");
  options->addTo(*command);
  command->add_flag("--json", options->json, "as JSON");
  return {command, [options, &shared] {
            const auto screened = screenFiles(shared, *options);
            if (!screened) return report(screened.failure());
            const auto& screening = *screened.value().screening;
            return output(options->json ? asJson(screening) : asText(screening));
          }};
}

}  // namespace stile::cli
