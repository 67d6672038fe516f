// The fields of one entry of a record, out of its kind: whatever a kind asks for can be filled in.
#pragma once

#include <wx/panel.h>

#include <string>
#include <vector>

#include "base/date.h"
#include "desktop/fitted.h"
#include "records/entry_kinds.h"
#include "records/possible_entries.h"

namespace stile::desktop {

class ChoiceField;
class FormField;

class EntryForm : public wxPanel, public Fitted {
 public:
  EntryForm(wxWindow* parent, const Theme& theme, const records::PossibleEntry& entry, base::Date today);
  /// The entry as JSON. What is missing or cannot be read is told at its field, and there is none then.
  std::optional<std::string> body();
  void enter();
  void fit(int width) override;

 private:
  struct Field {
    const records::Member* member;
    FormField* typed = nullptr;
    ChoiceField* chosen = nullptr;
  };
  std::string troubleWith(const Field& field) const;

  const records::EntryKind& kind_;
  records::PossibleEntry entry_;
  std::vector<Field> fields_;
};

}  // namespace stile::desktop
