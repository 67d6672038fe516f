#include "desktop/end_panel.h"

#include <wx/sizer.h>

#include <algorithm>
#include <string>
#include <utility>

#include "desktop/key_button.h"
#include "desktop/prose.h"

namespace stile::desktop {
namespace {

constexpr std::size_t kHeldShown = 12;
constexpr int kAboveGo = 16;

}  // namespace

EndPanel::EndPanel(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump, std::function<void()> decide)
    : Stack(parent), theme_(theme), jump_(std::move(jump)) {
  put(new Prose(this, theme, Step::Title, "That was the last question"));
  holds_ = new Prose(this, theme, Step::Body, " ");
  put(holds_, 8);
  list_ = new Stack(this);
  put(list_);
  more_ = new Prose(this, theme, Step::Small, " ", drawing::Colour::Ink2);
  put(more_, 4);
  go_ = new KeyButton(this, theme, "primary", {"Enter", "To the decision", "", false});
  go_->Bind(wxEVT_BUTTON, [this, decide = std::move(decide)](wxCommandEvent&) { CallAfter(decide); });
  GetSizer()->Add(go_, 0, wxTOP, FromDIP(kAboveGo));
}

KeyButton* EndPanel::makeLink(std::size_t number) {
  auto* made = new KeyButton(list_, theme_, "said", {"", " ", "", false});
  made->Bind(wxEVT_BUTTON, [this, number](wxCommandEvent&) { CallAfter([this, number] { jump_(linked_[number]); }); });
  list_->put(made, 2);
  return made;
}

bool EndPanel::makeReady() {
  if (links_.all().size() < kHeldShown) links_.prepare([this](std::size_t number) { return makeLink(number); });
  return links_.all().size() < kHeldShown;
}

void EndPanel::show(const interview::Session& session) {
  const auto held = session.heldBy();
  const bool isSettled = session.closing() == interview::Closing::Settled;
  holds_->sayOrHide(held.empty() ? "" : isSettled ? "Answers that are missing can still change it:" : "Answers that are missing hold the decision:");
  linked_.assign(held.begin(), held.begin() + static_cast<std::ptrdiff_t>(std::min(held.size(), kHeldShown)));
  for (std::size_t i = 0; i < linked_.size(); ++i)
    links_.at(i, [this](std::size_t number) { return makeLink(number); }).say({"", session.question(linked_[i]).item->text, "", false});
  links_.keep(linked_.size());
  more_->sayOrHide(held.size() > kHeldShown ? "and " + std::to_string(held.size() - kHeldShown) + " more; all stand on the screening summary" : "");
}

void EndPanel::enter() { go_->SetFocus(); }

}  // namespace stile::desktop
