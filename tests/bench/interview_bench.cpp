// How long an answer takes until the next question stands: merge, ladder, reasons, next question,
// over every step of every invented person's interview. No pass or fail by wall time.
#include <benchmark/benchmark.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <stdexcept>

#define INFO(text) (void)0
#define CHECK(condition) \
  if (!(condition)) throw std::runtime_error(#condition)
#include "../cases/case_answers.h"
#include "interview/ladder.h"

namespace {

using namespace stile;

/// On a machine with other work to do, processor time says more than the clock on the wall.
struct Times {
  std::vector<double> wall, processor;  ///< milliseconds of each step
};

double at(std::vector<double> times, double share) {
  std::sort(times.begin(), times.end());
  return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
}

void addSteps(const test::CaseFile& file, Times& times) {
  const auto& content = test::content();
  base::Issues issues;
  const auto facts = file.root().find("facts");
  if (!facts) return;
  const test::CaseAnswers person(facts::factsFromPlain(content.dictionary, content.forms, *facts, file.date(), issues));
  interview::Session session(content, *content.forms.byName("clinic"), file.date());
  auto start = std::chrono::steady_clock::now();
  auto processor = std::clock();
  person.drive(session, [&] {
    benchmark::DoNotOptimize(interview::ladderOf(session.position()));
    times.wall.push_back(std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count());
    times.processor.push_back(1000.0 * static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC);
    start = std::chrono::steady_clock::now();
    processor = std::clock();
    return true;
  });
}

void answerToNextQuestion(benchmark::State& state) {
  Times times;
  for (auto _ : state)
    for (const auto& path : test::jsonFiles("cases")) addSteps(test::CaseFile(path), times);
  state.counters["steps"] = static_cast<double>(times.wall.size());
  state.counters["median_ms"] = at(times.wall, 0.5);
  state.counters["p99_ms"] = at(times.wall, 0.99);
  state.counters["median_cpu_ms"] = at(times.processor, 0.5);
  state.counters["p99_cpu_ms"] = at(times.processor, 0.99);
  state.counters["max_cpu_ms"] = at(times.processor, 1.0);
}
BENCHMARK(answerToNextQuestion)->Unit(benchmark::kMillisecond)->Iterations(3);

}  // namespace

BENCHMARK_MAIN();
