// What the program itself says to a client, in the languages it knows. Questions and options are those of
// the content (application/translated_forms.h).
#pragma once

#include <string>
#include <vector>

namespace stile::desktop {

struct ClientWords {
  const char *language, *name;  ///< "es", "Español"
  const char *yes, *no, *notSure, *ratherNot, *skip, *next, *thatIsAll, *back, *readAloud, *needHelp, *staff;
  const char *unwell, *tellStaff, *tellStaffNow, *helpComes, *givenBack, *thanks, *anotherOne, *yesAnother, *answered, *toGo, *unit, *answer;
  const char *notTaken, *writeNumber, *writeDate;  ///< why something typed was no answer, and what to write
  const char* months;  ///< from January, between spaces; "" = as questions expect them
};

/// English, and every language of these that the content has words in.
std::vector<const ClientWords*> clientLanguages(const std::string& contentFolder);

/// What was typed, with the months of the language as questions expect them: "14 de marzo de 1963" is
/// "14 March 1963".
std::string dateInEnglish(const std::string& typed, const ClientWords& words);

}  // namespace stile::desktop
