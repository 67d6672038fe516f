// The starter plan: every exercise with its drawing, dose and why; what was left out; week by week.
#pragma once

#include <vector>

#include "desktop/page.h"

namespace stile::plan {
struct StarterPlan;
}

namespace stile::desktop {

class Column;
class KeyButton;

class PlanPage : public Page {
 public:
  PlanPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down exercise · F6 other side"; }

 private:
  const plan::StarterPlan* plan() const;
  void buildList(bool isHeld);
  void buildNoPlan();
  void select(std::size_t line);
  void buildSide();

  Column *list_, *side_;
  std::vector<KeyButton*> rows_;
  std::size_t selected_ = 0;
};

}  // namespace stile::desktop
