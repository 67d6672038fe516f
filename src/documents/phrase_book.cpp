#include "documents/phrase_book.h"

#include <algorithm>

#include "rules/sentence.h"

namespace stile::documents {
namespace {

bool standsIn(std::string_view slots, const std::string& slot) {
  std::size_t at = 0;
  while (at < slots.size()) {
    const std::size_t end = std::min(slots.find(' ', at), slots.size());
    if (slots.substr(at, end - at) == slot) return true;
    at = end + 1;
  }
  return false;
}

}  // namespace

PhraseBook PhraseBook::read(json::ObjectReader& reader, const char* member, std::span<const KeyAndSlots> keys,
                            base::Issues& issues) {
  PhraseBook book;
  const auto node = reader.require(member);
  if (!node) return book;
  json::ObjectReader entry(*node, member, issues);
  for (const auto& [key, slots] : keys) {
    const std::string text = entry.requireString(key);
    for (const std::string& slot : rules::slotsIn(text))
      if (!standsIn(slots, slot))
        entry.issue(*node, "\"" + std::string(key) + "\" cannot fill in {" + slot + "}",
                    slots.empty() ? "write it without slots" : "use " + std::string(slots));
    book.words_.emplace(key, text);
  }
  entry.finish();
  return book;
}

std::string PhraseBook::say(std::string_view key, const std::map<std::string, std::string>& slots) const {
  const auto at = words_.find(key);
  return at == words_.end() ? std::string() : filled(at->second, slots);
}

std::string filled(const std::string& text, const std::map<std::string, std::string>& slots) {
  std::string out;
  std::size_t at = 0;
  while (at < text.size()) {
    const auto open = text.find('{', at);
    const auto close = open == std::string::npos ? open : text.find('}', open);
    if (close == std::string::npos) break;
    out += text.substr(at, open - at);
    const auto slot = slots.find(text.substr(open + 1, close - open - 1));
    out += slot == slots.end() ? text.substr(open, close - open + 1) : slot->second;
    at = close + 1;
  }
  return out + text.substr(at);
}

}  // namespace stile::documents
