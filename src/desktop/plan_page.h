// The starter plan: every exercise with its drawing, dose and why, and what it can be swapped for; what
// was left out; week by week.
#pragma once

#include <optional>
#include <vector>

#include "desktop/page.h"
#include "movement/build.h"

namespace stile::plan {
struct Edit;
struct Line;
struct StarterPlan;
}

namespace stile::desktop {

class BuildField;
class Column;
class KeyButton;

class PlanPage : public Page {
 public:
  PlanPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down exercise · 1 to 9 swap · D drop · P pin · T left out · Ctrl Z undo"; }

 private:
  const plan::StarterPlan* plan() const;
  void buildList(bool isHeld);
  void buildNoPlan();
  /// Draws the figures as the client wants to see them, from now on.
  void drawAs(std::optional<movement::Build> build);
  void select(std::size_t line);
  void buildSide();
  /// What a clinician can do with the line: pin, drop, and what it can be swapped for.
  void buildChanges();
  /// Each with its reason, and a way to take it all the same.
  void buildLeftOut();
  /// A reason without the ids of rules, what they found behind it.
  std::string inWords(const std::string& because);
  /// Asks for a reason where the change goes beyond the limits.
  void change(plan::Edit edit, const std::string& words);
  void changed(const std::string& exercise, const std::string& words);
  void swap(std::size_t other);
  void pin();
  void drop();
  void undo();

  Column *list_, *side_;
  BuildField* build_ = nullptr;
  std::vector<KeyButton*> rows_;
  std::size_t selected_ = 0;
  KeyButton* firstTake_ = nullptr;  ///< of what was left out, the first that can be taken all the same
  std::vector<std::string> others_;  ///< exercises that the line can be swapped for, in the order of their keys
};

}  // namespace stile::desktop
