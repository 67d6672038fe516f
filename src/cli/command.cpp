#include "cli/command.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <ctime>
#include <iostream>

#include "application/content_folder.h"

namespace stile::cli {

void ClientOptions::addTo(CLI::App& command) {
  command.add_option("file", files, "responses, clearance replies or plain facts; - reads the standard input")->required();
  command.add_option("--date", date, "day of the screening, YYYY-MM-DD (today if left out)");
}

void print(const base::Issues& issues) {
  for (const base::Issue& issue : issues.all()) std::cerr << toText(issue) << '\n';
}

Exit report(const base::Failure& failure) {
  std::cerr << "stile: " << failure.message << '\n';
  switch (failure.kind) {
    case base::FailureKind::Usage: return Exit::Usage;
    case base::FailureKind::Refused: return Exit::Refused;
    case base::FailureKind::File: return Exit::File;
    case base::FailureKind::Secret: return Exit::Secret;
    case base::FailureKind::Promise: return Exit::Promise;
  }
  return Exit::File;
}

Exit output(const std::string& text) {
  const bool written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size() && std::fflush(stdout) == 0;
  if (written) return Exit::Done;
  return report({base::FailureKind::File, "the output could not be written; check the disk or the receiving program"});
}

base::Date today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return *base::Date::of(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday);
}

base::Result<std::shared_ptr<const screening::Content>> contentFor(const Shared& shared) {
  base::Issues issues;
  auto content = application::loadContent(application::contentFolder(shared.content, STILE_INSTALLED_CONTENT), issues, shared.policies);
  print(issues);
  return content;
}

namespace {

base::Result<base::Date> dateOf(const ClientOptions& options) {
  if (options.date.empty()) return today();
  if (const auto given = base::Date::parse(options.date)) return *given;
  return base::Failure{base::FailureKind::Usage, "--date " + options.date + ": write a day as YYYY-MM-DD"};
}

base::Result<std::vector<application::Input>> inputsOf(const ClientOptions& options) {
  std::vector<application::Input> inputs;
  for (const std::string& file : options.files) {
    auto text = application::readFile(file);
    if (!text) return text.failure();
    inputs.push_back({file == "-" ? "standard input" : file, std::move(text).value()});
  }
  return inputs;
}

base::Result<bool> edit(const screening::Content& content, screening::Screening& screening, const ClientOptions& options,
                        base::Issues& issues) {
  const auto edits = options.edits(issues);
  if (!edits) return edits.failure();
  if (edits.value().list.empty()) return true;
  return application::editPlan(content, screening, edits.value(), issues);
}

}  // namespace

base::Result<Screened> screenFiles(const Shared& shared, const ClientOptions& options) {
  const auto date = dateOf(options);
  if (!date) return date.failure();
  const auto inputs = inputsOf(options);
  if (!inputs) return inputs.failure();
  auto content = contentFor(shared);
  if (!content) return content.failure();
  Screened result{content.value(), {}, nullptr};
  auto screening = application::screenClient(*result.content, inputs.value(), date.value(), result.askedBack);
  print(result.askedBack);
  if (!screening) return screening.failure();
  base::Issues issues;
  const auto edited = edit(*result.content, screening.value(), options, issues);
  print(issues);
  if (!edited) return edited.failure();
  result.screening = std::make_shared<const screening::Screening>(std::move(screening).value());
  return result;
}

base::Result<screening::Screening> screenWith(const screening::Content& content, const ClientOptions& options) {
  const auto date = dateOf(options);
  if (!date) return date.failure();
  const auto inputs = inputsOf(options);
  if (!inputs) return inputs.failure();
  base::Issues unused;
  auto screening = application::screenClient(content, inputs.value(), date.value(), unused);
  if (!screening) return screening;
  const auto edited = edit(content, screening.value(), options, unused);
  if (!edited) return edited.failure();
  return screening;
}

}  // namespace stile::cli
