// Tells when nobody has touched keys or mouse for a while.
#pragma once

#include <wx/eventfilter.h>
#include <wx/timer.h>

#include <functional>

namespace stile::desktop {

class IdleWatch : public wxEventFilter {
 public:
  /// `idle` is called every few seconds from then on, until something is touched.
  explicit IdleWatch(std::function<void()> idle);
  ~IdleWatch() override;
  void setMinutes(double minutes) { minutes_ = minutes; }
  int FilterEvent(wxEvent& event) override;

 private:
  std::function<void()> idle_;
  wxTimer timer_;
  double minutes_ = 10;
  long long touchedMs_;
};

}  // namespace stile::desktop
