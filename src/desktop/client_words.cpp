#include "desktop/client_words.h"

#include <algorithm>

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
                           .notTranslated = "",
                           .notReviewed = ""};

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
                           .notTranslated = "(en inglés) ",
                           .notReviewed = "Ningún profesional ha revisado todavía esta traducción."};

}  // namespace

std::vector<const ClientWords*> clientLanguages(const questionnaire::Form& form) {
  std::vector<const ClientWords*> languages{&kEnglish};
  const auto& items = form.inOrder();
  if (std::any_of(items.begin(), items.end(), [](const auto* item) { return item->translations.contains(kSpanish.language); })) languages.push_back(&kSpanish);
  return languages;
}

}  // namespace stile::desktop
