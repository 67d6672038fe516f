// Clients, their search, and those who could be one person.
#include <catch2/catch.hpp>

#include "records/client.h"
#include "records/clinician.h"
#include "records/duplicate.h"
#include "records/entry_kinds.h"
#include "records/follow_up_policy.h"

using namespace stile;

namespace {

std::string issuesOf(const base::Issues& issues) {
  std::string all;
  for (const auto& issue : issues.all()) all += issue.message + "\n";
  return all;
}

records::Card card(std::string given, std::string family, std::string born, std::string number = {}) {
  records::Card one;
  one.given = std::move(given);
  one.family = std::move(family);
  one.born = std::move(born);
  one.record = std::move(number);
  return one;
}

std::string checked(const std::string& kind, const std::string& body) {
  base::Issues issues;
  const std::vector<records::Entry> record{{"s1", "screening", 0, "", "", "{}"}};
  checkBody(*records::entryKind(kind), body, "body.json", record, issues);
  return issuesOf(issues);
}

}  // namespace

TEST_CASE("A client comes back as written") {
  base::Issues issues;
  const auto client =
      records::loadClient(R"({"given": "Åsa", "family": "Ní Bhriain", "born": "1958-03-14", "record": "T-17",
    "physician": {"name": "Dr Hale", "place": "Tarnside Surgery"}, "drawnBuild": "slight"})",
                          "client.json", issues);
  CHECK(issues.empty());
  const auto back = records::loadClient(toJson(client), "back", issues);
  CHECK(issues.empty());
  CHECK(back.fullName() == "Åsa Ní Bhriain");
  CHECK(back.born->toText() == "1958-03-14");
  CHECK(back.physician.place == "Tarnside Surgery");
  CHECK(back.record == "T-17");
  CHECK(back.drawnBuild == movement::Build::Slight);
}

TEST_CASE("What is missing, misspelt or impossible in a client is told") {
  base::Issues issues;
  records::loadClient(R"({"given": "A", "born": "1958-02-30", "phone": "1", "drawnBuild": "heavy"})",
                      "client.json", issues);
  const std::string told = issuesOf(issues);
  CHECK(told.find("family") != std::string::npos);
  CHECK(told.find("1958-02-30") != std::string::npos);
  CHECK(told.find("phone") != std::string::npos);
  CHECK(told.find("figures are not drawn \"heavy\"") != std::string::npos);
}

TEST_CASE("Names are found whatever their capitals and marks") {
  CHECK(records::searchable("  ÅSA  Ní   Bhriain ") == "asa ni bhriain");
  CHECK(records::searchable("Łukasz Żak") == "lukasz zak");
  CHECK(records::searchable("Müßig Ŋora") == "musig nora");
  CHECK(records::searchable("Ольга") == "Ольга");
}

TEST_CASE("Those who could be one person are told, others are not") {
  const auto maren = card("Maren", "Oakshott", "1958-03-14", "T-17");
  CHECK(couldBeSame(maren, card("MAREN", "Oakshott", "1958-03-14")) == "name and date of birth are the same");
  CHECK(couldBeSame(maren, card("Marem", "Oakshot", "1958-03-14")) == "date of birth is the same, and the names differ little");
  CHECK(couldBeSame(maren, card("Oakshott", "Maren", "1958-03-14")) == "date of birth is the same, and given and family name are exchanged");
  CHECK(couldBeSame(maren, card("Maren", "Oakshott", "1958-03-15")) == "the name is the same, and the dates of birth differ in one sign");
  CHECK(couldBeSame(maren, card("Tobin", "Fell", "1990-01-01", "T-17")) == "the record number is the same");
  CHECK(couldBeSame(maren, card("Tobin", "Fell", "1958-03-14")) == "");
  CHECK(couldBeSame(maren, card("Maren", "Oakshott", "1958-04-25")) == "");
  CHECK(couldBeSame(card("A", "B", ""), card("A", "B", "")) == "");
}

TEST_CASE("Bodies of entries are checked: missing, unknown, wrong type, wrong word, wrong reference") {
  CHECK(checked("signOff", R"({"date": "2026-01-05", "screening": "s1"})") == "");
  CHECK(checked("signOff", R"({"date": "2026-01-05", "screening": "s2"})").find("must be the id of an entry of kind screening") != std::string::npos);
  CHECK(checked("signOff", R"({"date": "5 January", "screening": "s1"})").find("YYYY-MM-DD") != std::string::npos);
  CHECK(checked("consent", R"({"date": "2026-01-05", "what": "all", "given": true, "how": "x"})").find("must be one of: screening, physician") != std::string::npos);
  CHECK(checked("consent", R"({"date": "2026-01-05", "what": "keeping", "given": "yes", "how": "x"})").find("true or false") != std::string::npos);
  CHECK(checked("contact", R"({"date": "2026-01-05", "how": "", "reached": true})").find("not empty") != std::string::npos);
  CHECK(checked("contact", R"({"date": "2026-01-05", "how": "a", "reached": true, "whom": "b"})").find("whom") != std::string::npos);
  CHECK(checked("contact", R"({"date": "2026-01-05", "reached": true})").find("how") != std::string::npos);
  CHECK(checked("checkIn", R"({"date": "2026-01-05", "symptoms": false, "effort": 3.5})").find("whole number") != std::string::npos);
  CHECK(records::entryKind("nothing") == nullptr);
}

TEST_CASE("Sign-in names and passphrases") {
  using namespace records;
  CHECK(troubleWithHandle("ines") == "");
  for (const char* bad : {"", "a", "Ines", "ines calloway", "recovery", "a-very-long-name-of-more"}) CHECK(troubleWithHandle(bad) != "");
  CHECK(troubleWithPassphrase("twelve signs") == "");
  CHECK(troubleWithPassphrase("eleven sign") != "");
  CHECK(troubleWithPassphrase("öööööööööööö") == "");
  for (const Role role : {Role::Assistant, Role::Clinician, Role::Lead}) CHECK(roleOf(idOf(role)) == role);
}

TEST_CASE("A follow-up policy without steps, sentences or lengths of time is refused") {
  base::Issues issues;
  records::FollowUpPolicy::load(R"({"chase": [{"afterDays": 14, "next": "a"}, {"afterDays": 7, "next": "b"}], "checkInAfter": {"value": 0, "unit": "wk"},
    "screenAgainAfter": {"value": 1, "unit": "moon"}, "next": {"draft": "go on"}})", "follow-up.json", issues);
  const std::string told = issuesOf(issues);
  CHECK(told.find("later at each step") != std::string::npos);
  CHECK(told.find("no length of time") != std::string::npos);
  CHECK(told.find("screenAgainSooner") != std::string::npos);
  CHECK(told.find("signOff") != std::string::npos);
  CHECK(told.find("painNextMorningFrom") != std::string::npos);
  CHECK(told.find("unreached") != std::string::npos);
}
