#include "desktop/idle_watch.h"

#include <wx/app.h>
#include <wx/event.h>
#include <wx/time.h>

namespace stile::desktop {
namespace {

constexpr int kLookMs = 1000;
constexpr double kMinuteMs = 60000;

}  // namespace

IdleWatch::IdleWatch(std::function<void()> idle) : idle_(std::move(idle)), touchedMs_(wxGetUTCTimeMillis().GetValue()) {
  wxEvtHandler::AddFilter(this);
  timer_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) {
    if (static_cast<double>(wxGetUTCTimeMillis().GetValue() - touchedMs_) >= minutes_ * kMinuteMs) idle_();
  });
  timer_.Start(kLookMs);
}

IdleWatch::~IdleWatch() { wxEvtHandler::RemoveFilter(this); }

int IdleWatch::FilterEvent(wxEvent& event) {
  const wxEventType type = event.GetEventType();
  if (type == wxEVT_KEY_DOWN || type == wxEVT_CHAR_HOOK || type == wxEVT_MOTION || type == wxEVT_LEFT_DOWN || type == wxEVT_RIGHT_DOWN || type == wxEVT_MOUSEWHEEL)
    touchedMs_ = wxGetUTCTimeMillis().GetValue();
  return Event_Skip;
}

}  // namespace stile::desktop
