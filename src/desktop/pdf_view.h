// Shows a PDF from memory, its pages one below the other.
#pragma once

#include <wx/scrolwin.h>

#include <memory>
#include <string>
#include <vector>

#include "desktop/theme.h"

namespace stile::desktop {

class PdfView : public wxScrolledWindow {
 public:
  PdfView(wxWindow* parent, const Theme& theme);
  ~PdfView() override;
  /// `name` is what screen readers say, with the text of the pages.
  void show(const std::string& bytes, const std::string& name);
  int pages() const;

 private:
  struct Document;
  void layOut();
  void onPaint(wxPaintEvent& event);

  const Theme& theme_;
  std::unique_ptr<Document> document_;
  double scale_ = 1;
};

}  // namespace stile::desktop
