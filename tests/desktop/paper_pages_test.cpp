// Papers on a page of the screen and of the printer, and where they are put.
#include <cairo/cairo.h>
#include <catch2/catch.hpp>

#include "../support/content.h"
#include "application/paper_texts.h"
#include "desktop/paper_place.h"
#include "desktop/paper_printout.h"
#include "documents/document.h"

using namespace stile;
using namespace stile::desktop;

namespace {

std::string pdfOf(const std::string& words, std::size_t paragraphs) {
  documents::Document document;
  document.title = words;
  documents::Section section;
  for (std::size_t i = 0; i < paragraphs; ++i) {
    documents::Paragraph paragraph;
    paragraph.text = words + " " + std::to_string(i);
    section.blocks.push_back({paragraph});
  }
  document.sections.push_back(section);
  auto bytes = application::bytesOf(document, ".pdf");
  REQUIRE(bytes.ok());
  return std::move(bytes).value();
}

/// How many dots of a page are not white.
int inkOf(const PdfPages& pages, std::size_t page, PdfPages::Purpose purpose) {
  const auto size = pages.sizeOf(page);
  cairo_surface_t* const surface = cairo_image_surface_create(
      CAIRO_FORMAT_RGB24, static_cast<int>(size.width), static_cast<int>(size.height));
  cairo_t* const cairo = cairo_create(surface);
  cairo_set_source_rgb(cairo, 1, 1, 1);
  cairo_paint(cairo);
  pages.paint(page, cairo, purpose);
  cairo_destroy(cairo);
  cairo_surface_flush(surface);
  int dots = 0;
  const unsigned char* const data = cairo_image_surface_get_data(surface);
  const int stride = cairo_image_surface_get_stride(surface);
  for (int y = 0; y < cairo_image_surface_get_height(surface); ++y)
    for (int x = 0; x < cairo_image_surface_get_width(surface); ++x)
      if (data[y * stride + 4 * x] != 0xFF) ++dots;
  cairo_surface_destroy(surface);
  return dots;
}

}  // namespace

TEST_CASE("pages are counted, read and painted, for the screen and for the printer alike") {
  const PdfPages one(pdfOf("Walk", 2)), several(pdfOf("Rest a while", 200)), none("no PDF");
  CHECK(one.count() == 1);
  CHECK(several.count() > 2);
  CHECK(none.count() == 0);
  CHECK(one.textOf(0).find("Walk 1") != std::string::npos);
  CHECK(one.sizeOf(0).width == Approx(595).margin(1));
  const int screen = inkOf(one, 0, PdfPages::Purpose::Screen),
            printer = inkOf(one, 0, PdfPages::Purpose::Printer);
  CHECK(screen > 100);
  CHECK(printer == Approx(screen).epsilon(0.2));
}

TEST_CASE("several papers are one job: its pages are those of all of them") {
  PaperPrintout printout("Papers", {pdfOf("Walk", 2), pdfOf("Rest a while", 200)});
  const int more = static_cast<int>(PdfPages(pdfOf("Rest a while", 200)).count());
  CHECK(printout.pages() == 1 + more);
  CHECK(printout.HasPage(1));
  CHECK(printout.HasPage(1 + more));
  CHECK_FALSE(printout.HasPage(2 + more));
  CHECK_FALSE(printout.HasPage(0));
  int least = 0, most = 0, from = 0, to = 0;
  printout.GetPageInfo(&least, &most, &from, &to);
  CHECK((least == 1 && most == printout.pages() && from == 1 && to == printout.pages()));
}

TEST_CASE("a page stands in the middle of its sheet: never larger, smaller only when the sheet is") {
  const auto same = placementOn({595, 842}, {595, 842});
  CHECK((same.scale == 1 && same.x == 0 && same.y == 0));
  const auto onLarger = placementOn({612, 842}, {595, 842});
  CHECK(onLarger.scale == 1);
  CHECK(onLarger.x == Approx(8.5));
  const auto onSmaller = placementOn({420, 595}, {595, 842});
  CHECK(onSmaller.scale == Approx(420.0 / 595).epsilon(0.01));
  CHECK(onSmaller.x >= 0);
  CHECK(onSmaller.y >= 0);
}

TEST_CASE("every client and day has a folder of its own; what cannot be one is told") {
  CHECK(paperTitle("clearance-letter") == "Clearance letter");
  CHECK(paperTitle("referral-eyeCare") == "Referral eye care");
  CHECK(proposedFolder("/home/ines", "Maren Oakshott", *base::Date::of(2026, 11, 25)) ==
        "/home/ines/Maren Oakshott 2026-11-25");
  CHECK(proposedFolder("/home/ines", "Maren/Oakshott", *base::Date::of(2026, 11, 25)) ==
        "/home/ines/Maren-Oakshott 2026-11-25");
  CHECK(troubleWithFolder("/home").empty());
  CHECK(troubleWithFolder("/nowhere/yet").empty());
  CHECK_FALSE(troubleWithFolder("").empty());
  CHECK_FALSE(troubleWithFolder("papers").empty());
  CHECK_FALSE(troubleWithFolder("/proc/self/status").empty());
}
