#include "desktop/entry_form.h"

#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include <algorithm>
#include <sstream>

#include "desktop/choice_field.h"
#include "desktop/form_field.h"
#include "desktop/typed_date.h"
#include "json/document.h"
#include "records/entry_words.h"

namespace stile::desktop {

using records::Member;
using records::MemberType;

namespace {

bool isKnownAlready(const records::PossibleEntry& entry, const std::string& member) {
  return std::any_of(entry.known.begin(), entry.known.end(), [&member](const auto& one) { return one.first == member; });
}

std::vector<std::string> partsOf(const std::string& text) {
  std::vector<std::string> parts;
  std::istringstream all(text);
  for (std::string part; std::getline(all, part, ';');) {
    const auto first = part.find_first_not_of(' ');
    if (first != std::string::npos) parts.push_back(part.substr(first, part.find_last_not_of(' ') - first + 1));
  }
  return parts;
}

bool isWholeNumber(const std::string& text) {
  const auto number = base::Rational::parse(text);
  return number && number->isWhole();
}

}  // namespace

EntryForm::EntryForm(wxWindow* parent, const Theme& theme, const records::PossibleEntry& entry, base::Date today)
    : wxPanel(parent), kind_(*records::entryKind(entry.kind)), entry_(entry) {
  SetBackgroundColour(parent->GetBackgroundColour());
  auto* down = new wxBoxSizer(wxVERTICAL);
  for (const Member& member : kind_.members) {
    if (isKnownAlready(entry, member.name) || member.type == MemberType::Reference || member.type == MemberType::Any) continue;
    const std::string words = records::memberWords(member.name) + (member.isRequired ? "" : " (if any)");
    Field field{&member};
    if (member.type == MemberType::Flag || member.type == MemberType::Word) {
      std::vector<std::pair<std::string, std::string>> options{{"true", "Yes"}, {"false", "No"}};
      if (member.type == MemberType::Word) {
        options.clear();
        for (const std::string& word : member.words) options.emplace_back(word, records::choiceWords(word));
      }
      field.chosen = new ChoiceField(this, theme, words, std::move(options));
      down->Add(field.chosen, 0, wxEXPAND | wxTOP, FromDIP(12));
    } else {
      field.typed = new FormField(this, theme, words, FormField::Kind::Text, member.type == MemberType::Texts ? "Several apart by a semicolon." : "");
      if (member.type == MemberType::Date && member.isRequired) field.typed->set(today.toLongText());
      down->Add(field.typed, 0, wxEXPAND | wxTOP, FromDIP(12));
    }
    fields_.push_back(field);
  }
  SetSizer(down);
}

std::string EntryForm::troubleWith(const Field& field) const {
  const Member& member = *field.member;
  const std::string text = field.typed != nullptr ? field.typed->text() : field.chosen->code();
  if (text.empty()) return member.isRequired ? "This is needed." : "";
  if (member.type == MemberType::Date && !typedDate(text)) return kNoDay;
  if (member.type == MemberType::Number && !isWholeNumber(text)) return "Write a whole number.";
  return {};
}

std::optional<std::string> EntryForm::body() {
  const Field* first = nullptr;
  for (const Field& field : fields_) {
    const std::string trouble = troubleWith(field);
    field.typed != nullptr ? field.typed->complain(trouble) : field.chosen->complain(trouble);
    if (!trouble.empty() && first == nullptr) first = &field;
  }
  if (first != nullptr) {
    first->typed != nullptr ? first->typed->enter() : first->chosen->control().SetFocus();
    return std::nullopt;
  }
  json::Writer writer(0);
  writer.beginObject();
  for (const auto& [member, value] : entry_.known) writer.member(member, value);
  for (const Field& field : fields_) {
    const std::string text = field.typed != nullptr ? field.typed->text() : field.chosen->code();
    if (text.empty()) continue;
    writer.key(field.member->name);
    switch (field.member->type) {
      case MemberType::Date: writer.string(typedDate(text)->toText()); break;
      case MemberType::Number: writer.numberText(base::Rational::parse(text)->toText()); break;
      case MemberType::Flag: writer.boolean(text == "true"); break;
      case MemberType::Texts:
        writer.beginArray();
        for (const std::string& part : partsOf(text)) writer.string(part);
        writer.endArray();
        break;
      default: writer.string(text);
    }
  }
  return writer.endObject().text();
}

void EntryForm::enter() {
  // The day stands there already: what is to be said comes first.
  for (const Field& field : fields_) {
    if (field.member->type == MemberType::Date && fields_.size() > 1) continue;
    return field.typed != nullptr ? field.typed->enter() : field.chosen->control().SetFocus();
  }
  if (!fields_.empty() && fields_.front().typed != nullptr) fields_.front().typed->enter();
}

void EntryForm::fit(int width) { fitChildren(*this, width); }

}  // namespace stile::desktop
