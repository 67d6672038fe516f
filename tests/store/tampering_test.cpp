// Whoever changes the file without a passphrase, or signs in another's name: noticed and named.
#include <catch2/catch.hpp>
#include <map>

#include "sample_clinic.h"
#include "store/keyring.h"
#include "store/record_rows.h"
#include "store/roster.h"

using namespace stile;
using namespace stile::test;
using store::Database;
using store::Query;

namespace {

/// Two clients, each with four entries; the second was written to again.
struct Tampered : SampleClinic {
  std::string maren, tobin;

  Tampered() {
    auto file = open();
    maren = addClient(*file, "Maren Oakshott");
    tobin = addClient(*file, "Tobin Fell");
  }

  void sql(const std::string& statements) {
    Database raw(path, store::Access::Write);
    raw.run("PRAGMA foreign_keys=OFF");
    raw.run(statements);
    raw.checkpoint();
  }

  std::string entryOf(const std::string& record, int index) {
    Database raw(path, store::Access::Read);
    Query query(raw, "SELECT id FROM entry WHERE record=? ORDER BY rowid LIMIT 1 OFFSET ?");
    query.text(record).number(index);
    return query.next() ? query.textAt(0) : "";
  }

  /// What opening, or else verifying, or else reading all says; "" when nothing was noticed.
  std::string noticed() {
    auto opened = tryOpen();
    if (!opened) return opened.failure().message;
    auto& file = *opened.value();
    const auto verified = file.verify();
    for (const auto& card : file.cards()) {
      const auto entries = file.read(card.id);
      if (!entries) return "read: " + entries.failure().message + "; verify: " + verified.trouble;
    }
    return verified.trouble;
  }

  /// The keys, as a clinician who turned against the clinic has them.
  store::Unlocked keysOf(const std::string& handle, const std::string& passphrase) {
    Database raw(path, store::Access::Read);
    return store::unlock(store::readRoster(raw), store::clinicIdOf(raw), handle, passphrase);
  }
};

}  // namespace

TEST_CASE("Rows swapped between clients are noticed") {
  Tampered clinic;
  const std::string a = clinic.entryOf(clinic.maren, 0), b = clinic.entryOf(clinic.tobin, 0);
  clinic.sql("UPDATE entry SET sealed=(SELECT sealed FROM entry WHERE id='" + b + "') WHERE id='" + a + "'");
  CHECK(contains(clinic.noticed(), "entry " + a + " (client) of record " + clinic.maren + " is not what the record lists"));
}

TEST_CASE("Headers swapped between clients are noticed") {
  Tampered clinic;
  clinic.sql("CREATE TABLE t AS SELECT * FROM record; UPDATE record SET sealed=(SELECT sealed FROM t WHERE id='" + clinic.tobin + "'), "
             "revision=(SELECT revision FROM t WHERE id='" + clinic.tobin + "') WHERE id='" + clinic.maren + "'; DROP TABLE t;");
  CHECK(contains(clinic.noticed(), "the header of record " + clinic.maren + " does not fit its seal"));
}

TEST_CASE("An older version of a draft, put back, is noticed") {
  Tampered clinic;
  const std::string draft = clinic.entryOf(clinic.maren, 3);
  clinic.sql("CREATE TABLE kept AS SELECT * FROM entry WHERE id='" + draft + "'");
  {
    auto file = clinic.open();
    store::Change change;
    change.replaceDraft(clinic.maren, draft, "{\"answers\": 2}");
    take(file->commit(change));
  }
  clinic.sql("UPDATE entry SET sealed=(SELECT sealed FROM kept), revision=(SELECT revision FROM kept), written=(SELECT written FROM kept) WHERE id='" + draft + "'; DROP TABLE kept;");
  CHECK(contains(clinic.noticed(), "is not the version that the record lists"));
}

TEST_CASE("A whole record put back to an older state is noticed") {
  Tampered clinic;
  clinic.sql("CREATE TABLE r AS SELECT * FROM record WHERE id='" + clinic.maren + "'");
  {
    auto file = clinic.open();
    store::Change change;
    change.setCard(clinic.maren, "Maren O.");
    take(file->commit(change));
  }
  clinic.sql("UPDATE record SET revision=(SELECT revision FROM r), generation=(SELECT generation FROM r), sealed=(SELECT sealed FROM r) WHERE id='" + clinic.maren + "'; DROP TABLE r;");
  CHECK(contains(clinic.noticed(), "a record is gone or was put back to an older state"));
}

TEST_CASE("Rows and records that vanished are noticed") {
  {
    Tampered clinic;
    const std::string entry = clinic.entryOf(clinic.maren, 1);
    clinic.sql("DELETE FROM entry WHERE id='" + entry + "'");
    CHECK(contains(clinic.noticed(), "entry " + entry + " (screening) of record " + clinic.maren + " is gone from the file"));
  }
  {
    Tampered clinic;
    clinic.sql("DELETE FROM entry WHERE record='" + clinic.maren + "'; DELETE FROM record WHERE id='" + clinic.maren + "'");
    CHECK(contains(clinic.noticed(), "a record is gone"));
  }
  {
    Tampered clinic;
    clinic.sql("INSERT INTO entry SELECT record, 'more', revision, generation, written, sealed FROM entry WHERE record='" + clinic.maren + "' LIMIT 1");
    CHECK(contains(clinic.noticed(), "holds an entry that it does not list"));
  }
}

TEST_CASE("A readable column that was changed is noticed") {
  for (const char* change : {"UPDATE entry SET written=written+1", "UPDATE entry SET revision=revision+1", "UPDATE record SET revision=revision+1",
                             "UPDATE record SET generation=2", "UPDATE entry SET generation=2", "UPDATE clinician SET state='active'",
                             "UPDATE clinician SET operations=2", "UPDATE clinician SET revision=9", "UPDATE head SET revision=1",
                             "UPDATE head SET clinic='00'", "UPDATE journal SET generation=2", "UPDATE clinician SET public_key=zeroblob(32)",
                             "UPDATE data_key SET wrapped=zeroblob(80)", "DELETE FROM data_key WHERE handle='recovery'"}) {
    Tampered clinic;
    clinic.sql(change);
    INFO(change);
    CHECK(clinic.noticed() != "");
  }
}

TEST_CASE("A truncated, thinned out or reordered journal is noticed, and the first entry that does not fit is named") {
  {
    Tampered clinic;
    clinic.sql("DELETE FROM journal WHERE number=(SELECT max(number) FROM journal)");
    const std::string words = clinic.noticed();
    CHECK(contains(words, "the journal ends at entry"));
    CHECK(contains(words, "and its head says"));
  }
  {
    Tampered clinic;
    clinic.sql("DELETE FROM journal WHERE number=4");
    CHECK(contains(clinic.noticed(), "journal entry 4 is missing"));
  }
  {
    Tampered clinic;
    clinic.sql("UPDATE journal SET sealed=(SELECT sealed FROM journal WHERE number=6) WHERE number=5");
    CHECK(contains(clinic.noticed(), "journal entry 5 does not fit its seal"));
  }
}

TEST_CASE("A clinician whose rights ended, put back with the old row, does not get in") {
  SampleClinic clinic;
  clinic.addRolf();
  const std::string before = bytesOf(clinic.path);
  {
    auto file = clinic.open();
    take(file->revoke("rolf"));
  }
  putBytes(clinic.folder / "before.stile", before);
  {
    Database raw(clinic.path, store::Access::Write);
    raw.run("ATTACH '" + (clinic.folder / "before.stile") + "' AS old; DELETE FROM data_key WHERE handle='rolf'; DELETE FROM clinician WHERE handle='rolf'; "
            "INSERT INTO clinician SELECT * FROM old.clinician WHERE handle='rolf'; INSERT INTO data_key SELECT * FROM old.data_key WHERE handle='rolf';");
  }
  const auto rolf = clinic.tryOpen(store::Access::Read, "rolf", kRolf);
  REQUIRE_FALSE(rolf.ok());
  CHECK(rolf.failure().kind == base::FailureKind::Secret);
  CHECK(contains(rolf.failure().message, "your rights were withdrawn"));
  const auto ines = clinic.tryOpen();
  REQUIRE_FALSE(ines.ok());
  CHECK(contains(ines.failure().message, "the list of clinicians is not the one that was last written"));
}

TEST_CASE("A sign-off forged in another's name by one who holds the data key is refused and named") {
  Tampered clinic;
  clinic.addRolf();
  const auto rolf = clinic.keysOf("rolf", kRolf);
  std::string forged;
  {
    // Rolf seals everything as the program would, but can sign only with his own key.
    Database raw(clinic.path, store::Access::Write);
    store::Transaction transaction(raw);
    store::Head head = store::readHead(raw, rolf.keys);
    auto header = store::readHeader(raw, rolf.keys, clinic.maren);
    store::HeaderLine line;
    records::Entry entry{"0123456789abcdef0123456789abcdef", "signOff", clinic.nowMs, "ines", "ines", "{\"by\": \"ines\"}"};
    store::writeEntry(raw, rolf.keys, clinic.maren, entry, line, &rolf.seed);
    header.lines.push_back(line);
    store::writeHeader(raw, rolf.keys, header, head);
    store::append(raw, rolf.keys, head, {0, clinic.nowMs, "rolf", "added signOff", clinic.maren, entry.id, {}, {}}, nullptr);
    store::writeHead(raw, rolf.keys, head);
    transaction.commit();
    forged = entry.id;
  }
  auto file = clinic.open();
  const std::string words = "entry " + forged + " (signOff) of record " + clinic.maren + " is not signed by ines, who is named in it";
  CHECK(contains(file->read(clinic.maren).failure().message, words));
  CHECK(contains(file->verify().trouble, words));
}

TEST_CASE("A journal entry forged in another's name is named") {
  Tampered clinic;
  clinic.addRolf();
  const auto rolf = clinic.keysOf("rolf", kRolf);
  long long number = 0;
  {
    Database raw(clinic.path, store::Access::Write);
    store::Head head = store::readHead(raw, rolf.keys);
    store::append(raw, rolf.keys, head, {0, clinic.nowMs, "ines", "added override", clinic.maren, "x", {}, {}}, &rolf.seed);
    store::writeHead(raw, rolf.keys, head);
    number = head.entries;
  }
  CHECK(contains(clinic.open()->verify().trouble, "journal entry " + std::to_string(number) + " (added override) is not signed by ines"));
}

TEST_CASE("A public key exchanged by one who holds the data key does not fit the journal") {
  Tampered clinic;
  clinic.addRolf();
  const auto rolf = clinic.keysOf("rolf", kRolf);
  {
    Database raw(clinic.path, store::Access::Write);
    auto rows = store::readRoster(raw);
    store::Head head = store::readHead(raw, rolf.keys);
    for (auto& row : rows) {
      if (row.handle != "ines") continue;
      const auto ines = store::clinicianOf(row, rolf.keys);
      row.publicKey = store::publicKeyOf(store::Key::random());
      store::bind(row, ines, rolf.keys);
      store::writeRow(raw, row);
    }
    head.roster = store::rosterHash(rows);
    store::writeHead(raw, rolf.keys, head);
  }
  CHECK(contains(clinic.open(store::Access::Read, "rolf", kRolf)->verify().trouble, "clinician ines is not the one whom the journal set up"));
}
