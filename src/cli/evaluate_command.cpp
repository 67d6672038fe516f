// stile evaluate: a FHIRPath expression on a resource, or a whole suite of them.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <ctime>
#include <iostream>

#include "application/content_folder.h"
#include "application/evaluate_expression.h"
#include "application/run_suite.h"
#include "cli/command.h"

namespace stile::cli {
namespace {

struct Options {
  std::string expression;
  std::string file;
  std::vector<std::string> variables;
  std::vector<std::string> resources;
  std::string now;
  bool isStrict = false;
  std::string suite;
  std::string inputs;
  bool isJson = false;
};

base::Failure usage(std::string message) {
  return {base::FailureKind::Usage, std::move(message)};
}

/// This machine's clock with its offset from UTC.
expression::Clock machineClock() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  expression::Temporal value;
  value.kind = expression::TemporalKind::DateTime;
  value.precision = expression::Precision::Second;
  value.year = local.tm_year + 1900;
  value.month = local.tm_mon + 1;
  value.day = local.tm_mday;
  value.hour = local.tm_hour;
  value.minute = local.tm_min;
  value.second = std::min(local.tm_sec, 59);
  value.zoneMinutes = static_cast<int>(local.tm_gmtoff / 60);
  return {value};
}

base::Result<expression::Clock> clockOf(const Options& options) {
  if (options.now.empty()) return machineClock();
  const auto clock = expression::Clock::parse(options.now);
  if (!clock) return usage("--now " + options.now + ": write a moment as 2026-11-25T10:30:00+01:00");
  return *clock;
}

/// `name=value`, both there.
std::optional<application::GivenVariable> variableOf(const std::string& text) {
  const std::size_t equals = text.find('=');
  if (equals == 0 || equals == std::string::npos || equals + 1 == text.size()) return std::nullopt;
  return application::GivenVariable{text.substr(0, equals), text.substr(equals + 1), false, ""};
}

base::Result<std::vector<application::GivenVariable>> variablesOf(const Options& options) {
  std::vector<application::GivenVariable> result;
  for (const std::string& text : options.variables) {
    const auto variable = variableOf(text);
    if (!variable) return usage("--variable " + text + ": write name=expression, such as limit=42");
    result.push_back(*variable);
  }
  for (const std::string& text : options.resources) {
    auto variable = variableOf(text);
    if (!variable) return usage("--resource " + text + ": write name=file, such as questionnaire=form.json");
    variable->isResource = true;
    variable->file = variable->text;
    auto read = application::readFile(variable->file);
    if (!read) return read.failure();
    variable->text = std::move(read).value();
    result.push_back(std::move(*variable));
  }
  return result;
}

Exit runWholeSuite(const Options& options, const expression::Clock& clock) {
  base::Issues issues;
  const auto suite = application::runSuite(options.suite, options.inputs, clock, options.isJson, issues);
  print(issues);
  if (!suite) return report(suite.failure());
  const Exit written = output(suite.value().text);
  if (written != Exit::Done) return written;
  if (suite.value().differing == 0) return Exit::Done;
  return report({base::FailureKind::Refused, "some cases differ; they are marked in the list"});
}

Exit evaluateOne(const Options& options, const expression::Clock& clock) {
  application::EvaluationRequest request;
  request.expression = options.expression;
  request.clock = clock;
  request.isStrict = options.isStrict;
  auto variables = variablesOf(options);
  if (!variables) return report(variables.failure());
  request.variables = std::move(variables).value();
  if (!options.file.empty()) {
    auto text = application::readFile(options.file);
    if (!text) return report(text.failure());
    request.file = options.file == "-" ? "standard input" : options.file;
    request.resource = std::move(text).value();
  }
  std::vector<std::string> traces;
  base::Issues issues;
  const auto result = application::evaluateExpression(request, traces, issues);
  for (const std::string& line : traces) std::cerr << line << '\n';
  print(issues);
  return result ? output(result.value()) : report(result.failure());
}

Exit runEvaluate(const Options& options) {
  const auto clock = clockOf(options);
  if (!clock) return report(clock.failure());
  if (!options.suite.empty()) {
    if (!options.expression.empty()) return report(usage("give either an expression or --suite"));
    if (options.inputs.empty()) return report(usage("--suite needs --inputs, the folder of its input files"));
    return runWholeSuite(options, clock.value());
  }
  if (options.expression.empty()) return report(usage("give an expression, or --suite and --inputs"));
  return evaluateOne(options, clock.value());
}

}  // namespace

Command addEvaluate(CLI::App& app, const Shared&) {
  auto options = std::make_shared<Options>();
  CLI::App* command = app.add_subcommand("evaluate", "evaluate a FHIRPath expression on a resource");
  command->add_option("expression", options->expression, "the expression");
  command->add_option("file", options->file, "a resource as JSON; - reads the standard input");
  command->add_option("--variable", options->variables, "name=expression, read as %name; may be repeated");
  command->add_option("--resource", options->resources,
                      "name=file of a resource, read as %name; may be repeated");
  command->add_option("--now", options->now,
                      "the moment of today() and now(), such as 2026-11-25T10:30:00+01:00");
  command->add_flag("--strict", options->isStrict, "elements that the FHIR R4 types do not have are errors");
  command->add_option("--suite", options->suite, "a file of cases instead: a verdict for each, and totals");
  command->add_option("--inputs", options->inputs, "folder of the input files of --suite");
  command->add_flag("--json", options->isJson, "the verdicts of --suite as JSON");
  return {command, [options] { return runEvaluate(*options); }};
}

}  // namespace stile::cli
