#include "store/bytes.h"

namespace stile::store {

ByteWriter& ByteWriter::number(std::uint64_t value) {
  for (int i = 0; i < 8; ++i) bytes_ += static_cast<char>((value >> (8 * i)) & 0xFF);
  return *this;
}

ByteWriter& ByteWriter::text(std::string_view value) {
  number(value.size());
  bytes_ += value;
  return *this;
}

std::uint64_t ByteReader::number() {
  if (rest_.size() < 8) {
    failed_ = true;
    rest_ = {};
    return 0;
  }
  std::uint64_t value = 0;
  for (std::size_t i = 0; i < 8; ++i)
    value |= static_cast<std::uint64_t>(static_cast<unsigned char>(rest_[i])) << (8 * i);
  rest_.remove_prefix(8);
  return value;
}

std::string ByteReader::text() {
  const std::uint64_t size = number();
  if (size > rest_.size()) {
    failed_ = true;
    rest_ = {};
    return {};
  }
  std::string value(rest_.substr(0, size));
  rest_.remove_prefix(size);
  return value;
}

std::size_t ByteReader::count(std::size_t leastBytes) {
  const std::uint64_t value = number();
  if (leastBytes > 0 && value > rest_.size() / leastBytes) {
    failed_ = true;
    rest_ = {};
    return 0;
  }
  return value;
}

}  // namespace stile::store
