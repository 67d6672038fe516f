// String manipulation (FHIRPath 2.0.0, 5.6). Positions count code points.
#include <algorithm>
#include <array>

#include "base/utf8.h"
#include "expression/function_table.h"
#include "expression/letter_case.h"
#include "expression/text_search.h"

namespace stile::expression {
namespace {

Collection answer(bool value) {
  return {Item::boolean(value)};
}

/// A text that was made, after it was counted.
Collection made(Call& call, std::string text) {
  call.machine.budget().text(text.size());
  return {Item::text(std::move(text))};
}

/// The input and a text argument, where both are there.
struct Two {
  const std::string* text;
  std::optional<std::string> other;
  explicit operator bool() const { return text && other; }
};

Two two(Call& call) {
  const std::string* text = call.text();
  auto other = call.textArgument(0);
  if (text) call.machine.budget().scan(text->size());
  return {text, std::move(other)};
}

Collection position(const std::string& text, std::optional<std::size_t> byte) {
  if (!byte) return {Item::integer(-1)};
  const auto count = base::countCodePoints(std::string_view(text).substr(0, *byte));
  return {Item::integer(static_cast<long long>(count))};
}

Collection indexOf(Call& call) {
  const Two both = two(call);
  if (!both) return {};
  if (both.other->empty()) return {Item::integer(0)};
  const auto found = occurrences(*both.text, *both.other, 1);
  return position(*both.text, found.empty() ? std::nullopt : std::optional(found.front()));
}

Collection lastIndexOf(Call& call) {
  const Two both = two(call);
  if (!both) return {};
  if (both.other->empty()) return position(*both.text, both.text->size());
  // Backwards, so that of overlapping ones the last is found.
  const std::string text(both.text->rbegin(), both.text->rend());
  const std::string wanted(both.other->rbegin(), both.other->rend());
  const auto found = occurrences(text, wanted, 1);
  if (found.empty()) return {Item::integer(-1)};
  return position(*both.text, text.size() - found.front() - wanted.size());
}

Collection substring(Call& call) {
  const std::string* text = call.text();
  const auto start = call.integerArgument(0);
  const auto length = call.count() > 1 ? call.integerArgument(1) : std::optional<long long>(kLargestInteger);
  if (!text || !start) return {};
  call.machine.budget().scan(text->size());
  const auto points = base::codePoints(*text);
  const auto size = static_cast<long long>(points.size());
  if (*start < 0 || *start >= size) return {};
  // A length that is empty counts as not given.
  const long long end = std::min(size, *start + std::max(0LL, length.value_or(kLargestInteger)));
  std::string part;
  for (long long i = *start; i < end; ++i) part += points[static_cast<std::size_t>(i)];
  return made(call, std::move(part));
}

Collection startsWith(Call& call) {
  const Two both = two(call);
  return both ? answer(both.text->starts_with(*both.other)) : Collection{};
}
Collection endsWith(Call& call) {
  const Two both = two(call);
  return both ? answer(both.text->ends_with(*both.other)) : Collection{};
}
Collection contains(Call& call) {
  const Two both = two(call);
  if (!both) return {};
  return answer(both.other->empty() || !occurrences(*both.text, *both.other, 1).empty());
}

Collection upper(Call& call) {
  const std::string* text = call.text();
  return text ? made(call, upperCase(*text)) : Collection{};
}
Collection lower(Call& call) {
  const std::string* text = call.text();
  return text ? made(call, lowerCase(*text)) : Collection{};
}

Collection replace(Call& call) {
  const Two both = two(call);
  const auto substitute = call.textArgument(1);
  if (!both || !substitute) return {};
  std::string result;
  const auto add = [&](std::string_view piece) {
    result += piece;
    if (result.size() > call.machine.budget().limits().textLength) call.machine.budget().text(result.size());
  };
  if (both.other->empty()) {
    // 5.6: every character is surrounded by the substitution.
    add(*substitute);
    for (const std::string_view point : base::codePoints(*both.text)) {
      add(point);
      add(*substitute);
    }
    return made(call, std::move(result));
  }
  std::size_t from = 0;
  for (const std::size_t at : occurrences(*both.text, *both.other)) {
    add(std::string_view(*both.text).substr(from, at - from));
    add(*substitute);
    from = at + both.other->size();
  }
  add(std::string_view(*both.text).substr(from));
  return made(call, std::move(result));
}

Collection length(Call& call) {
  const std::string* text = call.text();
  if (!text) return {};
  call.machine.budget().scan(text->size());
  return {Item::integer(static_cast<long long>(base::countCodePoints(*text)))};
}

Collection toChars(Call& call) {
  const std::string* text = call.text();
  if (!text) return {};
  call.machine.budget().items(text->size() / 4);
  Collection result;
  for (const std::string_view point : base::codePoints(*text)) {
    call.machine.budget().step();
    result.push_back(Item::text(std::string(point)));
    call.machine.budget().items(result.size());
  }
  return result;
}

Collection trim(Call& call) {
  const std::string* text = call.text();
  if (!text) return {};
  constexpr std::string_view kBlank = " \t\r\n\f\v";
  const std::size_t first = text->find_first_not_of(kBlank);
  if (first == std::string::npos) return made(call, "");
  return made(call, text->substr(first, text->find_last_not_of(kBlank) - first + 1));
}

Collection split(Call& call) {
  const Two both = two(call);
  if (!both) return {};
  if (both.other->empty()) return toChars(call);
  Collection result;
  std::size_t from = 0;
  const auto add = [&](std::size_t end) {
    const std::string piece = both.text->substr(from, end - from);
    call.machine.budget().text(piece.size());
    result.push_back(Item::text(piece));
    call.machine.budget().items(result.size());
  };
  for (const std::size_t at : occurrences(*both.text, *both.other)) {
    add(at);
    from = at + both.other->size();
  }
  add(both.text->size());
  return result;
}

Collection join(Call& call) {
  const std::string separator = call.count() > 0 ? call.textArgument(0).value_or("") : std::string();
  if (call.input.empty()) return {};
  std::string result;
  for (std::size_t i = 0; i < call.input.size(); ++i) {
    const Item& item = call.input[i];
    if (!item.isText())
      call.fail("join() is asked of texts only", "make texts of them with select(toString())");
    if (i > 0) result += separator;
    result += item.text();
    if (result.size() > call.machine.budget().limits().textLength) call.machine.budget().text(result.size());
  }
  return made(call, std::move(result));
}

constexpr std::array<FunctionEntry, 14> kTextFunctions{{{"indexOf", 1, 1, indexOf},
                                                    {"lastIndexOf", 1, 1, lastIndexOf},
                                                    {"substring", 1, 2, substring},
                                                    {"startsWith", 1, 1, startsWith},
                                                    {"endsWith", 1, 1, endsWith},
                                                    {"contains", 1, 1, contains},
                                                    {"upper", 0, 0, upper},
                                                    {"lower", 0, 0, lower},
                                                    {"replace", 2, 2, replace},
                                                    {"length", 0, 0, length},
                                                    {"toChars", 0, 0, toChars},
                                                    {"trim", 0, 0, trim},
                                                    {"split", 1, 1, split},
                                                    {"join", 0, 1, join}}};

}  // namespace

std::span<const FunctionEntry> textFunctions() {
  return kTextFunctions;
}

}  // namespace stile::expression
