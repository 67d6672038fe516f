// The desk in numbers: start to the first painted window against a bare window of the same toolkit, an answer
// until everything that follows from it is painted, opening the largest invented client, memory.
//
// Needs a display with a window manager:
//   xvfb-run -a dbus-run-session -- sh -c 'openbox & build/test/bin/desk_bench; kill %1'
// No pass or fail by wall time. Processor time stands beside it: on a busy machine it says more.
#include <gtk/gtk.h>
#include <sys/wait.h>
#include <unistd.h>
#include <wx/app.h>
#include <wx/evtloop.h>
#include <wx/frame.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "application/client_records.h"
#include "application/client_screening.h"
#include "application/content_folder.h"
#include "desktop/desk.h"
#include "desktop/frame.h"
#include "desktop/process.h"
#include "desktop/question_view.h"

namespace {

using namespace stile;
namespace fs = std::filesystem;

constexpr int kStarts = 9, kOpenings = 5;
constexpr std::size_t kSlowestShown = 8;
constexpr const char* kPassphrase = "a quiet mill by the river";
constexpr int kRest = 40;  // milliseconds between answers, so that no frame waits for the one before
constexpr int kReading = 800;  // until the first answer: somebody reads the question first

long long nowNs() { return std::chrono::duration_cast<std::chrono::nanoseconds>(std::chrono::steady_clock::now().time_since_epoch()).count(); }
double processorMs() {
  timespec time{};
  clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &time);
  return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_nsec) / 1e6;
}

double at(std::vector<double> times, double share) {
  std::sort(times.begin(), times.end());
  return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1) + 0.5)];
}

template <class T>
T must(base::Result<T> result) {
  if (result) return std::move(result).value();
  std::fprintf(stderr, "desk_bench: %s\n", result.failure().message.c_str());
  std::exit(1);
}

double residentMb() {
  std::ifstream status("/proc/self/status");
  for (std::string line; std::getline(status, line);)
    if (line.starts_with("VmRSS:")) return std::stod(line.substr(6)) / 1024;
  return 0;
}

/// Counts what the window's clock has painted.
class Paints {
 public:
  explicit Paints(wxFrame& frame) {
    clock_ = gdk_window_get_frame_clock(gtk_widget_get_window(GTK_WIDGET(frame.GetHandle())));
    g_signal_connect(clock_, "after-paint", G_CALLBACK(+[](GdkFrameClock*, gpointer count) { ++*static_cast<int*>(count); }), &count_);
  }
  /// Runs what waits until everything is painted. It sleeps while there is nothing to do: waiting for the clock of
  /// the window is no work.
  void await() {
    const int before = count_;
    bool isLate = false;
    const guint guard = g_timeout_add_seconds(2, [](gpointer late) -> gboolean { return *static_cast<bool*>(late) = true, G_SOURCE_CONTINUE; }, &isLate);
    while (count_ == before && !isLate) g_main_context_iteration(nullptr, TRUE);
    g_source_remove(guard);
  }
  static void rest(int milliseconds = kRest) {
    const auto end = std::chrono::steady_clock::now() + std::chrono::milliseconds(milliseconds);
    while (std::chrono::steady_clock::now() < end)
      if (!g_main_context_iteration(nullptr, FALSE)) usleep(500);
  }

 private:
  GdkFrameClock* clock_;
  int count_ = 0;
};

struct Spent {
  double wall, processor;
};

template <class Work>
Spent timed(Paints& paints, Work work) {
  const long long start = nowNs();
  const double processor = processorMs();
  work();
  wxTheApp->ProcessPendingEvents();
  paints.await();
  const Spent spent{static_cast<double>(nowNs() - start) / 1e6, processorMs() - processor};
  Paints::rest();
  return spent;
}

wxKeyEvent keyOf(int code, bool hasAlt = false) {
  wxKeyEvent key(wxEVT_CHAR_HOOK);
  key.m_keyCode = code;
  key.SetAltDown(hasAlt);
  return key;
}

/// How somebody answers: no to all that can be denied, with a yes to every so-manieth question; or not sure wherever
/// that can be said.
struct Manner {
  std::size_t yesEvery = 0;  ///< 0 = never
  bool isUnsure = false;
};

/// The keys of one answer; only the last is timed.
std::vector<wxKeyEvent> keysFor(const desktop::QuestionView& view, Manner manner, std::size_t number) {
  using Kind = desktop::QuestionKind;
  const bool saysYes = manner.yesEvery > 0 && number % manner.yesEvery == 0;
  if (view.kind == Kind::Typed) return {keyOf('U', true)};
  if (view.kind == Kind::List && saysYes) return {keyOf('1'), keyOf(WXK_END), keyOf(WXK_RETURN)};
  if (view.kind == Kind::List) return {keyOf(WXK_END), keyOf('N')};
  if (view.kind == Kind::Another) return {keyOf('N')};
  if (view.kind == Kind::OneOf && manner.yesEvery > 0) return {keyOf('1')};
  if (view.kind == Kind::SeveralOf && saysYes) return {keyOf('1'), keyOf(WXK_END), keyOf(WXK_RETURN)};
  if (view.kind == Kind::OneOf || manner.isUnsure) return {keyOf('U')};
  if (view.kind == Kind::SeveralOf) return {keyOf(WXK_END), keyOf('N')};
  return {keyOf(saysYes ? 'Y' : 'N')};
}

class BenchApp : public wxApp {
 public:
  BenchApp(std::string mode, long long start) : mode_(std::move(mode)), start_(start) {}

 private:
  bool OnInit() override {
    if (mode_ == "bare") {
      frame_ = new wxFrame(nullptr, wxID_ANY, "bare", wxDefaultPosition, wxSize(1280, 800));
      frame_->Show();
    } else {
      desk_ = std::make_unique<desktop::Desk>(STILE_SOURCE_DIR, *base::Date::parse("2026-11-25"));
      auto* frame = new desktop::Frame(*desk_, {});
      frame_ = frame;
      frame->Show();
      frame->go("start");
      desk_->loadContent([] {});
      if (mode_ == "work") CallAfter([this, frame] { work(*frame); });
    }
    if (mode_ != "work") g_signal_connect_after(frame_->GetHandle(), "draw", G_CALLBACK(&BenchApp::painted), this);
    return true;
  }

  static gboolean painted(GtkWidget*, cairo_t*, BenchApp* app) {
    if (app->start_ == 0) return FALSE;
    std::printf("%.3f\n", static_cast<double>(nowNs() - app->start_) / 1e6);
    std::fflush(stdout);
    _exit(0);
  }

  void work(desktop::Frame& frame) {
    Paints paints(frame);
    const double opened = residentMb();
    frame.contentIsHere();
    if (desk_->content() == nullptr) {
      std::fprintf(stderr, "desk_bench: %s\n", base::toText(desk_->contentIssues().all().front()).c_str());
      _exit(1);
    }
    fill();
    answer(frame, paints);
    open(frame, paints);
    std::printf("memory: %.0f MB with the first window, %.0f MB at the end\n", opened, residentMb());
    std::fflush(stdout);
    fs::remove_all(folder_);
    _exit(0);
  }

  void fill() {
    std::string name = (fs::temp_directory_path() / "desk-bench-XXXXXX").string();
    folder_ = mkdtemp(name.data());
    const application::ClinicAccess access{folder_ + "/clinic.stile", "ines", kPassphrase, false};
    must(desk_->createClinic(access, {"ines", "Ines Calloway", "physiotherapist", records::Role::Lead, false, false, {}}, {}));
    base::Issues issues;
    const auto add = [&](const char* client) { return must(application::addClient(*desk_->clinic(), client, "client", issues)).id; };
    largest_ = add(R"({"given": "Bartholomew", "family": "Achterberg", "born": "1955-08-30"})");
    asked_ = {{add(R"({"given": "Maren", "family": "Oakshott", "born": "1963-03-14"})"), {}},
              {add(R"({"given": "Aldous", "family": "Wetherby", "born": "1949-11-02"})"), {.yesEvery = 5}},
              {add(R"({"given": "Petra", "family": "Lindqvist", "born": "1971-07-21"})"), {.isUnsure = true}},
              {add(R"({"given": "Jonas", "family": "Thistlewood", "born": "1958-01-09"})"), {.yesEvery = 3}},
              {add(R"({"given": "Wilma", "family": "Garrowby", "born": "1990-12-30"})"), {.yesEvery = 7}},
              {add(R"({"given": "Edda", "family": "Marchbanks", "born": "1944-06-17"})"), {.yesEvery = 2}}};
    busiest_ = add(R"({"given": "Ottoline", "family": "Fairweather", "born": "1984-05-02"})");
    for (const auto& [client, person] : {std::pair(largest_, "crowded"), std::pair(busiest_, "healthy")}) {
      const auto answers = must(application::readFile(std::string(STILE_SOURCE_DIR "/tests/documents/people/") + person + ".json"));
      must(application::screenAndFile(*desk_->clinic(), client, *desk_->content(), {{"answers", answers}}, desk_->today(), issues));
    }
  }

  struct Answers {
    std::vector<double> wall, processor, saving;
    std::vector<std::pair<double, std::string>> slowest;
  };

  void answer(desktop::Frame& frame, Paints& paints) {
    Answers all;
    for (const auto& [client, manner] : asked_) interview(frame, paints, client, manner, all);
    std::printf("answer to everything painted, %zu answers of %zu clients: median %.1f ms, p99 %.1f ms; processor: median %.1f ms, p99 %.1f ms\n", all.wall.size(), asked_.size(),
                at(all.wall, 0.5), at(all.wall, 0.99), at(all.processor, 0.5), at(all.processor, 0.99));
    std::printf("after that, saving: median %.1f ms, p99 %.1f ms\n", at(all.saving, 0.5), at(all.saving, 0.99));
    std::sort(all.slowest.rbegin(), all.slowest.rend());
    std::printf("slowest, by the question that came next:");
    for (std::size_t i = 0; i < all.slowest.size() && i < kSlowestShown; ++i) std::printf(" %s %.1f", all.slowest[i].second.c_str(), all.slowest[i].first);
    std::printf("\n");
  }

  void interview(desktop::Frame& frame, Paints& paints, const std::string& client, Manner manner, Answers& all) {
    desk_->openClient(client);
    frame.go("interview");
    Paints::rest(kReading);
    const auto press = [&](wxKeyEvent key) { frame.GetEventHandler()->ProcessEvent(key); };
    const auto prompted = [&] { return desk_->interview()->session().prompt(); };
    for (std::size_t number = 1; prompted() != nullptr; ++number) {
      const auto before = prompted()->questions;
      auto keys = keysFor(desktop::questionViewOf(desk_->interview()->session()), manner, number);
      for (std::size_t i = 0; i + 1 < keys.size(); ++i) press(keys[i]);
      const Spent spent = timed(paints, [&] { press(keys.back()); });
      if (prompted() != nullptr && prompted()->questions == before && !before.empty()) {
        // What to do now stands in the question's place first.
        press(keyOf('1'));
        wxTheApp->ProcessPendingEvents();
        Paints::rest();
        continue;
      }
      all.wall.push_back(spent.wall);
      all.processor.push_back(spent.processor);
      const bool asks = prompted() != nullptr && !prompted()->questions.empty();
      all.slowest.emplace_back(spent.wall, asks ? desk_->interview()->session().question(prompted()->questions.front()).item->linkId : "the end, or another one");
      // Once more, by itself: it follows what was timed above.
      const long long start = nowNs();
      must(desk_->interview()->save());
      all.saving.push_back(static_cast<double>(nowNs() - start) / 1e6);
    }
    desk_->closeClient();
  }

  void open(desktop::Frame& frame, Paints& paints) {
    for (const char* page : {"client", "decision", "plan"}) openAt(frame, paints, largest_, "the largest client", page);
    openAt(frame, paints, busiest_, "the longest plan", "plan");
  }

  void openAt(desktop::Frame& frame, Paints& paints, const std::string& client, const char* what, const char* page) {
    std::vector<double> wall, processor;
    for (int i = 0; i < kOpenings; ++i) {
      desk_->closeClient();
      frame.go("today");
      Paints::rest();
      const Spent spent = timed(paints, [&] {
        desk_->openClient(client);
        frame.go(page);
      });
      wall.push_back(spent.wall);
      processor.push_back(spent.processor);
    }
    const auto* screening = desk_->screening();
    const auto* plan = screening == nullptr ? nullptr : screening->plan ? &*screening->plan : screening->heldPlan ? &*screening->heldPlan : nullptr;
    const std::size_t rows = plan == nullptr ? 0 : plan->lines.size();
    std::printf("opening %s (%zu findings, %zu rows of plan) at the page %s: first %.0f ms, median %.0f ms, processor: first %.0f ms, median %.0f ms (of %d)\n", what,
                screening == nullptr ? 0 : screening->findings.size(), rows, page, wall.front(), at(wall, 0.5), processor.front(), at(processor, 0.5), kOpenings);
  }

  std::string mode_;
  long long start_;
  std::unique_ptr<desktop::Desk> desk_;
  wxFrame* frame_ = nullptr;
  std::string folder_, largest_, busiest_;
  std::vector<std::pair<std::string, Manner>> asked_;  ///< clients, and how they answer
};

/// Runs this program anew in `mode`; gives what it printed.
std::string run(const char* self, const std::string& mode) {
  const std::string command = std::string(self) + " " + mode + " " + std::to_string(nowNs());
  FILE* const pipe = popen(command.c_str(), "r");
  std::string all;
  char part[256];
  while (pipe != nullptr && std::fgets(part, sizeof part, pipe) != nullptr) all += part;
  if (pipe != nullptr) pclose(pipe);
  return all;
}

int compare(const char* self) {
  std::vector<double> bare, desk;
  for (int i = 0; i < kStarts; ++i) {
    bare.push_back(std::stod(run(self, "bare")));
    desk.push_back(std::stod(run(self, "desk")));
  }
  std::printf("start to the first painted window: bare %.0f ms, the desk %.0f ms, ratio %.2f (medians of %d)\n", at(bare, 0.5), at(desk, 0.5),
              at(desk, 0.5) / at(bare, 0.5), kStarts);
  std::printf("%s", run(self, "work").c_str());
  return 0;
}

}  // namespace

int main(int argumentCount, char** arguments) {
  if (argumentCount < 2) return compare(arguments[0]);
  if (std::string_view(arguments[1]) != "bare") desktop::prepareProcess();
  wxApp::SetInstance(new BenchApp(arguments[1], argumentCount > 2 ? std::stoll(arguments[2]) : 0));
  int none = 1;
  return wxEntry(none, arguments);
}
