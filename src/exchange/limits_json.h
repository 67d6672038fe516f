// Limits as JSON; every part that restrains nothing is left out.
#pragma once

#include "json/document.h"
#include "limits/limits.h"

namespace stile::exchange {

void writeLimits(json::Writer& writer, const limits::Limits& limits);

}  // namespace stile::exchange
