// One client: a new one is taken in here; of one who is there already it says who it is and what is due.
#pragma once

#include "desktop/page.h"

class wxBoxSizer;

namespace stile::desktop {

class Column;
class FormField;

class ClientPage : public Page {
 public:
  ClientPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return isNew_ ? "Enter next field · Ctrl Enter takes the client in" : "Alt 3 interview · Alt 1 today"; }

 private:
  void buildNew();
  void buildKnown();
  void takeIn(const std::string& form);
  /// With a form of its own, or the one of the draft for "".
  void begin(const std::string& form);
  bool hasDraft() const;
  wxWindow* button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act);

  Column* column_;
  FormField *given_ = nullptr, *family_ = nullptr, *born_ = nullptr, *record_ = nullptr, *telephone_ = nullptr, *physician_ = nullptr,
            *practice_ = nullptr;
  bool isNew_ = true;
};

}  // namespace stile::desktop
