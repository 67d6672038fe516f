// A native button that shows its key, its words, and beside them a second line or an answer. The button is the
// toolkit's; its words are painted into it, because native labels take most of the time of a page.
//
// It is the answer row of an interview, the row of a list, and the plain button with a key cap; the
// style class says which.
#pragma once

#include <wx/button.h>
#include <wx/font.h>

#include <string>

#include "desktop/fitted.h"

typedef struct _cairo cairo_t;

namespace stile::desktop {

struct KeyButtonWords {
  bool operator==(const KeyButtonWords&) const = default;
  std::string cap;     ///< the key, as on a key cap; "" = none
  std::string words;
  std::string beside;  ///< smaller, at the right end or below
  bool isBesideBelow = false;
};

class KeyButton : public wxButton, public Fitted {
 public:
  /// `style`: primary, answer, row, client, clientSmall, said, flat, slab, or "" for the plain one.
  KeyButton(wxWindow* parent, const Theme& theme, const std::string& style, KeyButtonWords words);
  void say(KeyButtonWords words);
  /// Of a button that is not shown: says words so that another of its kind says and paints them fast.
  void prepare(KeyButtonWords words);
  const KeyButtonWords& said() const { return words_; }
  /// Chosen: the answer that stands, or the row that is selected.
  void choose(bool isChosen);
  bool isChosen() const { return isChosen_; }
  /// The action that the page is about, or a plain one.
  void emphasize(bool isPrimary);
  /// Lower, where a window has little room.
  void tighten(bool isTight);
  void fit(int width) override;
  /// Colours come from the style sheet, fonts from the style.
  void InheritAttributes() override {}

 protected:
  wxSize DoGetBestSize() const override { return wanted_; }

 private:
  /// On a screen turned to the client.
  bool isLarge() const { return style_ == "client" || style_ == "clientSmall"; }
  bool isRow() const { return isLarge() || style_ == "answer" || style_ == "row" || style_ == "said"; }
  bool wraps() const { return isRow() || style_ == "flat"; }
  wxFont mainFont() const;
  void takeFonts();
  int capPixels() const { return isLarge() ? 20 : 13; }
  int capPadding() const { return isLarge() ? 12 : 6; }
  /// Says the words to a screen reader.
  void tell();
  /// Breaks the words into lines where they would go beyond the width, and takes the size they need.
  void fill();
  void breakWords();
  void measure();
  void paint(cairo_t* target);
  void paintCap(cairo_t* target, double left, double middle);

  /// Text as it is painted.
  struct Piece {
    std::string text;
    wxFont font;
    wxSize size;
  };
  void lay(Piece& piece, const std::string& text, int width);
  void paintPiece(cairo_t* target, const Piece& piece, double left, double top);
  bool isBesideBelow() const { return words_.isBesideBelow && !beside_.text.empty(); }

  const Theme& theme_;
  std::string style_;
  KeyButtonWords words_;
  bool isChosen_ = false, isTight_ = false;
  int width_ = 0;
  wxSize edges_;           ///< what padding and border add; asked of the toolkit once, it takes long
  wxSize wanted_{60, 40};  ///< until it is measured, large enough for its edges
  Piece cap_, main_, beside_;
};

}  // namespace stile::desktop
