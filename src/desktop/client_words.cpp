#include "desktop/client_words.h"

#include <algorithm>
#include <array>
#include <cctype>
#include <sstream>

#include "application/translated_forms.h"

namespace stile::desktop {
namespace {

const ClientWords kEnglish{.language = "en",
                           .name = "English",
                           .yes = "Yes",
                           .no = "No",
                           .notSure = "I am not sure",
                           .ratherNot = "I would rather not say",
                           .skip = "Leave it for now",
                           .next = "Next",
                           .thatIsAll = "That is all",
                           .back = "Back",
                           .readAloud = "Read it to me",
                           .needHelp = "I need help",
                           .staff = "Staff",
                           .unwell = "Feeling unwell right now? Stop here and tell the staff.",
                           .tellStaff = "Tell the staff.",
                           .tellStaffNow = "Tell the staff now",
                           .helpComes = "Show this to the staff, or call them.",
                           .givenBack = "Give the screen back to the staff.",
                           .thanks = "Thank you. That is all we ask you here.",
                           .anotherOne = "Is there another one?",
                           .yesAnother = "Yes, another one",
                           .answered = "{count} answered",
                           .toGo = "At most {count} questions to go",
                           .unit = "Unit",
                           .answer = "Your answer",
                           .notTaken = "",
                           .writeNumber = "Write a number.",
                           .writeDate = "Such as 14 March 2025, March 2025 or 2025.",
                           .months = ""};

const ClientWords kSpanish{.language = "es",
                           .name = "Español",
                           .yes = "Sí",
                           .no = "No",
                           .notSure = "No estoy seguro o segura",
                           .ratherNot = "Prefiero no decirlo",
                           .skip = "Dejarlo por ahora",
                           .next = "Siguiente",
                           .thatIsAll = "Eso es todo",
                           .back = "Atrás",
                           .readAloud = "Léamelo",
                           .needHelp = "Necesito ayuda",
                           .staff = "Personal",
                           .unwell = "¿Se siente mal ahora mismo? Pare aquí y avise al personal.",
                           .tellStaff = "Avise al personal.",
                           .tellStaffNow = "Avise ahora al personal",
                           .helpComes = "Enseñe esto al personal, o llámelo.",
                           .givenBack = "Devuelva la pantalla al personal.",
                           .thanks = "Gracias. Aquí no le preguntamos nada más.",
                           .anotherOne = "¿Hay otro más?",
                           .yesAnother = "Sí, otro más",
                           .answered = "{count} respondidas",
                           .toGo = "Quedan como mucho {count} preguntas",
                           .unit = "Unidad",
                           .answer = "Su respuesta",
                           .notTaken = "Esto no se puede tomar como respuesta. Mírelo otra vez, o elija otra respuesta de abajo.",
                           .writeNumber = "Escriba un número.",
                           .writeDate = "Por ejemplo 14 de marzo de 2025, marzo de 2025 o 2025.",
                           .months = "enero febrero marzo abril mayo junio julio agosto septiembre octubre noviembre diciembre"};

}  // namespace

std::vector<const ClientWords*> clientLanguages(const std::string& contentFolder) {
  std::vector<const ClientWords*> languages{&kEnglish};
  if (application::hasTranslation(contentFolder, kSpanish.language)) languages.push_back(&kSpanish);
  return languages;
}

std::string dateInEnglish(const std::string& typed, const ClientWords& words) {
  static constexpr std::array<const char*, 12> kMonths{"January", "February", "March",     "April",   "May",      "June",
                                                       "July",    "August",   "September", "October", "November", "December"};
  std::vector<std::string> months;
  std::istringstream all(words.months);
  for (std::string month; all >> month;) months.push_back(month);
  if (months.empty()) return typed;
  std::string date;
  std::istringstream parts(typed);
  for (std::string part; parts >> part;) {
    if (part == "de" || part == "del") continue;
    std::transform(part.begin(), part.end(), part.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto at = std::find(months.begin(), months.end(), part);
    date += (date.empty() ? "" : " ") + (at == months.end() ? part : std::string(kMonths.at(static_cast<std::size_t>(at - months.begin()))));
  }
  return date;
}

}  // namespace stile::desktop
