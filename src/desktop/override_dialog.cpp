#include "desktop/override_dialog.h"

#include <wx/choice.h>
#include <wx/dialog.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "desktop/accessible.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "documents/decision_words.h"

namespace stile::desktop {
namespace {

constexpr int kDialogWidth = 520, kDialogMargin = 20;
constexpr int kEvidence = wxID_HIGHEST + 100;
constexpr const char* kJudgement =
    "An override is for judgement, and stands beside what the rules say on every paper. New evidence (a reading, a date, another answer) is no override: "
    "it goes in as an answer, and the rules run again.";
constexpr const char* kOpen = " (not settled)";
constexpr const char* kFiles = " The screening is filed as it stands, its plan with it.";
constexpr const char* kSecond = "This one is acute: it does not hold before the lead or a physician, somebody other than you, has signed it too.";

class OverrideDialog : public wxDialog {
 public:
  OverrideDialog(wxWindow& parent, const Theme& theme, const std::vector<application::Overridable>& findings, bool isFiled)
      : wxDialog(&parent, wxID_ANY, "Override a finding"), theme_(theme), findings_(findings) {
    SetBackgroundColour(theme.colour(drawing::Colour::Sheet));
    auto* outer = new wxBoxSizer(wxVERTICAL);
    down_ = new wxBoxSizer(wxVERTICAL);
    put(new Prose(this, theme, Step::Body, std::string(kJudgement) + (isFiled ? "" : kFiles)), 0);
    auto* title = new Prose(this, theme, Step::Reading, "Finding");
    title->SetFont(theme.font(15, true));
    put(title, 16);
    addChoice();
    says_ = new Prose(this, theme, Step::Small, " ", drawing::Colour::Ink2);
    put(says_, 4);
    instead_ = new FormField(this, theme, "What holds instead");
    put(instead_, 12);
    reason_ = new FormField(this, theme, "Why");
    put(reason_, 12);
    trouble_ = new Prose(this, theme, Step::Small, " ", drawing::Colour::Shut);
    put(trouble_, 8);
    addButtons();
    outer->Add(down_, 0, wxALL, FromDIP(kDialogMargin));
    SetSizer(outer);
    refit();
    CentreOnParent();
    Bind(wxEVT_CHAR_HOOK, &OverrideDialog::onKey, this);
    choice_->SetFocus();
  }

  OverrideWanted wanted() const { return {false, chosen() == nullptr ? "" : chosen()->rule, instead_->text(), reason_->text()}; }

 private:
  void put(wxWindow* child, int above) { down_->Add(child, 0, wxEXPAND | wxTOP, FromDIP(above)); }

  void refit() {
    fitChildren(*this, FromDIP(kDialogWidth));
    GetSizer()->Fit(this);
    Layout();
  }

  void addChoice() {
    choice_ = new wxChoice(this, wxID_ANY);
    choice_->Append("Choose one");
    for (const auto& finding : findings_) choice_->Append(shown(documents::capitalized(finding.title) + (finding.isCertain ? "" : kOpen)));
    choice_->SetSelection(0);
    choice_->SetMinSize(FromDIP(wxSize(kDialogWidth, -1)));
    choice_->SetMaxSize(FromDIP(wxSize(kDialogWidth, -1)));
    nameFor(*choice_, "Finding");
    choice_->Bind(wxEVT_CHOICE, [this](wxCommandEvent&) {
      const auto* finding = chosen();
      says_->say(finding == nullptr ? " " : documents::asSentence(finding->says) + (finding->needsSecond ? std::string(" ") + kSecond : ""));
      refit();
    });
    put(choice_, 4);
  }

  void addButtons() {
    const auto button = [this](const std::string& style, const std::string& cap, const std::string& words, int id, int right) {
      auto* made = new KeyButton(this, theme_, style, {cap, words, "", false});
      made->Bind(wxEVT_BUTTON, [this, id](wxCommandEvent&) { end(id); });
      row_->Add(made, 0, wxRIGHT, FromDIP(right));
    };
    row_ = new wxBoxSizer(wxHORIZONTAL);
    button("primary", "Ctrl Enter", "Override…", wxID_OK, 10);
    button("", "Alt E", "It is evidence", kEvidence, 10);
    button("", "Esc", "Not now", wxID_CANCEL, 0);
    down_->Add(row_, 0, wxTOP, FromDIP(8));
  }

  const application::Overridable* chosen() const {
    const int at = choice_->GetSelection();
    return at <= 0 ? nullptr : &findings_[static_cast<std::size_t>(at - 1)];
  }

  void end(int id) {
    if (id != wxID_OK) return EndModal(id);
    const char* missing = chosen() == nullptr ? "Choose the finding." : instead_->text().empty() ? "Say what holds instead." : reason_->text().empty() ? "Say why." : nullptr;
    if (missing == nullptr) return EndModal(id);
    trouble_->say(missing);
    refit();
    if (chosen() == nullptr) return choice_->SetFocus();
    instead_->text().empty() ? instead_->enter() : reason_->enter();
  }

  void onKey(wxKeyEvent& event) {
    const int key = event.GetKeyCode();
    if (event.AltDown() && key == 'E') return EndModal(kEvidence);
    if (key == WXK_ESCAPE) return EndModal(wxID_CANCEL);
    const bool isEnter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
    if (isEnter && event.ControlDown()) return end(wxID_OK);
    if (isEnter && instead_->control().HasFocus()) return reason_->enter();
    if (isEnter && reason_->control().HasFocus()) return end(wxID_OK);
    event.Skip();
  }

  const Theme& theme_;
  const std::vector<application::Overridable>& findings_;
  wxBoxSizer *down_, *row_ = nullptr;
  wxChoice* choice_ = nullptr;
  Prose *says_, *trouble_;
  FormField *instead_, *reason_;
};

}  // namespace

std::optional<OverrideWanted> askOverride(wxWindow& parent, const Theme& theme, const std::vector<application::Overridable>& findings, bool isFiled) {
  OverrideDialog dialog(parent, theme, findings, isFiled);
  const int end = dialog.ShowModal();
  if (end == kEvidence) return OverrideWanted{true, {}, {}, {}};
  if (end != wxID_OK) return std::nullopt;
  return dialog.wanted();
}

}  // namespace stile::desktop
