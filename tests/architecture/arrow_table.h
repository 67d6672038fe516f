// The table in arrows.txt, and the check of one source text against it.
#pragma once

#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

namespace stile::architecture {

class ArrowTable {
 public:
  static ArrowTable parse(const std::string& text) {
    ArrowTable table;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
      if (line.empty() || line[0] == '#') continue;
      const std::size_t colon = line.find(':');
      if (colon == std::string::npos) throw std::runtime_error("arrows.txt: no colon in: " + line);
      std::istringstream names(line.substr(colon + 1));
      std::set<std::string> rooms;
      for (std::string name; names >> name;) rooms.insert(name);
      (line[0] == '<' ? table.outside_ : table.rooms_)[line.substr(0, colon)] = rooms;
    }
    return table;
  }

  bool knows(const std::string& room) const { return rooms_.contains(room); }
  const std::map<std::string, std::set<std::string>>& rooms() const { return rooms_; }

  /// One sentence for each include in `text`, a file of `room`, that the table forbids.
  std::vector<std::string> forbidden(const std::string& room, const std::string& file,
                                     const std::string& text) const {
    std::vector<std::string> found;
    std::istringstream lines(text);
    int number = 0;
    for (std::string line; std::getline(lines, line);) {
      ++number;
      const std::string header = includedHeader(line);
      const std::string why = header.empty() ? "" : objection(room, header);
      if (!why.empty()) found.push_back(file + ":" + std::to_string(number) + ": " + header + ": " + why);
    }
    return found;
  }

 private:
  /// The header with its opening mark, `"base/issue.h"` or `<wx/frame.h>`; "" for other lines.
  static std::string includedHeader(const std::string& line) {
    std::size_t at = line.find_first_not_of(" \t");
    if (at == std::string::npos || line[at] != '#') return {};
    at = line.find_first_not_of(" \t", at + 1);
    if (at == std::string::npos || line.compare(at, 7, "include") != 0) return {};
    at = line.find_first_of("\"<", at);
    if (at == std::string::npos) return "a macro";
    const std::size_t end = line.find(line[at] == '<' ? '>' : '"', at + 1);
    return end == std::string::npos ? "a macro" : line.substr(at, end + 1 - at);
  }

  std::string objection(const std::string& room, const std::string& header) const {
    if (header[0] == '"') {
      const std::size_t slash = header.find('/');
      if (slash == std::string::npos) return "an include names its room";
      const std::string other = header.substr(1, slash - 1);
      if (!knows(other)) return "there is no room " + other + " in arrows.txt";
      const auto row = rooms_.find(room);
      if (other == room || (row != rooms_.end() && row->second.contains(other))) return {};
      return room + " may not include " + other;
    }
    if (header[0] != '<') return "an include is written out";
    for (const auto& [prefix, allowed] : outside_) {
      if (header.starts_with(prefix)) return allowed.contains(room) ? "" : room + " may not include it";
    }
    const bool isStandard = header.find_first_of("/.") == std::string::npos;
    return isStandard ? "" : "no room is named for it in arrows.txt";
  }

  std::map<std::string, std::set<std::string>> rooms_;
  std::map<std::string, std::set<std::string>> outside_;
};

inline std::string fileText(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::runtime_error("cannot read " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

}  // namespace stile::architecture
