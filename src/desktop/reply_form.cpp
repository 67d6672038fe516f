#include "desktop/reply_form.h"

#include <wx/choice.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "desktop/choice_field.h"
#include "desktop/form_field.h"
#include "desktop/prose.h"
#include "desktop/typed_date.h"
#include "facts/fact_display.h"
#include "questionnaire/item_type.h"

namespace stile::desktop {

using questionnaire::Item;
using questionnaire::ItemType;

namespace {

constexpr const char *kFindingGroup = "replyFinding", *kRule = "replyRule", *kBasis = "replyBasis", *kBy = "replyBy", *kDay = "replyDate";

}  // namespace

ReplyForm::ReplyForm(wxWindow* parent, const Theme& theme, const questionnaire::Form& form, const std::vector<application::FindingAsked>& asked,
                     const std::string& to, base::Date today)
    : wxPanel(parent) {
  SetBackgroundColour(parent->GetBackgroundColour());
  SetSizer(new wxBoxSizer(wxVERTICAL));
  for (const char* linkId : {kBy, kDay})
    if (const Item* item = form.find(linkId)) add(whole_, theme, *item, "");
  if (const auto by = whole_.typed.find(kBy); by != whole_.typed.end()) by->second->set(to);
  if (const auto day = whole_.days.find(kDay); day != whole_.days.end()) day->second->set(today.toLongText());
  const Item* group = form.find(kFindingGroup);
  for (const auto& finding : asked) {
    auto* title = new Prose(this, theme, Step::Strong, finding.title);
    GetSizer()->Add(title, 0, wxTOP, FromDIP(22));
    GetSizer()->Add(new Prose(this, theme, Step::Small, finding.basis, drawing::Colour::Ink2), 0, wxTOP, FromDIP(2));
    Part part;
    for (std::size_t i = 0; group != nullptr && i < group->items.size(); ++i) {
      const Item& item = *group->items[i];
      if (item.linkId != kRule && item.linkId != kBasis && item.type != ItemType::Display) add(part, theme, item, finding.title);
    }
    findings_.push_back(std::move(part));
  }
}

void ReplyForm::add(Part& part, const Theme& theme, const Item& item, const std::string& about) {
  wxWindow* made = nullptr;
  if (questionnaire::isChoice(item.type)) {
    std::vector<std::pair<std::string, std::string>> options;
    for (const auto& option : item.options) options.emplace_back(option.code, option.display);
    made = part.chosen[item.linkId] = new ChoiceField(this, theme, item.text, std::move(options));
  } else {
    const std::string unit = item.units.empty() ? "" : " (" + facts::unitWords(item.units.front()) + ")";
    auto* field = new FormField(this, theme, item.text + unit);
    (item.type == ItemType::Date ? part.days : part.typed)[item.linkId] = field;
    made = field;
  }
  if (!about.empty()) made->SetToolTip(wxString::FromUTF8(about));
  GetSizer()->Add(made, 0, wxEXPAND | wxTOP, FromDIP(12));
}

bool ReplyForm::read(const Part& part, application::TypedReply& into) {
  bool isRead = true;
  for (const auto& [linkId, field] : part.chosen) into[linkId] = field->code();
  for (const auto& [linkId, field] : part.typed) into[linkId] = field->text();
  for (const auto& [linkId, field] : part.days) {
    const auto day = typedDate(field->text());
    const bool isWrong = !field->text().empty() && !day;
    field->complain(isWrong ? kNoDay : "");
    if (isWrong && isRead) field->enter();
    isRead = isRead && !isWrong;
    into[linkId] = day ? day->toText() : "";
  }
  return isRead;
}

std::optional<application::PhysicianReply> ReplyForm::reply() {
  application::PhysicianReply reply;
  bool isRead = read(whole_, reply.whole);
  for (const Part& part : findings_) {
    application::TypedReply one;
    isRead = read(part, one) && isRead;
    reply.findings.push_back(std::move(one));
  }
  return isRead ? std::optional(std::move(reply)) : std::nullopt;
}

void ReplyForm::enter() {
  if (!findings_.empty() && !findings_.front().chosen.empty()) return findings_.front().chosen.begin()->second->control().SetFocus();
  if (!whole_.typed.empty()) whole_.typed.begin()->second->enter();
}

void ReplyForm::fit(int width) { fitChildren(*this, width); }

}  // namespace stile::desktop
