#include "desktop/button_row.h"

#include <wx/sizer.h>

#include <algorithm>

namespace stile::desktop {

class ButtonRow::Rows : public wxSizer {
 public:
  void width(int width) { width_ = width; }

  wxSize CalcMin() override {
    wxSize all(0, 0);
    forEach([&](wxSizerItem& item, wxPoint at) {
      const wxSize size = item.CalcMin();
      all.IncTo(wxSize(at.x + size.x, at.y + size.y));
    });
    // As wide as the widest row that fits; the page says how wide the panel is.
    return wxSize(width_ > 0 ? std::min(all.x, width_) : all.x, all.y);
  }

  void RepositionChildren(const wxSize&) override {
    forEach([&](wxSizerItem& item, wxPoint at) {
      item.SetDimension(m_position + at, item.GetMinSizeWithBorder());
    });
  }

 private:
  template <class Act>
  void forEach(Act act) {
    wxPoint at(0, 0);
    int height = 0;
    for (wxSizerItem* item : GetChildren()) {
      if (!item->IsShown()) continue;
      const wxSize size = item->CalcMin();
      // The gap behind the last button of a row may go beyond the edge, the button may not.
      if (at.x > 0 && width_ > 0 && at.x + size.x - item->GetBorder() > width_) {
        at = wxPoint(0, at.y + height);
        height = 0;
      }
      act(*item, at);
      at.x += size.x;
      height = std::max(height, size.y);
    }
  }

  int width_ = 0;
};

ButtonRow::ButtonRow(wxWindow* parent, const Theme& theme, drawing::Colour ground, int gap)
    : wxPanel(parent), rows_(new Rows), gap_(FromDIP(gap)) {
  SetBackgroundColour(theme.colour(ground));
  SetSizer(rows_);
}

void ButtonRow::put(wxWindow* button) {
  rows_->Add(button, 0, wxRIGHT | wxBOTTOM, gap_);
}

void ButtonRow::fit(int width) {
  rows_->width(width);
  InvalidateBestSize();
}

}  // namespace stile::desktop
