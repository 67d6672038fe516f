// Length-prefixed bytes: how sealed payloads and associated data are laid out.
//
// Every field carries its length, so two different lists of fields never give the same bytes.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

namespace stile::store {

/// The same 64 bits without a sign, for ByteWriter::number().
inline std::uint64_t unsign(long long value) { return static_cast<std::uint64_t>(value); }

class ByteWriter {
 public:
  ByteWriter& number(std::uint64_t value);  ///< eight bytes, least significant first
  ByteWriter& text(std::string_view value);
  const std::string& bytes() const { return bytes_; }

 private:
  std::string bytes_;
};

/// Reads what ByteWriter wrote. After the first read past the end everything reads as empty, and
/// isComplete() stays false.
class ByteReader {
 public:
  explicit ByteReader(std::string_view bytes) : rest_(bytes) {}
  std::uint64_t number();
  std::string text();
  /// A count of things of at least `leastBytes` each; larger than fits is a failure, so damaged
  /// counts never reserve memory.
  std::size_t count(std::size_t leastBytes);
  bool isComplete() const { return !failed_ && rest_.empty(); }
  bool hasFailed() const { return failed_; }

 private:
  std::string_view rest_;
  bool failed_ = false;
};

}  // namespace stile::store
