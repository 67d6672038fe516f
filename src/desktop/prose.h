// Text that wraps, and rows of a term with what is said of it.
#pragma once

#include <wx/panel.h>
#include <wx/stattext.h>

#include <optional>
#include <string>

#include "desktop/fitted.h"
#include "desktop/text_layout.h"

namespace stile::desktop {

/// A paragraph: native text, so that screen readers find it.
class Prose : public wxStaticText, public Fitted {
 public:
  Prose(wxWindow* parent, const Theme& theme, Step step, const std::string& text, drawing::Colour ink = drawing::Colour::Ink);
  void say(const std::string& text);
  /// Lays words out that it may have to say, so that it says them fast.
  void prepare(const std::string& text) const;
  /// Not shown while there is nothing to say.
  void sayOrHide(const std::string& text);
  /// Another size of type.
  void step(Step step);
  const std::string& said() const { return text_; }
  void fit(int width) override;
  /// The width it needs so that no word is broken.
  int widestWord();
  bool SetFont(const wxFont& font) override;
  bool Show(bool isShown = true) override;
  /// It has a font and a colour of its own.
  void InheritAttributes() override {}

 protected:
  wxSize DoGetBestSize() const override;

 private:
  int widthOfLines() const;
  void layOutAnew();
  const Theme& theme_;
  Step step_;
  std::string text_;
  int width_ = 0;
  bool isMade_ = false;
  bool isStale_ = false;  ///< it was given a width while it was hidden
  mutable std::optional<TextLayout> laid_;  ///< of this text, font and width
};

/// A term at the left, sentences at its right, a hairline below.
class TermRow : public wxPanel, public Fitted {
 public:
  TermRow(wxWindow* parent, const Theme& theme, const std::string& term, const std::string& text, const std::string& note = {});
  void fit(int width) override;

 private:
  Prose *term_, *text_, *note_ = nullptr;
};

/// A hairline, or a thicker line that parts groups.
class Rule : public wxPanel {
 public:
  Rule(wxWindow* parent, const Theme& theme, drawing::Colour colour = drawing::Colour::Hair, int thickness = 1);
};

}  // namespace stile::desktop
