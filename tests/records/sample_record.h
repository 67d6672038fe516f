// Entries of an invented client, one a line.
#pragma once

#include <string>
#include <vector>

#include "records/worklist.h"

namespace stile::test {

inline base::Date day(const std::string& text) { return *base::Date::parse(text); }

class SampleRecord {
 public:
  SampleRecord() { add("client", R"({"given": "Maren", "family": "Oakshott", "born": "1958-03-14", "telephone": "01632 960 001"})"); }

  /// `body` may use ' for ". Gives the entry's id.
  std::string add(const std::string& kind, std::string body, const std::string& signer = {}) {
    for (char& c : body)
      if (c == '\'') c = '"';
    const std::string id = "e" + std::to_string(entries.size());
    entries.push_back({id, kind, 0, "ines", signer, body});
    return id;
  }

  records::ClientRecord folded() const { return records::fold(entries, 5); }
  std::vector<records::Task> tasks() const { return records::tasksOf(folded(), policy()); }
  /// "what due", in order.
  std::string told() const {
    std::string text;
    for (const auto& task : tasks()) text += (text.empty() ? "" : "; ") + task.what + " " + task.due.toText();
    return text;
  }

  static records::FollowUpPolicy policy() {
    records::FollowUpPolicy result;
    result.chase = {{7, "call"}, {14, "write"}, {28, "decide"}};
    result.checkInAfter = {2, base::CalendarUnit::Week};
    result.screenAgainAfter = {12, base::CalendarUnit::Month};
    result.screenAgainSooner = {6, base::CalendarUnit::Month};
    result.soonerRules = {"falls-*"};
    result.painNextMorningFrom = 5;
    result.unreached = {"another means", "letter"};
    result.progression = {{"ill", {}, {}, {}, {}, false, true, false, records::Move::Half, "half", ""},
                          {"away", {}, {}, 2, {}, false, false, false, records::Move::Start, "start", ""},
                          {"missed", {}, {}, 1, {}, false, false, false, records::Move::Back, "back", ""},
                          {"pain", 3, {}, {}, {}, true, false, false, records::Move::Back, "pain", ""},
                          {"effort", {}, 1, {}, {}, false, false, false, records::Move::Again, "effort", ""},
                          {"few", {}, {}, {}, 67, false, false, false, records::Move::Again, "few", ""},
                          {"untold", {}, {}, {}, {}, false, false, true, records::Move::Again, "untold", ""},
                          {"well", {}, {}, {}, {}, false, false, false, records::Move::On, "on", ""}};
    for (const auto& id : records::taskIds()) result.next[id] = "do " + id;
    return result;
  }

  std::vector<records::Entry> entries;
};

}  // namespace stile::test
