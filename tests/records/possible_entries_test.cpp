// What can be recorded of a client: what is open, and what may happen at any time.
#include "records/possible_entries.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "records/entry_kinds.h"
#include "records/entry_words.h"

using namespace stile::records;
using stile::base::Date;

namespace {

const Date kToday = *Date::parse("2026-11-25");

const PossibleEntry* find(const std::vector<PossibleEntry>& all, const std::string& kind) {
  const auto at = std::find_if(all.begin(), all.end(), [&kind](const PossibleEntry& one) { return one.kind == kind; });
  return at == all.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE("a letter is sent, then chased or answered, and the entries know which") {
  ClientRecord record;
  CHECK(find(possibleEntries(record, kToday), "clearanceReply") == nullptr);
  record.clearances.push_back({.id = "c1", .screening = "s1", .rules = {}, .to = "Dr Ewan Teale", .requested = kToday, .sent = {}, .answered = {}, .until = {}, .chases = {}});
  auto all = possibleEntries(record, kToday);
  REQUIRE(find(all, "clearanceSent") != nullptr);
  CHECK(find(all, "clearanceSent")->known.front() == std::pair<std::string, std::string>("request", "c1"));
  CHECK(find(all, "clearanceChase") == nullptr);
  CHECK(find(all, "clearanceReply") != nullptr);
  record.clearances.front().sent = kToday;
  all = possibleEntries(record, kToday);
  CHECK(find(all, "clearanceSent") == nullptr);
  CHECK(find(all, "clearanceChase") != nullptr);
  record.clearances.front().isClosed = true;
  CHECK(find(possibleEntries(record, kToday), "clearanceReply") == nullptr);
}

TEST_CASE("a plan is begun once, and nothing is recorded in a record that rests") {
  ClientRecord record;
  CHECK(find(possibleEntries(record, kToday), "started") == nullptr);
  record.screenings.push_back({.id = "s1", .date = kToday, .content = "", .rules = {}, .signers = {}, .plan = {}});
  CHECK(find(possibleEntries(record, kToday), "started") != nullptr);
  record.startedWith = "s1";
  CHECK(find(possibleEntries(record, kToday), "started") == nullptr);
  CHECK(find(possibleEntries(record, kToday), "event") != nullptr);
  record.mergedInto = "another";
  CHECK(possibleEntries(record, kToday).empty());
}

TEST_CASE("every member that people fill in has words of its own, and every possible entry is a kind") {
  for (const EntryKind& kind : entryKinds())
    for (const Member& member : kind.members)
      if (kind.isByHand && member.type != MemberType::Reference && member.name != "needsSecond") {
        CAPTURE(kind.id, member.name);
        CHECK(memberWords(member.name) != member.name);
      }
  ClientRecord record;
  for (const PossibleEntry& entry : possibleEntries(record, kToday)) CHECK(entryKind(entry.kind) != nullptr);
}
