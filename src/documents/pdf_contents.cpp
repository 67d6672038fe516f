#include "documents/pdf_contents.h"

#include <libdeflate.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <memory>
#include <new>
#include <optional>

namespace stile::documents {
namespace {

constexpr std::string_view kOrnamentTag = "/NonStruct", kOrnamentEnd = "BDC", kBlank = " \n\r\t";
constexpr std::string_view kWidth = "0.125";

/// "/NonStruct <<…>> BDC" becomes "/Artifact BMC".
std::string withOrnaments(std::string_view contents) {
  std::string out;
  out.reserve(contents.size());
  std::size_t at = 0;
  for (;;) {
    const std::size_t start = contents.find(kOrnamentTag, at);
    const std::size_t end = start == std::string_view::npos ? start : contents.find(kOrnamentEnd, start);
    if (end == std::string_view::npos) break;
    out.append(contents, at, start - at);
    out += "/Artifact BMC";
    at = end + kOrnamentEnd.size();
  }
  return out.append(contents, at);
}

/// Reads the words of a page one by one; lines break anywhere between them.
class Words {
 public:
  Words(std::string_view text, std::size_t at) : text_(text), at_(at) {}

  std::size_t at() const { return at_; }
  std::string_view next() {
    const std::size_t start = std::min(text_.find_first_not_of(kBlank, at_), text_.size());
    at_ = std::min(text_.find_first_of(kBlank, start), text_.size());
    return text_.substr(start, at_ - start);
  }
  std::string_view before() {
    const std::size_t last = at_ == 0 ? std::string_view::npos : text_.find_last_not_of(kBlank, at_ - 1);
    if (last == std::string_view::npos) return at_ = 0, std::string_view();
    const std::size_t blank = text_.find_last_of(kBlank, last);
    at_ = blank == std::string_view::npos ? 0 : blank + 1;
    return text_.substr(at_, last + 1 - at_);
  }

 private:
  std::string_view text_;
  std::size_t at_;
};

std::optional<double> numberIn(std::string_view word) {
  double number = 0;
  const auto read = std::from_chars(word.data(), word.data() + word.size(), number);
  if (read.ec != std::errc() || read.ptr != word.data() + word.size()) return std::nullopt;
  return number;
}

std::string transform(const PlacedShapes& shapes) {
  char text[96];
  const int size = std::snprintf(text, sizeof text, "q %.5f 0 0 %.5f %.3f %.3f cm\n", shapes.scale,
                                 shapes.scale, shapes.x, shapes.y);
  return std::string(text, static_cast<std::size_t>(size));
}

}  // namespace

std::size_t ContentsMender::place(std::string_view contents, std::size_t at, std::string& out) {
  Words back(contents, at);
  const auto y = numberIn(back.before()), x = numberIn(back.before());
  Words on(contents, at + kWidth.size());
  const auto height = numberIn(on.next());
  if (!x || !y || !height || on.next() != "re" || on.next() != "f") return 0;
  const auto number = static_cast<std::size_t>(std::lround(*height * 256)) - 1;
  constexpr double kNear = 0.01;  // cairo writes thousandths of its 1/256
  if (number >= shapes_.size() || isPlaced_[number]) return 0;
  const PlacedShapes& shapes = shapes_[number];
  if (std::abs(shapes.x - *x) > kNear || std::abs(shapes.y - *y) > kNear) return 0;
  isPlaced_[number] = true;
  out.resize(out.size() - (at - back.at()));
  out += transform(shapes);
  out += shapes.content;
  out += 'Q';
  return on.at();
}

std::string ContentsMender::mended(std::string_view contents) {
  const std::string tagged = withOrnaments(contents);
  std::string out;
  std::size_t at = 0;
  for (;;) {
    const std::size_t found = tagged.find(kWidth, at);
    if (found == std::string::npos) break;
    out.append(tagged, at, found - at);
    const std::size_t end = place(tagged, found, out);
    if (end == 0) out += kWidth;
    at = end == 0 ? found + kWidth.size() : end;
  }
  return out.append(tagged, at);
}

bool ContentsMender::isAllPlaced() const {
  return std::all_of(isPlaced_.begin(), isPlaced_.end(), [](bool is) { return is; });
}

std::string deflated(const std::string& bytes) {
  constexpr int kLevel = 6;
  const std::unique_ptr<libdeflate_compressor, decltype(&libdeflate_free_compressor)> packer(
      libdeflate_alloc_compressor(kLevel), libdeflate_free_compressor);
  if (!packer) throw std::bad_alloc();
  std::string packed(libdeflate_zlib_compress_bound(packer.get(), bytes.size()), '\0');
  packed.resize(
      libdeflate_zlib_compress(packer.get(), bytes.data(), bytes.size(), packed.data(), packed.size()));
  return packed;
}

}  // namespace stile::documents
