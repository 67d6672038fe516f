// Options of how papers look and go out, shared by the commands that write them.
#pragma once

#include <CLI/CLI.hpp>

#include "application/write_papers.h"

namespace stile::cli {

/// --into, --text, --build, --black, --language, --to, --referrer, --format. `options` outlives the command.
void addPaperStyle(CLI::App& command, application::PaperOptions& options);

}  // namespace stile::cli
