#include "desktop/speech.h"

#include <glib.h>
#include <wx/utils.h>

#include <memory>

#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr const char* kSpeaker = "spd-say";

void run(std::initializer_list<wxString> words) {
  std::vector<const wchar_t*> arguments;
  for (const wxString& word : words) arguments.push_back(word.wc_str());
  arguments.push_back(nullptr);
  // Arguments as they are: no shell sees what a question says.
  wxExecute(const_cast<wchar_t**>(arguments.data()), wxEXEC_ASYNC);
}

}  // namespace

bool canSpeak() {
  const std::unique_ptr<char, decltype(&g_free)> found(g_find_program_in_path(kSpeaker), &g_free);
  return found != nullptr;
}

void speak(const std::string& text, const std::string& language) {
  stopSpeaking();
  if (canSpeak()) run({kSpeaker, "-l", shown(language), "--", shown(text)});
}

void stopSpeaking() {
  if (canSpeak()) run({kSpeaker, "-C"});
}

}  // namespace stile::desktop
