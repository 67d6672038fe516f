// What can be read in the file, its log and everything beside it without a passphrase.
#include <catch2/catch.hpp>

#include "sample_clinic.h"

using namespace stile;
using namespace stile::test;

namespace {

/// Every byte of every file in the folder.
std::string allBytes(const std::string& folder) {
  std::string all;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(folder))
    if (entry.is_regular_file()) all += bytesOf(entry.path().string());
  return all;
}

std::vector<std::string> knownStrings() {
  std::vector<std::string> strings;
  for (int i = 0; i < 200; ++i) strings.push_back("Known-String-Of-Client-" + std::to_string(1000 + i));
  return strings;
}

}  // namespace

TEST_CASE("None of 200 known strings, no full name and no passphrase stands in the file, its log, lock or backups") {
  SampleClinic clinic;
  clinic.addRolf();
  const auto strings = knownStrings();
  auto file = clinic.open();
  for (std::size_t i = 0; i < strings.size(); i += 4) {
    store::Change change;
    const std::string id = change.newRecord("client", strings[i]);
    change.add(id, "client", "{\"name\": \"" + strings[i + 1] + "\"}");
    const std::string draft = change.add(id, "draft", strings[i + 2]);
    change.add(id, "override", "{\"reason\": \"" + strings[i + 3] + "\"}", true);
    take(file->commit(change));
    store::Change again;
    again.replaceDraft(id, draft, strings[i + 2] + " again");
    take(file->commit(again));
    take(file->read(id));
  }
  take(file->backup(clinic.folder / "backups", 3));
  const std::string open = allBytes(clinic.folder.path());  // with the log still there
  CHECK(std::filesystem::exists(clinic.path + "-wal"));
  file.reset();
  const std::string closed = allBytes(clinic.folder.path());
  for (const std::string* bytes : {&open, &closed}) {
    CHECK(bytes->size() > 100'000);
    for (const std::string& known : strings)
      if (contains(*bytes, known)) FAIL_CHECK("readable: " + known);
    for (const char* secret : {"Ines Calloway", "Rolf Anning", "physiotherapist", kInes, kRolf}) CHECK_FALSE(contains(*bytes, secret));
    CHECK_FALSE(contains(*bytes, clinic.phrase));
  }
  // What does stand there, as schema.h says.
  CHECK(contains(closed, "ines"));
  CHECK(contains(closed, "public_key"));
}

TEST_CASE("The columns that are not sealed are those that schema.h lists") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  store::Database raw(clinic.path, store::Access::Read);
  store::Query query(raw, "SELECT m.name || '.' || c.name FROM sqlite_master m, pragma_table_info(m.name) c WHERE m.type='table' ORDER BY 1");
  std::string columns;
  while (query.next()) columns += query.textAt(0) + " ";
  CHECK(columns ==
        "clinician.handle clinician.memory clinician.operations clinician.public_key clinician.revision clinician.salt clinician.sealed "
        "clinician.state clinician.vault data_key.generation data_key.handle data_key.wrapped entry.generation entry.id entry.record "
        "entry.revision entry.sealed entry.written head.clinic head.generation head.one head.revision head.sealed journal.generation "
        "journal.number journal.sealed record.generation record.id record.revision record.sealed ");
}

TEST_CASE("The file and its log may be read by their owner alone") {
  SampleClinic clinic;
  auto file = clinic.open();
  addClient(*file, "Maren Oakshott");
  for (const char* tail : {"", "-wal", ".lock"}) {
    const auto rights = std::filesystem::status(clinic.path + tail).permissions();
    INFO(tail);
    CHECK((rights & (std::filesystem::perms::group_all | std::filesystem::perms::others_all)) == std::filesystem::perms::none);
  }
}
