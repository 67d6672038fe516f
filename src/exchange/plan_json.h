// A starter plan as JSON.
#pragma once

#include "json/document.h"
#include "plan/starter_plan.h"

namespace stile::exchange {

void writePlan(json::Writer& writer, const plan::StarterPlan& plan);

}  // namespace stile::exchange
