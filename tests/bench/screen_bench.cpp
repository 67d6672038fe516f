// How long screening one client takes, as a ratio to parsing its response with the JSON library
// in the same run: the ratio travels between machines, the nanoseconds do not.
#include <benchmark/benchmark.h>

#include <boost/json/parse.hpp>
#include <chrono>
#include <cstdio>

#include "../support/content.h"
#include "answers/response.h"
#include "screening/screening.h"

namespace {

using namespace stile;

std::string demoText() { return test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/responses/maren-oakshott.json"); }

const base::Date kDay = *base::Date::of(2026, 11, 25);

screening::Screening screenOnce(const answers::Response& response) {
  base::Issues issues;
  auto facts = facts::factsFromResponses(test::content().dictionary, test::content().forms, {response}, kDay, issues);
  return screening::screen(test::content(), std::move(facts), {}, kDay);
}

answers::Response demoResponse() {
  base::Issues issues;
  const auto document = test::parsed(demoText(), "demo-client.json");
  return *answers::loadResponse(document->root(), test::content().forms, issues);
}

void parseWithTheLibrary(benchmark::State& state) {
  const std::string text = demoText();
  for (auto _ : state) benchmark::DoNotOptimize(boost::json::parse(text));
}

void loadResponse(benchmark::State& state) {
  const std::string text = demoText();
  for (auto _ : state) {
    base::Issues issues;
    const auto document = test::parsed(text, "demo-client.json");
    benchmark::DoNotOptimize(answers::loadResponse(document->root(), test::content().forms, issues));
  }
}

void findings(benchmark::State& state) {
  const auto response = demoResponse();
  for (auto _ : state) {
    base::Issues issues;
    auto facts = facts::factsFromResponses(test::content().dictionary, test::content().forms, {response}, kDay, issues);
    benchmark::DoNotOptimize(rules::evaluateRules(test::content().rules, facts, kDay));
  }
}

void screenOneClient(benchmark::State& state) {
  const auto response = demoResponse();
  for (auto _ : state) benchmark::DoNotOptimize(screenOnce(response));
}

BENCHMARK(parseWithTheLibrary);
BENCHMARK(loadResponse);
BENCHMARK(findings);
BENCHMARK(screenOneClient);

template <class Work>
double secondsFor(Work work) {
  double best = 1e9;
  for (int round = 0; round < 20; ++round) {
    const auto start = std::chrono::steady_clock::now();
    for (int i = 0; i < 10; ++i) work();
    best = std::min(best, std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / 10);
  }
  return best;
}

}  // namespace

int main(int count, char** arguments) {
  benchmark::Initialize(&count, arguments);
  benchmark::RunSpecifiedBenchmarks();
  const std::string text = demoText();
  const auto response = demoResponse();
  const double parsing = secondsFor([&] { benchmark::DoNotOptimize(boost::json::parse(text)); });
  const double screening = secondsFor([&] { benchmark::DoNotOptimize(screenOnce(response)); });
  std::printf("screening one client: %.3f ms, parsing its response: %.3f ms, ratio %.1f\n", screening * 1e3, parsing * 1e3,
              screening / parsing);
}
