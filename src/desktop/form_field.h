// A field with its words above it, and what is wrong with it below.
#pragma once

#include <wx/panel.h>

#include <string>

#include "desktop/fitted.h"

class wxTextCtrl;

namespace stile::desktop {

class Prose;

class FormField : public wxPanel, public Fitted {
 public:
  enum class Kind { Text, Secret };
  FormField(wxWindow* parent, const Theme& theme, const std::string& words, Kind kind = Kind::Text, const std::string& help = {});
  std::string text() const;
  void set(const std::string& text);
  /// "" takes the sentence away.
  void complain(const std::string& trouble);
  void enter();
  wxTextCtrl& control() { return *control_; }
  void fit(int width) override;

 private:
  std::string words_;
  Prose *title_, *help_ = nullptr, *trouble_;
  wxTextCtrl* control_;
};

/// Tells what is wrong at each field that is checked, and remembers the first: the focus goes there.
class FieldCheck {
 public:
  /// "" = nothing is wrong.
  void operator()(FormField& field, const std::string& trouble);
  void needs(FormField& field);
  /// False when nothing was wrong.
  bool enterFirst();

 private:
  FormField* first_ = nullptr;
};

}  // namespace stile::desktop
