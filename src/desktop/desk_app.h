// The program: reads its options, shows the window at once, and reads the content behind it.
#pragma once

#include <wx/app.h>

#include <memory>
#include <optional>
#include <string>

#include "desktop/desk.h"

namespace stile::desktop {

class Frame;

class DeskApp : public wxApp {
 public:
  explicit DeskApp(std::string installedContent) : installedContent_(std::move(installedContent)) {}

 private:
  bool OnInit() override;
  void OnInitCmdLine(wxCmdLineParser& parser) override;
  bool OnCmdLineParsed(wxCmdLineParser& parser) override;
  int OnExit() override;

  std::string installedContent_;
  std::string content_, file_;
  std::optional<base::Date> day_;
  std::unique_ptr<Desk> desk_;
  Frame* frame_ = nullptr;
};

}  // namespace stile::desktop
