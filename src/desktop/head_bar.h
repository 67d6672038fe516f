// The band at the top of the window: the mark, whose page this is, and the fence of pages.
#pragma once

#include <wx/panel.h>

#include <functional>
#include <string>
#include <vector>

#include "desktop/theme.h"

namespace stile::desktop {

class KeyButton;
class Prose;

struct FenceEntry {
  std::string id, title;
  bool isPossible = true, isCurrent = false;
  bool operator==(const FenceEntry&) const = default;
};

class HeadBar : public wxPanel {
 public:
  HeadBar(wxWindow* parent, const Theme& theme, std::function<void(const std::string&)> go);
  void showWho(const std::string& name, const std::string& about);
  /// The same entries in the same order each time.
  void showFence(const std::vector<FenceEntry>& entries);

 private:
  void shorten();
  /// Where the pages leave no room for the name, they stand below it.
  void arrange();
  const Theme& theme_;
  std::function<void(const std::string&)> go_;
  Prose *name_, *about_;
  wxPanel* fence_;
  wxBoxSizer *down_, *across_, *whoSizer_;
  bool isStacked_ = false;
  std::vector<KeyButton*> buttons_;
  std::vector<FenceEntry> shown_;
  std::string who_ = "Stile", aboutWho_ = " ";
};

}  // namespace stile::desktop
