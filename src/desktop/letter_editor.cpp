#include "desktop/letter_editor.h"

#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/wupdlock.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/passage_field.h"
#include "desktop/prose.h"

namespace stile::desktop {

using drawing::Colour;

LetterEditor::LetterEditor(wxWindow* parent, const Theme& theme, Told told)
    : Column(parent, theme, Colour::Sheet, 22, 620), theme_(theme), told_(std::move(told)) {
  groupFor(*this, "Words of the letter");
}

void LetterEditor::open(const std::string& title, const documents::LetterWording& computed,
                        const documents::LetterWording& now) {
  const wxWindowUpdateLocker calm(this);
  clear();
  fields_.clear();
  computed_ = computed;
  put(new Prose(this, theme_, Step::Title, title));
  put(new Prose(this, theme_, Step::Small,
                "Change the words; the letter at the right follows. A passage without words is left out. "
                "Reply slip, signature and caution stay. The foot of the letter names what you changed.",
                Colour::Ink2),
      8);
  for (std::size_t i = 0; i < computed.passages.size(); ++i) {
    const documents::Passage& passage = computed.passages[i];
    const std::string& words = i < now.passages.size() ? now.passages[i].text : passage.text;
    fields_.push_back(new PassageField(this, theme_, passage.name, passage.text, words,
                                       {[this] {
                                          check();
                                          refit();
                                          told_.changed();
                                        },
                                        [this, i](bool isForward) { leave(i, isForward); }}));
    put(fields_.back(), 14);
  }
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  done_ = new KeyButton(this, theme_, "primary", {"Ctrl Enter", "Done", "", false});
  done_->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter(told_.done); });
  auto* all = new KeyButton(this, theme_, "", {"", "All as computed", "", false});
  all->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { resetAll(); }); });
  row->Add(done_, 0, wxRIGHT, FromDIP(10));
  row->Add(all);
  space(18);
  stack().Add(row);
  refit();
}

void LetterEditor::leave(std::size_t field, bool isForward) {
  if (isForward && field + 1 == fields_.size()) return done_->SetFocus();
  if (isForward || field > 0) fields_[isForward ? field + 1 : field - 1]->enterBy(isForward);
}

void LetterEditor::enter() {
  if (!fields_.empty()) fields_.front()->enter();
}

documents::LetterWording LetterEditor::wording() const {
  documents::LetterWording wording = computed_;
  for (std::size_t i = 0; i < fields_.size(); ++i) wording.passages[i].text = fields_[i]->words();
  return wording;
}

bool LetterEditor::isChanged() const {
  return std::any_of(fields_.begin(), fields_.end(),
                     [](const PassageField* field) { return field->isChanged(); });
}

bool LetterEditor::check() {
  bool isWhole = true;
  for (std::size_t i = 0; i < fields_.size(); ++i) {
    const bool isMissing =
        i < documents::kNeededPassages && fields_[i]->words().find_first_not_of(" \t\n") == std::string::npos;
    fields_[i]->complain(isMissing ? "A letter needs this." : "");
    isWhole = isWhole && !isMissing;
  }
  return isWhole;
}

void LetterEditor::resetAll() {
  for (PassageField* field : fields_) field->reset();
  enter();
}

}  // namespace stile::desktop
