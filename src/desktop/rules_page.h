// The rule book on the screen: search, one rule in words with its sources, and what an edited copy of the
// content folder would change for the client who is open.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <thread>
#include <vector>

#include "desktop/page.h"
#include "records/client_record.h"

class wxTextCtrl;

namespace stile::desktop {

class ChoiceField;
class Column;
class KeyButton;

class RulesPage : public Page {
 public:
  RulesPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down: another rule · Ctrl F find · Alt C check an edited copy"; }

 private:
  /// An edited copy as it was read, by a thread of its own.
  struct Edited {
    std::string folder;
    base::Issues issues;
    std::shared_ptr<const screening::Content> content;
  };
  void buildTop();
  void fill();
  void select(std::size_t rule);
  void checkCopy();
  void showCopy(const Edited& edited);
  void showChanges(const screening::Content& edited);

  wxTextCtrl* find_ = nullptr;
  ChoiceField* topic_ = nullptr;
  wxPanel* top_;
  Column *list_, *side_;
  std::vector<const rules::Rule*> found_;
  std::vector<KeyButton*> rows_;
  std::size_t selected_ = 0;
  std::optional<records::ClientRecord> record_;  ///< of the client who is open
  std::jthread reader_;
};

}  // namespace stile::desktop
