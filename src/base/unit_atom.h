// The table of unit atoms and metric prefixes behind parseUnit(). For src/base only.
#pragma once

#include <optional>
#include <string_view>

#include "base/unit.h"

namespace stile::base {

/// What an atom with or without prefix stands for (`m`, `mm`, `[in_i]`); case matters.
std::optional<Unit> unitAtom(std::string_view text);

/// UCUM's code for one of FHIRPath's calendar words (`weeks` -> `wk`); other texts unchanged.
std::string_view unitCodeForCalendarWord(std::string_view text);

/// `base` to a whole power; nullopt when it does not fit or an offset is involved.
std::optional<Unit> power(const Unit& base, int exponent);

}  // namespace stile::base
