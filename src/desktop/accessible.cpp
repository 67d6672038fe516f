#include "desktop/accessible.h"

#include <gtk/gtk.h>
#include <wx/window.h>

namespace stile::desktop {
namespace {

AtkObject* accessibleOf(wxWindow& window) {
  return gtk_widget_get_accessible(GTK_WIDGET(window.GetHandle()));
}

bool isOther(const char* now, const std::string& wanted) { return now == nullptr ? !wanted.empty() : wanted != now; }

/// Not when it says so already: a screen reader is told of every change.
void set(AtkObject* object, const std::string& name, const std::string& description) {
  if (isOther(atk_object_get_name(object), name)) atk_object_set_name(object, name.c_str());
  if (!description.empty() && isOther(atk_object_get_description(object), description)) atk_object_set_description(object, description.c_str());
}

}  // namespace

void nameFor(wxWindow& window, const std::string& name, const std::string& description) {
  GtkWidget* widget = GTK_WIDGET(window.GetHandle());
  set(gtk_widget_get_accessible(widget), name, description);
  // A text of several lines stands inside a scrolled pane: the pane is not what is read.
  if (GTK_IS_SCROLLED_WINDOW(widget))
    if (GtkWidget* inside = gtk_bin_get_child(GTK_BIN(widget)); inside != nullptr) set(gtk_widget_get_accessible(inside), name, description);
  // A choice is told by the button inside.
  if (GTK_IS_COMBO_BOX(widget))
    gtk_container_forall(
        GTK_CONTAINER(widget),
        [](GtkWidget* child, gpointer words) {
          if (GTK_IS_BUTTON(child)) atk_object_set_name(gtk_widget_get_accessible(child), static_cast<const char*>(words));
        },
        const_cast<char*>(name.c_str()));
}

void describe(wxWindow& window, const std::string& description) {
  AtkObject* const object = accessibleOf(window);
  if (isOther(atk_object_get_description(object), description)) atk_object_set_description(object, description.c_str());
}

void pictureFor(wxWindow& window, const std::string& name, const std::string& description) {
  AtkObject* const object = accessibleOf(window);
  atk_object_set_role(object, ATK_ROLE_IMAGE);
  set(object, name, description);
}

void groupFor(wxWindow& window, const std::string& name, const std::string& description) {
  AtkObject* const object = accessibleOf(window);
  atk_object_set_role(object, ATK_ROLE_PANEL);
  set(object, name, description);
}

void statusFor(wxWindow& window, const std::string& name) {
  AtkObject* const object = accessibleOf(window);
  atk_object_set_role(object, ATK_ROLE_STATUSBAR);
  set(object, name, {});
}

void announce(wxWindow& window, const std::string& words) {
  // Newer libraries have the signal.
  if (!words.empty() && g_signal_lookup("announcement", ATK_TYPE_OBJECT) != 0) g_signal_emit_by_name(accessibleOf(window), "announcement", words.c_str());
}

void styleClass(wxWindow& window, const char* name, bool isOn) {
  GtkStyleContext* const style = gtk_widget_get_style_context(GTK_WIDGET(window.GetHandle()));
  if (isOn)
    gtk_style_context_add_class(style, name);
  else
    gtk_style_context_remove_class(style, name);
}

void announceFocus(wxWindow& window) {
  atk_object_notify_state_change(accessibleOf(window), ATK_STATE_FOCUSED, TRUE);
}

void showFocus(wxWindow& topLevel) {
  if (GTK_IS_WINDOW(topLevel.GetHandle())) gtk_window_set_focus_visible(GTK_WINDOW(topLevel.GetHandle()), TRUE);
}

}  // namespace stile::desktop
