#include "desktop/pdf_pages.h"

#include <cairo/cairo.h>
#include <poppler.h>

namespace stile::desktop {

struct PdfPages::Document {
  struct Unref {
    void operator()(gpointer object) const { g_object_unref(object); }
  };
  template <class T>
  using Owned = std::unique_ptr<T, Unref>;

  Owned<PopplerDocument> pdf;
  std::vector<Owned<PopplerPage>> pages;
};

PdfPages::PdfPages(const std::string& bytes) : document_(std::make_unique<Document>()) {
  GBytes* const data = g_bytes_new(bytes.data(), bytes.size());
  document_->pdf.reset(poppler_document_new_from_bytes(data, nullptr, nullptr));
  g_bytes_unref(data);
  const int count = document_->pdf ? poppler_document_get_n_pages(document_->pdf.get()) : 0;
  for (int i = 0; i < count; ++i)
    document_->pages.emplace_back(poppler_document_get_page(document_->pdf.get(), i));
}

PdfPages::~PdfPages() = default;
PdfPages::PdfPages(PdfPages&&) noexcept = default;

std::size_t PdfPages::count() const {
  return document_->pages.size();
}

PdfPages::Size PdfPages::sizeOf(std::size_t page) const {
  Size size;
  poppler_page_get_size(document_->pages.at(page).get(), &size.width, &size.height);
  return size;
}

std::string PdfPages::textOf(std::size_t page) const {
  const std::unique_ptr<char, decltype(&g_free)> text(poppler_page_get_text(document_->pages.at(page).get()),
                                                      &g_free);
  return text == nullptr ? std::string() : std::string(text.get());
}

void PdfPages::paint(std::size_t page, cairo_t* onto, Purpose purpose) const {
  if (purpose == Purpose::Printer)
    poppler_page_render_for_printing(document_->pages.at(page).get(), onto);
  else
    poppler_page_render(document_->pages.at(page).get(), onto);
}

}  // namespace stile::desktop
