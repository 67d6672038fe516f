#include "store/compression.h"

#include <libdeflate.h>

#include <memory>
#include <new>
#include <stdexcept>

#include "store/bytes.h"

namespace stile::store {
namespace {

constexpr int kLevel = 6;

template <class Tool, Tool* (*make)(), void (*free)(Tool*)>
Tool* kept() {
  thread_local const std::unique_ptr<Tool, decltype(free)> tool(make(), free);
  if (!tool) throw std::bad_alloc();
  return tool.get();
}

libdeflate_compressor* newCompressor() { return libdeflate_alloc_compressor(kLevel); }

}  // namespace

std::string compressed(std::string_view text) {
  if (text.size() > kMostTextBytes) throw std::length_error("a text is longer than 64 MiB");
  auto* const packer = kept<libdeflate_compressor, newCompressor, libdeflate_free_compressor>();
  std::string packed(libdeflate_zlib_compress_bound(packer, text.size()), '\0');
  const std::size_t size = libdeflate_zlib_compress(packer, text.data(), text.size(), packed.data(), packed.size());
  if (size == 0) throw std::runtime_error("a text could not be compressed");
  packed.resize(size);
  return ByteWriter().number(text.size()).text(packed).bytes();
}

std::optional<std::string> expanded(std::string_view bytes) {
  ByteReader reader(bytes);
  const std::uint64_t size = reader.number();
  const std::string packed = reader.text();
  if (!reader.isComplete() || size > kMostTextBytes) return std::nullopt;
  std::string text(size, '\0');
  auto* const unpacker = kept<libdeflate_decompressor, libdeflate_alloc_decompressor, libdeflate_free_decompressor>();
  std::size_t read = 0;
  // Without a place for the size it must be just as long.
  const auto result = libdeflate_zlib_decompress_ex(unpacker, packed.data(), packed.size(), text.data(), text.size(), &read, nullptr);
  if (result != LIBDEFLATE_SUCCESS || read != packed.size()) return std::nullopt;
  return text;
}

}  // namespace stile::store
