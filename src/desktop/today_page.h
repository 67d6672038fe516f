// Today: who waits for whom, a search, and the client who is selected.
#pragma once

#include <string>
#include <vector>

#include "desktop/page.h"
#include "desktop/today_list.h"

class wxTextCtrl;
class wxBoxSizer;

namespace stile::desktop {

class Column;
class KeyButton;
class Prose;

class TodayPage : public Page {
 public:
  TodayPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "Ctrl N new client · Ctrl F find · up, down and Enter: the client"; }

 private:
  void fill();
  void buildEmpty(const std::string& part);
  void select(std::size_t row);
  void showSelected();
  void open(const std::string& page);

  wxTextCtrl* find_;
  Column *list_, *side_;
  Prose* day_;
  std::vector<KeyButton*> rows_;
  std::vector<TodayRow> shown_;
  std::size_t selected_ = 0;
};

}  // namespace stile::desktop
