#include "desktop/paper_printout.h"

#include <cairo/cairo.h>
#include <wx/dc.h>

#include <algorithm>

#include "desktop/text.h"

namespace stile::desktop {
namespace {

constexpr double kPointsPerInch = 72;

}  // namespace

PaperPrintout::PaperPrintout(const std::string& title, const std::vector<std::string>& pdfs)
    : wxPrintout(shown(title)) {
  for (const std::string& bytes : pdfs) {
    papers_.emplace_back(bytes);
    for (std::size_t i = 0; i < papers_.back().count(); ++i) pages_.push_back({papers_.size() - 1, i});
  }
}

void PaperPrintout::GetPageInfo(int* least, int* most, int* from, int* to) {
  *least = *from = 1;
  *most = *to = pages();
}

bool PaperPrintout::OnPrintPage(int page) {
  auto* const cairo = static_cast<cairo_t*>(GetDC()->GetHandle());
  if (cairo == nullptr || !HasPage(page)) return false;
  const auto& [paper, number] = pages_[static_cast<std::size_t>(page - 1)];
  int width = 0, height = 0;
  GetPageSizePixels(&width, &height);
  const PdfPages::Size size = papers_[paper].sizeOf(number);
  // The toolkit paints in dots of the printer, a page in points.
  int dotsPerInch = 0, down = 0;
  GetPPIPrinter(&dotsPerInch, &down);
  const double dots = std::max(1, dotsPerInch) / kPointsPerInch;
  const Placement at = placementOn({width / dots, height / dots}, size);
  cairo_save(cairo);
  cairo_scale(cairo, dots, dots);
  cairo_translate(cairo, at.x, at.y);
  cairo_scale(cairo, at.scale, at.scale);
  papers_[paper].paint(number, cairo, PdfPages::Purpose::Printer);
  cairo_restore(cairo);
  return true;
}

Printed printPapers(wxWindow& parent, PaperPrintout& printout, records::PaperSize paper) {
  wxPrintData data;
  data.SetPaperId(paper == records::PaperSize::Letter ? wxPAPER_LETTER : wxPAPER_A4);
  wxPrintDialogData choices(data);
  choices.SetMaxPage(printout.pages());
  wxPrinter printer(&choices);
  if (printer.Print(&parent, &printout, true)) return Printed::Done;
  return wxPrinter::GetLastError() == wxPRINTER_CANCELLED ? Printed::CalledOff : Printed::NotDone;
}

Placement placementOn(PdfPages::Size sheet, PdfPages::Size page) {
  Placement at;
  at.scale = std::min({1.0, sheet.width / page.width, sheet.height / page.height});
  at.x = (sheet.width - page.width * at.scale) / 2;
  at.y = (sheet.height - page.height * at.scale) / 2;
  return at;
}

}  // namespace stile::desktop
