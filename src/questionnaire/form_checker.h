// What needs the whole assembled form: its conditions. For src/questionnaire only.
#pragma once

#include "base/issue.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// enableWhen: the question is a question of this form, takes answers of the type and unit compared
/// with, and offers the option.
void checkForm(const Form& form, base::Issues& issues);

}  // namespace stile::questionnaire
