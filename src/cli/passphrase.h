// Passphrases come from a prompt or a file descriptor, never from an argument: arguments stand in
// every list of processes.
#pragma once

#include <string>

#include "base/result.h"

namespace stile::cli {

/// Reads one line from descriptor `fd`, or, with -1, asks at the terminal without showing it.
/// Without a terminal and without a descriptor it is a failure that says so.
base::Result<std::string> readPassphrase(int fd, const std::string& prompt);
/// The same, asked twice at the terminal.
base::Result<std::string> readNewPassphrase(int fd, const std::string& prompt);

}  // namespace stile::cli
