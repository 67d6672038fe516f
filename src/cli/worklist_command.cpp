// stile worklist: who waits for whom, since when, and what is next.
#include <CLI/CLI.hpp>

#include "cli/clinic_options.h"
#include "json/document.h"

namespace stile::cli {
namespace {

std::string asText(const std::vector<application::WorklistLine>& lines) {
  if (lines.empty()) return "Nothing is due.\n";
  std::string text;
  for (const auto& line : lines)
    text += line.task.due.toText() + "\t" + line.name + "\twaiting for " + line.task.waitingFor + " since " + line.task.since.toText() + "\t" + line.next + "\n";
  return text;
}

std::string asJson(const std::vector<application::WorklistLine>& lines) {
  json::Writer writer;
  writer.beginArray();
  for (const auto& line : lines) {
    writer.beginObject().member("client", line.id).member("name", line.name).member("task", line.task.what);
    writer.member("waitingFor", line.task.waitingFor).member("since", line.task.since.toText()).member("due", line.task.due.toText());
    writer.member("next", line.next).endObject();
  }
  writer.endArray();
  return writer.text();
}

}  // namespace

Command addWorklist(CLI::App& app, const Shared& shared) {
  struct Options : ClinicOptions { std::string date; bool all = false, json = false; };
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("worklist", "what is due: who waits for whom, since when, what is next");
  options->addTo(*command);
  command->add_option("--date", options->date, "day, YYYY-MM-DD (today if left out)");
  command->add_flag("--all", options->all, "also what is due later");
  command->add_flag("--json", options->json, "as JSON");
  return {command, [options, &shared] {
            const auto day = dayOf(options->date);
            if (!day) return report(day.failure());
            auto clinic = options->open(shared);
            if (!clinic) return report(clinic.failure());
            const auto lines = clinic.value()->worklist(day.value(), options->all);
            return output(options->json ? asJson(lines) : asText(lines));
          }};
}

}  // namespace stile::cli
