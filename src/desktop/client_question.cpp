#include "desktop/client_question.h"

#include <algorithm>

namespace stile::desktop {
namespace {

constexpr const char* kClinicians = "clinician";

}  // namespace

bool isForClient(const interview::FormQuestion& question, const screening::Content& content) {
  const std::string& module = question.item->topic;
  if (module.find(kClinicians, module.rfind('/') + 1) != std::string::npos) return false;
  // What a clinician found an unknown medicine to be.
  for (int slot = 0; slot < content.dictionary.size(); ++slot)
    if (content.dictionary.at(slot).derived.lookedUp == question.fact->slot) return false;
  return std::none_of(content.measuring.begin(), content.measuring.end(), [&question](const auto& one) { return one.slot == question.fact->slot; });
}

}  // namespace stile::desktop
