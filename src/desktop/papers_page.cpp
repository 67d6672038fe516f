#include "desktop/papers_page.h"

#include <wx/checkbox.h>
#include <wx/choice.h>
#include <wx/dirdlg.h>
#include <wx/event.h>
#include <wx/sizer.h>
#include <wx/stdpaths.h>
#include <wx/textctrl.h>
#include <wx/utils.h>
#include <wx/wupdlock.h>

#include <algorithm>
#include <filesystem>

#include "desktop/accessible.h"
#include "desktop/build_field.h"
#include "desktop/form_field.h"
#include "desktop/key_button.h"
#include "desktop/letter_editor.h"
#include "desktop/paper_place.h"
#include "desktop/paper_printout.h"
#include "desktop/pdf_view.h"
#include "desktop/prose.h"
#include "desktop/text.h"
#include "documents/decision_words.h"

namespace stile::desktop {

using application::MadePaper;
using drawing::Colour;

namespace {

constexpr int kSlowMs = 500, kTypingMs = 350;

std::string counted(std::size_t papers) {
  return papers == 1 ? "1 paper" : std::to_string(papers) + " papers";
}

}  // namespace

PapersPage::PapersPage(wxWindow* parent, Workplace& place) : Page(parent, place) {
  auto* across = new wxBoxSizer(wxHORIZONTAL);
  list_ = new Column(this, theme(), Colour::Sheet, 22, 420);
  editor_ =
      new LetterEditor(this, theme(), {[this] { typed_.StartOnce(kTypingMs); }, [this] { endWords(); }});
  editor_->Hide();
  view_ = new PdfView(this, theme());
  across->Add(list_, 34, wxEXPAND);
  across->Add(editor_, 46, wxEXPAND);
  across->Add(view_, 66, wxEXPAND);
  SetSizer(across);
  slow_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) {
    if (progress_ == nullptr) return;
    progress_->Show();
    cancel_->Show();
    list_->refit();
  });
  typed_.Bind(wxEVT_TIMER, [this](wxTimerEvent&) { previewWords(); });
  // The line that names a paper of this client may not stand under the next one's name.
  Bind(wxEVT_SHOW, [this](wxShowEvent& event) {
    event.Skip();
    if (!event.IsShown()) this->place().say("");
  });
}

void PapersPage::enter() {
  editor_->Hide();
  list_->Show();
  Layout();
  notFollowed_.clear();
  make("");
}

KeyButton* PapersPage::button(const std::string& style, const std::string& cap, const std::string& words,
                              void (PapersPage::*act)()) {
  auto* made = new KeyButton(list_, theme(), style, {cap, words, "", false});
  made->Bind(wxEVT_BUTTON, [this, act](wxCommandEvent&) { CallAfter([this, act] { (this->*act)(); }); });
  list_->space(10);
  list_->stack().Add(made);
  return made;
}

void PapersPage::make(const std::string& first) {
  first_ = first;
  made_ = {};
  order_ = {};
  view_->clear();
  {
    const wxWindowUpdateLocker calm(this);
    list_->clear();
    rows_.clear();
    build_ = nullptr;
    folder_ = nullptr;
    onlyThis_ = nullptr;
    list_->put(new Prose(list_, theme(), Step::Title, "Papers"));
    progress_ = new Prose(list_, theme(), Step::Body, "Making the papers …");
    list_->put(progress_, 12);
    cancel_ = button("", "Esc", "Cancel", &PapersPage::callOff);
    progress_->Hide();
    cancel_->Hide();
    list_->refit();
  }
  auto order = desk().orderPapers();
  if (!order) return take(order.failure());
  order_ = std::move(order).value();
  slow_.StartOnce(kSlowMs);
  const int run = ++run_;
  const auto inTime = [this, run](auto act) {
    CallAfter([this, run, act = std::move(act)] {
      if (run == run_) act();
    });
  };
  job_ = std::make_unique<PaperJob>(
      order_, desk().sharedContent(), desk().contentFolder(),
      PaperJob::Told{[this, inTime](std::size_t done, std::size_t of, const std::string& name) {
                       inTime([this, done, of, name] { showProgress(done, of, name); });
                     },
                     [this, inTime](base::Result<application::MadePapers> result) {
                       inTime([this, result] { take(result); });
                     }});
}

void PapersPage::showProgress(std::size_t done, std::size_t of, const std::string& name) {
  progress_->say("Making paper " + std::to_string(done + 1) + " of " + std::to_string(of) + ": " +
                 paperTitle(name));
  list_->refit();
}

void PapersPage::callOff() {
  if (progress_ == nullptr) return;
  job_->callOff();
  ++run_;
  slow_.Stop();
  buildNothing("Called off. Nothing was written, and the record is as it was.");
}

void PapersPage::take(base::Result<application::MadePapers> result) {
  slow_.Stop();
  if (!result && !order_.options.wordings.empty()) {
    // Changed words fit no longer once the letter says something else.
    notFollowed_ = documents::asSentence(documents::capitalized(result.failure().message)) +
                   " The letters stand as the program writes them.";
    desk().dropWordings();
    return make(first_);
  }
  if (!result) return buildNothing(documents::asSentence(documents::capitalized(result.failure().message)));
  made_ = std::move(result).value();
  buildList();
}

void PapersPage::buildNothing(const std::string& why) {
  const wxWindowUpdateLocker calm(this);
  progress_ = nullptr;
  list_->clear();
  list_->put(new Prose(list_, theme(), Step::Title, "Papers"));
  list_->put(new Prose(list_, theme(), Step::Body, why), 8);
  auto* again = button("", "", "Make the papers", &PapersPage::enter);
  list_->refit();
  again->SetFocus();
}

void PapersPage::buildList() {
  const wxWindowUpdateLocker calm(this);
  progress_ = nullptr;
  list_->clear();
  list_->put(new Prose(list_, theme(), Step::Title, "Papers"));
  if (!notFollowed_.empty())
    list_->put(new Prose(list_, theme(), Step::Small, notFollowed_, Colour::Shut), 8);
  std::size_t first = 0;
  for (std::size_t i = 0; i < made_.papers.size(); ++i) {
    const std::string& name = made_.papers[i].name;
    if (name == first_) first = i;
    auto* row = new KeyButton(
        list_, theme(), "row",
        {"", paperTitle(name), desk().wordingOf(name) == nullptr ? "" : "in your words", false});
    row->Bind(wxEVT_BUTTON, [this, i](wxCommandEvent&) { select(i); });
    row->Bind(wxEVT_SET_FOCUS, [this, i](wxFocusEvent& event) {
      event.Skip();
      CallAfter([this, i] { select(i); });
    });
    list_->put(row, i == 0 ? 12 : 0);
    rows_.push_back(row);
  }
  if (!order_.options.isSharedWithPhysician) {
    list_->put(new Prose(list_, theme(), Step::Small,
                         "No letter to others: the record holds no consent to share with the physician.", Colour::Ink2),
               8);
    auto* consent = new KeyButton(list_, theme(), "said", {"Alt 8", "Record a consent on the page History", "", false});
    consent->Bind(wxEVT_BUTTON, [this](wxCommandEvent&) { CallAfter([this] { place().go("history"); }); });
    list_->put(consent, 2);
  }
  buildWaysOut();
  const auto hasFigures = [](const MadePaper& paper) { return paper.name == "handout"; };
  if (std::any_of(made_.papers.begin(), made_.papers.end(), hasFigures)) {
    build_ = new BuildField(list_, theme(), desk(),
                            [this](auto build) { CallAfter([this, build] { drawAs(build); }); });
    list_->put(build_, 16);
  }
  list_->refit();
  selected_ = made_.papers.size();
  select(first);
  if (first < rows_.size()) rows_[first]->SetFocus();
}

void PapersPage::buildWaysOut() {
  if (!made_.wordings.empty()) button("", "Alt W", "Change its words…", &PapersPage::changeWords);
  if (order_.entry.empty()) {
    list_->put(new Prose(list_, theme(), Step::Small,
                         "Not filed yet: papers can be printed and saved once the screening is signed.",
                         Colour::Ink2),
               16);
    return;
  }
  list_->space(16);
  onlyThis_ = new wxCheckBox(list_, wxID_ANY, "Only the paper shown");
  nameFor(*onlyThis_, "Only the paper shown");
  list_->stack().Add(onlyThis_);
  button("", "Ctrl P", "Print…", &PapersPage::print);
  folder_ = new FormField(list_, theme(), "Folder");
  const std::string& parent = place().preferences().papersFolder;
  folder_->set(proposedFolder(parent.empty() ? plain(wxStandardPaths::Get().GetDocumentsDir()) : parent,
                              desk().client()->card.name(), desk().today()));
  list_->put(folder_, 16);
  button("", "", "Browse…", &PapersPage::browse);
  button("primary", "Ctrl S", "Save as PDF", &PapersPage::save);
  list_->put(new Prose(list_, theme(), Step::Small,
                       "What goes out, printed or saved, is kept in the record as it is.", Colour::Ink2),
             10);
}

void PapersPage::drawAs(std::optional<movement::Build> build) {
  if (keepBuild(place(), build)) make("handout");
}

void PapersPage::select(std::size_t paper) {
  if (paper == selected_ || paper >= made_.papers.size()) return;
  selected_ = paper;
  for (std::size_t i = 0; i < rows_.size(); ++i) rows_[i]->choose(i == paper);
  view_->show(made_.papers[paper].bytes, paperTitle(made_.papers[paper].name));
  place().say(paperTitle(made_.papers[paper].name) + ": " + std::to_string(view_->pages()) +
              (view_->pages() == 1 ? " page" : " pages"));
}

bool PapersPage::isChangingWords() const {
  return editor_->IsShown();
}

void PapersPage::changeWords() {
  if (selected_ >= made_.papers.size() || isChangingWords()) return;
  const std::string& name = made_.papers[selected_].name;
  const auto computed = std::find_if(made_.wordings.begin(), made_.wordings.end(),
                                     [&name](const auto& one) { return one.letter == name; });
  if (computed == made_.wordings.end())
    return place().say(paperTitle(name) + ": only the words of letters can be changed.");
  const auto* changed = desk().wordingOf(name);
  list_->Hide();
  editor_->Show();
  Layout();
  editor_->open(paperTitle(name), *computed, changed == nullptr ? *computed : *changed);
  // Only once it stands there.
  CallAfter([this] { editor_->enter(); });
}

void PapersPage::previewWords() {
  if (!isChangingWords() || !editor_->check()) return;
  auto wording = editor_->wording();
  const std::string letter = wording.letter;
  // Kept at once: whoever leaves the page here finds the words again.
  editor_->isChanged() ? desk().setWording(std::move(wording)) : desk().dropWording(letter);
  auto order = desk().orderPapers();
  if (!order) return place().say(order.failure().message);
  order.value().options.only = letter;
  const int run = ++run_;
  job_ = std::make_unique<PaperJob>(
      std::move(order).value(), desk().sharedContent(), desk().contentFolder(),
      PaperJob::Told{{}, [this, run, letter](base::Result<application::MadePapers> result) {
                       CallAfter([this, run, letter, result] {
                         if (run != run_) return;
                         if (!result) return place().say(result.failure().message);
                         if (result.value().papers.empty()) return;
                         view_->show(result.value().papers.front().bytes, paperTitle(letter), true);
                         place().say(paperTitle(letter) +
                                     " in your words: " + std::to_string(view_->pages()) +
                                     (view_->pages() == 1 ? " page" : " pages"));
                       });
                     }});
}

void PapersPage::endWords() {
  if (!editor_->check()) return;
  typed_.Stop();
  previewWords();
  const std::string letter = editor_->wording().letter;
  editor_->Hide();
  list_->Show();
  Layout();
  make(letter);
}

std::string PapersPage::only() const {
  return onlyThis_ != nullptr && onlyThis_->IsChecked() ? made_.papers[selected_].name : std::string();
}

void PapersPage::browse() {
  // The nearest folder that is there already.
  std::filesystem::path start(folder_->text());
  std::error_code ignored;
  while (start.has_relative_path() && !std::filesystem::is_directory(start, ignored))
    start = start.parent_path();
  wxDirDialog dialog(this, "Folder for the papers", shown(start.string()), wxDD_NEW_DIR_BUTTON);
  if (dialog.ShowModal() == wxID_OK) folder_->set(plain(dialog.GetPath()));
  folder_->enter();
}

void PapersPage::save() {
  if (folder_ == nullptr) return place().say("Sign the screening first: papers are kept with it.");
  const std::string folder = folder_->text(), trouble = troubleWithFolder(folder);
  folder_->complain(trouble);
  list_->refit();
  if (!trouble.empty()) return folder_->enter();
  const wxBusyCursor waiting;
  const auto done = desk().issue(order_, made_, folder, only());
  if (!done)
    return place().tell(
        {done.failure().kind,
         documents::asSentence(documents::capitalized(done.failure().message)) +
             " The record does not name these papers yet. Save them again once that is mended."});
  place().preferences().papersFolder = std::filesystem::path(folder).parent_path().string();
  place().say("Saved: " + counted(done.value().size()) + " in " + folder);
}

void PapersPage::print() {
  if (folder_ == nullptr) return place().say("Sign the screening first: papers are kept with it.");
  std::vector<std::string> pdfs;
  for (const MadePaper& paper : made_.papers)
    if (only().empty() || paper.name == only()) pdfs.push_back(paper.bytes);
  PaperPrintout printout("Stile: " + (only().empty() ? counted(pdfs.size()) : paperTitle(only())), pdfs);
  const int pages = printout.pages();
  const Printed printed = printPapers(*this, printout, desk().settings().paperSize);
  if (printed == Printed::CalledOff) return place().say("Not printed.");
  if (printed == Printed::NotDone)
    return place().tell({base::FailureKind::File,
                         "The papers were not printed: the printer did not take them. Nothing is noted in "
                         "the record. Look at the printer, or save them as PDF and print those."});
  const auto done = desk().issue(order_, made_, "", only());
  if (!done)
    return place().tell(
        {done.failure().kind,
         "The papers were printed, but the record does not say so yet: " + done.failure().message});
  place().say("Printed: " + counted(pdfs.size()) + ", " + std::to_string(pages) +
              (pages == 1 ? " page" : " pages"));
}

bool PapersPage::onKey(wxKeyEvent& event) {
  const int key = event.GetKeyCode();
  const bool isEnter = key == WXK_RETURN || key == WXK_NUMPAD_ENTER;
  if (isChangingWords()) {
    if (key != WXK_ESCAPE && !(event.ControlDown() && isEnter)) return false;
    return CallAfter([this] { endWords(); }), true;
  }
  if (progress_ != nullptr) return key == WXK_ESCAPE ? callOff(), true : false;
  if (event.ControlDown() && key == 'S') return CallAfter([this] { save(); }), true;
  if (event.ControlDown() && key == 'P') return CallAfter([this] { print(); }), true;
  if (event.AltDown() && key == 'W') return CallAfter([this] { changeWords(); }), true;
  if (folder_ != nullptr && folder_->control().HasFocus())
    return isEnter ? CallAfter([this] { save(); }), true : false;
  if (rows_.empty() || (key != WXK_UP && key != WXK_DOWN)) return false;
  if (build_ != nullptr && hasFocusInside(build_->control())) return false;
  if (key == WXK_DOWN && selected_ + 1 < rows_.size()) rows_[selected_ + 1]->SetFocus();
  if (key == WXK_UP && selected_ > 0) rows_[selected_ - 1]->SetFocus();
  return true;
}

}  // namespace stile::desktop
