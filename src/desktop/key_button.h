// A native button that shows its key, its words, and beside them a second line or an answer.
//
// It is the answer row of an interview, the row of a list, and the plain button with a key cap; the
// style class says which.
#pragma once

#include <wx/button.h>

#include <string>

#include "desktop/fitted.h"

namespace stile::desktop {

struct KeyButtonWords {
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
  const KeyButtonWords& said() const { return words_; }
  /// Chosen: the answer that stands, or the row that is selected.
  void choose(bool isChosen);
  bool isChosen() const { return isChosen_; }
  void fit(int width) override;

 private:
  /// On a screen turned to the client.
  bool isLarge() const { return style_ == "client" || style_ == "clientSmall"; }
  wxFont mainFont() const;
  void fill();
  const Theme& theme_;
  std::string style_;
  KeyButtonWords words_;
  bool isChosen_ = false;
  int width_ = 0;
};

}  // namespace stile::desktop
