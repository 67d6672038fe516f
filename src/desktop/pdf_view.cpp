#include "desktop/pdf_view.h"

#include <cairo/cairo.h>
#include <poppler.h>
#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include <algorithm>
#include <cmath>

#include "desktop/accessible.h"

namespace stile::desktop {
namespace {

constexpr int kPageGap = 14, kWidest = 900;
constexpr std::size_t kSpoken = 6000;  // of the text, for screen readers

}  // namespace

struct PdfView::Document {
  struct Unref {
    void operator()(gpointer object) const { g_object_unref(object); }
  };
  template <class T>
  using Owned = std::unique_ptr<T, Unref>;

  Owned<PopplerDocument> pdf;
  std::vector<Owned<PopplerPage>> pages;
  double width = 0, height = 0;  ///< of all pages below each other, in points, gaps left out
};

PdfView::PdfView(wxWindow* parent, const Theme& theme) : wxScrolledWindow(parent, wxID_ANY, wxDefaultPosition, wxDefaultSize, wxVSCROLL), theme_(theme) {
  SetBackgroundStyle(wxBG_STYLE_PAINT);
  SetScrollRate(0, FromDIP(24));
  Bind(wxEVT_PAINT, &PdfView::onPaint, this);
  Bind(wxEVT_SIZE, [this](wxSizeEvent& event) {
    event.Skip();
    layOut();
  });
}

PdfView::~PdfView() = default;

int PdfView::pages() const { return document_ ? static_cast<int>(document_->pages.size()) : 0; }

void PdfView::show(const std::string& bytes, const std::string& name) {
  auto document = std::make_unique<Document>();
  GBytes* const data = g_bytes_new(bytes.data(), bytes.size());
  document->pdf.reset(poppler_document_new_from_bytes(data, nullptr, nullptr));
  g_bytes_unref(data);
  std::string spoken;
  const int count = document->pdf ? poppler_document_get_n_pages(document->pdf.get()) : 0;
  for (int i = 0; i < count; ++i) {
    document->pages.emplace_back(poppler_document_get_page(document->pdf.get(), i));
    double width = 0, height = 0;
    poppler_page_get_size(document->pages.back().get(), &width, &height);
    document->width = std::max(document->width, width);
    document->height += height;
    if (spoken.size() >= kSpoken) continue;
    char* const text = poppler_page_get_text(document->pages.back().get());
    spoken += text == nullptr ? "" : text;
    g_free(text);
  }
  document_ = std::move(document);
  pictureFor(*this, name + ", " + std::to_string(count) + (count == 1 ? " page" : " pages"), spoken);
  layOut();
  Scroll(0, 0);
  Refresh();
}

void PdfView::layOut() {
  if (!document_ || document_->width <= 0) return;
  const int room = std::min(GetClientSize().x - 2 * FromDIP(kPageGap), FromDIP(kWidest));
  scale_ = std::max(0.2, room / document_->width);
  SetVirtualSize(-1, static_cast<int>(std::ceil(document_->height * scale_)) + FromDIP(kPageGap) * (pages() + 1));
  Refresh();
}

void PdfView::onPaint(wxPaintEvent&) {
  wxAutoBufferedPaintDC dc(this);
  dc.SetBackground(wxBrush(theme_.colour(drawing::Colour::Ground)));
  dc.Clear();
  if (!document_) return;
  const std::unique_ptr<wxGraphicsContext> context(wxGraphicsContext::Create(dc));
  auto* const cairo = context ? static_cast<cairo_t*>(context->GetNativeContext()) : nullptr;
  if (cairo == nullptr) return;
  int scrolledX = 0, scrolledY = 0;
  CalcUnscrolledPosition(0, 0, &scrolledX, &scrolledY);
  double top = FromDIP(kPageGap) - scrolledY;
  for (const auto& page : document_->pages) {
    double width = 0, height = 0;
    poppler_page_get_size(page.get(), &width, &height);
    if (top + height * scale_ > 0 && top < GetClientSize().y) {
      cairo_save(cairo);
      cairo_translate(cairo, std::max(0.0, (GetClientSize().x - width * scale_) / 2), top);
      cairo_scale(cairo, scale_, scale_);
      cairo_set_source_rgb(cairo, 1, 1, 1);
      cairo_rectangle(cairo, 0, 0, width, height);
      cairo_fill(cairo);
      poppler_page_render(page.get(), cairo);
      cairo_restore(cairo);
    }
    top += height * scale_ + FromDIP(kPageGap);
  }
}

}  // namespace stile::desktop
