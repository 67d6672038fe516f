// How long an answer takes until the next question stands: merge, ladder, reasons, next question,
// over every step of every invented person's interview. No pass or fail by wall time.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <stdexcept>

#define INFO(text) (void)0
#define CHECK(condition) \
  if (!(condition)) throw std::runtime_error(#condition)
#include "../cases/case_answers.h"
#include "interview/ladder.h"

namespace {

using namespace stile;

/// Milliseconds of every step of one person's interview, sorted by nothing.
void addSteps(const test::CaseFile& file, std::vector<double>& steps) {
  const auto& content = test::content();
  base::Issues issues;
  const auto facts = file.root().find("facts");
  if (!facts) return;
  const test::CaseAnswers person(facts::factsFromPlain(content.dictionary, content.forms, *facts, file.date(), issues));
  interview::Session session(content, *content.forms.byName("clinic"), file.date());
  auto start = std::chrono::steady_clock::now();
  person.drive(session, [&] {
    benchmark::DoNotOptimize(interview::ladderOf(session.position()));
    steps.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    start = std::chrono::steady_clock::now();
    return true;
  });
}

void answerToNextQuestion(benchmark::State& state) {
  std::vector<double> steps;
  for (auto _ : state)
    for (const auto& path : test::jsonFiles("cases")) addSteps(test::CaseFile(path), steps);
  std::sort(steps.begin(), steps.end());
  const auto at = [&](double share) { return steps[static_cast<std::size_t>(share * static_cast<double>(steps.size() - 1))]; };
  state.counters["steps"] = static_cast<double>(steps.size());
  state.counters["median_ms"] = at(0.5);
  state.counters["p99_ms"] = at(0.99);
  state.counters["max_ms"] = steps.back();
}
BENCHMARK(answerToNextQuestion)->Unit(benchmark::kMillisecond)->Iterations(3);

}  // namespace

BENCHMARK_MAIN();
