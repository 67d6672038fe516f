// The papers of the client: each as it will be printed, and all saved as PDF into a folder.
#pragma once

#include <string>
#include <vector>

#include "desktop/page.h"

namespace stile::desktop {

class Column;
class KeyButton;
class PdfView;

class PapersPage : public Page {
 public:
  PapersPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "up, down paper · Ctrl S save as PDF"; }

 private:
  void select(std::size_t paper);
  void save();

  Column* list_;
  PdfView* view_;
  std::vector<DeskPaper> papers_;
  std::vector<KeyButton*> rows_;
  std::size_t selected_ = 0;
};

}  // namespace stile::desktop
