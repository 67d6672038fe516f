#include "desktop/plan_page.h"

#include <wx/choice.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/wupdlock.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/build_field.h"
#include "desktop/drawing_panel.h"
#include "desktop/key_button.h"
#include "desktop/plan_view.h"
#include "desktop/prose.h"
#include "desktop/words_dialog.h"
#include "documents/decision_words.h"
#include "plan/figure_of.h"

namespace stile::desktop {

using drawing::Colour;

namespace {

constexpr double kListedWidth = 120, kListedHeight = 84, kLargeWidth = 300, kLargeHeight = 168;
constexpr int kBesideDrawing = 8;
constexpr std::size_t kSwapKeys = 9;

const char* wordsOf(plan::Section section) {
  switch (section) {
    case plan::Section::WarmUp: return "Warm-up";
    case plan::Section::Aerobic: return "Aerobic";
    case plan::Section::Strength: return "Strength";
    case plan::Section::Balance: return "Balance";
    case plan::Section::Stretching: return "Stretching";
    case plan::Section::CoolDown: return "Cool-down";
    case plan::Section::Breathing: return "Breathing";
  }
  return "";
}

movement::PictureOptions sized(const Desk& desk, double width, double height) {
  movement::PictureOptions options;
  options.build = desk.drawnBuild();
  options.width = width;
  options.height = height;
  return options;
}

/// Drawn when it is first seen: of a long plan most lines are below the window.
void showPicture(DrawingPanel& panel, const screening::Content& content, const plan::Line& line, const movement::PictureOptions& options) {
  auto frame = plan::figureFrameOf(content.library, line, options);
  if (!frame) return;
  panel.showLater(std::move(*frame), [&content, line, options] { return plan::figureOf(content.library, line, options).value_or(drawing::Drawing{}); });
}

/// An exercise in the list: its drawing, and beside it the button with title and dose.
class PlanRow : public wxPanel, public Fitted {
 public:
  PlanRow(wxWindow* parent, const Theme& theme, KeyButtonWords words) : wxPanel(parent) {
    auto* across = new wxBoxSizer(wxHORIZONTAL);
    picture_ = new DrawingPanel(this, theme, Colour::Sheet);
    across->Add(picture_, 0, wxALIGN_CENTRE_VERTICAL);
    button_ = new KeyButton(this, theme, "row", std::move(words));
    across->Add(button_, 1, wxEXPAND | wxLEFT, FromDIP(kBesideDrawing));
    SetSizer(across);
  }
  DrawingPanel& picture() { return *picture_; }
  KeyButton& button() { return *button_; }
  void fit(int width) override { button_->fit(width - FromDIP(static_cast<int>(kListedWidth) + kBesideDrawing)); }

 private:
  DrawingPanel* picture_;
  KeyButton* button_;
};

}  // namespace

PlanPage::PlanPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  list_ = new Column(this, theme(), Colour::Sheet, 22, 900);
  side_ = new Column(this, theme(), Colour::Well, 20, 560);
  across->Add(list_, 62, wxEXPAND);
  across->Add(side_, 38, wxEXPAND);
  SetSizer(across);
}

const plan::StarterPlan* PlanPage::plan() const {
  const auto* screening = desk().screening();
  if (screening == nullptr) return nullptr;
  if (screening->plan) return &*screening->plan;
  return screening->heldPlan ? &*screening->heldPlan : nullptr;
}

void PlanPage::enter() {
  const wxWindowUpdateLocker calm(this);
  list_->clear();
  side_->clear();
  rows_.clear();
  build_ = nullptr;
  selected_ = 0;
  side_->Show(plan() != nullptr && !plan()->isEmpty());
  Layout();
  if (plan() == nullptr || plan()->isEmpty()) {
    buildNoPlan();
  } else {
    buildList(!desk().screening()->plan);
    buildSide();
  }
  list_->refit();
  side_->refit();
  if (!rows_.empty()) rows_.front()->SetFocus();
}

void PlanPage::buildNoPlan() {
  const auto* screening = desk().screening();
  list_->put(new Prose(list_, theme(), Step::Title, "No plan yet"));
  list_->put(new Prose(list_, theme(), Step::Body, screening == nullptr ? whyNothing() : documents::asSentence(screening->planBecause)), 8);
  const std::string next = screening == nullptr ? "interview" : "decision";
  auto* go = new KeyButton(list_, theme(), "primary", {"", "To the " + next, "", false});
  go->Bind(wxEVT_BUTTON, [this, next](wxCommandEvent&) { CallAfter([this, next] { place().go(next); }); });
  list_->space(16);
  list_->stack().Add(go);
  // A page without a focus would get no keys.
  go->SetFocus();
}

void PlanPage::buildList(bool isHeld) {
  const auto& plan = *this->plan();
  const auto& content = *desk().content();
  list_->put(new Prose(list_, theme(), Step::Title, isHeld ? "Held plan" : "Starter plan"));
  list_->put(new Prose(list_, theme(), Step::Body, isHeld ? documents::asSentence(desk().screening()->planBecause) + " It is shown to clinicians only." : plan.levelBecause), 4);
  for (const std::string& dropped : desk().droppedEdits()) list_->put(new Prose(list_, theme(), Step::Reading, dropped, Colour::Shut), 4);
  list_->put(new TermRow(list_, theme(), "Time", timeWords(plan, *desk().screening(), content)), 8);
  list_->put(new TermRow(list_, theme(), "At hand", atHandWords(*desk().screening(), content)));
  build_ = new BuildField(list_, theme(), desk(),
                          [this](auto build) { CallAfter([this, build] { drawAs(build); }); });
  list_->put(build_, 10);
  std::string section;
  for (std::size_t i = 0; i < plan.lines.size(); ++i) {
    const auto& line = plan.lines[i];
    if (section != wordsOf(line.exercise->section)) {
      section = wordsOf(line.exercise->section);
      auto* title = new Prose(list_, theme(), Step::Reading, section);
      title->SetFont(theme().font(15, true));
      list_->put(title, 14);
      list_->put(new Rule(list_, theme(), Colour::Post, 3), 4);
    }
    const std::string words = line.exercise->title + (line.side.empty() ? "" : ", " + line.side);
    auto* row = new PlanRow(list_, theme(), {"", words, line.dose.words, true});
    showPicture(row->picture(), content, line, sized(desk(), kListedWidth, kListedHeight));
    KeyButton* const button = &row->button();
    button->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { select(i); });
    button->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { select(i); });
    });
    list_->put(row, 4);
    rows_.push_back(button);
  }
  if (plan.weeks.empty()) return;
  list_->put(new Prose(list_, theme(), Step::Heading, "Week by week"), 22);
  list_->put(new Rule(list_, theme(), Colour::Post, 2), 4);
  list_->put(new DrawingPanel(list_, theme(), Colour::Sheet, weekCurveOf(plan)), 10);
  for (const auto& week : plan.weeks) list_->put(new TermRow(list_, theme(), "Week " + std::to_string(week.number), week.words, week.heldBy));
}

void PlanPage::drawAs(std::optional<movement::Build> build) {
  if (!keepBuild(place(), build)) return;
  const std::size_t before = selected_;
  enter();
  select(before);
  if (build_ != nullptr) build_->control().SetFocus();
}

void PlanPage::select(std::size_t line) {
  if (line == selected_ || plan() == nullptr || line >= plan()->lines.size()) return;
  selected_ = line;
  const wxWindowUpdateLocker calm(this);
  side_->clear();
  buildSide();
  side_->refit();
}

void PlanPage::buildSide() {
  const auto& plan = *this->plan();
  const auto& line = plan.lines[selected_];
  for (std::size_t i = 0; i < rows_.size(); ++i) rows_[i]->choose(i == selected_);
  side_->put(new Prose(side_, theme(), Step::Heading, line.exercise->title));
  auto* picture = new DrawingPanel(side_, theme(), Colour::Well);
  showPicture(*picture, *desk().content(), line, sized(desk(), kLargeWidth, kLargeHeight));
  side_->put(picture, 6);
  side_->put(new Prose(side_, theme(), Step::Body, line.dose.words), 8);
  // What can be done with the line stands where nobody has to scroll for it.
  buildChanges();
  side_->space(14);
  side_->put(new Rule(side_, theme(), Colour::Post, 2));
  if (!line.changed.empty()) side_->put(new TermRow(side_, theme(), "Changed", line.changed, inWords(line.changedBecause)));
  if (line.override) side_->put(new TermRow(side_, theme(), "Beyond", line.override->beyond, "Reason: " + line.override->reason));
  if (!line.pinnedBy.empty()) side_->put(new TermRow(side_, theme(), "Asked for", line.pinnedBy));
  if (!line.chosenBecause.empty() && line.pinnedBy.empty()) side_->put(new TermRow(side_, theme(), "Why this one", line.chosenBecause));
  if (!line.exercise->equipmentWords.empty()) side_->put(new TermRow(side_, theme(), "Needs", line.exercise->equipmentWords));
  if (line.next != nullptr)
    side_->put(
        new TermRow(side_, theme(), "When it is easy", line.next->title + " is open under the same limits."));
  std::string steps;
  for (const std::string& step : line.exercise->steps) steps += (steps.empty() ? "" : " ") + documents::asSentence(step);
  side_->put(new TermRow(side_, theme(), "How", steps));
  buildLeftOut();
}

void PlanPage::buildChanges() {
  const auto& plan = *this->plan();
  const auto& line = plan.lines[selected_];
  others_.clear();
  if (!desk().canEditPlan()) return side_->put(new Prose(side_, theme(), Step::Small, "Filed with the screening. Another plan wants another screening.", Colour::Ink2), 12);
  const auto button = [this](const std::string& cap, const std::string& words, void (PlanPage::*act)()) {
    auto* made = new KeyButton(side_, theme(), "", {cap, words, "", false});
    made->Bind(wxEVT_BUTTON, [this, act](wxCommandEvent&) { CallAfter([this, act] { (this->*act)(); }); });
    return made;
  };
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  row->Add(button("D", "Drop", &PlanPage::drop), 0, wxRIGHT, FromDIP(10));
  row->Add(button("P", "Pin", &PlanPage::pin), 0, wxRIGHT, FromDIP(10));
  if (!plan.edits.list.empty()) row->Add(button("Ctrl Z", "Undo", &PlanPage::undo));
  side_->space(8);
  side_->stack().Add(row);
  const auto title = [this](const std::string& words) {
    auto* heading = new Prose(side_, theme(), Step::Reading, words);
    heading->SetFont(theme().font(15, true));
    side_->put(heading, 10);
    side_->put(new Rule(side_, theme(), Colour::Post, 2), 2);
  };
  for (const auto& other : plan.alsoOpen) {
    if (other.exercise->purpose != line.exercise->purpose) continue;
    if (others_.empty()) title("Swap for");
    others_.push_back(other.exercise->id);
    auto* swapFor = new KeyButton(side_, theme(), "row", {others_.size() <= kSwapKeys ? std::to_string(others_.size()) : "", other.exercise->title, documents::capitalized(other.because), true});
    swapFor->Bind(wxEVT_BUTTON, [this, at = others_.size() - 1](wxCommandEvent&) { CallAfter([this, at] { swap(at); }); });
    side_->put(swapFor);
  }
}

void PlanPage::buildLeftOut() {
  const auto& plan = *this->plan();
  firstTake_ = nullptr;
  if (plan.leftOut.empty()) return;
  side_->put(new Prose(side_, theme(), Step::Heading, "Left out, and why"), 22);
  side_->put(new Rule(side_, theme(), Colour::Post, 2), 4);
  for (const auto& left : plan.leftOut) {
    const auto* exercise = desk().content()->library.find(left.exerciseId);
    const std::string title = exercise != nullptr ? exercise->title : documents::capitalized(left.purpose);
    const auto why = plainReasonOf(left.because, desk().screening()->findings);
    std::string note = why.findings;
    if (!left.turnTo.empty()) note += (note.empty() ? "" : ". ") + ("Turn to " + left.turnTo);
    side_->put(new TermRow(side_, theme(), title, documents::asSentence(documents::capitalized(why.sentence)), note));
    if (exercise == nullptr || !desk().canEditPlan()) continue;
    auto* take = new KeyButton(side_, theme(), "flat", {"", "Take " + title + " all the same…", "", false});
    take->Bind(wxEVT_BUTTON, [this, id = exercise->id, title](wxCommandEvent&) {
      CallAfter([this, id, title] { change({plan::EditKind::Pin, id, {}, {}}, title + " is in the plan"); });
    });
    side_->stack().Add(take, 0, wxTOP, FromDIP(4));
    if (firstTake_ == nullptr) firstTake_ = take;
  }
}

std::string PlanPage::inWords(const std::string& because) {
  const auto why = plainReasonOf(because, desk().screening()->findings);
  return why.findings.empty() ? why.sentence : why.sentence + " " + why.findings;
}

void PlanPage::change(plan::Edit edit, const std::string& words) {
  std::string because;
  const std::string after = edit.with.empty() ? edit.exercise : edit.with;
  while (const auto refused = desk().editPlan(edit)) {
    because = documents::asSentence(documents::capitalized(inWords(refused->because)));
    if (!refused->needsOverride) return place().tell({base::FailureKind::Refused, because});
    const auto reason = askWords(*this, theme(), {"Beyond the limits", because + " The reason stays with the plan and in the record.", "Your reason", "Take it", false});
    if (!reason || reason->find_first_not_of(' ') == std::string::npos) return place().say("The plan is as it was.");
    edit.overrideReason = *reason;
  }
  changed(after, desk().isPlanSaved() ? words + ". Saved" : words + ". Not saved: the change is only on the screen");
}

void PlanPage::changed(const std::string& exercise, const std::string& words) {
  const std::size_t before = selected_;
  enter();
  place().say(words);
  if (plan() == nullptr || rows_.empty()) return;
  const auto& lines = plan()->lines;
  const auto at = std::find_if(lines.begin(), lines.end(), [&](const plan::Line& line) { return line.exercise->id == exercise; });
  rows_[at != lines.end() ? static_cast<std::size_t>(at - lines.begin()) : std::min(before, rows_.size() - 1)]->SetFocus();
}

void PlanPage::swap(std::size_t other) {
  const auto* to = desk().content()->library.find(others_[other]);
  const auto* from = plan()->lines[selected_].exercise;
  change({plan::EditKind::Swap, from->id, to->id, {}}, to->title + " takes the place of " + from->title);
}

void PlanPage::pin() {
  const auto* exercise = plan()->lines[selected_].exercise;
  change({plan::EditKind::Pin, exercise->id, {}, {}}, exercise->title + " stays in the plan");
}

void PlanPage::drop() {
  const auto* exercise = plan()->lines[selected_].exercise;
  change({plan::EditKind::Drop, exercise->id, {}, {}}, exercise->title + " is dropped");
}

void PlanPage::undo() {
  if (rows_.empty()) return;
  const std::string exercise = plan()->lines[selected_].exercise->id;
  if (desk().undoEdit()) changed(exercise, "The last change is taken back");
}

bool PlanPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  if (build_ != nullptr && hasFocusInside(build_->control())) return false;
  if (event.ControlDown() && key == 'Z') return CallAfter([this] { undo(); }), true;
  if (!rows_.empty() && desk().canEditPlan() && !event.HasAnyModifiers()) {
    if (key == 'D') return CallAfter([this] { drop(); }), true;
    if (key == 'T' && firstTake_ != nullptr) return firstTake_->SetFocus(), true;
    if (key == 'P') return CallAfter([this] { pin(); }), true;
    const auto number = static_cast<std::size_t>(key - '1');
    if (key >= '1' && number < kSwapKeys && number < others_.size()) return CallAfter([this, number] { swap(number); }), true;
    if (key >= '1' && number < kSwapKeys) return place().say(others_.empty() ? "Nothing else is open in the place of this exercise." : "There is no swap of this number."), true;
  }
  if (!event.HasAnyModifiers() && list_->scrollBy(key)) return true;
  if (rows_.empty() || (key != WXK_UP && key != WXK_DOWN)) return false;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) rows_[selected_ + 1]->SetFocus();
  if (key == WXK_UP && selected_ > 0) rows_[selected_ - 1]->SetFocus();
  return true;
}

}  // namespace stile::desktop
