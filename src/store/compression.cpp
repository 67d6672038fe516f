#include "store/compression.h"

#include <zlib.h>

#include <stdexcept>

#include "store/bytes.h"

namespace stile::store {

std::string compressed(std::string_view text) {
  if (text.size() > kMostTextBytes) throw std::length_error("a text is longer than 64 MiB");
  uLongf size = compressBound(static_cast<uLong>(text.size()));
  std::string packed(size, '\0');
  const int status = compress2(reinterpret_cast<Bytef*>(packed.data()), &size, reinterpret_cast<const Bytef*>(text.data()),
                               static_cast<uLong>(text.size()), 6);
  if (status != Z_OK) throw std::runtime_error("a text could not be compressed");
  packed.resize(size);
  return ByteWriter().number(text.size()).text(packed).bytes();
}

std::optional<std::string> expanded(std::string_view bytes) {
  ByteReader reader(bytes);
  const std::uint64_t size = reader.number();
  const std::string packed = reader.text();
  if (!reader.isComplete() || size > kMostTextBytes) return std::nullopt;
  std::string text(size, '\0');
  uLongf got = static_cast<uLongf>(size);
  // One byte of room for the empty text: zlib refuses a buffer of none.
  Bytef nothing = 0;
  Bytef* into = text.empty() ? &nothing : reinterpret_cast<Bytef*>(text.data());
  const int status = uncompress(into, &got, reinterpret_cast<const Bytef*>(packed.data()), static_cast<uLong>(packed.size()));
  if (status != Z_OK || got != size) return std::nullopt;
  return text;
}

}  // namespace stile::store
