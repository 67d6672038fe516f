// The papers of the client: each as it will be printed, letters in words that can be changed, and all or one
// of them printed or saved as PDF. What goes out stays in the record.
#pragma once

#include <wx/timer.h>

#include <memory>
#include <string>
#include <vector>

#include "desktop/page.h"
#include "desktop/paper_job.h"

class wxCheckBox;

namespace stile::desktop {

class BuildField;
class Column;
class FormField;
class KeyButton;
class LetterEditor;
class PdfView;
class Prose;

class PapersPage : public Page {
 public:
  PapersPage(wxWindow* parent, Workplace& place);
  void enter() override;
  bool needsContent() const override { return true; }
  bool onKey(wxKeyEvent& event) override;
  std::string keys() const override {
    return "up, down paper · Alt W words of a letter · Ctrl S save · Ctrl P print";
  }

 private:
  /// Makes the papers in the background; this one is shown first.
  void make(const std::string& first);
  void showProgress(std::size_t done, std::size_t of, const std::string& name);
  void take(base::Result<application::MadePapers> result);
  void callOff();
  void buildNothing(const std::string& why);
  void buildList();
  void buildWaysOut();
  KeyButton* button(const std::string& style, const std::string& cap, const std::string& words,
                    void (PapersPage::*act)());
  void select(std::size_t paper);

  bool isChangingWords() const;
  void changeWords();
  void previewWords();
  void endWords();

  void save();
  void print();
  void browse();
  /// Draws the figures as the client wants to see them, from now on.
  void drawAs(std::optional<movement::Build> build);
  /// The name of the one paper that is wanted, "" for all.
  std::string only() const;
  std::size_t wanted() const { return only().empty() ? made_.papers.size() : 1; }

  Column* list_;
  LetterEditor* editor_;
  PdfView* view_;
  Prose* progress_ = nullptr;  ///< while papers are being made
  KeyButton* cancel_ = nullptr;
  BuildField* build_ = nullptr;  ///< while a paper has figures
  FormField* folder_ = nullptr;  ///< while the papers can go out
  wxCheckBox* onlyThis_ = nullptr;
  std::vector<KeyButton*> rows_;

  application::PaperOrder order_;
  application::MadePapers made_;
  std::string first_;        ///< shown when the papers are made
  std::string notFollowed_;  ///< why changed words were given up
  std::size_t selected_ = 0;
  int run_ = 0;  ///< of the job: what an earlier one tells comes too late
  wxTimer slow_, typed_;
  std::unique_ptr<PaperJob> job_;  ///< ends before the rest
};

}  // namespace stile::desktop
