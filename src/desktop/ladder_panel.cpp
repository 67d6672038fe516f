#include "desktop/ladder_panel.h"

#include <wx/dcbuffer.h>
#include <wx/sizer.h>

#include <algorithm>
#include <limits>

#include "desktop/accessible.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "documents/decision_drawing.h"

namespace stile::desktop {
namespace {

constexpr int kStringWidth = 56, kLeastReasons = 170, kReasonGap = 14;
constexpr double kLadderWidth = 376, kNames = 84, kRungHeight = 38, kPitch = 64, kMostPitch = 150;

struct Extent {
  double top = std::numeric_limits<double>::max(), bottom = 0;
};

/// From the highest to the lowest rectangle of a group: that is the rung, without its wires.
Extent extentOf(const drawing::Group& group) {
  Extent extent;
  for (const auto& shape : group.shapes) {
    if (const auto* rectangle = std::get_if<drawing::Rectangle>(&shape.form)) {
      extent.top = std::min(extent.top, rectangle->y);
      extent.bottom = std::max(extent.bottom, rectangle->y + rectangle->height);
    }
  }
  return extent;
}

}  // namespace

LadderPanel::LadderPanel(wxWindow* parent, const Theme& theme, drawing::Colour ground, std::function<void(int)> jump)
    : wxPanel(parent), theme_(theme), ground_(ground), jump_(std::move(jump)) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  groupFor(*this, "Ladder and what holds its rungs");
  ladder_ = new DrawingPanel(this, theme, ground);
  Bind(wxEVT_PAINT, &LadderPanel::onPaint, this);
}

void LadderPanel::show(const screening::Screening& screening, const std::string& emergencyNumber) {
  shown_ = &screening;
  emergencyNumber_ = emergencyNumber;
  makeGroups(rungHoldsOf(screening));
  if (width_ > 0) place();
}

void LadderPanel::makeGroups(const std::vector<RungHolds>& holds) {
  for (Group& group : groups_) group.panel->Destroy();
  groups_.clear();
  for (const RungHolds& rung : holds) {
    if (rung.lines.empty()) continue;
    auto* panel = new wxPanel(this);
    panel->SetBackgroundColour(theme_.colour(ground_));
    auto* down = new wxBoxSizer(wxVERTICAL);
    for (const HoldLine& line : rung.lines) {
      down->Add(new Prose(panel, theme_, Step::Reading, line.sentence));
      if (line.slot < 0 || !jump_) continue;
      auto* link = new KeyButton(panel, theme_, "said", {"", "↳ " + line.link, "", false});
      nameFor(*link, "Go to the question: " + line.link);
      link->Bind(wxEVT_BUTTON, [this, slot = line.slot](wxCommandEvent&) { CallAfter([this, slot] { jump_(slot); }); });
      down->Add(link, 0, wxEXPAND);
    }
    if (rung.more > 0) down->Add(new Prose(panel, theme_, Step::Small, "and " + std::to_string(rung.more) + " more", drawing::Colour::Ink2));
    panel->SetSizer(down);
    groups_.push_back({panel, rung.rung});
  }
}

void LadderPanel::fit(int width) {
  width_ = width;
  place();
}

void LadderPanel::place() {
  if (shown_ == nullptr) return;
  const double factor = theme_.factor();
  const int string = FromDIP(kStringWidth), wide = FromDIP(static_cast<int>(kLadderWidth * factor));
  const bool isBeside = width_ >= wide + string + FromDIP(kLeastReasons);
  const int reasonsWidth = isBeside ? std::min(width_ - wide - string, FromDIP(420)) : width_ - string / 2;
  int between = 0, before = 0;  // what two groups one below the other need from middle to middle
  for (Group& group : groups_) {
    fitChildren(*group.panel, reasonsWidth);
    group.panel->Layout();
    group.panel->SetSize(wxSize(reasonsWidth, group.panel->GetSizer()->CalcMin().y));
    group.panel->Layout();
    const int height = group.panel->GetSize().y;
    if (before > 0) between = std::max(between, (before + height) / 2);
    before = height;
  }
  documents::LadderMeasures measures{kLadderWidth, kNames, kPitch, kRungHeight};
  // The ladder stretches to its reasons, never the other way.
  if (isBeside && between > 0) measures.pitch = std::clamp((ToDIP(between) + kReasonGap) / factor, kPitch, kMostPitch);
  ladder_->show(documents::ladderOf(*shown_, emergencyNumber_, measures));
  ladder_->fit(width_);
  const wxSize size = ladder_->GetMinSize();
  ladder_->SetSize(0, 0, size.x, size.y);
  strings_.clear();
  const double scale = ladder_->shownDrawing().width > 0 ? size.x / ladder_->shownDrawing().width : 1;
  int bottom = size.y, below = 0;
  for (Group& group : groups_) {
    const std::string id = std::string("strength-") + limits::idOf(group.rung);
    const auto* rung = drawing::findGroup(ladder_->shownDrawing(), id);
    const wxSize words = group.panel->GetSize();
    if (isBeside && rung != nullptr) {
      const Extent extent = extentOf(*rung);
      const int middle = static_cast<int>((extent.top + extent.bottom) / 2 * scale);
      const int top = std::max({0, middle - words.y / 2, below});
      group.panel->SetPosition(wxPoint(size.x + string, top));
      strings_.push_back({middle, wxRect(wxPoint(size.x + string, top), words)});
      below = top + words.y + FromDIP(kReasonGap) / 2;
    } else {
      const int top = isBeside ? std::max(below, FromDIP(20)) : bottom + FromDIP(10);
      group.panel->SetPosition(wxPoint(isBeside ? size.x + string : FromDIP(16), top));
      below = top + words.y + FromDIP(8);
    }
    bottom = std::max(bottom, group.panel->GetPosition().y + words.y);
  }
  SetMinSize(wxSize(-1, bottom + FromDIP(4)));
  Refresh();
}

void LadderPanel::onPaint(wxPaintEvent&) {
  wxAutoBufferedPaintDC dc(this);
  dc.SetBackground(wxBrush(theme_.colour(ground_)));
  dc.Clear();
  const wxColour edge = theme_.colour(drawing::Colour::Edge);
  dc.SetPen(wxPen(edge, FromDIP(2)));
  dc.SetBrush(wxBrush(edge));
  const int from = ladder_->GetSize().x + FromDIP(2), to = ladder_->GetSize().x + FromDIP(kStringWidth - 12);
  for (const auto& [height, words] : strings_) {
    dc.DrawRectangle(from, height - FromDIP(3), FromDIP(6), FromDIP(6));
    dc.DrawLine(from, height, to, height);
    dc.DrawLine(to, std::min(height, words.y), to, std::max(height, words.GetBottom()));
  }
}

}  // namespace stile::desktop
