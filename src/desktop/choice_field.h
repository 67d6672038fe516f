// A choice with its words above it. Nothing stands chosen at first.
#pragma once

#include <wx/panel.h>

#include <string>
#include <vector>

#include "desktop/fitted.h"

class wxChoice;

namespace stile::desktop {

class Prose;

class ChoiceField : public wxPanel, public Fitted {
 public:
  /// `options`: code and words; `nothing`: what stands there while none is chosen.
  ChoiceField(wxWindow* parent, const Theme& theme, const std::string& words, std::vector<std::pair<std::string, std::string>> options,
              const std::string& nothing = "not chosen");
  /// The code, or "" while nothing is chosen.
  std::string code() const;
  void choose(const std::string& code);
  /// "" takes the sentence away.
  void complain(const std::string& trouble);
  wxChoice& control() { return *control_; }
  void fit(int width) override;

 private:
  std::vector<std::pair<std::string, std::string>> options_;
  std::string words_;
  Prose *title_, *trouble_;
  wxChoice* control_;
};

}  // namespace stile::desktop
