#include "desktop/accessible.h"

#include <gtk/gtk-a11y.h>
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

/// The button inside a choice, which has the focus in the choice's stead and stands in no tree.
GtkWidget* buttonOf(GtkWidget* choice) {
  GtkWidget* button = nullptr;
  gtk_container_forall(
      GTK_CONTAINER(choice),
      [](GtkWidget* child, gpointer found) {
        GtkWidget* const inside = GTK_IS_BUTTON(child) ? child : GTK_IS_CONTAINER(child) ? buttonOf(child) : nullptr;
        if (inside != nullptr) *static_cast<GtkWidget**>(found) = inside;
      },
      &button);
  return button;
}

AtkStateSet* (*statesOfToolkit)(AtkObject*) = nullptr;

AtkStateSet* statesOfChoice(AtkObject* object) {
  AtkStateSet* const states = statesOfToolkit(object);
  GtkWidget* const choice = gtk_accessible_get_widget(GTK_ACCESSIBLE(object));
  GtkWidget* const button = choice == nullptr ? nullptr : buttonOf(choice);
  if (button == nullptr) return states;
  atk_state_set_add_state(states, ATK_STATE_FOCUSABLE);
  if (gtk_widget_has_focus(button)) atk_state_set_add_state(states, ATK_STATE_FOCUSED);
  return states;
}

gboolean tellFocus(GtkWidget*, GdkEventFocus* event, gpointer choice) {
  atk_object_notify_state_change(gtk_widget_get_accessible(GTK_WIDGET(choice)), ATK_STATE_FOCUSED, event->in != 0);
  return FALSE;
}

/// The toolkit tells of the focus of that button, where no screen reader looks: the choice tells it of itself.
void tellFocusOf(GtkWidget* choice) {
  GtkWidget* const button = buttonOf(choice);
  if (button == nullptr || g_object_get_data(G_OBJECT(choice), "tells-focus") != nullptr) return;
  g_object_set_data(G_OBJECT(choice), "tells-focus", button);
  auto* const all = static_cast<AtkObjectClass*>(g_type_class_ref(GTK_TYPE_COMBO_BOX_ACCESSIBLE));
  if (all->ref_state_set != statesOfChoice) {
    statesOfToolkit = all->ref_state_set;
    all->ref_state_set = statesOfChoice;
  }
  g_signal_connect(button, "focus-in-event", G_CALLBACK(tellFocus), choice);
  g_signal_connect(button, "focus-out-event", G_CALLBACK(tellFocus), choice);
}

}  // namespace

void nameFor(wxWindow& window, const std::string& name, const std::string& description) {
  GtkWidget* widget = GTK_WIDGET(window.GetHandle());
  set(gtk_widget_get_accessible(widget), name, description);
  // A text of several lines stands inside a scrolled pane: the pane is not what is read.
  if (GTK_IS_SCROLLED_WINDOW(widget))
    if (GtkWidget* inside = gtk_bin_get_child(GTK_BIN(widget)); inside != nullptr) set(gtk_widget_get_accessible(inside), name, description);
  if (GTK_IS_COMBO_BOX(widget)) tellFocusOf(widget);
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

bool hasFocusInside(const wxWindow& window) {
  GtkWidget* const widget = GTK_WIDGET(window.GetHandle());
  GtkWidget* const top = gtk_widget_get_toplevel(widget);
  GtkWidget* const focused = GTK_IS_WINDOW(top) ? gtk_window_get_focus(GTK_WINDOW(top)) : nullptr;
  return focused != nullptr && (focused == widget || gtk_widget_is_ancestor(focused, widget));
}

void showFocus(wxWindow& topLevel) {
  if (GTK_IS_WINDOW(topLevel.GetHandle())) gtk_window_set_focus_visible(GTK_WINDOW(topLevel.GetHandle()), TRUE);
}

}  // namespace stile::desktop
