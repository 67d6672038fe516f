// The words of one letter, passage by passage, for whoever sends it to change.
#pragma once

#include <functional>
#include <vector>

#include "desktop/fitted.h"
#include "documents/letter_wording.h"

namespace stile::desktop {

class KeyButton;
class PassageField;

class LetterEditor : public Column {
 public:
  struct Told {
    std::function<void()> changed;  ///< after each change of a word
    std::function<void()> done;
  };
  LetterEditor(wxWindow* parent, const Theme& theme, Told told);
  /// `computed`: as the program wrote the letter; `now`: the words that stand, with the same passages.
  void open(const std::string& title, const documents::LetterWording& computed,
            const documents::LetterWording& now);
  /// The letter as it stands in the fields.
  documents::LetterWording wording() const;
  bool isChanged() const;
  /// Whether it can be sent like this; what is missing is told at its field.
  bool check();
  void resetAll();
  void enter();

 private:
  /// From this field to the next or the one before; beyond the last to what ends the change.
  void leave(std::size_t field, bool isForward);

  const Theme& theme_;
  Told told_;
  documents::LetterWording computed_;
  std::vector<PassageField*> fields_;
  KeyButton* done_ = nullptr;
};

}  // namespace stile::desktop
