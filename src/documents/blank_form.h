// A form to fill in by hand, made from any questionnaire: numbered questions, boxes and lines, and
// branching in words ("Only if 12 is: yes").
#pragma once

#include <array>
#include <string>
#include <vector>

#include "base/issue.h"
#include "documents/document.h"
#include "documents/phrase_book.h"
#include "questionnaire/form.h"
#include "records/clinic_settings.h"

namespace stile::documents {

/// The words of paper forms: rules/forms.json.
struct FormWords {
  PhraseBook phrases;
  static FormWords load(const std::string& text, const std::string& file, base::Issues& issues);
};

struct BlankFormOptions {
  /// Filled in away from the clinic: the questions of the topic "acute" stand aside, because nobody
  /// reads them within the hour, and the signs that cannot wait stand on page one instead.
  bool isForHome = false;
  std::vector<std::string> emergencySigns;  ///< for the box of a form for home
  std::string language = "en";
  std::string version;  ///< of the content
  std::string caution;
};

Document blankFormOf(const questionnaire::Form& form, const FormWords& words, const records::ClinicSettings& settings,
                     const BlankFormOptions& options);

inline constexpr std::array<KeyAndSlots, 26> kFormPhrases{{{"fillIn", ""},
                                                           {"homeFirst", "emergencyNumber"},
                                                           {"yes", ""},
                                                           {"no", ""},
                                                           {"notSure", ""},
                                                           {"other", ""},
                                                           {"tickAll", ""},
                                                           {"tickOne", ""},
                                                           {"onlyIf", "conditions"},
                                                           {"isAnswer", "number answer"},
                                                           {"isNotAnswer", "number answer"},
                                                           {"isAnswered", "number"},
                                                           {"isNotAnswered", "number"},
                                                           {"atLeast", "number value"},
                                                           {"moreThan", "number value"},
                                                           {"atMost", "number value"},
                                                           {"lessThan", "number value"},
                                                           {"and", ""},
                                                           {"or", ""},
                                                           {"onceForEach", ""},
                                                           {"day", ""},
                                                           {"who", ""},
                                                           {"when", ""},
                                                           {"clientItself", ""},
                                                           {"helper", ""},
                                                           {"askUs", ""}}};

}  // namespace stile::documents
