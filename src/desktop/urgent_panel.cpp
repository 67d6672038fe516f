#include "desktop/urgent_panel.h"

#include <wx/sizer.h>

#include "application/client_interview.h"
#include "desktop/accessible.h"
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

UrgentPanel::UrgentPanel(wxWindow* parent, const Theme& theme, const screening::Screening& screening, const std::string& emergencyNumber)
    : wxPanel(parent), inset_(FromDIP(20)) {
  SetBackgroundColour(theme.colour(Colour::Slab));
  const bool isEmergency = documents::isEmergency(screening);
  auto* down = new wxBoxSizer(wxVERTICAL);
  const auto put = [&](Step step, const std::string& words) {
    down->Add(new Prose(this, theme, step, words, Colour::OnSlab), 0, wxLEFT | wxRIGHT | wxTOP, inset_ / 2);
  };
  std::string spoken;
  if (isEmergency) {
    const auto words = documents::emergencyWords(screening, emergencyNumber);
    put(Step::Title, "Stop. " + documents::asSentence(words.call));
    for (const std::string& what : words.what) put(Step::Body, documents::asSentence(what));
    for (const std::string& doing : words.meanwhile) put(Step::Heading, documents::asSentence(doing));
    spoken = words.call;
  } else {
    put(Step::Title, "To be seen today");
    spoken = "To be seen today";
    for (const auto& finding : screening.findings)
      if (finding.standing == rules::Standing::Certain && finding.reach.action == limits::Action::SameDay) put(Step::Body, finding.say.clinician);
  }
  down->AddSpacer(inset_ / 2);
  auto* outer = new wxBoxSizer(wxVERTICAL);
  outer->Add(down, 0, wxEXPAND | wxALL, inset_ / 2);
  SetSizer(outer);
  groupFor(*this, spoken);
}

void UrgentPanel::fit(int width) { fitChildren(*this, width - 2 * inset_); }

}  // namespace stile::desktop
