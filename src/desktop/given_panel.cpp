#include "desktop/given_panel.h"

#include <utility>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"

namespace stile::desktop {

SaidLinks::SaidLinks(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump)
    : Stack(parent), theme_(theme), jump_(std::move(jump)) {}

KeyButton* SaidLinks::make(std::size_t number) {
  auto* made = new KeyButton(this, theme_, "said", {"", " ", "", false});
  made->Bind(wxEVT_BUTTON, [this, number](wxCommandEvent&) { jump_(rows_[number].question); });
  put(made, 2);
  return made;
}

void SaidLinks::makeReady(std::size_t count) {
  while (links_.all().size() < count) links_.prepare([this](std::size_t number) { return make(number); });
}

void SaidLinks::show(std::vector<SaidRow> rows) {
  rows_ = std::move(rows);
  for (std::size_t i = 0; i < rows_.size(); ++i) {
    KeyButton& link = links_.at(i, [this](std::size_t number) { return make(number); });
    link.say({"", rows_[i].words, rows_[i].answer, false});
    nameFor(link, rows_[i].words + " " + rows_[i].answer + ". Change it");
  }
  links_.keep(rows_.size());
  for (std::size_t i = rows_.size(); i < links_.all().size(); ++i) {
    links_.all()[i]->say({"", " ", "", false});
    nameFor(*links_.all()[i], " ");
  }
}

void SaidLinks::enter() {
  if (!rows_.empty()) links_.all().front()->SetFocus();
}

GivenPanel::GivenPanel(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump) : Stack(parent) {
  put(new Prose(this, theme, Step::Heading, "All answers so far"));
  put(new Prose(this, theme, Step::Small, "The newest first. Choose one to change it; F5 goes back to the question.", drawing::Colour::Ink2), 4);
  none_ = new Prose(this, theme, Step::Body, "Nothing was answered yet.");
  put(none_, 8);
  links_ = new SaidLinks(this, theme, std::move(jump));
  put(links_, 8);
}

void GivenPanel::show(std::vector<SaidRow> rows) {
  none_->Show(rows.empty());
  links_->show({rows.rbegin(), rows.rend()});
}

}  // namespace stile::desktop
