#include "desktop/words_dialog.h"

#include <wx/dialog.h>
#include <wx/sizer.h>
#include <wx/textctrl.h>

#include "desktop/accessible.h"
#include "desktop/key_button.h"
#include "desktop/prose.h"
#include "desktop/text.h"

namespace stile::desktop {

std::optional<std::string> askWords(wxWindow& parent, const Theme& theme, const WordsAsked& asked) {
  wxDialog dialog(&parent, wxID_ANY, shown(asked.title));
  dialog.SetBackgroundColour(theme.colour(drawing::Colour::Sheet));
  auto* down = new wxBoxSizer(wxVERTICAL);
  auto* what = new Prose(&dialog, theme, Step::Body, asked.words);
  what->fit(dialog.FromDIP(420));
  down->Add(what, 0, wxALL, dialog.FromDIP(20));
  auto* field = new wxTextCtrl(&dialog, wxID_ANY, "", wxDefaultPosition, dialog.FromDIP(wxSize(420, -1)), (asked.isSecret ? wxTE_PASSWORD : 0) | wxTE_PROCESS_ENTER);
  nameFor(*field, asked.field);
  field->ChangeValue(shown(asked.already));
  field->Bind(wxEVT_TEXT_ENTER, [&dialog](wxCommandEvent&) { dialog.EndModal(wxID_OK); });
  down->Add(field, 0, wxLEFT | wxRIGHT, dialog.FromDIP(20));
  auto* row = new wxBoxSizer(wxHORIZONTAL);
  auto* sign = new KeyButton(&dialog, theme, "primary", {"Enter", asked.button, "", false});
  sign->Bind(wxEVT_BUTTON, [&dialog](wxCommandEvent&) { dialog.EndModal(wxID_OK); });
  auto* leave = new KeyButton(&dialog, theme, "", {"Esc", "Not now", "", false});
  leave->SetId(wxID_CANCEL);
  leave->Bind(wxEVT_BUTTON, [&dialog](wxCommandEvent&) { dialog.EndModal(wxID_CANCEL); });
  row->Add(sign, 0, wxRIGHT, dialog.FromDIP(10));
  row->Add(leave);
  down->Add(row, 0, wxALL, dialog.FromDIP(20));
  dialog.SetSizerAndFit(down);
  dialog.CentreOnParent();
  field->SetFocus();
  if (dialog.ShowModal() != wxID_OK) return std::nullopt;
  return plain(field->GetValue());
}

}  // namespace stile::desktop
