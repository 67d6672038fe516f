// Papers made into PDF and read back with somebody else's reader.
#pragma once

#include <catch2/catch.hpp>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "documents/pdf_writer.h"

namespace stile::documents {

class Folder {
 public:
  Folder() {
    std::string name = (std::filesystem::temp_directory_path() / "stile-pdf-XXXXXX").string();
    path_ = mkdtemp(name.data());
  }
  ~Folder() { std::filesystem::remove_all(path_); }
  std::filesystem::path operator/(const std::string& name) const { return path_ / name; }

 private:
  std::filesystem::path path_;
};

inline std::string madeOf(const Document& document) {
  auto bytes = toPdf(document);
  if (!bytes) FAIL(bytes.failure().message);
  return std::move(bytes).value();
}

inline std::string ran(const std::string& command) {
  FILE* pipe = popen(command.c_str(), "r");
  REQUIRE(pipe != nullptr);
  std::string out;
  char buffer[4096];
  while (const std::size_t got = fread(buffer, 1, sizeof buffer, pipe)) out.append(buffer, got);
  pclose(pipe);
  return out;
}

/// Letters, digits and signs only: line ends and page feet fall anywhere in a sentence.
inline std::string bare(const std::string& text) {
  std::string out;
  for (const char c : text)
    if (static_cast<unsigned char>(c) > 32) out += c;
  return out;
}

/// A sentence that begins with the title before it is printed without that: "Thyroid out of control: the
/// physician's word first." loses what stands before the colon, and its first letter may change its case.
inline std::string afterTitle(const std::string& title, const std::string& said) {
  const std::string lead = title.substr(0, title.find(':')) + ": ";
  return said.starts_with(lead) ? said.substr(lead.size() + 1) : said;
}

/// The words of the file, in the order of reading, without the running feet.
inline std::string wordsIn(const std::string& pdf, const std::string& foot) {
  const Folder folder;
  const auto path = folder / "paper.pdf";
  std::ofstream(path, std::ios::binary) << pdf;
  std::string text = ran("pdftotext -raw '" + path.string() + "' - 2>/dev/null");
  REQUIRE_FALSE(text.empty());
  std::string out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\n', at), text.size());
    std::string line = text.substr(at, end - at);
    line.erase(std::remove(line.begin(), line.end(), '\f'), line.end());
    if (foot.empty() || line.find(foot) == std::string::npos) out += line + " ";
    at = end + 1;
  }
  return bare(out);
}

/// The words of each page, letters only, in the order of reading.
inline std::vector<std::string> pagesOf(const Document& document) {
  const Folder folder;
  const auto path = folder / "paper.pdf";
  std::ofstream(path, std::ios::binary) << madeOf(document);
  const std::string text = ran("pdftotext -raw '" + path.string() + "' - 2>/dev/null");
  std::vector<std::string> pages;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find('\f', at), text.size());
    pages.push_back(bare(text.substr(at, end - at)));
    at = end + 1;
  }
  return pages;
}

}  // namespace stile::documents
