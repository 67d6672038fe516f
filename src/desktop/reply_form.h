// The fields of a physician's reply: those of the form clearance-reply, once for every finding asked about.
#pragma once

#include <wx/panel.h>

#include <map>
#include <string>
#include <vector>

#include "application/clearance_answer.h"
#include "base/date.h"
#include "desktop/fitted.h"
#include "questionnaire/form.h"

namespace stile::desktop {

class ChoiceField;
class FormField;

class ReplyForm : public wxPanel, public Fitted {
 public:
  /// `to`: who was asked.
  ReplyForm(wxWindow* parent, const Theme& theme, const questionnaire::Form& form, const std::vector<application::FindingAsked>& asked, const std::string& to,
            base::Date today);
  /// nullopt when a field cannot be read; it says so itself.
  std::optional<application::PhysicianReply> reply();
  void enter();
  void fit(int width) override;

 private:
  struct Part {
    std::map<std::string, FormField*> typed, days;
    std::map<std::string, ChoiceField*> chosen;
  };
  void add(Part& part, const Theme& theme, const questionnaire::Item& item, const std::string& about);
  bool read(const Part& part, application::TypedReply& into);

  Part whole_;
  std::vector<Part> findings_;
};

}  // namespace stile::desktop
