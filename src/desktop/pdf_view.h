// Shows a PDF from memory, its pages one below the other.
#pragma once

#include <wx/scrolwin.h>

#include <memory>
#include <string>

#include "desktop/theme.h"

namespace stile::desktop {

class PdfPages;

class PdfView : public wxScrolledWindow {
 public:
  PdfView(wxWindow* parent, const Theme& theme);
  ~PdfView() override;
  /// `name` is what screen readers say, with the text of the pages. With `isSamePaper` the place that is
  /// looked at stays.
  void show(const std::string& bytes, const std::string& name, bool isSamePaper = false);
  /// Shows nothing: what was there belongs to somebody else now.
  void clear();
  int pages() const;

 private:
  void layOut();
  void onPaint(wxPaintEvent& event);

  const Theme& theme_;
  std::unique_ptr<PdfPages> document_;
  double width_ = 0, height_ = 0;  ///< of all pages below each other, in points, gaps left out
  double scale_ = 1;
};

}  // namespace stile::desktop
