// How a drawn figure is built, so that clients can see someone like themselves. Somebody's choice: nothing
// that is known of a body decides it.
#pragma once

#include <optional>
#include <string_view>

namespace stile::movement {

/// Lengths are the same, flesh is not.
enum class Build { Slight, Sturdy };

/// "slight", "sturdy": as settings, records and the command line write it.
const char* idOf(Build build);
std::optional<Build> buildOf(std::string_view id);

}  // namespace stile::movement
