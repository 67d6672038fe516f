#include "desktop/paper_place.h"

#include <algorithm>
#include <cctype>
#include <filesystem>

#include "documents/decision_words.h"

namespace stile::desktop {

std::string paperTitle(const std::string& name) {
  std::string title;
  for (const char c : name) {
    if (std::isupper(static_cast<unsigned char>(c)) != 0) title += ' ';
    title += c == '-' ? ' ' : static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return documents::capitalized(title);
}

std::string proposedFolder(const std::string& parent, const std::string& client, base::Date day) {
  std::string name = client + " " + day.toText();
  std::replace(name.begin(), name.end(), '/', '-');
  return (std::filesystem::path(parent) / name).string();
}

std::string troubleWithFolder(const std::string& folder) {
  if (folder.empty()) return "Write the folder for the papers.";
  const std::filesystem::path path(folder);
  if (!path.is_absolute()) return "Write the whole name of the folder, from / on.";
  std::error_code ignored;
  if (std::filesystem::exists(path, ignored) && !std::filesystem::is_directory(path, ignored))
    return "This is a file. Name a folder.";
  return {};
}

}  // namespace stile::desktop
