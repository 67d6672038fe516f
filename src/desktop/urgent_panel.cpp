#include "desktop/urgent_panel.h"

#include <wx/sizer.h>

#include "application/client_interview.h"
#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/page.h"
#include "desktop/prose.h"
#include "documents/decision_words.h"
#include "documents/ladder_words.h"

namespace stile::desktop {

using drawing::Colour;

void fileUrgent(Workplace& place, Column& column, Prose* said) {
  auto* const interview = place.desk().interview();
  if (interview == nullptr || !interview->isUrgent()) return;
  base::Issues issues;
  const auto filed = interview->fileUrgent(issues);
  if (said != nullptr)
    said->say(filed ? "An action record is open: it stays on the list until somebody says what was done."
                    : "No action record could be filed: " + filed.failure().message + ". Do what stands above first; the next answer tries it again.");
  column.refit();
  place.refreshHead();
  // A dialog would stand before what must be done now.
  if (!filed && said == nullptr) place.tell(filed.failure());
}

UrgentPanel::UrgentPanel(wxWindow* parent, const Theme& theme) : wxPanel(parent), theme_(theme), inset_(FromDIP(20)) {
  SetBackgroundColour(theme.colour(Colour::Slab));
  auto* down = new wxBoxSizer(wxVERTICAL);
  call_ = makeLine(*down, Step::Title, " ");
  whatSizer_ = new wxBoxSizer(wxVERTICAL);
  meanwhileSizer_ = new wxBoxSizer(wxVERTICAL);
  down->Add(whatSizer_);
  down->Add(meanwhileSizer_);
  down->AddSpacer(inset_ / 2);
  auto* outer = new wxBoxSizer(wxVERTICAL);
  outer->Add(down, 0, wxEXPAND | wxALL, inset_ / 2);
  SetSizer(outer);
}

UrgentPanel::UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber)
    : UrgentPanel(parent, theme) {
  show(screening, emergencyNumber);
}

Prose* UrgentPanel::makeLine(wxSizer& below, Step step, const std::string& words) {
  auto* line = new Prose(this, theme_, step, words, Colour::OnSlab);
  below.Add(line, 0, wxLEFT | wxRIGHT | wxTOP, inset_ / 2);
  return line;
}

void UrgentPanel::say(Kept<Prose>& lines, wxSizer& below, Step step, const std::vector<std::string>& all) {
  for (std::size_t i = 0; i < all.size(); ++i) lines.at(i, [&](std::size_t) { return makeLine(below, step, " "); }).say(all[i]);
  lines.keep(all.size());
}

void UrgentPanel::show(const screening::Screening& screening, const std::string& emergencyNumber) {
  std::vector<std::string> what, meanwhile;
  if (documents::isEmergency(screening)) {
    const auto words = documents::emergencyWords(screening, emergencyNumber);
    for (const std::string& one : words.what) what.push_back(documents::asSentence(one));
    for (const std::string& doing : words.meanwhile) meanwhile.push_back(documents::asSentence(doing));
    call_->say("Stop. " + documents::asSentence(words.call));
    groupFor(*this, words.call);
  } else {
    for (const auto& finding : screening.findings)
      if (finding.standing == rules::Standing::Certain && finding.reach.action == limits::Action::SameDay) what.push_back(finding.say.clinician);
    call_->say("To be seen today");
    groupFor(*this, "To be seen today");
  }
  say(what_, *whatSizer_, Step::Body, what);
  say(meanwhile_, *meanwhileSizer_, Step::Heading, meanwhile);
}

void UrgentPanel::fit(int width) { fitChildren(*this, width - 2 * inset_); }

UrgentStep::UrgentStep(wxWindow* parent, const Theme& theme, std::function<void()> goOn, std::function<void()> stop) : Stack(parent) {
  panel_ = new UrgentPanel(this, theme);
  put(panel_);
  filed_ = new Prose(this, theme, Step::Body, " ");
  put(filed_, 12);
  on_ = addWay(theme, "1", "Go on with the questions", std::move(goOn));
  stop_ = addWay(theme, "2", "Stop here, to the decision", std::move(stop));
}

KeyButton* UrgentStep::addWay(const Theme& theme, const std::string& cap, const std::string& words, std::function<void()> act) {
  auto* button = new KeyButton(this, theme, "", {cap, words, "", false});
  button->Bind(wxEVT_BUTTON, [this, act = std::move(act)](wxCommandEvent&) { CallAfter(act); });
  GetSizer()->Add(button, 0, wxTOP, FromDIP(8));
  return button;
}

void UrgentStep::show(const screening::Screening& screening, const std::string& emergencyNumber) {
  panel_->show(screening, emergencyNumber);
  filed_->say("The action record is being filed.");
  isEmergency_ = documents::isEmergency(screening);
  on_->emphasize(!isEmergency_);
  stop_->emphasize(isEmergency_);
}

void UrgentStep::enter() { (isEmergency_ ? stop_ : on_)->SetFocus(); }

}  // namespace stile::desktop
