// Use cases that put content on paper: a form to fill in by hand, and the rule book.
#pragma once

#include <string>

#include "base/issue.h"
#include "base/result.h"
#include "screening/content.h"

namespace stile::application {

struct BookOptions {
  std::string path;          ///< .pdf or .html; "" = text is given back
  std::string settingsFile;
  bool isForHome = false;    ///< forms only
};

/// The form of that name. Usage failure when there is none.
base::Result<std::string> writeForm(const screening::Content& content, const std::string& contentFolder,
                                    const std::string& name, const BookOptions& options, base::Issues& issues);
base::Result<std::string> writeRuleBook(const screening::Content& content, const std::string& contentFolder,
                                        const BookOptions& options, base::Issues& issues);

}  // namespace stile::application
