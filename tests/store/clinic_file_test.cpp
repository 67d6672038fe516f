// A clinic file from its making to its upkeep, through its one door.
#include <catch2/catch.hpp>

#include "sample_clinic.h"

using namespace stile;
using namespace stile::test;
using base::FailureKind;
using store::Access;

TEST_CASE("What was committed is there after the file was closed and opened again") {
  SampleClinic clinic;
  std::string id;
  {
    auto file = clinic.open();
    CHECK(file->who().name == "Ines Calloway");
    id = addClient(*file, "Maren Oakshott");
    CHECK(file->card(id)->card == "Maren Oakshott");
  }
  auto file = clinic.open();
  REQUIRE(file->cards().size() == 1);
  const auto entries = take(file->read(id));
  REQUIRE(entries.size() == 4);
  CHECK(entries[0].body == "{\"name\": \"Maren Oakshott\"}");
  CHECK(entries[2].signer == "ines");
  CHECK(entries[3].kind == "draft");
  const auto verified = file->verify();
  CHECK(verified.trouble == "");
  CHECK(verified.entries == 4);
  CHECK(verified.records == 1);
}

TEST_CASE("A draft is replaced and removed; what was filed is not") {
  SampleClinic clinic;
  auto file = clinic.open();
  const std::string id = addClient(*file, "Maren Oakshott");
  const auto entries = take(file->read(id));
  store::Change again;
  again.replaceDraft(id, entries[3].id, "{\"answers\": 2}");
  take(file->commit(again));
  CHECK(take(file->read(id))[3].body == "{\"answers\": 2}");
  store::Change wrong;
  wrong.replaceDraft(id, entries[1].id, "{}");
  const auto refused = file->commit(wrong);
  REQUIRE_FALSE(refused.ok());
  CHECK(refused.failure().kind == FailureKind::Refused);
  CHECK(take(file->read(id))[1].body == entries[1].body);
  store::Change remove;
  remove.removeDraft(id, entries[3].id);
  take(file->commit(remove));
  CHECK(take(file->read(id)).size() == 3);
  CHECK(file->verify().trouble == "");
}

TEST_CASE("A commit is whole or nothing") {
  SampleClinic clinic;
  auto file = clinic.open();
  const std::string mark = file->mark();
  store::Change change;
  change.newRecord("client", "first");
  change.add("no-such-record", "client", "{}");
  CHECK_FALSE(file->commit(change).ok());
  CHECK(file->cards().empty());
  CHECK(file->mark() == mark);
  addClient(*file, "second");
  CHECK(file->cards().size() == 1);
  CHECK(file->verify().trouble == "");
}

TEST_CASE("Wrong passphrase, unknown name, revoked clinician: refused with the right words") {
  SampleClinic clinic;
  const auto wrong = clinic.tryOpen(Access::Write, "ines", "not the passphrase");
  REQUIRE_FALSE(wrong.ok());
  CHECK(wrong.failure().kind == FailureKind::Secret);
  CHECK(contains(wrong.failure().message, "the passphrase does not fit the sign-in name ines"));
  CHECK(contains(clinic.tryOpen(Access::Write, "nobody", kInes).failure().message, "no clinician with the sign-in name nobody"));
  clinic.addRolf();
  const std::string before = bytesOf(clinic.path);
  {
    auto file = clinic.open();
    addClient(*file, "Maren Oakshott");
    take(file->revoke("rolf"));
    addClient(*file, "Tobin Fell");
    CHECK(file->verify().trouble == "");
  }
  const auto revoked = clinic.tryOpen(Access::Write, "rolf", kRolf);
  REQUIRE_FALSE(revoked.ok());
  CHECK(revoked.failure().kind == FailureKind::Secret);
  CHECK(contains(revoked.failure().message, "the rights of rolf were withdrawn"));
  auto file = clinic.open();
  CHECK(file->cards().size() == 2);
  for (const auto& card : file->cards()) CHECK(take(file->read(card.id)).size() == 4);
  const auto reused = file->addClinician({"rolf", "Rolf Again", "", records::Role::Clinician, false, false, {}}, kRolf);
  CHECK(contains(reused.failure().message, "never used again"));
}

TEST_CASE("A new passphrase opens, the old one no longer does") {
  SampleClinic clinic;
  { take(clinic.open()->changePassphrase("another twelve signs")); }
  CHECK_FALSE(clinic.tryOpen().ok());
  auto file = clinic.open(Access::Write, "ines", "another twelve signs");
  CHECK(file->verify().trouble == "");
  CHECK(contains(file->changePassphrase("short").failure().message, "at least 12 characters"));
}

TEST_CASE("The recovery phrase sets up a clinician and signs nothing") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  std::string typed = clinic.phrase;
  for (char& c : typed) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  {
    auto file = clinic.open(Access::Write, "recovery", typed);
    store::Change change;
    change.add(file->cards()[0].id, "signOff", "{}", true);
    CHECK(file->commit(change).failure().kind == FailureKind::Refused);
    take(file->addClinician({"nora", "Nora Vance", "physiotherapist", records::Role::Lead, false, false, {}}, "a passphrase of Nora"));
  }
  auto file = clinic.open(Access::Write, "nora", "a passphrase of Nora");
  CHECK(take(file->read(file->cards()[0].id)).size() == 4);
  CHECK(file->verify().trouble == "");
  CHECK_FALSE(clinic.tryOpen(Access::Read, "recovery", "AAAA-AAAA-AAAA-AAAA-AAAA-AAAA").ok());
}

TEST_CASE("An assistant enters, and neither signs nor sets up clinicians") {
  SampleClinic clinic;
  clinic.addRolf(records::Role::Assistant);
  auto file = clinic.open(Access::Write, "rolf", kRolf);
  store::Change change;
  const std::string id = change.newRecord("client", "Maren");
  change.add(id, "client", "{}");
  take(file->commit(change));
  store::Change signing;
  signing.add(id, "signOff", "{}", true);
  CHECK(contains(file->commit(signing).failure().message, "may enter but not sign"));
  CHECK_FALSE(file->revoke("ines").ok());
  CHECK_FALSE(file->addClinician({"nora", "Nora", "", records::Role::Lead, false, false, {}}, "a passphrase of Nora").ok());
}

TEST_CASE("The second session is told who holds the file; it verifies, backs up and reads the panel, and opens no record") {
  SampleClinic clinic;
  clinic.addRolf();
  auto first = clinic.open();
  const std::string id = addClient(*first, "Maren Oakshott");
  const auto second = clinic.tryOpen(Access::Write, "rolf", kRolf);
  REQUIRE_FALSE(second.ok());
  CHECK(second.failure().kind == FailureKind::Secret);
  CHECK(contains(second.failure().message, "in use by ines on "));
  auto beside = clinic.open(Access::Read, "rolf", kRolf);
  CHECK(beside->verify().trouble == "");
  CHECK(take(beside->panel("screening")).size() == 1);
  const std::string copy = take(beside->backup(clinic.folder / "backups", 3));
  CHECK(std::filesystem::exists(copy));
  CHECK(beside->read(id).failure().kind == FailureKind::Secret);
  addClient(*first, "Tobin Fell");
  CHECK(first->verify().trouble == "");
  first.reset();
  CHECK(clinic.open(Access::Write, "rolf", kRolf)->cards().size() == 2);
}

TEST_CASE("Locked after idle time: nothing is read until the passphrase is given again") {
  SampleClinic clinic;
  auto file = clinic.open();
  const std::string id = addClient(*file, "Maren Oakshott");
  CHECK_FALSE(file->lockIfIdle(60'000));
  clinic.nowMs += 61'000;
  CHECK(file->lockIfIdle(60'000));
  CHECK(file->cards().empty());
  CHECK(file->read(id).failure().kind == FailureKind::Secret);
  CHECK_FALSE(file->unlock("something else entirely").ok());
  CHECK(file->isLocked());
  take(file->unlock(kInes));
  CHECK(take(file->read(id)).size() == 4);
}

TEST_CASE("A clock set back is told, and the journal still verifies") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  clinic.nowMs -= 86'400'000;
  {
    auto file = clinic.open();
    REQUIRE(file->notices().size() == 1);
    CHECK(contains(file->notices()[0], "clock"));
    addClient(*file, "Tobin Fell");
    CHECK(file->verify().trouble == "");
  }
  auto file = clinic.open();
  CHECK(file->notices().empty());
}

TEST_CASE("Erasing takes a record out of the file for good") {
  SampleClinic clinic;
  auto file = clinic.open();
  const std::string id = addClient(*file, "Maren Oakshott");
  addClient(*file, "Tobin Fell");
  store::Change change;
  change.erase(id);
  take(file->commit(change));
  CHECK(file->card(id) == nullptr);
  CHECK(file->cards().size() == 1);
  CHECK_FALSE(file->read(id).ok());
  const auto verified = file->verify();
  CHECK(verified.trouble == "");
  CHECK(verified.entries == 4);
}

TEST_CASE("Backups verify, open by themselves, and the oldest go") {
  SampleClinic clinic;
  auto file = clinic.open();
  addClient(*file, "Maren Oakshott");
  const std::string folder = clinic.folder / "backups";
  std::string last;
  for (int i = 0; i < 4; ++i) last = take(file->backup(folder, 2));
  std::ofstream(folder + "/letter.txt") << "not ours";
  int files = 0;
  for ([[maybe_unused]] const auto& entry : std::filesystem::directory_iterator(folder)) ++files;
  CHECK(files == 3);
  clinic.path = last;
  auto copy = clinic.open();
  CHECK(copy->cards().size() == 1);
  CHECK(copy->verify().trouble == "");
}

TEST_CASE("A whole file that was put back is seen only against a mark, and then it is") {
  SampleClinic clinic;
  { addClient(*clinic.open(), "Maren Oakshott"); }
  const std::string older = bytesOf(clinic.path);
  std::string mark;
  {
    auto file = clinic.open();
    addClient(*file, "Tobin Fell");
    mark = file->mark();
    addClient(*file, "Third");
    CHECK(file->verify(mark).trouble == "");
  }
  putBytes(clinic.path, older);
  auto file = clinic.open();
  CHECK(file->verify().trouble == "");
  CHECK(contains(file->verify(mark).trouble, "put back to an older state"));
}

TEST_CASE("Files that are not there, not ours, newer, or on a network are refused with a remedy") {
  SampleClinic clinic;
  const auto env = clinic.environment();
  const store::SignIn ines{"ines", kInes};
  const auto missing = store::ClinicFile::open(clinic.folder / "none.stile", Access::Write, ines, env);
  CHECK(missing.failure().kind == FailureKind::File);
  CHECK_FALSE(std::filesystem::exists(clinic.folder / "none.stile"));
  putBytes(clinic.folder / "text.stile", std::string(5000, 'a'));
  const auto text = store::ClinicFile::open(clinic.folder / "text.stile", Access::Write, ines, env);
  CHECK(contains(text.failure().message, "no clinic file"));
  CHECK(bytesOf(clinic.folder / "text.stile") == std::string(5000, 'a'));
  putBytes(clinic.folder / "empty.stile", "");
  CHECK(contains(store::ClinicFile::open(clinic.folder / "empty.stile", Access::Read, ines, env).failure().message, "no clinic file"));
  const auto twice = store::ClinicFile::create(clinic.path, {"ines", "", "", records::Role::Lead, false, false, {}}, kInes, env);
  CHECK(contains(twice.failure().message, "already"));
  {
    store::Database raw(clinic.path, Access::Write);
    raw.run("PRAGMA user_version=7");
  }
  const auto newer = clinic.tryOpen();
  CHECK(newer.failure().kind == FailureKind::Refused);
  CHECK(contains(newer.failure().message, "version 7"));
  CHECK(contains(newer.failure().message, "install the newer program"));
  for (const std::uint64_t kind : {0x6969u, 0x517Bu, 0xFF534D42u, 0xFE534D42u, 0x65735546u}) CHECK(store::isNetworkFileSystem(kind));
  for (const std::uint64_t kind : {0xEF53u, 0x01021994u, 0x9123683Eu, 0x794C7630u, 0x58465342u}) CHECK_FALSE(store::isNetworkFileSystem(kind));
}
