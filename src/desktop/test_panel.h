// Clock and counter of one test: the native buttons, the numbers, and what they come to.
#pragma once

#include <wx/panel.h>
#include <wx/timer.h>

#include <functional>
#include <string>

#include "desktop/fitted.h"
#include "desktop/test_run.h"

class wxKeyEvent;

namespace stile::desktop {

class FormField;
class KeyButton;
class Prose;

class TestPanel : public wxPanel, public Fitted {
 public:
  /// `done` gets the value once there is one; `say` what just happened, for those who do not see the clock.
  TestPanel(wxWindow* parent, const Theme& theme, const rules::Measuring& how, std::function<void(const std::string&)> done,
            std::function<void(const std::string&)> say);
  /// The key of the clock.
  void press();
  bool isRunning() const { return run_.state() == TestRun::State::Running; }
  bool hasField(const wxWindow* focused) const;
  void fit(int width) override;

 private:
  void show();
  void ended();
  void giveResult();

  TestRun run_;
  std::function<void(const std::string&)> done_, say_;
  wxTimer timer_;
  Prose *clock_, *count_ = nullptr;
  KeyButton *key_, *again_;
  FormField *metres_ = nullptr, *rest_ = nullptr;
};

}  // namespace stile::desktop
