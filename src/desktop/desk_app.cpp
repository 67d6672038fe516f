#include "desktop/desk_app.h"

#include <wx/cmdline.h>
#include <wx/fontenum.h>
#include <wx/log.h>

#include "application/content_folder.h"
#include "desktop/frame.h"
#include "desktop/preferences.h"
#include "desktop/text.h"

namespace stile::desktop {

void DeskApp::OnInitCmdLine(wxCmdLineParser& parser) {
  wxApp::OnInitCmdLine(parser);
  parser.AddLongOption("content", "folder with questionnaires/ and rules/");
  parser.AddLongOption("file", "the clinic file to open");
  parser.AddLongOption("date", "the day to work on, YYYY-MM-DD (today if left out)");
  parser.AddLongSwitch("version", "show the version and end");
}

bool DeskApp::OnCmdLineParsed(wxCmdLineParser& parser) {
  if (!wxApp::OnCmdLineParsed(parser)) return false;
  wxString text;
  if (parser.Found("content", &text)) content_ = plain(text);
  if (parser.Found("file", &text)) file_ = plain(text);
  if (parser.Found("date", &text)) {
    day_ = base::Date::parse(plain(text));
    if (!day_) {
      wxFprintf(stderr, "stile-desk: --date %s: write a day as YYYY-MM-DD\n", text);
      return false;
    }
  }
  return true;
}

bool DeskApp::OnInit() {
  SetAppName("stile");
  SetAppDisplayName("Stile");
  if (!wxApp::OnInit()) return false;
  if (!wxFontEnumerator::IsValidFacename("Clear Sans"))
    wxFprintf(stderr, "stile-desk: the typeface Clear Sans is missing; another one stands in its place (package fonts-clear-sans)\n");
  desk_ = std::make_unique<Desk>(application::contentFolder(content_, installedContent_), day_);
  Preferences preferences = Preferences::load();
  preferences.givenFile = file_;
  frame_ = new Frame(*desk_, std::move(preferences));
  frame_->Show();
  frame_->go("start");
  desk_->loadContent([this] { CallAfter([this] { frame_->contentIsHere(); }); });
  return true;
}

int DeskApp::OnExit() {
  desk_.reset();
  return wxApp::OnExit();
}

}  // namespace stile::desktop
