// Single bytes changed, files cut off, disks full, folders that may not be written: each is noticed
// or harmless, none crashes, and what reads back as valid is what was written.
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <catch2/catch.hpp>
#include <csignal>
#include <map>
#include <optional>
#include <random>

#include "../support/scale.h"
#include "sample_clinic.h"

using namespace stile;
using namespace stile::test;

namespace {

/// Everything in the file as one text; nullopt when something was noticed on the way. `verifies`
/// tells whether the whole file, with its journal, fits.
std::optional<std::string> wholeContent(SampleClinic& clinic, bool* verifies = nullptr) {
  auto opened = clinic.tryOpen(store::Access::Write);
  if (!opened) return std::nullopt;
  auto& file = *opened.value();
  std::map<std::string, std::string> all;
  for (const auto& card : file.cards()) {
    const auto entries = file.read(card.id);
    if (!entries) return std::nullopt;
    std::string& text = all[card.id];
    text = card.kind + "|" + card.card;
    for (const auto& entry : entries.value()) text += "|" + entry.kind + ":" + entry.by + ":" + entry.signer + ":" + entry.body;
  }
  if (verifies != nullptr) *verifies = file.verify().isClean();
  std::string whole;
  for (const auto& [id, text] : all) whole += id + text + "\n";
  return whole;
}

/// Runs `work` in a child and gives its exit code, or 1000 + signal when it crashed.
template <class Work>
int inChild(Work work) {
  const pid_t child = ::fork();
  if (child == 0) {
    int code = 99;
    try {
      code = work();
    } catch (...) {
      code = 98;
    }
    ::_exit(code);
  }
  int status = 0;
  ::waitpid(child, &status, 0);
  return WIFEXITED(status) ? WEXITSTATUS(status) : 1000 + WTERMSIG(status);
}

void removeBeside(const SampleClinic& clinic) {
  std::error_code ignored;
  for (const char* tail : {"-wal", "-shm", "-journal"}) std::filesystem::remove(clinic.path + tail, ignored);
}

}  // namespace

TEST_CASE("Random single-byte changes: noticed or harmless, never altered content as valid, never a crash") {
  SampleClinic clinic;
  {
    auto file = clinic.open();
    for (const char* name : {"Maren Oakshott", "Tobin Fell", "Isla Brandt"}) addClient(*file, name);
  }
  const std::string right = bytesOf(clinic.path);
  const std::string content = *wholeContent(clinic);
  const int rounds = 500 * stile::test::scale();  // --long: 10,000
  std::mt19937 random(20261125);
  int noticed = 0, harmless = 0;
  // In a child, so that a crash is a result and not the end of the tests.
  const std::string tally = clinic.folder / "tally";
  const int exit = inChild([&] {
    for (int round = 0; round < rounds; ++round) {
      std::string changed = right;
      const std::size_t at = random() % changed.size();
      changed[at] = static_cast<char>(changed[at] ^ static_cast<char>(1 + random() % 255));
      removeBeside(clinic);
      putBytes(clinic.path, changed);
      bool verifies = false;
      const auto read = wholeContent(clinic, &verifies);
      if (read && *read != content) return 1;
      ++(verifies ? harmless : noticed);
    }
    putBytes(tally, std::to_string(noticed) + " noticed, " + std::to_string(harmless) + " harmless");
    return 0;
  });
  INFO(bytesOf(tally));
  CHECK(exit == 0);
  CHECK(std::atoi(bytesOf(tally).c_str()) > rounds / 10);
}

TEST_CASE("A file cut off anywhere is noticed or harmless") {
  SampleClinic clinic;
  {
    auto file = clinic.open();
    for (const char* name : {"Maren Oakshott", "Tobin Fell"}) addClient(*file, name);
  }
  const std::string right = bytesOf(clinic.path);
  const std::string content = *wholeContent(clinic);
  const int exit = inChild([&] {
    for (int step = 0; step < 40; ++step) {
      removeBeside(clinic);
      putBytes(clinic.path, right.substr(0, right.size() * static_cast<std::size_t>(step) / 40));
      const auto read = wholeContent(clinic);
      if (read && *read != content) return 1;
    }
    return 0;
  });
  CHECK(exit == 0);
}

TEST_CASE("A full disk: nothing acknowledged is lost, and the message says so") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  const std::string words = clinic.folder / "words";
  const int exit = inChild([&] {
    auto file = clinic.open();
    std::signal(SIGXFSZ, SIG_IGN);  // writing past the limit then fails as on a full disk
    const rlimit small{400'000, 400'000};
    ::setrlimit(RLIMIT_FSIZE, &small);
    std::vector<std::string> kept;
    for (int i = 0; i < 200; ++i) {
      store::Change change;
      const std::string id = change.newRecord("client", "client " + std::to_string(i));
      change.add(id, "client", store::randomBytes(20'000));  // does not compress
      const auto saved = file->commit(change);
      if (!saved) {
        std::string text = saved.failure().message;
        for (const auto& one : kept)
          if (!file->read(one)) text += " NOT READ " + one;
        ::signal(SIGXFSZ, SIG_DFL);
        const rlimit none{RLIM_INFINITY, RLIM_INFINITY};
        ::setrlimit(RLIMIT_FSIZE, &none);
        putBytes(words, std::to_string(kept.size()) + " " + text);
        return 0;
      }
      kept.push_back(id);
    }
    return 1;
  });
  REQUIRE(exit == 0);
  const std::string text = bytesOf(words);
  INFO(text);
  CHECK((contains(text, "the disk is full") || contains(text, "the disk gives an error")));
  auto file = clinic.open();
  CHECK(static_cast<int>(file->cards().size()) == 1 + std::atoi(text.c_str()));
  CHECK(file->verify().trouble == "");
}

TEST_CASE("A folder or file that may only be read is told, and stays as it is") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  std::filesystem::remove(clinic.path + ".lock");
  const std::string right = bytesOf(clinic.path);
  ::chmod(clinic.path.c_str(), 0444);
  ::chmod(clinic.folder.path().c_str(), 0555);
  const std::string words = clinic.folder.path() + "-words";
  putBytes(words, "");
  ::chmod(words.c_str(), 0666);
  const int exit = inChild([&] {
    if (::getuid() == 0 && ::setuid(65534) != 0) return 2;  // rights do not bind root
    const auto opened = clinic.tryOpen();
    if (opened) return 1;
    putBytes(words, opened.failure().message);
    return opened.failure().kind == base::FailureKind::File ? 0 : 3;
  });
  ::chmod(clinic.folder.path().c_str(), 0755);
  CHECK(exit == 0);
  CHECK(contains(bytesOf(words), "right to write"));
  CHECK(bytesOf(clinic.path) == right);
  std::filesystem::remove(words);
}

TEST_CASE("A file that another program holds locked is told, and nothing is lost") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  auto file = clinic.open();
  {
    store::Database other(clinic.path, store::Access::Write);
    store::Transaction transaction(other);  // a foreign program in the middle of writing
    store::Change change;
    change.newRecord("client", "Tobin Fell");
    const auto saved = file->commit(change);
    REQUIRE_FALSE(saved.ok());
    CHECK(saved.failure().kind == base::FailureKind::Secret);
    CHECK(contains(saved.failure().message, "another program holds the file"));
  }
  addClient(*file, "Tobin Fell");
  CHECK(file->cards().size() == 2);
  CHECK(file->verify().trouble == "");
}
