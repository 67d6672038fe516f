// How long a handout takes as PDF, and whether a batch of a thousand clients stays flat in memory.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <fstream>
#include <unistd.h>

#include "../documents/sample_screenings.h"
#include "documents/handout.h"
#include "documents/pdf_writer.h"
#include "documents/summary.h"

namespace {

using namespace stile;
using namespace stile::documents;

double residentMegabytes() {
  std::ifstream in("/proc/self/statm");
  long total = 0, resident = 0;
  in >> total >> resident;
  return static_cast<double>(resident) * static_cast<double>(sysconf(_SC_PAGESIZE)) / (1 << 20);
}

template <class Work>
double millisecondsFor(Work work) {
  const auto start = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - start).count();
}

}  // namespace

int main(int count, char** arguments) {
  const int clients = count > 1 ? std::atoi(arguments[1]) : 1000;
  const auto screening = screened("maren");
  const auto settings = clinicSettings();
  const records::PaperClient client{"Maren Oakshott", "14 March 1963", "0417"};
  const ClientRequest request{screening, content(), settings, client, handoutTexts()};
  const auto handout = [&] { return toPdf(*handoutOf(request)).value().size(); };
  const auto summary = [&] { return toPdf(summaryOf(screening, content(), settings, client, {})).value().size(); };
  std::size_t bytes = 0;
  std::printf("first handout: %.1f ms\n", millisecondsFor([&] { bytes += handout(); }));
  double best = 1e9, bestSummary = 1e9;
  for (int i = 0; i < 20; ++i) {
    best = std::min(best, millisecondsFor([&] { bytes += handout(); }));
    bestSummary = std::min(bestSummary, millisecondsFor([&] { bytes += summary(); }));
  }
  std::printf("handout, best of 20: %.1f ms; summary: %.1f ms\n", best, bestSummary);
  const double before = residentMegabytes();
  for (int i = 0; i < clients; ++i) bytes += handout();
  std::printf("%d handouts: resident memory %.1f MB before, %.1f MB after; %zu bytes written in all\n", clients, before,
              residentMegabytes(), bytes);
}
