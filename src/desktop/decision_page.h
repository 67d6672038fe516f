// The decision: what is open and why, findings, limits, referrals, and the signature under it.
#pragma once

#include "desktop/page.h"

namespace stile::desktop {

class Column;

class DecisionPage : public Page {
 public:
  DecisionPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  std::string keys() const override { return "F6 other side · Alt S sign"; }
  bool onKey(wxKeyEvent& event) override;

 private:
  void buildLeft();
  void buildRight();
  void buildSigning();
  void sign();
  void signNow();
  void copyNote();
  void goToQuestion(int slot);

  Column *left_, *right_;
};

}  // namespace stile::desktop
