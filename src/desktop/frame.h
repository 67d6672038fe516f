// The window of the desk: menus, head, the page in front, status bar. It switches pages and nothing else.
#pragma once

#include <wx/frame.h>

#include <map>
#include <memory>
#include <string>

#include "desktop/desk.h"
#include "desktop/idle_watch.h"
#include "desktop/page.h"
#include "desktop/preferences.h"
#include "desktop/theme.h"

namespace stile::desktop {

class HeadBar;
class StatusLine;

class Frame : public wxFrame, public Workplace {
 public:
  Frame(Desk& desk, Preferences preferences);

  Desk& desk() override { return desk_; }
  const Theme& theme() const override { return *theme_; }
  void go(const std::string& page) override;
  void say(const std::string& words) override;
  void tell(const base::Failure& failure) override;
  void refreshHead() override;
  void lock() override;
  Preferences& preferences() override { return preferences_; }
  void setClientMode(bool isOn) override;

  const std::string& pageInFront() const { return current_; }
  /// The content was read, or could not be.
  void contentIsHere();

 private:
  void makeMenus();
  void build();
  void changeLook(Look look, int textPercent);
  void onKey(wxKeyEvent& event);
  void onClose(wxCloseEvent& event);
  void newClient();
  void lockNow();
  void lockIfIdle();
  void askLockMinutes();
  /// The page to show after signing in: where somebody was when it was locked.
  std::string resumed();
  void showKeys();
  void showAbout();
  Page* pageOf(const std::string& id);

  Desk& desk_;
  Preferences preferences_;
  std::unique_ptr<Theme> theme_;
  wxPanel* ground_ = nullptr;
  HeadBar* head_ = nullptr;
  wxPanel* sheet_ = nullptr;  ///< where pages stand
  StatusLine* status_ = nullptr;
  std::map<std::string, Page*> pages_;
  std::string current_;
  std::string said_;
  bool isClientMode_ = false;
  /// Where somebody was when the desk was locked: ids, and nothing of what a record says.
  struct Left {
    std::string file, client, page;
  } left_;
  IdleWatch idle_{[this] { lockIfIdle(); }};
};

}  // namespace stile::desktop
