// The desk: the desktop program of Stile.
#include <wx/app.h>

#include "desktop/desk_app.h"

int main(int argumentCount, char** arguments) {
  wxApp::SetInstance(new stile::desktop::DeskApp(STILE_VERSION, STILE_INSTALLED_CONTENT));
  return wxEntry(argumentCount, arguments);
}
