#include "desktop/pdf_view.h"

#include <cairo/cairo.h>
#include <wx/dcbuffer.h>
#include <wx/graphics.h>

#include <algorithm>
#include <cmath>

#include "desktop/accessible.h"
#include "desktop/fitted.h"
#include "desktop/pdf_pages.h"

namespace stile::desktop {
namespace {

constexpr int kPageGap = 14, kWidest = 900;
constexpr std::size_t kSpoken = 6000;  // of the text, for screen readers

}  // namespace

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

int PdfView::pages() const { return document_ ? static_cast<int>(document_->count()) : 0; }

void PdfView::show(const std::string& bytes, const std::string& name, bool isSamePaper) {
  document_ = std::make_unique<PdfPages>(bytes);
  width_ = height_ = 0;
  std::string spoken;
  for (std::size_t i = 0; i < document_->count(); ++i) {
    const auto size = document_->sizeOf(i);
    width_ = std::max(width_, size.width);
    height_ += size.height;
    if (spoken.size() < kSpoken) spoken += document_->textOf(i);
  }
  pictureFor(*this, name + ", " + std::to_string(pages()) + (pages() == 1 ? " page" : " pages"), spoken);
  layOut();
  if (!isSamePaper) Scroll(0, 0);
  Refresh();
}

void PdfView::clear() {
  document_.reset();
  pictureFor(*this, "No paper yet", "");
  SetVirtualSize(-1, 0);
  Refresh();
}

void PdfView::layOut() {
  if (!document_ || width_ <= 0) return;
  const int room = std::min(widthBesideBar(*this) - 2 * FromDIP(kPageGap), FromDIP(kWidest));
  scale_ = std::max(0.2, room / width_);
  SetVirtualSize(-1, static_cast<int>(std::ceil(height_ * scale_)) + FromDIP(kPageGap) * (pages() + 1));
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
  for (std::size_t i = 0; i < document_->count(); ++i) {
    const auto [width, height] = document_->sizeOf(i);
    if (top + height * scale_ > 0 && top < GetClientSize().y) {
      cairo_save(cairo);
      cairo_translate(cairo, std::max(0.0, (widthBesideBar(*this) - width * scale_) / 2), top);
      cairo_scale(cairo, scale_, scale_);
      cairo_set_source_rgb(cairo, 1, 1, 1);
      cairo_rectangle(cairo, 0, 0, width, height);
      cairo_fill(cairo);
      document_->paint(i, cairo, PdfPages::Purpose::Screen);
      cairo_restore(cairo);
    }
    top += height * scale_ + FromDIP(kPageGap);
  }
}

}  // namespace stile::desktop
