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
  std::string keys() const override { return "Page up, page down · F6 other side · Alt S sign · Alt O override · Alt N note"; }
  bool onKey(wxKeyEvent& event) override;

 private:
  void clear();
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
  /// A button that shows the rest of a long list, or folds it again.
  void addFold(Column& column, std::size_t count, const std::string& what, bool& isUnfolded);

  Column *left_, *right_;
  bool areFindingsUnfolded_ = false, areLimitsUnfolded_ = false;
  bool isRightInHand_ = false;  ///< the side that page up and page down move
  Prose* nearest_ = nullptr;
  std::shared_ptr<bool> isHere_ = std::make_shared<bool>(true);  ///< gone with the page: a search may outlive it
};

}  // namespace stile::desktop
