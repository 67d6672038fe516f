// The clinic itself: what it says of itself on papers, who may sign in, one's own passphrase, backups.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "desktop/page.h"

namespace stile::desktop {

class ChoiceField;
class Column;
class FormField;

class ClinicPage : public Page {
 public:
  ClinicPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override { return "Ctrl Enter saves what the clinic says on papers · Alt 1 today"; }
  std::string whyStay() const override;

 private:
  struct Said {
    std::string member;  ///< of the settings
    FormField* field;
    std::string first;   ///< what stood there at first
  };
  void build();
  void buildPapers();
  void buildPeople();
  void buildPassphrase();
  void buildBackup();
  void heading(Column& column, const std::string& words);
  FormField* field(Column& column, const std::string& words, const std::string& help = {}, bool isSecret = false);
  void button(Column& column, const std::string& style, const std::string& cap, const std::string& words, void (ClinicPage::*act)());
  /// Wraps and lays out both anew.
  void refit();
  /// By the passphrase: whoever finds the desk unattended takes nothing over. In the demo clinic nobody knows it.
  bool isAllowed(const std::string& what);
  /// Says that it was done and fills the page anew, or what went wrong.
  void done(const base::Result<bool>& result, const std::string& words);

  bool isPapersChanged() const;
  void savePapers();
  void addPerson();
  void endRights(const std::string& handle, const std::string& name);
  void changePassphrase();
  void backUp();

  Column *left_, *right_;  ///< what is said on papers; people, passphrase and backup
  std::vector<Said> said_;
  ChoiceField *paper_ = nullptr, *role_ = nullptr;
  FormField *name_ = nullptr, *profession_ = nullptr, *handle_ = nullptr, *passphrase_ = nullptr, *again_ = nullptr, *own_ = nullptr, *ownAgain_ = nullptr,
            *folder_ = nullptr;
};

}  // namespace stile::desktop
