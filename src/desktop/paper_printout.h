// Papers on their way to a printer: their pages one after the other, at their own size.
#pragma once

#include <wx/print.h>

#include <string>
#include <vector>

#include "desktop/pdf_pages.h"
#include "records/clinic_settings.h"

namespace stile::desktop {

class PaperPrintout : public wxPrintout {
 public:
  /// `title` stands in the list of the printer's jobs; `pdfs` are bytes.
  PaperPrintout(const std::string& title, const std::vector<std::string>& pdfs);
  /// Of all papers together.
  int pages() const { return static_cast<int>(pages_.size()); }

  bool HasPage(int page) override { return page >= 1 && page <= pages(); }
  void GetPageInfo(int* least, int* most, int* from, int* to) override;
  bool OnPrintPage(int page) override;

 private:
  struct Page {
    std::size_t paper, number;
  };
  std::vector<PdfPages> papers_;
  std::vector<Page> pages_;
};

enum class Printed { Done, CalledOff, NotDone };
/// Shows the system's print dialog, set to the clinic's paper, and prints.
Printed printPapers(wxWindow& parent, PaperPrintout& printout, records::PaperSize paper);

/// How a page of `page` is scaled and moved to stand in the middle of a sheet of the same unit: never made
/// larger, and smaller only when it is larger than the sheet.
struct Placement {
  double scale = 1, x = 0, y = 0;
};
Placement placementOn(PdfPages::Size sheet, PdfPages::Size page);

}  // namespace stile::desktop
