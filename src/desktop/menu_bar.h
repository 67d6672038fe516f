// The menus of the window, and the commands they give.
#pragma once

#include <wx/menu.h>

namespace stile::desktop {

enum Command {
  kNewClient = wxID_HIGHEST + 1,
  kFindClient,
  kLock,
  kLockMinutes,
  kClientMode,
  kClinic,
  kPapers,
  kLight,
  kDark,
  kContrast,
  kText100,
  kText115,
  kText130,
  kText150,
  kKeys,
};

wxMenuBar* makeMenuBar();

}  // namespace stile::desktop
