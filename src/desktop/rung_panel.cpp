#include "desktop/rung_panel.h"

#include <wx/dcbuffer.h>
#include <wx/sizer.h>

namespace stile::desktop {
namespace {

constexpr int kUpright = 12, kRung = 8, kReach = 40, kBetween = 14;

}  // namespace

RungPanel::RungPanel(wxWindow* parent, const Theme& theme) : wxPanel(parent), theme_(theme) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  SetSizer(new wxBoxSizer(wxVERTICAL));
  Bind(wxEVT_PAINT, &RungPanel::onPaint, this);
}

void RungPanel::put(wxWindow* child) {
  GetSizer()->Add(child, 0, wxEXPAND | wxLEFT, FromDIP(kReach));
  GetSizer()->AddSpacer(FromDIP(kBetween));
}

void RungPanel::fit(int width) { fitChildren(*this, width - FromDIP(kReach)); }

void RungPanel::onPaint(wxPaintEvent&) {
  wxAutoBufferedPaintDC dc(this);
  dc.SetBackground(wxBrush(theme_.colour(drawing::Colour::Sheet)));
  dc.Clear();
  dc.SetPen(*wxTRANSPARENT_PEN);
  dc.SetBrush(wxBrush(theme_.colour(drawing::Colour::Post)));
  dc.DrawRectangle(0, 0, FromDIP(kUpright), GetClientSize().y);
  for (const wxWindow* child : GetChildren()) {
    const int middle = child->GetPosition().y + child->GetSize().y / 2;
    dc.DrawRectangle(FromDIP(kUpright), middle - FromDIP(kRung) / 2, FromDIP(kReach - kUpright), FromDIP(kRung));
  }
}

}  // namespace stile::desktop
