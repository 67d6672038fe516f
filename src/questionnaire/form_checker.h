// What needs the whole assembled form: conditions and nesting. For src/questionnaire only.
#pragma once

#include "base/issue.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// enableWhen: the question stands earlier, is a question, and takes answers of the type and unit
/// compared with; its option is offered. Repeating: groups do not repeat within groups that
/// repeat, and a question with several answers holds no questions.
void checkForm(const Form& form, base::Issues& issues);

}  // namespace stile::questionnaire
