// The pages of a PDF in memory, painted onto whatever Cairo paints on: the window and the printer.
#pragma once

#include <memory>
#include <string>
#include <vector>

struct _cairo;

namespace stile::desktop {

class PdfPages {
 public:
  /// What cannot be read has no pages.
  explicit PdfPages(const std::string& bytes);
  ~PdfPages();
  PdfPages(PdfPages&&) noexcept;

  std::size_t count() const;
  /// In points.
  struct Size {
    double width = 0, height = 0;
  };
  Size sizeOf(std::size_t page) const;
  std::string textOf(std::size_t page) const;
  enum class Purpose { Screen, Printer };
  /// Paints one page, a point to a unit, with its upper left corner where the origin is.
  void paint(std::size_t page, _cairo* onto, Purpose purpose) const;

 private:
  struct Document;
  std::unique_ptr<Document> document_;
};

}  // namespace stile::desktop
