// A clinic file in a folder of its own, with cheap passphrases and a clock that the test turns.
#pragma once

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <memory>
#include <stdexcept>
#include <string>

#include "store/clinic_file.h"

namespace stile::test {

inline constexpr const char* kInes = "a quiet mill by the river";
inline constexpr const char* kRolf = "twelve grey geese at noon";

class TemporaryFolder {
 public:
  /// In memory where the system offers that: thousands of synced commits then take seconds.
  TemporaryFolder() {
    for (const std::string& base : {std::string("/dev/shm"), std::filesystem::temp_directory_path().string()}) {
      std::string name = base + "/stile-store-XXXXXX";
      if (mkdtemp(name.data()) == nullptr) continue;
      path_ = name;
      return;
    }
    throw std::runtime_error("no folder for temporary files");
  }
  ~TemporaryFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  TemporaryFolder(const TemporaryFolder&) = delete;
  TemporaryFolder& operator=(const TemporaryFolder&) = delete;
  std::string operator/(const std::string& name) const { return path_ + "/" + name; }
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

inline std::string bytesOf(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

inline void putBytes(const std::string& path, const std::string& bytes) {
  std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// The value, or an exception that carries the failure's words.
template <class T>
T take(base::Result<T> result) {
  if (!result) throw std::runtime_error(result.failure().message);
  return std::move(result).value();
}

class SampleClinic {
 public:
  SampleClinic() : path(folder / "tarnside.stile") {
    records::Clinician ines{"ines", "Ines Calloway", "physiotherapist", records::Role::Lead, false, false, {}};
    phrase = take(store::ClinicFile::create(path, ines, kInes, environment()));
  }

  /// The least cost that the library takes: what is tested here is not Argon2id.
  store::Environment environment() {
    store::Environment result;
    result.nowMs = [this] { return nowMs += 10; };
    result.cost = {1, 8192};
    result.migrations = &migrations;
    return result;
  }

  base::Result<std::unique_ptr<store::ClinicFile>> tryOpen(store::Access access = store::Access::Write, const std::string& handle = "ines",
                                                           const std::string& passphrase = kInes) {
    return store::ClinicFile::open(path, access, {handle, passphrase}, environment());
  }

  std::unique_ptr<store::ClinicFile> open(store::Access access = store::Access::Write, const std::string& handle = "ines",
                                          const std::string& passphrase = kInes) {
    return take(tryOpen(access, handle, passphrase));
  }

  void addRolf(records::Role role = records::Role::Clinician) {
    auto file = open();
    take(file->addClinician({"rolf", "Rolf Anning", "nurse", role, false, false, {}}, kRolf));
  }

  TemporaryFolder folder;
  std::string path;
  std::string phrase;
  long long nowMs = 1'764'000'000'000;
  std::vector<store::Migration> migrations;
};

/// One client with two entries and a draft; gives the record's id.
inline std::string addClient(store::ClinicFile& file, const std::string& name) {
  store::Change change;
  const std::string id = change.newRecord("client", name);
  change.add(id, "client", "{\"name\": \"" + name + "\"}");
  change.add(id, "screening", "{\"of\": \"" + name + "\", \"text\": \"" + std::string(600, 'x') + "\"}");
  change.add(id, "signOff", "{\"by\": \"ines\", \"for\": \"" + name + "\"}", true);
  change.add(id, "draft", "{\"answers\": 1}");
  take(file.commit(change));
  return id;
}

inline bool contains(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace stile::test
