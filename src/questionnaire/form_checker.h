// What needs the whole assembled form: its conditions. For src/questionnaire only.
#pragma once

#include "base/issue.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// enableWhen: the question is a question of this form, takes answers of the type and unit compared
/// with, and offers the option. A condition on an option that is not offered can never hold: of the
/// severity `notOffered`, because the standard does not forbid it.
void checkForm(const Form& form, base::Severity notOffered, base::Issues& issues);

}  // namespace stile::questionnaire
