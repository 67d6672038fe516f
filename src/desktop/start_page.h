// Signing in to a clinic file, or the first run: set one up, or look round the demonstration.
#pragma once

#include "desktop/page.h"

namespace stile::desktop {

class Column;
class FormField;

class StartPage : public Page {
 public:
  StartPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;

 private:
  void build();
  void buildSignIn();
  void signIn();
  void chooseFile();
  void openDemonstration();

  Column* column_;
  std::string file_;
  FormField *handle_ = nullptr, *passphrase_ = nullptr;
};

}  // namespace stile::desktop
