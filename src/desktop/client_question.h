// Which questions may be put to a client on a screen of their own. No window in it.
#pragma once

#include "interview/question.h"
#include "screening/content.h"

namespace stile::desktop {

/// Not what is measured by hand, and not what stands in a module that is the clinician's ("clinician" in its name):
/// self-harm, for one, is asked by a person and never by a screen.
bool isForClient(const interview::FormQuestion& question, const screening::Content& content);

}  // namespace stile::desktop
