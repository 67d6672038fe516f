#include "desktop/open_dialogs.h"

#include <gtk/gtk.h>
#include <wx/dialog.h>

namespace stile::desktop {

bool cancelDialog() {
  GList* const windows = gtk_window_list_toplevels();
  bool isFound = false;
  for (GList* at = windows; at != nullptr && !isFound; at = at->next) {
    if (!GTK_IS_DIALOG(at->data) || !gtk_widget_get_visible(GTK_WIDGET(at->data))) continue;
    gtk_dialog_response(GTK_DIALOG(at->data), GTK_RESPONSE_CANCEL);
    isFound = true;
  }
  g_list_free(windows);
  for (wxWindow* window : wxTopLevelWindows) {
    auto* const dialog = dynamic_cast<wxDialog*>(window);
    if (isFound || dialog == nullptr || !dialog->IsModal()) continue;
    dialog->EndModal(wxID_CANCEL);
    isFound = true;
  }
  return isFound;
}

}  // namespace stile::desktop
