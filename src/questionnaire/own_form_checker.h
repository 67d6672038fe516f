// What forms of our own content must keep beyond the standard, because their items are facts.
//
// Facts know one repetition of one group, conditions are three-valued in one pass, and every word is
// read by a client; so these forms do without some of what FHIR R4 allows. Strangers' forms are not
// held to it.
#pragma once

#include "base/issue.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

/// Issues for: items without words, types that are no fact, questions and groups nested in what
/// repeats, options without code or words, units that are not known, limits of dates, value sets,
/// expressions, and conditions on what comes later or stands inside a repeating group.
void checkOwnForm(const Form& form, base::Issues& issues);

/// What the standard allows and an author may not have meant, as notes; for forms of strangers.
void noteOddities(const Form& form, base::Issues& issues);

}  // namespace stile::questionnaire
