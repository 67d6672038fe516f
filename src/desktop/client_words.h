// What the program itself says to a client, in the languages it knows. Questions and options are those of the forms.
#pragma once

#include <string>
#include <vector>

#include "questionnaire/form.h"

namespace stile::desktop {

struct ClientWords {
  const char *language, *name;  ///< "es", "Español"
  const char *yes, *no, *notSure, *ratherNot, *skip, *next, *thatIsAll, *back, *readAloud, *needHelp, *staff;
  const char *unwell, *tellStaff, *tellStaffNow, *helpComes, *givenBack, *thanks, *anotherOne, *yesAnother, *answered, *toGo, *unit, *answer;
  const char* notTranslated;  ///< stands before a question that is not in this language
  const char* notReviewed;    ///< of the translation; "" in English
};

/// English, and every language in which the form asks some question.
std::vector<const ClientWords*> clientLanguages(const questionnaire::Form& form);

}  // namespace stile::desktop
