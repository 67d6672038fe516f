#include "desktop/head_bar.h"

#include <wx/dcclient.h>
#include <wx/sizer.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr int kBesideWho = 20 + 30 + 14 + 16 + 12;  // edges, mark, gaps
constexpr int kLeastWho = 90, kHeadHeight = 66, kStackedHead = 84, kAfterName = 14;

using drawing::Colour;
using drawing::Line;
using drawing::Paint;
using drawing::Path;
using drawing::PathStep;
using drawing::Polygon;
using drawing::Rectangle;

/// Two slant-cut uprights; from below a whole rung, a broken one, an empty wire.
drawing::Drawing mark() {
  drawing::Drawing mark{30, 40, "Stile", "The mark of the program: the steps over a fence", {}};
  for (const double x : {2.0, 23.0})
    mark.shapes.push_back({Polygon{{{x, 36}, {x, 7}, {x + 5, 3}, {x + 5, 36}}, {.fill = Colour::Post}}});
  mark.shapes.push_back({Path{{{PathStep::Kind::Move, {7, 10}, {}, {}}, {PathStep::Kind::Quadratic, {23, 10}, {15, 16}, {}}},
                              {.stroke = Colour::Shut, .strokeWidth = 1.8}}});
  mark.shapes.push_back({Line{{7, 20}, {23, 20}, {.stroke = Colour::Open, .strokeWidth = 4, .isDashed = true}}});
  mark.shapes.push_back({Rectangle{5, 28, 20, 5, {.fill = Colour::Open}}});
  return mark;
}

}  // namespace

HeadBar::HeadBar(wxWindow* parent, const Theme& theme, std::function<void(const std::string&)> go)
    : wxPanel(parent), theme_(theme), go_(std::move(go)) {
  SetBackgroundColour(theme.colour(Colour::Ground));
  across_ = new wxBoxSizer(wxHORIZONTAL);
  across_->Add(new DrawingPanel(this, theme, Colour::Ground, mark()), 0, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(20));
  whoSizer_ = new wxBoxSizer(wxVERTICAL);
  name_ = new Prose(this, theme, Step::Heading, "Stile");
  about_ = new Prose(this, theme, Step::Small, " ", Colour::Ink2);
  whoSizer_->Add(name_, 0, wxRIGHT, FromDIP(kAfterName));
  whoSizer_->Add(about_);
  across_->Add(whoSizer_, 1, wxALIGN_CENTRE_VERTICAL | wxLEFT, FromDIP(kAfterName));
  fence_ = new wxPanel(this);
  fence_->SetBackgroundColour(theme.colour(Colour::Ground));
  groupFor(*fence_, "Pages");
  fence_->SetSizer(new wxBoxSizer(wxHORIZONTAL));
  across_->Add(fence_, 0, wxALIGN_BOTTOM | wxRIGHT, FromDIP(16));
  down_ = new wxBoxSizer(wxVERTICAL);
  down_->Add(across_, 1, wxEXPAND | wxTOP, FromDIP(6));
  down_->Add(new Rule(this, theme, Colour::Post, 3), 0, wxEXPAND);
  SetSizer(down_);
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    arrange();
    shorten();
  });
  SetMinSize(wxSize(-1, FromDIP(static_cast<int>(kHeadHeight * theme.factor()))));
}

void HeadBar::showWho(const std::string& name, const std::string& about) {
  const std::string aboutWho = about.empty() ? " " : about;
  if (name == who_ && aboutWho == aboutWho_) return;
  who_ = name;
  aboutWho_ = aboutWho;
  shorten();
}

void HeadBar::arrange() {
  const int beside = GetClientSize().x - fence_->GetBestSize().x - FromDIP(kBesideWho);
  const bool isStacked = beside < FromDIP(kLeastWho) * theme_.factor();
  if (isStacked == isStacked_) return;
  isStacked_ = isStacked;
  (isStacked ? across_ : down_)->Detach(fence_);
  if (isStacked)
    down_->Insert(1, fence_, 0, wxALIGN_RIGHT | wxRIGHT, FromDIP(16));
  else
    across_->Add(fence_, 0, wxALIGN_BOTTOM | wxRIGHT, FromDIP(16));
  whoSizer_->SetOrientation(isStacked ? wxHORIZONTAL : wxVERTICAL);
  whoSizer_->GetItem(about_)->SetFlag(isStacked ? wxALIGN_CENTRE_VERTICAL : 0);
  SetMinSize(wxSize(-1, FromDIP(static_cast<int>((isStacked ? kStackedHead : kHeadHeight) * theme_.factor()))));
  CallAfter([this] { GetParent()->Layout(); });
}

void HeadBar::shorten() {
  // A long name ends in "…" before the pages lose their places; a screen reader has it whole.
  int room = GetClientSize().x - (isStacked_ ? 0 : fence_->GetBestSize().x) - FromDIP(kBesideWho);
  for (const auto& [prose, whole] : {std::pair(name_, &who_), std::pair(about_, &aboutWho_)}) {
    wxClientDC measure(this);
    measure.SetFont(prose->GetFont());
    // Drawn text comes out a little wider than measured.
    prose->say(plain(wxControl::Ellipsize(shown(*whole), measure, wxELLIPSIZE_END, std::max(room - room / 12, 1), wxELLIPSIZE_FLAGS_NONE)));
    nameFor(*prose, *whole);
    if (isStacked_) room -= prose->GetBestSize().x + FromDIP(kAfterName);
  }
  Layout();
}

void HeadBar::showFence(const std::vector<FenceEntry>& entries) {
  if (entries == shown_) return;
  shown_ = entries;
  if (buttons_.size() != entries.size()) {
    fence_->DestroyChildren();
    buttons_.clear();
    for (const FenceEntry& entry : entries) {
      auto* button = new KeyButton(fence_, theme_, "fence", {"", entry.title, "", false});
      button->Bind(wxEVT_BUTTON, [this, id = entry.id](wxCommandEvent&) { go_(id); });
      fence_->GetSizer()->Add(button, 0, wxALIGN_BOTTOM);
      buttons_.push_back(button);
    }
  }
  for (std::size_t i = 0; i < entries.size(); ++i) {
    buttons_[i]->choose(entries[i].isCurrent);
    buttons_[i]->Enable(entries[i].isPossible);
    styleClass(*buttons_[i], "away", !entries[i].isPossible);
    nameFor(*buttons_[i], entries[i].title + (entries[i].isCurrent ? ", this page" : ""), "Alt " + std::to_string(i + 1));
  }
  fence_->Layout();
  arrange();
  shorten();
}

}  // namespace stile::desktop
