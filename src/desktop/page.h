// A page of the desk, and what it may ask of the window it stands in.
//
// How to add one: a file pair <name>_page.h/.cpp with a class derived from Page, and a line in
// pages.cpp. A page reads what it shows from the desk each time it is shown, and decides nothing.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <string>
#include <vector>

#include "base/result.h"
#include "desktop/desk.h"
#include "desktop/preferences.h"
#include "desktop/theme.h"

class wxKeyEvent;

namespace stile::desktop {

/// The window, as pages see it.
class Workplace {
 public:
  virtual ~Workplace() = default;
  virtual Desk& desk() = 0;
  virtual const Theme& theme() const = 0;
  /// Shows another page; one that is not possible yet is refused with a word in the status bar.
  virtual void go(const std::string& page) = 0;
  /// A short sentence at the left of the status bar: "Saved 09:41:07".
  virtual void say(const std::string& words) = 0;
  /// What could not be done, and what to do about it.
  virtual void tell(const base::Failure& failure) = 0;
  /// Closes the clinic file; pages are taken down, and the passphrase is asked again.
  virtual void lock() = 0;
  /// What this user chose for the window; saved when the window closes.
  virtual Preferences& preferences() = 0;
  /// The screen is turned to the client: the page in front and nothing else, whatever is pressed.
  virtual void setClientMode(bool isOn) = 0;
  /// The names in the head and the pages that are possible have changed.
  virtual void refreshHead() = 0;
};

class Page : public wxPanel {
 public:
  Page(wxWindow* parent, Workplace& place);
  /// The page comes to the front: read the desk, fill in, set the focus.
  virtual void enter() = 0;
  /// Whether it is shown anew once rules and questions are read: nothing that is typed may be lost by it.
  virtual bool needsContent() const { return false; }
  /// Why no other page may be shown now; "" mostly.
  virtual std::string whyStay() const { return {}; }
  /// A key, before any control gets it. True when the page has used it.
  virtual bool onKey(wxKeyEvent&) { return false; }
  /// Keys that work here, for the right end of the status bar.
  virtual std::string keys() const { return {}; }

 protected:
  Desk& desk() const { return place_.desk(); }
  const Theme& theme() const { return place_.theme(); }
  Workplace& place() const { return place_; }
  /// Asks for the passphrase of whoever is signed in until it is right. False when it was called off.
  bool isConfirmed(const std::string& title, const std::string& words, const std::string& button);
  /// A sentence: why the client has no decision to show.
  std::string whyNothing() const;

 private:
  Workplace& place_;
};

/// A page as the frame knows it.
struct PageKind {
  std::string id;
  std::string title;
  bool isOnFence = true;                        ///< has a place on the fence at the top
  std::function<bool(const Desk&)> isPossible;  ///< on the fence, but not yet
  std::function<Page*(wxWindow*, Workplace&)> make;
};

/// Every page, in the order of the fence.
const std::vector<PageKind>& pageKinds();

}  // namespace stile::desktop
