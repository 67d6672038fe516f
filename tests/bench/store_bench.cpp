// A clinic of 50,000 clients: `store_bench make FILE [clients]` writes it, `store_bench measure FILE`
// opens it and prints how long things take. Wall time; no pass or fail.
//
// Each client has three screenings and one issued paper of 20 kB. The first hundred clients carry
// whole screenings of the demo person; the others shorter ones, so that making the file takes
// minutes and not an hour. Opening is measured on the hundred.
#include <chrono>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <random>

#include "../support/content.h"
#include "application/client_screening.h"

using namespace stile;
using Clock = std::chrono::steady_clock;

namespace {

constexpr const char* kPassphrase = "a quiet mill by the river";
constexpr int kWhole = 100, kPerCommit = 250;

double since(Clock::time_point from) { return std::chrono::duration<double, std::milli>(Clock::now() - from).count(); }

template <class T>
T take(base::Result<T> result) {
  if (!result) throw std::runtime_error(result.failure().message);
  return std::move(result).value();
}

/// Words in random order: compresses about as text does.
std::string prose(std::mt19937& random, std::size_t bytes) {
  static const char* kWords[] = {"walk", "slowly", "today", "the", "knee", "bend", "minutes", "pressure", "chair", "twice", "stand", "and", "rest", "before", "week", "breathe"};
  std::string text;
  while (text.size() < bytes) text += std::string(kWords[random() % 16]) + " ";
  return text;
}

std::string name(std::mt19937& random) {
  static const char* kSyllables[] = {"ma", "ren", "to", "bin", "oak", "shot", "fel", "bra", "nd", "is", "la", "cal", "lo", "way", "an", "ning"};
  std::string text;
  for (int i = 0; i < 3; ++i) text += kSyllables[random() % 16];
  text[0] = static_cast<char>(text[0] - 32);
  return text;
}

std::unique_ptr<application::Clinic> open(const std::string& file) {
  base::Issues issues;
  return take(application::Clinic::open({file, "ines", kPassphrase, false}, STILE_SOURCE_DIR, issues));
}

int make(const std::string& file, int clients) {
  take(application::Clinic::create({file, "ines", kPassphrase, false}, {"ines", "Ines Calloway", "physiotherapist", records::Role::Clinician, false, false, {}}));
  auto clinic = open(file);
  std::mt19937 random(1);
  base::Issues issues;
  const std::string demo = test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/cases/responses/maren-oakshott.json");
  for (int i = 0; i < clients;) {
    store::Change all;
    for (int j = 0; j < kPerCommit && i < clients; ++j, ++i) {
      auto work = application::RecordWork::begin(*clinic);
      records::Client client;
      client.given = name(random);
      client.family = name(random);
      client.born = base::Date::of(1930 + static_cast<int>(random() % 70), 1 + static_cast<int>(random() % 12), 1 + static_cast<int>(random() % 28));
      work.add("client", toJson(client));
      for (int year = 2024; year <= 2026 && i >= kWhole; ++year) {
        const std::string day = std::to_string(year) + "-0" + std::to_string(1 + random() % 9) + "-1" + std::to_string(random() % 9);
        const std::string entry = work.add("screening", "{\"date\": \"" + day + "\", \"content\": \"x\", \"rules\": [], \"text\": \"" + prose(random, 2000) + "\"}");
        if (random() % 20 != 0) work.add("signOff", "{\"date\": \"" + day + "\", \"screening\": \"" + entry + "\"}", true);
      }
      work.add("paper", prose(random, 20'000));
      work.setCard();
      all.append(work.change());
      if (i < kWhole) {
        take(clinic->commit(work.change()));
        for (int year = 2024; year <= 2026; ++year)
          take(application::screenAndFile(*clinic, work.id(), test::content(), {{"demo", demo}}, *base::Date::of(2026, 11, 25), issues));
        all = {};
      }
    }
    if (!all.empty()) take(clinic->commit(all));
    if (i % 5000 == 0) std::printf("%d\n", i), std::fflush(stdout);
  }
  return 0;
}

void printMemory() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.rfind("VmRSS", 0) == 0 || line.rfind("VmHWM", 0) == 0) std::printf("%s\n", line.c_str());
}

int measure(const std::string& file) {
  auto from = Clock::now();
  auto clinic = open(file);
  const double unlocked = since(from);
  const auto list = clinic->worklist(*base::Date::of(2026, 11, 25), false);
  std::printf("unlock %.0f ms, unlock to worklist %.0f ms (%zu clients, %zu lines)\n", unlocked, since(from), clinic->find("").size(), list.size());
  double worst = 0, sum = 0;
  std::mt19937 random(5);
  for (int i = 0; i < 50; ++i) {
    const std::string part = name(random).substr(0, 4);
    from = Clock::now();
    const auto found = clinic->find(part);
    const double took = since(from);
    worst = std::max(worst, took);
    sum += took;
  }
  std::printf("find by part of a name: mean %.1f ms, worst of 50 %.1f ms\n", sum / 50, worst);
  worst = sum = 0;
  int opened = 0;
  for (const auto* line : clinic->find("")) {
    if (opened == 50) break;
    const bool isWhole = std::any_of(line->card.tasks.begin(), line->card.tasks.end(), [](const auto& task) { return task.since == *base::Date::of(2026, 11, 25); });
    if (!isWhole) continue;
    from = Clock::now();
    const auto text = take(application::showClient(*clinic, line->id, *base::Date::of(2026, 11, 25)));
    const double took = since(from);
    worst = std::max(worst, took);
    sum += took;
    ++opened;
  }
  std::printf("open a record with whole screenings: mean %.1f ms, worst of %d %.1f ms\n", sum / std::max(opened, 1), opened, worst);
  printMemory();
  return 0;
}

}  // namespace

int main(int count, char** arguments) {
  if (count >= 3 && std::strcmp(arguments[1], "make") == 0) return make(arguments[2], count > 3 ? std::atoi(arguments[3]) : 50'000);
  if (count == 3 && std::strcmp(arguments[1], "measure") == 0) return measure(arguments[2]);
  std::fprintf(stderr, "store_bench make FILE [clients] | store_bench measure FILE\n");
  return 2;
}
