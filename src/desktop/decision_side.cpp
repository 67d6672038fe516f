#include "desktop/decision_side.h"

#include <wx/sizer.h>

#include "desktop/accessible.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/ladder_panel.h"
#include "desktop/prose.h"
#include "desktop/question_view.h"
#include "documents/decision_drawing.h"
#include "documents/decision_words.h"

namespace stile::desktop {
namespace {

constexpr std::size_t kOpenShown = 6, kMany = 100;
constexpr int kAfterCount = 16;

/// A count and, in the width that it leaves, what is counted.
class CountRow : public wxPanel, public Fitted {
 public:
  CountRow(wxWindow* parent, const Theme& theme) : wxPanel(parent) {
    SetBackgroundColour(parent->GetBackgroundColour());
    count = new Prose(this, theme, Step::Numeral, "0");
    words = new Prose(this, theme, Step::Body, "questions can still change the decision");
    auto* across = new wxBoxSizer(wxHORIZONTAL);
    across->Add(count, 0, wxALIGN_CENTRE_VERTICAL | wxRIGHT, FromDIP(kAfterCount));
    across->Add(words, 1, wxALIGN_CENTRE_VERTICAL);
    SetSizer(across);
  }
  void fit(int width) override { words->fit(width - count->GetBestSize().x - FromDIP(kAfterCount)); }

  Prose *count, *words;
};

std::size_t mattering(const interview::Session& session) {
  std::size_t count = 0;
  for (const auto& [ref, stake] : session.stakes().all()) count += stake.decides && session.said(ref) == nullptr ? 1 : 0;
  return count;
}

}  // namespace

DecisionSide::DecisionSide(wxWindow* parent, const Theme& theme, std::function<void(interview::QuestionRef)> jump)
    : Column(parent, theme, drawing::Colour::Well, 20, 900), theme_(theme), jump_(std::move(jump)) {
  groupFor(*this, "Decision so far");
  auto* top = new CountRow(this, theme);
  count_ = top->count;
  countWords_ = top->words;
  put(top);
  action_ = new Prose(this, theme, Step::Reading, " ");
  put(action_, 4);
  strip_ = new DrawingPanel(this, theme, drawing::Colour::Well);
  stack().Add(strip_, 0, wxTOP, FromDIP(4));
  put(new Rule(this, theme), 12);
  sentence_ = new Prose(this, theme, Step::Heading, " ");
  put(sentence_, 10);
  possible_ = new Prose(this, theme, Step::Body, " ");
  put(possible_, 2);
  ladder_ = new LadderPanel(this, theme, drawing::Colour::Well, [this](int slot) {
    if (session_ == nullptr) return;
    const int place = session_->ground().questions().placeOf(slot);
    if (place >= 0) jump_({place, session_->question({place, -1}).group >= 0 ? 0 : -1});
  });
  put(ladder_, 14);
  put(new Rule(this, theme), 12);
  open_ = new Stack(this);
  openTitle_ = new Prose(open_, theme, Step::Reading, "Still open, most narrowing first");
  openTitle_->SetFont(theme.font(15, true));
  open_->put(openTitle_);
  put(open_, 8);
  for (std::size_t i = 0; i < kOpenShown; ++i) link(i);
}

void DecisionSide::show(interview::Session& session, const screening::Screening& screening, const std::string& emergencyNumber) {
  session_ = &session;
  const std::size_t left = mattering(session);
  const bool isSettled = session.closing() == interview::Closing::Settled;
  count_->say(isSettled ? "✓" : std::to_string(left));
  countWords_->say(isSettled && left == 0 ? "Settled: no unanswered question can change the decision"
                   : isSettled            ? "Settled: nothing unanswered holds it. " + std::to_string(left) + " answers can still change it, such as readings before a session"
                   : left == 0            ? "questions are open: answers that are missing or not sure hold the decision"
                   : left == 1            ? "question can still change the decision"
                   : left >= kMany        ? "questions can still change the decision; most of them go as lists are answered"
                                          : "questions can still change the decision");
  action_->say(documents::actionSentence(screening));
  strip_->show(documents::actionStripOf(screening, 440));
  sentence_->say(documents::decisionSentence(screening));
  possible_->say(documents::intervalSentence(screening));
  ladder_->show(screening, emergencyNumber);
  showOpen(session);
  refit();
}

void DecisionSide::forget() {
  session_ = nullptr;
  ladder_->forget();
}

KeyButton& DecisionSide::link(std::size_t index) {
  return links_.at(index, [this](std::size_t number) {
    auto* made = new KeyButton(open_, theme_, "said", {"", " ", "", false});
    made->Bind(wxEVT_BUTTON, [this, number](wxCommandEvent&) { jump_(linked_[number]); });
    open_->put(made);
    return made;
  });
}

void DecisionSide::showOpen(interview::Session& session) {
  const auto rows = stillOpen(session, kOpenShown);
  openTitle_->Show(!rows.empty());
  linked_.clear();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    KeyButton& made = link(i);
    made.say({"", rows[i].words, "", false});
    nameFor(made, "Go to the question: " + rows[i].words);
    linked_.push_back(rows[i].question);
  }
  links_.keep(rows.size());
}

void DecisionSide::enter() {
  for (wxWindow* child : ladder_->GetChildren())
    for (wxWindow* inner : child->GetChildren())
      if (inner->AcceptsFocus()) return inner->SetFocus();
}

}  // namespace stile::desktop
