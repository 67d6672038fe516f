// Every fact, norm, medicine class and smallest change names a source that stands in rules/sources/.
#include <catch2/catch.hpp>
#include <set>
#include <string>
#include <vector>

#include "../support/content.h"

using namespace stile;

namespace {

void check(const std::string& subject, const std::vector<std::string>& sources) {
  INFO(subject);
  CHECK_FALSE(sources.empty());
  for (const std::string& source : sources) {
    INFO(source);
    CHECK((source == rules::kNoSource || test::content().rules.sources.contains(source)));
  }
}

}  // namespace

TEST_CASE("Every source that a fact, a norm or a medicine class names is listed") {
  const auto& dictionary = test::content().dictionary;
  std::set<std::string> tables;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const facts::Definition& fact = dictionary.at(slot);
    if (!fact.isOption()) check(fact.id, fact.sources);
    if (fact.smallestChange) check(fact.id + ", smallest change", fact.smallestChangeSources);
    if (!fact.derived.table.empty()) tables.insert(fact.derived.table);
  }
  for (const std::string& table : tables) check(table, dictionary.norm(table)->sources);
  for (const auto& one : dictionary.medicines().all()) check(one.id, one.sources);
}

TEST_CASE("Every medicine class is read by a fact, or is the list of those that no rule asks about") {
  const auto& dictionary = test::content().dictionary;
  std::set<std::string> read;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const auto& derived = dictionary.at(slot).derived;
    if (derived.kind == facts::DerivedKind::ClassMember)
      read.insert(derived.codes.begin(), derived.codes.end());
  }
  std::set<std::string> names;
  for (const auto& one : dictionary.medicines().all()) {
    INFO(one.id);
    CHECK((read.contains(one.id) || one.id == "known-without-rule"));
    names.insert(one.names.begin(), one.names.end());
  }
  CHECK(names.size() >= 300);
  WARN(dictionary.medicines().all().size() << " medicine classes, " << names.size() << " generic names");
}

TEST_CASE("A clinician may say of an unknown medicine that it is of any class with names of its own") {
  const auto& dictionary = test::content().dictionary;
  const facts::Definition* lookedUp = dictionary.find("medicineLookedUp");
  REQUIRE(lookedUp);
  std::set<int> offered;
  for (const auto& option : lookedUp->options) {
    const int found = dictionary.medicines().findByOption(option.code);
    INFO(option.code);
    CHECK((found >= 0) == (option.code != "noClassHere"));
    offered.insert(found);
  }
  // Words that people say and forms they name tell of a medicine; they are no answer to what it is.
  const int byName = dictionary.medicines().words().findRoute("by-name");
  const auto isNoAnswer = [byName](const facts::MedicineClass& one) {
    return one.onlyBy == std::vector<int>{byName} || one.id == "back-passage-form" ||
           one.id == "known-without-rule";
  };
  const auto& all = dictionary.medicines().all();
  for (std::size_t i = 0; i < all.size(); ++i) {
    INFO(all[i].id);
    CHECK((offered.contains(static_cast<int>(i)) || !all[i].namesOf.empty() || isNoAnswer(all[i])));
  }
}
