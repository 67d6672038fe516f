#include "desktop/frame.h"

#include <gtk/gtk.h>
#include <wx/display.h>
#include <wx/menu.h>
#include <wx/msgdlg.h>
#include <wx/numdlg.h>
#include <wx/sizer.h>

#include <algorithm>
#include <cmath>

#include "desktop/accessible.h"
#include "desktop/drawn_text.h"
#include "desktop/head_bar.h"
#include "desktop/menu_bar.h"
#include "desktop/open_dialogs.h"
#include "desktop/process.h"
#include "desktop/status_line.h"
#include "desktop/text.h"
#include "desktop/text_layout.h"
#include "desktop/today_list.h"

namespace stile::desktop {
namespace {

constexpr int kLeastWidth = 1024, kLeastHeight = 640, kEdges = 40;

}  // namespace

Frame::Frame(Desk& desk, Preferences preferences)
    : wxFrame(nullptr, wxID_ANY, "Stile"), desk_(desk), preferences_(std::move(preferences)) {
  makeMenus();
  SetSizer(new wxBoxSizer(wxVERTICAL));
  build();
  const wxRect room = wxDisplay(static_cast<unsigned>(0)).GetClientArea();
  // The window manager's edges want room too: what would not fit beside them fills the screen instead.
  const wxSize inside(room.width, room.height - FromDIP(kEdges)), wanted = FromDIP(wxSize(preferences_.width, preferences_.height));
  SetMinSize(wxSize(std::min(FromDIP(kLeastWidth), inside.x), std::min(FromDIP(kLeastHeight), inside.y)));
  SetSize(wxSize(std::clamp(wanted.x, GetMinSize().x, inside.x), std::clamp(wanted.y, GetMinSize().y, inside.y)));
  Centre();
  idle_.setMinutes(preferences_.lockMinutes);
  if (wanted.x >= inside.x || wanted.y >= inside.y) Maximize();
  Bind(wxEVT_CHAR_HOOK, &Frame::onKey, this);
  Bind(wxEVT_CLOSE_WINDOW, &Frame::onClose, this);
}

void Frame::makeMenus() {
  auto* bar = makeMenuBar();
  SetMenuBar(bar);
  const auto on = [this](int id, std::function<void()> act) {
    Bind(wxEVT_MENU, [this, act = std::move(act)](wxCommandEvent&) { if (!isClientMode_) act(); }, id);
  };
  on(kNewClient, [this] { CallAfter([this] { newClient(); }); });
  on(kFindClient, [this] { CallAfter([this] { go("today"); }); });
  on(kClientMode, [this] { CallAfter([this] { setClientMode(true); }); });
  on(kLock, [this] { lock(); });
  on(kLockMinutes, [this] { CallAfter([this] { askLockMinutes(); }); });
  on(wxID_EXIT, [this] { Close(); });
  on(kClinic, [this] { CallAfter([this] { if (desk_.clinic() != nullptr) go("clinic"); }); });
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
  status_ = new StatusLine(ground_, *theme_);
  down->Add(status_, 0, wxEXPAND);
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
  say(said_);
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

void Frame::go(const std::string& wanted) {
  if (isClientMode_ && wanted != "clientMode") return;
  const std::string id = current_ == "start" && wanted == "today" ? resumed() : wanted;
  for (const PageKind& kind : pageKinds())
    if (kind.id == id && kind.isPossible && !kind.isPossible(desk_)) return say(kind.title + " is not possible yet.");
  Page* const page = pageOf(id);
  if (page == nullptr) return;
  if (const auto now = pages_.find(current_); now != pages_.end() && id != current_ && desk_.clinic() != nullptr)
    if (const std::string why = now->second->whyStay(); !why.empty()) return say(why);
  if (const auto before = pages_.find(current_); before != pages_.end() && before->second != page) before->second->Hide();
  current_ = id;
  page->Show();
  sheet_->Layout();
  refreshHead();
  page->enter();
  // Without a focus in it a page gets no keys.
  if (current_ == id && !page->IsDescendant(FindFocus())) page->SetFocus();
  status_->showKeys(page->keys());
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
  if (const auto page = pages_.find(current_); page != pages_.end()) status_->showKeys(page->second->keys());
  const auto* client = desk_.client();
  if (client != nullptr && current_ != "today" && current_ != "clinic") {
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
  status_->say(words);
}

void Frame::tell(const base::Failure& failure) {
  wxMessageDialog dialog(this, shown(failure.message), "Not done", wxOK | wxICON_NONE);
  dialog.ShowModal();
}

void Frame::contentIsHere() {
  desk_.takeContent();
  refreshHead();
  if (const auto at = pages_.find(current_); at != pages_.end() && at->second->needsContent()) at->second->enter();
  CallAfter([] {
    makeRoomAhead();
    // The first of a kind looks through all the icons there are.
    gtk_icon_theme_has_icon(gtk_icon_theme_get_default(), "pan-down-symbolic");
  });
}

void Frame::lock() {
  // A page may ask for it: it must not be taken down under its own feet.
  CallAfter([this] { lockNow(); });
}

void Frame::lockIfIdle() {
  // The demo clinic has no passphrase that anybody knows, and nobody in it to protect.
  if (desk_.clinic() == nullptr || desk_.isDemonstration()) return;
  // A dialog runs on a page: it ends first, and the next look finds none.
  if (!cancelDialog()) lockNow();
}

void Frame::askLockMinutes() {
  const long minutes = wxGetNumberFromUser("The desk locks when nobody has touched keys or mouse for so long. What was answered is kept.", "Minutes", "Lock when idle", std::max(1L, std::lround(preferences_.lockMinutes)), 1, 60, this);
  if (minutes < 1) return;
  preferences_.lockMinutes = static_cast<double>(minutes);
  preferences_.save();
  idle_.setMinutes(preferences_.lockMinutes);
}

void Frame::setClientMode(bool isOn) {
  if (isOn && !desk_.isAsking()) return say("Begin the interview first: then the screen can be handed to the client.");
  isClientMode_ = isOn;
  GetMenuBar()->Show(!isOn);
  status_->Show(!isOn);
  head_->Show(!isOn);
  ShowFullScreen(isOn);
  ground_->Layout();
  Layout();
  if (isOn) go("clientMode");
}

std::string Frame::resumed() {
  const Left left = std::exchange(left_, {});
  if (left.page.empty() || left.file != desk_.clinicFile() || desk_.clinic()->client(left.client) == nullptr) return "today";
  desk_.openClient(left.client);
  return left.page;
}

void Frame::lockNow() {
  if (isClientMode_) setClientMode(false);
  const bool isElsewhere = current_ == "clientMode" || current_ == "start" || current_ == "setUp";
  if (desk_.client() != nullptr) left_ = {desk_.clinicFile(), desk_.clientId(), isElsewhere ? "interview" : current_};
  desk_.closeClinic();
  // Nothing of a client stays in a page behind.
  for (auto& [id, page] : pages_) page->Destroy();
  pages_.clear();
  forgetLayouts();
  forgetDrawnTexts();
  current_.clear();
  say("Locked");
  go("start");
}

void Frame::onKey(wxKeyEvent& event) {
  if (isClientMode_) {
    if (const auto at = pages_.find(current_); at == pages_.end() || !at->second->onKey(event)) event.Skip();
    return;
  }
  if (event.AltDown() && !event.ControlDown() && event.GetKeyCode() >= '1' && event.GetKeyCode() <= '9' && desk_.clinic() != nullptr) {
    int wanted = event.GetKeyCode() - '1';
    for (const PageKind& kind : pageKinds())
      if (kind.isOnFence && wanted-- == 0) return CallAfter([this, id = kind.id] { go(id); });
  }
  if (const auto at = pages_.find(current_); at != pages_.end() && at->second->onKey(event)) return;
  event.Skip();
}

void Frame::onClose(wxCloseEvent& event) {
  // The way out is the passphrase.
  if (isClientMode_ && event.CanVeto()) return event.Veto();
  if (!IsMaximized()) {
    preferences_.width = ToDIP(GetSize().x);
    preferences_.height = ToDIP(GetSize().y);
  }
  preferences_.save();
  event.Skip();
}

void Frame::showKeys() {
  std::string words = "Alt 1 to 9: pages\nF9: hand to the client\nCtrl N: new client\nCtrl F: find a client\nCtrl P: papers\nCtrl L: lock\n";
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
