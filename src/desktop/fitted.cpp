#include "desktop/fitted.h"

#include <wx/event.h>
#include <wx/settings.h>
#include <wx/sizer.h>

#include <algorithm>

namespace stile::desktop {

void fitChildren(wxWindow& parent, int width) {
  for (wxWindow* child : parent.GetChildren())
    if (auto* fitted = dynamic_cast<Fitted*>(child)) fitted->fit(width);
}

namespace {

/// What is inside of what was fitted: a panel whose size stays as it was does not hear that its children changed.
void layOutInside(wxWindow& parent) {
  for (wxWindow* child : parent.GetChildren()) {
    if (!child->IsShown() || child->GetSizer() == nullptr || dynamic_cast<Fitted*>(child) == nullptr) continue;
    child->Layout();
    layOutInside(*child);
  }
}

}  // namespace

Stack::Stack(wxWindow* parent) : wxPanel(parent) {
  SetBackgroundColour(parent->GetBackgroundColour());
  SetSizer(new wxBoxSizer(wxVERTICAL));
}

void Stack::put(wxWindow* child, int above) {
  GetSizer()->Add(child, 0, wxEXPAND | wxTOP, FromDIP(above));
}

void Stack::clear() {
  GetSizer()->Clear(true);
}

void Stack::fit(int width) {
  fitChildren(*this, width);
}

Column::Column(wxWindow* parent, const Theme& theme, drawing::Colour ground, int margin, int widest)
    : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL | wxTAB_TRAVERSAL), margin_(FromDIP(margin)), widest_(FromDIP(widest)) {
  SetBackgroundColour(theme.colour(ground));
  SetScrollRate(0, FromDIP(20));
  // What stands in a column never takes room from the column beside it.
  SetMinSize(FromDIP(wxSize(120, 80)));
  ShowScrollbars(wxSHOW_SB_NEVER, wxSHOW_SB_DEFAULT);
  auto* outer = new wxBoxSizer(wxVERTICAL);
  stack_ = new wxBoxSizer(wxVERTICAL);
  outer->Add(stack_, 1, wxALL, margin_);
  SetSizer(outer);
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    if (widthBesideBar(*this) != fitted_) return fitNow();
    // What grew since is given its room before the toolkit shares out the room of before.
    FitInside();
  });
  // The toolkit's own way leaves what stands in a panel of the column out of sight.
  Bind(wxEVT_CHILD_FOCUS, [this](wxChildFocusEvent& event) {
    event.Skip();
    if (const wxWindow* child = event.GetWindow(); child != nullptr && child != this) reveal(*child);
  });
}

int widthBesideBar(const wxWindow& scrolled) {
  return scrolled.GetSize().x - wxSystemSettings::GetMetric(wxSYS_VSCROLL_X, &scrolled);
}

void Column::put(wxWindow* child, int above) {
  stack_->Add(child, 0, wxEXPAND | wxTOP, FromDIP(above));
}

void Column::space(int pixels) { stack_->AddSpacer(FromDIP(pixels)); }

void Column::clear() {
  stack_->Clear(true);
  Scroll(0, 0);
}

void Column::refit() { fitNow(); }

void Column::showFrom(const wxWindow& child) {
  int unit = 0;
  GetScrollPixelsPerUnit(nullptr, &unit);
  const int top = CalcUnscrolledPosition(ScreenToClient(child.GetScreenPosition())).y;
  Scroll(0, GetVirtualSize().y > GetClientSize().y ? top / std::max(1, unit) : 0);
}

namespace {

/// From the upper edge of what is in view. By way of the screen it would take the display a round trip.
int topIn(const Column& column, const wxWindow& child) {
  int top = 0;
  for (const wxWindow* at = &child; at != nullptr && at != &column; at = at->GetParent()) top += at->GetPosition().y;
  return top;
}

}  // namespace

bool Column::showsEndOf(const wxWindow& child) const { return topIn(*this, child) + child.GetSize().y <= GetClientSize().y; }

void reveal(const wxWindow& child) {
  const wxWindow* at = child.GetParent();
  while (at != nullptr && dynamic_cast<const Column*>(at) == nullptr) at = at->GetParent();
  if (at == nullptr) return;
  auto& column = const_cast<Column&>(dynamic_cast<const Column&>(*at));
  int unit = 0;
  column.GetScrollPixelsPerUnit(nullptr, &unit);
  const int top = topIn(column, child), below = top + child.GetSize().y - column.GetClientSize().y;
  const int now = column.GetViewStart().y;
  if (top < 0) return column.Scroll(0, std::max(0, now + top / std::max(1, unit) - 1));
  if (below > 0) column.Scroll(0, now + below / std::max(1, unit) + 1);
}

bool Column::scrollBy(int key) {
  int unit = 0;
  GetScrollPixelsPerUnit(nullptr, &unit);
  const int page = std::max(1, GetClientSize().y / std::max(1, unit) - 1), now = GetViewStart().y;
  switch (key) {
    case WXK_PAGEDOWN: return Scroll(0, now + page), true;
    case WXK_PAGEUP: return Scroll(0, std::max(0, now - page)), true;
    case WXK_HOME: return Scroll(0, 0), true;
    case WXK_END: return Scroll(0, GetVirtualSize().y), true;
    default: return false;
  }
}

void Column::fitNow() {
  fitted_ = widthBesideBar(*this);
  int width = std::max(FromDIP(120), fitted_ - 2 * margin_);
  if (widest_ > 0) width = std::min(width, widest_);
  // Neither text nor lines go beyond the width where reading gets hard.
  stack_->SetMinSize(wxSize(width, -1));
  fitChildren(*this, width);
  FitInside();
  Layout();
  layOutInside(*this);
}

}  // namespace stile::desktop
