// Who works with the clinic file, and what they may do.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace stile::records {

enum class Role {
  Assistant,  ///< enters; signs nothing
  Clinician,  ///< signs
  Lead,       ///< licensed lead or physician: also gives the second signature
};

const char* idOf(Role role);
std::optional<Role> roleOf(std::string_view id);

struct Clinician {
  std::string handle;  ///< sign-in name; readable in the file, so never a full name
  std::string name;
  std::string profession;
  Role role = Role::Clinician;
  bool isRevoked = false;
  bool isRecovery = false;  ///< the recovery phrase: sets up a clinician, signs nothing
  std::string publicKey;    ///< 32 bytes, of the signing pair

  bool maySign() const { return !isRevoked && !isRecovery && role != Role::Assistant; }
};

/// "" when the handle will do, else why not: 2 to 20 small letters and digits, not "recovery".
std::string troubleWithHandle(std::string_view handle);
/// "" when the passphrase will do, else why not: at least 12 characters.
std::string troubleWithPassphrase(std::string_view passphrase);

}  // namespace stile::records
