// Which figure drawings show this client: a small choice, kept in the record.
#pragma once

#include <functional>
#include <optional>

#include "desktop/choice_field.h"
#include "desktop/desk.h"
#include "desktop/page.h"

namespace stile::desktop {

class BuildField : public ChoiceField {
 public:
  /// `chosen` is told the choice, nothing for the clinic's. The page keeps it by keepBuild(), and not before
  /// the control has done with it.
  BuildField(wxWindow* parent, const Theme& theme, const Desk& desk,
             const std::function<void(std::optional<movement::Build>)>& chosen);
};

/// Keeps the choice in the client's record and says so, or tells why not. True when it was kept.
bool keepBuild(Workplace& place, std::optional<movement::Build> build);

}  // namespace stile::desktop
