#include "desktop/papers_page.h"

#include <wx/dirdlg.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/stdpaths.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include "desktop/key_button.h"
#include "desktop/pdf_view.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

using drawing::Colour;

PapersPage::PapersPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  list_ = new Column(this, theme(), Colour::Sheet, 22, 420);
  view_ = new PdfView(this, theme());
  across->Add(list_, 30, wxEXPAND);
  across->Add(view_, 70, wxEXPAND);
  SetSizer(across);
}

void PapersPage::enter() {
  const wxBusyCursor waiting;
  const wxWindowUpdateLocker calm(this);
  list_->clear();
  rows_.clear();
  list_->put(new Prose(list_, theme(), Step::Title, "Papers"));
  auto made = desk().papers();
  papers_ = made ? std::move(made).value() : std::vector<DeskPaper>{};
  if (!made) list_->put(new Prose(list_, theme(), Step::Body, made.failure().message), 8);
  for (std::size_t i = 0; i < papers_.size(); ++i) {
    auto* row = new KeyButton(list_, theme(), "row", {"", papers_[i].title, "", false});
    row->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { select(i); });
    row->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { select(i); });
    });
    list_->put(row, i == 0 ? 12 : 0);
    rows_.push_back(row);
  }
  if (!papers_.empty()) {
    const bool isFiled = !desk().filedEntry().empty();
    list_->put(new Prose(list_, theme(), Step::Small, isFiled ? "Saving keeps a copy of each paper in the record." : "Not filed yet: papers can be saved once the screening is signed.", Colour::Ink2), 16);
    auto* save = new KeyButton(list_, theme(), "primary", {"Ctrl S", "Save as PDF…", "", false});
    save->Enable(isFiled);
    save->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { this->save(); }); });
    list_->space(10);
    list_->stack().Add(save);
  }
  list_->refit();
  selected_ = papers_.size();
  if (!rows_.empty()) {
    select(0);
    rows_.front()->SetFocus();
  }
}

void PapersPage::select(std::size_t paper) {
  if (paper == selected_ || paper >= papers_.size()) return;
  selected_ = paper;
  for (std::size_t i = 0; i < rows_.size(); ++i) rows_[i]->choose(i == paper);
  view_->show(papers_[paper].pdf, papers_[paper].title);
  place().say(papers_[paper].title + ": " + std::to_string(view_->pages()) + (view_->pages() == 1 ? " page" : " pages"));
}

void PapersPage::save() {
  if (desk().filedEntry().empty()) return place().say("Sign the screening first: papers are kept with it.");
  wxDirDialog dialog(this, "Folder for the papers", wxStandardPaths::Get().GetDocumentsDir(), wxDD_NEW_DIR_BUTTON);
  if (dialog.ShowModal() != wxID_OK) return;
  const wxBusyCursor waiting;
  const auto done = desk().issuePapers(plain(dialog.GetPath()));
  if (!done) return place().tell(done.failure());
  place().say("Saved in " + plain(dialog.GetPath()));
  place().refreshHead();
}

bool PapersPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (event.ControlDown() && key == 'S') return CallAfter([this] { save(); }), true;
  if (rows_.empty() || (key != WXK_UP && key != WXK_DOWN)) return false;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) rows_[selected_ + 1]->SetFocus();
  if (key == WXK_UP && selected_ > 0) rows_[selected_ - 1]->SetFocus();
  return true;
}

}  // namespace stile::desktop
