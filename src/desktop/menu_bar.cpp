#include "desktop/menu_bar.h"

namespace stile::desktop {

wxMenuBar* makeMenuBar() {
  auto* bar = new wxMenuBar;
  auto* client = new wxMenu;
  client->Append(kNewClient, "&New client\tCtrl+N");
  client->Append(kFindClient, "&Find client\tCtrl+F");
  client->AppendSeparator();
  client->Append(kClientMode, "&Hand to the client\tF9");
  client->AppendSeparator();
  client->Append(kClinic, "&Clinic, people and backup\tCtrl+,");
  client->AppendSeparator();
  client->Append(kLock, "&Lock\tCtrl+L");
  client->Append(kLockMinutes, wxString::FromUTF8("Lock &when idle…"));
  client->Append(wxID_EXIT, "&Quit\tCtrl+Q");
  auto* papers = new wxMenu;
  papers->Append(kPapers, "&Papers of this client\tCtrl+P");
  auto* view = new wxMenu;
  view->AppendRadioItem(kLight, "&Light");
  view->AppendRadioItem(kDark, "&Dark");
  view->AppendRadioItem(kContrast, "&High contrast");
  view->AppendSeparator();
  view->AppendRadioItem(kText100, "Text 100 %");
  view->AppendRadioItem(kText115, "Text 115 %");
  view->AppendRadioItem(kText130, "Text 130 %");
  view->AppendRadioItem(kText150, "Text 150 %");
  auto* help = new wxMenu;
  help->Append(kKeys, "&Keys\tF1");
  help->Append(wxID_ABOUT, "&About Stile");
  bar->Append(client, "&Client");
  bar->Append(papers, "P&apers");
  bar->Append(view, "&View");
  bar->Append(help, "&Help");
  return bar;
}

}  // namespace stile::desktop
