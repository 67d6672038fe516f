// A map by text that is looked up often: without making a string of what is looked up, and in no order.
#pragma once

#include <string>
#include <string_view>
#include <unordered_map>

namespace stile::base {

struct TextHash {
  using is_transparent = void;
  std::size_t operator()(std::string_view text) const { return std::hash<std::string_view>{}(text); }
};

template <class Value>
using TextMap = std::unordered_map<std::string, Value, TextHash, std::equal_to<>>;

}  // namespace stile::base
