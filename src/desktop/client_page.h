// One client: a new one is taken in here; of one who is there already it says who it is and what is due, and
// name, contacts and physician can be changed.
#pragma once

#include "desktop/page.h"

class wxBoxSizer;

namespace stile::desktop {

class ClientFields;
class Column;

class ClientPage : public Page {
 public:
  ClientPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string whyStay() const override;
  std::string keys() const override;

 private:
  void buildNew();
  void buildKnown();
  void buildChange();
  void beginChange();
  void show();
  void change();
  void leaveAsItWas();
  void takeIn(const std::string& form);
  /// With a form of its own, or the one of the draft for "".
  void begin(const std::string& form);
  bool hasDraft() const;
  wxWindow* button(const std::string& style, const std::string& cap, const std::string& words, std::function<void()> act);

  Column* column_;
  ClientFields* fields_ = nullptr;  ///< none while nothing can be changed
  bool isNew_ = true, isChanging_ = false;
};

}  // namespace stile::desktop
