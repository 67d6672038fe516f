#include "records/clinician.h"

#include <algorithm>

#include "base/utf8.h"

namespace stile::records {
namespace {

constexpr std::size_t kLeastPassphraseSigns = 12;

}  // namespace

const char* idOf(Role role) {
  switch (role) {
    case Role::Assistant: return "assistant";
    case Role::Clinician: return "clinician";
    case Role::Lead: return "lead";
  }
  return "";
}

std::optional<Role> roleOf(std::string_view id) {
  for (const Role role : {Role::Assistant, Role::Clinician, Role::Lead})
    if (id == idOf(role)) return role;
  return std::nullopt;
}

std::string troubleWithHandle(std::string_view handle) {
  const bool isPlain = std::all_of(handle.begin(), handle.end(), [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); });
  if (handle.size() < 2 || handle.size() > 20 || !isPlain) return "a sign-in name has 2 to 20 small letters and digits";
  if (handle == "recovery") return "\"recovery\" is the sign-in name of the recovery phrase";
  return {};
}

std::string troubleWithPassphrase(std::string_view passphrase) {
  if (base::countCodePoints(passphrase) < kLeastPassphraseSigns) return "a passphrase has at least 12 characters; several words are easiest";
  return {};
}

}  // namespace stile::records
