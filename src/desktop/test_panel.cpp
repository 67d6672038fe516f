#include "desktop/test_panel.h"

#include <wx/sizer.h>
#include <wx/textctrl.h>
#include <wx/utils.h>

#include "desktop/accessible.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"

namespace stile::desktop {
namespace {

/// Often enough for tenths of a second.
constexpr int kTickMs = 50;

long long nowMs() { return wxGetUTCTimeMillis().GetValue(); }

}  // namespace

TestPanel::TestPanel(wxWindow* parent, const Theme& theme, const rules::Measuring& how, std::function<void(const std::string&)> done,
                     std::function<void(const std::string&)> say)
    : wxPanel(parent), run_(how), done_(std::move(done)), say_(std::move(say)), timer_(this) {
  SetBackgroundColour(parent->GetBackgroundColour());
  groupFor(*this, "Clock and counter");
  auto* down = new wxBoxSizer(wxVERTICAL);
  auto* numbers = new wxBoxSizer(wxHORIZONTAL);
  clock_ = new Prose(this, theme, Step::Numeral, run_.clock(0));
  numbers->Add(clock_, 0, wxRIGHT, FromDIP(30));
  if (run_.isCounting()) {
    count_ = new Prose(this, theme, Step::Numeral, "0");
    numbers->Add(count_);
    numbers->Add(new Prose(this, theme, Step::Small, "counted", drawing::Colour::Ink2), 0, wxALIGN_BOTTOM | wxLEFT | wxBOTTOM, FromDIP(10));
  }
  down->Add(numbers, 0, wxTOP, FromDIP(6));
  if (how.metres) {
    const bool isLap = how.gives == rules::Gives::Laps;
    metres_ = new FormField(this, theme, isLap ? "Metres of one lap" : "Metres of the course");
    metres_->set(how.metres->toText());
    metres_->control().Bind(wxEVT_TEXT, [this](wxCommandEvent&) { giveResult(); });
    down->Add(metres_, 0, wxEXPAND | wxTOP, FromDIP(8));
    if (isLap) {
      rest_ = new FormField(this, theme, "Metres of the last lap, if it was not whole");
      rest_->control().Bind(wxEVT_TEXT, [this](wxCommandEvent&) { giveResult(); });
      down->Add(rest_, 0, wxEXPAND | wxTOP, FromDIP(8));
    }
  }
  auto* buttons = new wxBoxSizer(wxHORIZONTAL);
  key_ = new KeyButton(this, theme, "primary", {"Space", run_.keyWords(), "", false});
  key_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { press(); });
  again_ = new KeyButton(this, theme, "", {"", "Begin again", "", false});
  again_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) {
    timer_.Stop();
    run_.reset();
    show();
    key_->SetFocus();
  });
  buttons->Add(key_, 0, wxRIGHT, FromDIP(10));
  buttons->Add(again_);
  down->Add(buttons, 0, wxTOP, FromDIP(10));
  SetSizer(down);
  Bind(wxEVT_TIMER, [this](wxTimerEvent&) {
    if (run_.tick(nowMs())) ended();
    show();
  });
  show();
}

void TestPanel::press() {
  const bool wasRunning = isRunning();
  run_.press(nowMs());
  if (!wasRunning && isRunning()) {
    timer_.Start(kTickMs);
    say_("The clock runs");
  }
  if (wasRunning && !isRunning()) ended();
  show();
}

void TestPanel::ended() {
  timer_.Stop();
  wxBell();
  say_("The clock has stopped" + (run_.isCounting() ? ": " + std::to_string(run_.counted()) + " counted" : std::string()));
  giveResult();
}

void TestPanel::giveResult() {
  const auto number = [](FormField* field) { return field == nullptr ? std::nullopt : base::Rational::parse(field->text()); };
  if (const auto result = run_.result(number(metres_), number(rest_))) done_(*result);
}

void TestPanel::show() {
  const long long now = nowMs();
  clock_->say(run_.clock(now));
  if (count_ != nullptr) count_->say(std::to_string(run_.counted()));
  const std::string words = run_.keyWords();
  if (!words.empty() && key_->said().words != words) key_->say({"Space", words, "", false});
  key_->Enable(!words.empty());
  again_->Enable(run_.state() != TestRun::State::Ready);
}

bool TestPanel::hasField(const wxWindow* focused) const {
  for (FormField* field : {metres_, rest_})
    if (field != nullptr && focused == &field->control()) return true;
  return false;
}

void TestPanel::fit(int width) {
  for (FormField* field : {metres_, rest_})
    if (field != nullptr) field->fit(width);
}

}  // namespace stile::desktop
