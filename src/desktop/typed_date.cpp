#include "desktop/typed_date.h"

#include "interview/typed_answer.h"

namespace stile::desktop {

std::optional<base::Date> typedDate(const std::string& text) {
  questionnaire::Item item;
  item.type = questionnaire::ItemType::Date;
  interview::FormQuestion question;
  question.item = &item;
  const auto typed = interview::readTyped(question, text);
  if (!typed.ok() || typed.answers.empty() || !typed.answers.front().date) return std::nullopt;
  const base::PartialDate& date = *typed.answers.front().date;
  return date.isExact() ? std::optional(date.first()) : std::nullopt;
}

}  // namespace stile::desktop
