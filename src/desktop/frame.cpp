#include "desktop/frame.h"

#include <gtk/gtk.h>
#include <wx/display.h>
#include <wx/menu.h>
#include <wx/msgdlg.h>
#include <wx/sizer.h>

#include <algorithm>

#include "desktop/accessible.h"
#include "desktop/head_bar.h"
#include "desktop/text.h"
#include "desktop/today_list.h"

namespace stile::desktop {
namespace {

constexpr int kLeastWidth = 1024, kLeastHeight = 640, kEdges = 40;
constexpr int kSayings = 2;  // fields of the status bar

enum Command {
  kNewClient = wxID_HIGHEST + 1,
  kFindClient,
  kLock,
  kPapers,
  kLight,
  kDark,
  kContrast,
  kText100,
  kText115,
  kText130,
  kText150,
  kKeys,
};

}  // namespace

Frame::Frame(Desk& desk, Preferences preferences)
    : wxFrame(nullptr, wxID_ANY, "Stile"), desk_(desk), preferences_(std::move(preferences)) {
  makeMenus();
  CreateStatusBar(kSayings);
  const int widths[] = {-2, -3};
  SetStatusWidths(kSayings, widths);
  SetSizer(new wxBoxSizer(wxVERTICAL));
  build();
  const wxRect room = wxDisplay(static_cast<unsigned>(0)).GetClientArea();
  // The window manager's edges want room too: what would not fit beside them fills the screen instead.
  const wxSize inside(room.width, room.height - FromDIP(kEdges)), wanted = FromDIP(wxSize(preferences_.width, preferences_.height));
  SetMinSize(wxSize(std::min(FromDIP(kLeastWidth), inside.x), std::min(FromDIP(kLeastHeight), inside.y)));
  SetSize(wxSize(std::clamp(wanted.x, GetMinSize().x, inside.x), std::clamp(wanted.y, GetMinSize().y, inside.y)));
  Centre();
  if (wanted.x >= inside.x || wanted.y >= inside.y) Maximize();
  Bind(wxEVT_CHAR_HOOK, &Frame::onKey, this);
  Bind(wxEVT_CLOSE_WINDOW, &Frame::onClose, this);
}

void Frame::makeMenus() {
  auto* bar = new wxMenuBar;
  auto* client = new wxMenu;
  client->Append(kNewClient, "&New client\tCtrl+N");
  client->Append(kFindClient, "&Find client\tCtrl+F");
  client->AppendSeparator();
  client->Append(kLock, "&Lock\tCtrl+L");
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
  SetMenuBar(bar);
  const auto on = [this](int id, std::function<void()> act) {
    Bind(wxEVT_MENU, [act = std::move(act)](wxCommandEvent&) { act(); }, id);
  };
  on(kNewClient, [this] { CallAfter([this] { newClient(); }); });
  on(kFindClient, [this] { CallAfter([this] { go("today"); }); });
  on(kLock, [this] { lock(); });
  on(wxID_EXIT, [this] { Close(); });
  on(kPapers, [this] { CallAfter([this] { go("papers"); }); });
  on(kLight, [this] { changeLook(Look::Light, preferences_.textPercent); });
  on(kDark, [this] { changeLook(Look::Dark, preferences_.textPercent); });
  on(kContrast, [this] { changeLook(Look::HighContrast, preferences_.textPercent); });
  for (const auto& [id, percent] : {std::pair(kText100, 100), std::pair(kText115, 115), std::pair(kText130, 130), std::pair(kText150, 150)})
    on(id, [this, percent = percent] { changeLook(preferences_.look, percent); });
  on(kKeys, [this] { showKeys(); });
  on(wxID_ABOUT, [this] { showAbout(); });
  bar->Check(preferences_.look == Look::Dark ? kDark : preferences_.look == Look::HighContrast ? kContrast : kLight, true);
  bar->Check(preferences_.textPercent >= 150 ? kText150 : preferences_.textPercent >= 130 ? kText130 : preferences_.textPercent >= 115 ? kText115 : kText100, true);
}

void Frame::build() {
  theme_ = std::make_unique<Theme>(preferences_.look, preferences_.textPercent / 100.0);
  theme_->apply();
  SetFont(theme_->font(Step::Body));
  SetBackgroundColour(theme_->colour(drawing::Colour::Sheet));
  ground_ = new wxPanel(this);
  ground_->SetBackgroundColour(theme_->colour(drawing::Colour::Sheet));
  auto* down = new wxBoxSizer(wxVERTICAL);
  head_ = new HeadBar(ground_, *theme_, [this](const std::string& page) { go(page); });
  sheet_ = new wxPanel(ground_);
  sheet_->SetBackgroundColour(theme_->colour(drawing::Colour::Sheet));
  sheet_->SetSizer(new wxBoxSizer(wxVERTICAL));
  down->Add(head_, 0, wxEXPAND);
  down->Add(sheet_, 1, wxEXPAND);
  ground_->SetSizer(down);
  GetSizer()->Add(ground_, 1, wxEXPAND);
}

void Frame::changeLook(Look look, int textPercent) {
  preferences_.look = look;
  preferences_.textPercent = textPercent;
  preferences_.save();
  // Everything is made anew: pages read what they show from the desk.
  pages_.clear();
  ground_->Destroy();
  const std::string page = std::exchange(current_, {});
  build();
  Layout();
  go(page);
}

Page* Frame::pageOf(const std::string& id) {
  if (const auto at = pages_.find(id); at != pages_.end()) return at->second;
  for (const PageKind& kind : pageKinds()) {
    if (kind.id != id) continue;
    Page* const page = kind.make(sheet_, *this);
    page->Hide();
    sheet_->GetSizer()->Add(page, 1, wxEXPAND);
    groupFor(*page, kind.title);
    pages_[id] = page;
    return page;
  }
  return nullptr;
}

void Frame::go(const std::string& id) {
  for (const PageKind& kind : pageKinds())
    if (kind.id == id && kind.isPossible && !kind.isPossible(desk_)) return say(kind.title + " is not possible yet.");
  Page* const page = pageOf(id);
  if (page == nullptr) return;
  if (const auto before = pages_.find(current_); before != pages_.end() && before->second != page) before->second->Hide();
  current_ = id;
  page->Show();
  sheet_->Layout();
  refreshHead();
  page->enter();
  // Without a focus in it a page gets no keys.
  if (current_ == id && !page->IsDescendant(FindFocus())) page->SetFocus();
  SetStatusText(shown(page->keys()), 1);
  showFocus(*this);
}

void Frame::newClient() {
  if (desk_.clinic() == nullptr) return;
  desk_.closeClient();
  go("client");
}

void Frame::refreshHead() {
  std::vector<FenceEntry> fence;
  if (desk_.clinic() != nullptr)
    for (const PageKind& kind : pageKinds())
      if (kind.isOnFence) fence.push_back({kind.id, kind.title, !kind.isPossible || kind.isPossible(desk_), kind.id == current_});
  head_->showFence(fence);
  const auto* client = desk_.client();
  if (client != nullptr && current_ != "today") {
    const auto born = base::Date::parse(client->card.born);
    std::string about = ageInWords(client->card.born, desk_.today());
    if (born) about += " · born " + born->toLongText();
    if (!client->card.record.empty()) about += " · client " + client->card.record;
    head_->showWho(client->card.name(), about);
  } else if (desk_.clinic() != nullptr) {
    const auto& who = desk_.clinic()->file().who();
    head_->showWho(desk_.settings().name.empty() ? "Stile" : desk_.settings().name, who.name + ", " + who.profession);
  } else {
    head_->showWho("Stile", "Exercise screening and starter plans");
  }
}

void Frame::say(const std::string& words) {
  said_ = words;
  SetStatusText(shown(words), 0);
}

void Frame::tell(const base::Failure& failure) {
  wxMessageDialog dialog(this, shown(failure.message), "Not done", wxOK | wxICON_NONE);
  dialog.ShowModal();
}

void Frame::contentIsHere() {
  desk_.takeContent();
  refreshHead();
  if (const auto at = pages_.find(current_); at != pages_.end() && at->second->needsContent()) at->second->enter();
}

void Frame::lock() {
  // A page may ask for it: it must not be taken down under its own feet.
  CallAfter([this] { lockNow(); });
}

void Frame::lockNow() {
  desk_.closeClinic();
  // Nothing of a client stays in a page behind.
  for (auto& [id, page] : pages_) page->Destroy();
  pages_.clear();
  current_.clear();
  say("Locked");
  go("start");
}

void Frame::onKey(wxKeyEvent& event) {
  if (event.AltDown() && !event.ControlDown() && event.GetKeyCode() >= '1' && event.GetKeyCode() <= '9' && desk_.clinic() != nullptr) {
    int wanted = event.GetKeyCode() - '1';
    for (const PageKind& kind : pageKinds())
      if (kind.isOnFence && wanted-- == 0) return CallAfter([this, id = kind.id] { go(id); });
  }
  if (const auto at = pages_.find(current_); at != pages_.end() && at->second->onKey(event)) return;
  event.Skip();
}

void Frame::onClose(wxCloseEvent& event) {
  if (!IsMaximized()) {
    preferences_.width = ToDIP(GetSize().x);
    preferences_.height = ToDIP(GetSize().y);
  }
  preferences_.save();
  event.Skip();
}

void Frame::showKeys() {
  std::string words = "Alt 1 to 7: pages\nCtrl N: new client\nCtrl F: find a client\nCtrl P: papers\nCtrl L: lock\n";
  if (const auto at = pages_.find(current_); at != pages_.end() && !at->second->keys().empty()) words += "\nOn this page\n" + at->second->keys();
  wxMessageDialog(this, shown(words), "Keys", wxOK | wxICON_NONE).ShowModal();
}

void Frame::showAbout() {
  const wxString face = GetFont().GetFaceName();
  std::string words = "It supports, and does not replace, licensed judgement and local protocols.\n";
  if (desk_.content() != nullptr) words += "\nRules and questions: " + desk_.content()->version;
  words += "\nTypeface: " + plain(face);
  wxMessageDialog(this, shown(words), "Stile", wxOK | wxICON_NONE).ShowModal();
}

}  // namespace stile::desktop
