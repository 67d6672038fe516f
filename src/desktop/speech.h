// Reads aloud through the speech service of the system, where there is one.
#pragma once

#include <string>

namespace stile::desktop {

/// Whether the system has one.
bool canSpeak();
/// Says `text` in `language` ("en", "es"), in the place of what is being said.
void speak(const std::string& text, const std::string& language);
void stopSpeaking();

}  // namespace stile::desktop
