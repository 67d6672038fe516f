// From an older version of the format to a newer one.
#include <catch2/catch.hpp>

#include "sample_clinic.h"

using namespace stile;
using namespace stile::test;

namespace {

store::Migration addsColumn() {
  return {1, [](store::Database& database) { database.run("ALTER TABLE entry ADD COLUMN kept INTEGER NOT NULL DEFAULT 1; CREATE TABLE extra(id TEXT) STRICT;"); }};
}

}  // namespace

TEST_CASE("An upgrade keeps everything, and a verified copy of before stands beside it") {
  SampleClinic clinic;
  std::string id;
  { id = addClient(*clinic.open(), "Maren Oakshott"); }
  clinic.migrations = {addsColumn(), {2, [](store::Database& database) { database.run("DROP TABLE extra"); }}};
  // The column added would break an INSERT without names, so this also drops it again.
  clinic.migrations[1].step = [](store::Database& database) { database.run("DROP TABLE extra; ALTER TABLE entry DROP COLUMN kept;"); };
  CHECK(contains(clinic.tryOpen(store::Access::Read).failure().message, "older format"));
  {
    auto file = clinic.open();
    REQUIRE(file->notices().size() == 1);
    CHECK(contains(file->notices()[0], clinic.path + ".before-version-3"));
    CHECK(take(file->read(id)).size() == 4);
    CHECK(file->verify().trouble == "");
    addClient(*file, "Tobin Fell");
  }
  CHECK(clinic.open()->notices().empty());
  clinic.migrations.clear();
  CHECK(clinic.tryOpen().failure().kind == base::FailureKind::Refused);
  clinic.path += ".before-version-3";
  CHECK(take(clinic.open()->read(id)).size() == 4);
}

TEST_CASE("A step that fails leaves the file as it was") {
  SampleClinic clinic;
  std::string id;
  { id = addClient(*clinic.open(), "Maren Oakshott"); }
  clinic.migrations = {{1, [](store::Database& database) { database.run("DROP TABLE entry; SELECT no_such_function();"); }}};
  CHECK_FALSE(clinic.tryOpen().ok());
  clinic.migrations.clear();
  auto file = clinic.open();
  CHECK(take(file->read(id)).size() == 4);
  CHECK(file->verify().trouble == "");
}

TEST_CASE("A file of every released version opens, upgrades and reads back") {
  for (int version = 1; version <= store::versionAfter(store::releasedMigrations()); ++version) {
    SampleClinic clinic;
    clinic.migrations = store::releasedMigrations();
    clinic.path = clinic.folder / "old.stile";
    std::filesystem::copy_file(std::string(STILE_SOURCE_DIR) + "/tests/databases/v" + std::to_string(version) + ".stile", clinic.path);
    auto file = clinic.open();
    REQUIRE(file->cards().size() == 2);
    for (const auto& card : file->cards()) {
      const auto entries = take(file->read(card.id));
      REQUIRE(entries.size() == 4);
      CHECK(contains(entries[0].body, card.card));
      CHECK(entries[2].signer == "ines");
    }
    CHECK(file->verify().trouble == "");
  }
}

TEST_CASE("Writing the stored file of the present version", "[.write-old-file]") {
  // Run by hand once for each released version: store_test "[.write-old-file]".
  SampleClinic clinic;
  {
    auto file = clinic.open();
    addClient(*file, "Maren Oakshott");
    addClient(*file, "Tobin Fell");
  }
  const std::string target = std::string(STILE_SOURCE_DIR) + "/tests/databases/v" + std::to_string(store::versionAfter(store::releasedMigrations())) + ".stile";
  std::filesystem::create_directories(std::filesystem::path(target).parent_path());
  if (!std::filesystem::exists(target)) std::filesystem::copy_file(clinic.path, target);
  CHECK(std::filesystem::exists(target));
}
