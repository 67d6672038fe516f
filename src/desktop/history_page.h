// History and follow-up: what happened to a client and when, what changed between two screenings, and
// what is recorded now.
#pragma once

#include <string>
#include <vector>

#include "application/clearance_answer.h"
#include "application/client_timeline.h"
#include "desktop/page.h"
#include "records/possible_entries.h"

namespace stile::desktop {

class Column;
class EntryForm;
class KeyButton;
class ReplyForm;

class HistoryPage : public Page {
 public:
  HistoryPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down: another entry · Tab: what to record · Ctrl Enter: record it · Esc: back"; }

 private:
  /// Reads the record anew.
  bool read();
  void buildTimeline();
  void buildSide();
  void buildDetails(const application::TimelineLine& line);
  void buildChanges(const std::string& screening);
  void buildForm(const records::PossibleEntry& entry);
  void buildReply(const records::PossibleEntry& entry);
  void buildFoot();
  void buildLetter(const std::string& letter, bool mayBeSent);
  void select(std::size_t line);
  void record();
  void ask();
  void done(const std::string& words);
  void complain(const std::string& words);
  wxWindow* button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act);

  Column *list_, *side_;
  EntryForm* form_ = nullptr;
  ReplyForm* reply_ = nullptr;
  records::PossibleEntry recording_;
  std::vector<application::FindingAsked> asked_;
  std::vector<records::Entry> entries_;
  records::ClientRecord record_;
  std::vector<application::TimelineLine> lines_;
  std::vector<KeyButton*> rows_;
  std::size_t selected_ = 0;
};

}  // namespace stile::desktop
