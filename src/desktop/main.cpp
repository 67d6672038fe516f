// The desk: the desktop program of Stile.
#include <wx/app.h>

#include <cstdio>
#include <string_view>

#include "desktop/desk_app.h"
#include "desktop/process.h"

int main(int argumentCount, char** arguments) {
  // Before the toolkit starts: it wants a display, and calls every end without a window a failure.
  for (int i = 1; i < argumentCount; ++i)
    if (std::string_view(arguments[i]) == "--version") return std::printf("stile-desk %s\n", STILE_VERSION) < 0 ? 1 : 0;
  stile::desktop::prepareProcess();
  wxApp::SetInstance(new stile::desktop::DeskApp(STILE_INSTALLED_CONTENT));
  return wxEntry(argumentCount, arguments);
}
