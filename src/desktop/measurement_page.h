// Measurements and tests: what is taken by hand, with clock and counter where a test needs them. The
// values go into the draft as answers of the questions they answer.
#pragma once

#include <string>
#include <vector>

#include <wx/timer.h>
#include <wx/weakref.h>

#include "desktop/measurement_view.h"
#include "desktop/page.h"
#include "desktop/prose.h"

namespace stile::desktop {

class AnswerPanel;
struct AnswerStep;
class Column;
class KeyButton;
class TestPanel;

class MeasurementPage : public Page {
 public:
  MeasurementPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down: another measure · Enter: its value · Space: clock and counter · Esc: the list"; }

 private:
  void buildWhyNot(const std::string& title, const std::string& words);
  /// Reads the rows anew and keeps the place.
  void fill();
  void buildList();
  void buildDetail();
  /// What to do now comes before anything is filed: a full disk may not keep it back.
  void buildUrgent();
  void select(std::size_t row);
  void toList();
  bool isInList() const;
  void took(const AnswerStep& step);

  Column *list_, *detail_;
  AnswerPanel* answer_ = nullptr;
  TestPanel* test_ = nullptr;
  std::vector<MeasureRow> rows_;
  std::vector<KeyButton*> buttons_;
  std::size_t selected_ = 0;
  wxTimer filing_{this};
  wxWeakRef<Prose> filed_;  ///< below what is urgent: what became of its action record
};

}  // namespace stile::desktop
