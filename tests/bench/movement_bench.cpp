// How long a plan takes to choose, a body to pose and a picture to draw, for the real library.
#include <benchmark/benchmark.h>

#include "../plan/planning.h"
#include "drawing/svg.h"
#include "movement/demands.h"
#include "movement/picture.h"
#include "movement/posing.h"

namespace {

using namespace stile;

void wholePlan(benchmark::State& state) {
  const auto client =
      plan::Client().hasEverything().startsAt('D').usable(limits::Rung::Vigorous, limits::Rung::Vigorous);
  for (auto _ : state) benchmark::DoNotOptimize(client.plan());
}

void wholePlanUnderCaps(benchmark::State& state) {
  auto client =
      plan::Client().hasEverything().startsAt('D').usable(limits::Rung::Vigorous, limits::Rung::Vigorous);
  for (const auto& [movement, degrees] : {std::pair{"hipFlexion", 55}, {"kneeFlexion", 45}, {"shoulderElevation", 90},
                                          {"trunkRotation", 15}, {"ankleDorsiflexion", 12}, {"hipAbduction", 12}})
    client.under("cap", plan::capped(movement, degrees));
  for (auto _ : state) benchmark::DoNotOptimize(client.plan());
}

void poseOneBody(benchmark::State& state) {
  const auto& pose = plan::realContent().library.figures.at("sit-to-stand").forms.front().poses[1];
  for (auto _ : state) benchmark::DoNotOptimize(movement::poseBody(pose));
}

void demandsOfOneForm(benchmark::State& state) {
  const auto& figure = plan::realContent().library.figures.at("sit-to-stand");
  for (auto _ : state) benchmark::DoNotOptimize(movement::demandsOf(figure, 0));
}

void drawOnePicture(benchmark::State& state) {
  const auto& figure = plan::realContent().library.figures.at("sit-to-stand");
  for (auto _ : state) benchmark::DoNotOptimize(drawing::toSvg(movement::pictureOf(figure, 0)));
}

BENCHMARK(wholePlan)->Unit(benchmark::kMillisecond);
BENCHMARK(wholePlanUnderCaps)->Unit(benchmark::kMillisecond);
BENCHMARK(poseOneBody)->Unit(benchmark::kMicrosecond);
BENCHMARK(demandsOfOneForm)->Unit(benchmark::kMicrosecond);
BENCHMARK(drawOnePicture)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
