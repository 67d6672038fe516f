#include "desktop/ladder_panel.h"

#include <wx/dcbuffer.h>
#include <wx/sizer.h>

#include <algorithm>
#include <limits>
#include <utility>

#include "desktop/accessible.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "documents/decision_drawing.h"

namespace stile::desktop {
namespace {

constexpr std::size_t kRungsThatShut = 3;
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
  // One for each rung that can be shut, beforehand, so that no answer waits for them.
  for (std::size_t i = 0; i < kRungsThatShut; ++i) group(i).panel->Hide();
  Bind(wxEVT_PAINT, &LadderPanel::onPaint, this);
}

void LadderPanel::show(const screening::Screening& screening, const std::string& emergencyNumber) {
  shown_ = &screening;
  emergencyNumber_ = emergencyNumber;
  showGroups(rungHoldsOf(screening));
  if (width_ > 0) place();
}

void LadderPanel::showGroups(const std::vector<RungHolds>& holds) {
  groupsShown_ = 0;
  for (const RungHolds& rung : holds)
    if (!rung.lines.empty()) fill(group(groupsShown_++), rung);
  for (std::size_t i = groupsShown_; i < groups_.size(); ++i) groups_[i]->panel->Hide();
}

LadderPanel::Group& LadderPanel::group(std::size_t number) {
  while (groups_.size() <= number) {
    Group& made = *groups_.emplace_back(std::make_unique<Group>());
    made.panel = new wxPanel(this);
    made.panel->SetBackgroundColour(theme_.colour(ground_));
    made.panel->SetSizer(new wxBoxSizer(wxVERTICAL));
    for (std::size_t i = 0; i < kHoldsShown; ++i) addLine(made);
    made.more = new Prose(made.panel, theme_, Step::Small, " ", drawing::Colour::Ink2);
    made.panel->GetSizer()->Add(made.more);
  }
  return *groups_[number];
}

void LadderPanel::addLine(Group& group) {
  const std::size_t place = group.lines.size();
  Line line{new Prose(group.panel, theme_, Step::Reading, " "), new KeyButton(group.panel, theme_, "said", {"", " ", "", false}), -1};
  line.link->Bind(wxEVT_BUTTON, [this, &group, place](wxCommandEvent&) { CallAfter([this, slot = group.lines[place].slot] { jump_(slot); }); });
  group.panel->GetSizer()->Add(line.sentence);
  group.panel->GetSizer()->Add(line.link, 0, wxEXPAND);
  group.lines.push_back(line);
}

void LadderPanel::fill(Group& group, const RungHolds& holds) {
  group.rung = holds.rung;
  group.panel->Show();
  for (std::size_t i = 0; i < group.lines.size(); ++i) {
    Line& line = group.lines[i];
    const HoldLine said = i < holds.lines.size() ? holds.lines[i] : HoldLine{};
    // Where nothing can be answered any more the reason stands all the same: what was not asked is no fact.
    const bool isTold = !said.sentence.empty() && said.slot >= 0 && !jump_;
    line.sentence->sayOrHide(isTold ? said.sentence + " ↳ " + said.link : said.sentence);
    line.slot = said.slot;
    line.link->Show(!said.sentence.empty() && said.slot >= 0 && jump_);
    if (!line.link->IsShown()) continue;
    line.link->say({"", "↳ " + said.link, "", false});
    nameFor(*line.link, "Go to the question: " + said.link);
  }
  group.more->sayOrHide(holds.more > 0 ? "and " + std::to_string(holds.more) + " more" : "");
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
  for (std::size_t i = 0; i < groupsShown_; ++i) {
    Group& group = *groups_[i];
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
  const auto stringsBefore = std::exchange(strings_, {});
  const double scale = ladder_->shownDrawing().width > 0 ? size.x / ladder_->shownDrawing().width : 1;
  int bottom = size.y, below = 0;
  for (std::size_t i = 0; i < groupsShown_; ++i) {
    const Group& group = *groups_[i];
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
  const auto isSame = [](const auto& one, const auto& other) { return one.first == other.first && one.second == other.second; };
  if (!std::equal(strings_.begin(), strings_.end(), stringsBefore.begin(), stringsBefore.end(), isSame)) Refresh();
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
