// Who a client is and how to reach them, as fields: of somebody new, or of somebody known with all there is to change.
#pragma once

#include <wx/panel.h>

#include <optional>
#include <string>
#include <vector>

#include "base/date.h"
#include "desktop/fitted.h"
#include "records/client.h"

namespace stile::desktop {

class FormField;
class Theme;

class ClientFields : public Stack {
 public:
  /// `known`: whose fields they are; nullptr for somebody new, who is asked for less.
  ClientFields(wxWindow* parent, const Theme& theme, const records::Client* known);
  /// What stands in the fields, over what was known. What is missing or cannot be is told at its field, which then
  /// has the focus, and there is no client.
  std::optional<records::Client> client(base::Date today);
  void enter();
  /// Whether something else stands there than at first.
  bool isChanged() const;
  /// Goes on from the field that has the focus. False behind the last one, and when none has it.
  bool enterNext();

 private:
  struct Row {
    FormField* field;
    std::string* kept;  ///< where in client_; null for the day
    std::string first;  ///< what stood there at first
  };

  bool isOfPhysicianBefore() const;

  records::Client client_;
  records::Person before_;        ///< the physician, as known
  bool isPracticeAsked_ = false;  ///< whether it is theirs who is named now
  std::vector<Row> fields_;
  FormField *given_, *family_, *born_, *physician_, *practice_, *emergency_ = nullptr;
};

}  // namespace stile::desktop
