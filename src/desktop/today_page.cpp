#include "desktop/today_page.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/wupdlock.h>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

constexpr int kWithSide = 880;  // least width of a page that has room for it beside the list

}  // namespace

TodayPage::TodayPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  auto* left = new wxBoxSizer(wxVERTICAL);
  auto* top = new wxBoxSizer(wxHORIZONTAL);
  day_ = new Prose(this, theme(), Step::Title, " ");
  top->Add(day_, 0, wxALIGN_CENTRE_VERTICAL);
  top->AddStretchSpacer(1);
  find_ = new wxTextCtrl(this, wxID_ANY, "");
  find_->SetFont(theme().font(Step::Body));
  top->Add(new Prose(this, theme(), Step::Reading, "Find"), 0, wxALIGN_CENTRE_VERTICAL | wxLEFT | wxRIGHT, FromDIP(8));
  find_->SetHint("Part of a name or number");
  nameFor(*find_, "Find a client", "Part of a name or of the record number");
  find_->SetMinSize(FromDIP(wxSize(110, -1)));
  find_->SetMaxSize(FromDIP(wxSize(270, -1)));
  find_->Bind(wxEVT_TEXT, [this](wxCommandEvent&) { fill(); });
  top->Add(find_, 2, wxALIGN_CENTRE_VERTICAL | wxRIGHT, FromDIP(10));
  auto* made = new KeyButton(this, theme(), "", {"Ctrl N", "New client", "", false});
  made->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    desk().closeClient();
    this->place().go("client");
  });
  top->Add(made, 0, wxALIGN_CENTRE_VERTICAL);
  left->Add(top, 0, wxEXPAND | wxALL, FromDIP(22));
  list_ = new Column(this, theme(), Colour::Sheet, 0);
  left->Add(list_, 1, wxEXPAND | wxLEFT | wxRIGHT, FromDIP(22));
  across->Add(left, 68, wxEXPAND);
  across->Add(new wxPanel(this, wxID_ANY, wxDefaultPosition, wxSize(1, -1)), 0, wxEXPAND);
  side_ = new Column(this, theme(), Colour::Well, 22, 560);
  across->Add(side_, 32, wxEXPAND);
  SetSizer(across);
  // Enter opens the client without it; a list that nobody can read is worse.
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    side_->Show(event.GetSize().x >= FromDIP(kWithSide) * theme().factor());
    event.Skip();
  });
}

void TodayPage::enter() {
  desk().closeClient();
  day_->say(dayInWords(desk().today()));
  find_->ChangeValue("");
  selected_ = 0;
  fill();
  find_->SetFocus();
}

void TodayPage::fill() {
  const wxWindowUpdateLocker calm(this);
  list_->clear();
  rows_.clear();
  shown_.clear();
  const std::string part = plain(find_->GetValue());
  const auto groups = todayListOf(*desk().clinic(), desk().today(), part);
  if (groups.empty()) buildEmpty(part);
  for (const TodayGroup& group : groups) {
    auto* title = new Prose(list_, theme(), Step::Reading, group.title);
    title->SetFont(theme().font(15, true));
    list_->put(title, 10);
    list_->put(new Rule(list_, theme(), Colour::Post, 3), 4);
    for (const TodayRow& row : group.rows) {
      auto* button = new KeyButton(list_, theme(), "row", {"", row.name, row.sentence + (row.since.empty() ? "" : " · " + row.since), true});
      const std::size_t index = rows_.size();
      button->Bind(wxEVT_BUTTON, [this, index](wxCommandEvent&) {
        if (selected_ == index) return CallAfter([this] { open("client"); });
        select(index);
      });
      button->Bind(wxEVT_SET_FOCUS, [this, index](wxFocusEvent& event) {
        event.Skip();
        CallAfter([this, index] { select(index); });
      });
      list_->put(button);
      rows_.push_back(button);
      shown_.push_back(row);
    }
  }
  list_->refit();
  if (selected_ >= rows_.size()) selected_ = 0;
  showSelected();
}

void TodayPage::buildEmpty(const std::string& part) {
  list_->put(new Prose(list_, theme(), Step::Heading, part.empty() ? "Nobody is in this clinic file yet" : "Nobody is found by “" + part + "”"), 44);
  list_->put(new Prose(list_, theme(), Step::Body, part.empty() ? "Ctrl N takes the first client in." : "Look for another part of the name, or take a new client in with Ctrl N."), 8);
}

void TodayPage::select(std::size_t row) {
  if (row >= rows_.size()) return;
  selected_ = row;
  showSelected();
}

void TodayPage::showSelected() {
  const wxWindowUpdateLocker calm(this);
  for (std::size_t i = 0; i < rows_.size(); ++i) rows_[i]->choose(i == selected_);
  side_->clear();
  if (selected_ < shown_.size()) {
    const TodayRow& row = shown_[selected_];
    side_->put(new Prose(side_, theme(), Step::Heading, row.name));
    const auto* line = desk().clinic()->client(row.id);
    for (const auto& task : line->card.tasks)
      side_->put(new TermRow(side_, theme(), task.due <= desk().today() ? "Now" : "From " + task.due.toLongText(),
                             records::nextOf(task, desk().clinic()->policy())), 4);
    if (line->card.tasks.empty()) side_->put(new Prose(side_, theme(), Step::Body, row.sentence + "."), 8);
    side_->space(16);
    auto* go = new KeyButton(side_, theme(), "primary", {"Enter", "Open", "", false});
    nameFor(*go, "Open " + line->card.name());
    go->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { open("client"); }); });
    side_->stack().Add(go);
  }
  side_->refit();
}

void TodayPage::open(const std::string& page) {
  if (selected_ >= shown_.size()) return;
  desk().openClient(shown_[selected_].id);
  place().go(page);
}

bool TodayPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (key == 'F' && event.ControlDown()) {
    find_->SetFocus();
    return true;
  }
  if (!find_->HasFocus()) return false;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) return select(selected_ + 1), true;
  if (key == WXK_UP && selected_ > 0) return select(selected_ - 1), true;
  if ((key == WXK_RETURN || key == WXK_NUMPAD_ENTER) && !rows_.empty()) return CallAfter([this] { open("client"); }), true;
  return false;
}

}  // namespace stile::desktop
