// The ladder with the sentences that hold its rungs: a string runs from each rung to its sentences.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "desktop/decision_view.h"
#include "desktop/fitted.h"
#include "desktop/theme.h"

namespace stile::desktop {

class DrawingPanel;
class KeyButton;
class Prose;

class LadderPanel : public wxPanel, public Fitted {
 public:
  /// `jump` gets the slot of the fact that a sentence rests on.
  LadderPanel(wxWindow* parent, const Theme& theme, drawing::Colour ground, std::function<void(int slot)> jump);
  /// `screening` must stay until the next call, or until forget().
  void show(const screening::Screening& screening, const std::string& emergencyNumber);
  /// What was shown may be gone from now on; nothing of it is read before the next show().
  void forget() { shown_ = nullptr; }
  void fit(int width) override;

 private:
  /// A sentence, and the question it rests on.
  struct Line {
    Prose* sentence = nullptr;
    KeyButton* link = nullptr;
    int slot = -1;
  };
  /// What holds a rung.
  struct Group {
    wxPanel* panel = nullptr;
    std::vector<Line> lines;
    Prose* more = nullptr;
    limits::Rung rung = limits::Rung::Light;
  };
  void showGroups(const std::vector<RungHolds>& holds);
  Group& group(std::size_t number);
  void addLine(Group& group);
  void fill(Group& group, const RungHolds& holds);
  void place();
  void onPaint(wxPaintEvent& event);

  const Theme& theme_;
  drawing::Colour ground_;
  std::function<void(int)> jump_;
  DrawingPanel* ladder_;
  std::vector<std::unique_ptr<Group>> groups_;
  std::size_t groupsShown_ = 0;
  std::vector<std::pair<int, wxRect>> strings_;  ///< height of the rung, and its sentences
  screening::Screening const* shown_ = nullptr;
  std::string emergencyNumber_;
  int width_ = 0;
};

}  // namespace stile::desktop
