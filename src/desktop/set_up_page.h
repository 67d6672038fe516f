// The first run: the clinic, its first clinician, and the recovery phrase, which is shown once.
#pragma once

#include "desktop/page.h"

class wxChoice;
class wxCheckBox;

namespace stile::desktop {

class Column;
class FormField;

class SetUpPage : public Page {
 public:
  SetUpPage(wxWindow* parent, Workplace& place);
  void enter() override;
  std::string whyStay() const override { return isMade_ ? "Write the recovery phrase down and tick the box first: it is shown once." : ""; }

 private:
  void buildForm();
  void buildPhrase(const std::string& phrase);
  void make();
  bool isComplete();

  Column* column_;
  FormField *clinic_ = nullptr, *emergency_ = nullptr, *telephone_ = nullptr, *name_ = nullptr, *profession_ = nullptr, *handle_ = nullptr,
            *passphrase_ = nullptr, *again_ = nullptr, *file_ = nullptr;
  wxChoice* paper_ = nullptr;
  bool isMade_ = false;
};

}  // namespace stile::desktop
