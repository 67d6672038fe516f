// Headings and phrases with slots, as content files give them: read strictly, filled in by makers.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "base/issue.h"
#include "json/reader.h"

namespace stile::documents {

/// A key that must stand, and the slots its words may use (between spaces).
using KeyAndSlots = std::pair<std::string_view, std::string_view>;

class PhraseBook {
 public:
  /// Reads one member of `reader`: every key of `keys`, and no other. Missing keys and slots that
  /// cannot be filled in are issues.
  static PhraseBook read(json::ObjectReader& reader, const char* member, std::span<const KeyAndSlots> keys,
                         base::Issues& issues);
  /// The words with their slots filled in; "" for a key that does not exist.
  std::string say(std::string_view key, const std::map<std::string, std::string>& slots = {}) const;

 private:
  std::map<std::string, std::string, std::less<>> words_;
};

/// `text` with its slots filled in; a slot without a value stays as it is.
std::string filled(const std::string& text, const std::map<std::string, std::string>& slots);

}  // namespace stile::documents
