// The decision: what is open and why, findings, limits, referrals, and the signature under it.
#pragma once

#include <memory>

#include "desktop/page.h"

namespace stile::desktop {

class Column;
class Prose;

class DecisionPage : public Page {
 public:
  DecisionPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  std::string keys() const override { return "Alt S sign · Alt O override · Alt N copy a note"; }
  bool onKey(wxKeyEvent& event) override;

 private:
  void buildLeft();
  void buildRight();
  void buildSigning();
  void buildNotes();
  /// Asks for the passphrase until it is right. After a wrong one that was called off the file is locked.
  bool isSignedFor(const std::string& title, const std::string& words, const std::string& button);
  void sign();
  void decideOtherwise();
  void signSecond(const std::string& entry);
  void signNow();
  void copyNote();
  /// Fills in what another answer would change, once it is found.
  void searchNearest();
  void goToQuestion(int slot);

  Column *left_, *right_;
  Prose* nearest_ = nullptr;
  std::shared_ptr<bool> isHere_ = std::make_shared<bool>(true);  ///< gone with the page: a search may outlive it
};

}  // namespace stile::desktop
