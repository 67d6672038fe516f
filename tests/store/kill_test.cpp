// Killed at random moments: what was acknowledged is there, the file is whole, the journal verifies.
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <random>

#include "../support/scale.h"
#include "sample_clinic.h"

using namespace stile;
using namespace stile::test;

namespace {

/// What a child tells through the pipe before it is killed: the last number it saw acknowledged.
class Child {
 public:
  template <class Work>
  explicit Child(Work work) {
    REQUIRE(::pipe(ends_) == 0);
    process_ = ::fork();
    if (process_ == 0) {
      ::close(ends_[0]);
      try {
        work([this](int number) {
          const std::string line = std::to_string(number) + "\n";
          if (::write(ends_[1], line.data(), line.size()) < 0) ::_exit(3);
        });
      } catch (...) {
        ::_exit(98);
      }
      ::_exit(0);
    }
    ::close(ends_[1]);
  }

  /// Kills after so long; gives the last acknowledged number, -1 if none. `exit` 98: it failed by itself.
  int killAfter(int microseconds, int& exit) {
    // The clock starts with the first word, so that most kills meet work and not the opening.
    char first = 0;
    std::string told;
    if (::read(ends_[0], &first, 1) == 1) told += first;
    ::usleep(static_cast<useconds_t>(microseconds));
    ::kill(process_, SIGKILL);
    char buffer[4096];
    for (ssize_t size = 0; (size = ::read(ends_[0], buffer, sizeof buffer)) > 0;) told.append(buffer, static_cast<std::size_t>(size));
    ::close(ends_[0]);
    int status = 0;
    ::waitpid(process_, &status, 0);
    exit = WIFEXITED(status) ? WEXITSTATUS(status) : 0;
    const std::size_t end = told.rfind('\n');
    if (end == std::string::npos) return -1;
    const std::size_t begin = end == 0 ? std::string::npos : told.rfind('\n', end - 1);
    return std::atoi(told.c_str() + (begin == std::string::npos ? 0 : begin + 1));
  }

 private:
  int ends_[2] = {-1, -1};
  pid_t process_ = -1;
};

}  // namespace

TEST_CASE("Killed while answers are saved, signed off and backed up: no acknowledged answer is lost") {
  SampleClinic clinic;
  std::string id, draft;
  {
    auto file = clinic.open();
    store::Change change;
    id = change.newRecord("client", "Maren Oakshott");
    draft = change.add(id, "draft", "0");
    take(file->commit(change));
  }
  std::mt19937 random(7);
  const int rounds = 15 * stile::test::scale();  // --long: 300
  int least = 0;
  std::size_t signOffs = 0;
  for (int round = 0; round < rounds; ++round) {
    const int start = least;
    Child child([&](auto say) {
      auto file = clinic.open();
      say(start);
      for (int number = start + 1;; ++number) {
        store::Change change;
        change.replaceDraft(id, draft, std::to_string(number));
        if (number % 7 == 0) change.add(id, "signOff", "{\"at\": " + std::to_string(number) + "}", true);
        if (!file->commit(change)) throw 1;
        say(number);
        // A folder a round: the sample's clock begins anew in every child, and backups are named by the moment.
        if (number % 40 == 39 && !file->backup((clinic.folder / "backups/") + std::to_string(round), 2)) throw 1;
      }
    });
    int exit = 0;
    const int told = child.killAfter(static_cast<int>(random() % 60'000), exit);
    REQUIRE(exit == 0);
    auto file = clinic.open();
    const auto entries = take(file->read(id));
    int saved = -1;
    std::size_t seen = 0;
    for (const auto& entry : entries) {
      if (entry.kind == "draft") saved = std::atoi(entry.body.c_str());
      if (entry.kind == "signOff") ++seen;
    }
    INFO("round " << round << " told " << told << " saved " << saved);
    CHECK(saved >= std::max(told, start));
    CHECK(seen >= signOffs);
    CHECK(seen == static_cast<std::size_t>(saved / 7));
    const auto verified = file->verify();
    CHECK(verified.trouble == "");
    least = saved;
    signOffs = seen;
  }
  CHECK(least > 0);
  const std::filesystem::path backups = clinic.folder / "backups";
  if (std::filesystem::exists(backups))
    for (const auto& entry : std::filesystem::recursive_directory_iterator(backups)) {
      // Whatever bears the name of a backup verifies; what was cut short does not bear it.
      if (entry.path().extension() != ".stile") continue;
      clinic.path = entry.path().string();
      CHECK(clinic.open()->verify().trouble == "");
    }
}

TEST_CASE("Killed during an upgrade: the file is the older version or the newer, whole") {
  std::mt19937 random(11);
  const int rounds = 5 * stile::test::scale();  // --long: 100
  SampleClinic clinic;
  {
    auto file = clinic.open();
    for (int i = 0; i < 60; ++i) addClient(*file, "client " + std::to_string(i));
  }
  const std::string before = bytesOf(clinic.path);
  const std::vector<store::Migration> steps{{1, [](store::Database& database) {
    database.run("CREATE TABLE again AS SELECT * FROM entry; DROP TABLE again; CREATE TABLE extra(id TEXT) STRICT;");
  }}};
  int upgraded = 0;
  for (int round = 0; round < rounds; ++round) {
    std::error_code ignored;
    for (const char* tail : {"-wal", "-shm", ".before-version-2"}) std::filesystem::remove(clinic.path + tail, ignored);
    putBytes(clinic.path, before);
    clinic.migrations = steps;
    Child child([&](auto say) {
      say(0);
      auto file = clinic.open();
      say(1);
    });
    int exit = 0;
    const int told = child.killAfter(static_cast<int>(random() % 30'000), exit);
    REQUIRE(exit == 0);
    if (told == 1) ++upgraded;
    auto file = clinic.open();  // finishes what was cut short
    CHECK(file->cards().size() == 60);
    CHECK(file->verify().trouble == "");
  }
  INFO(upgraded << " of " << rounds << " were done before the kill");
  CHECK(upgraded <= rounds);
}
