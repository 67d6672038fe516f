#include "documents/pdf_canvas.h"

#include <cairo-pdf.h>

#include <algorithm>
#include <cmath>
#include <cstring>

namespace stile::documents {
namespace {

using drawing::Colour;

cairo_status_t append(void* closure, const unsigned char* data, unsigned int length) {
  static_cast<std::string*>(closure)->append(reinterpret_cast<const char*>(data), length);
  return CAIRO_STATUS_SUCCESS;
}

struct PngSource {
  const std::string* bytes;
  std::size_t at = 0;
};

cairo_status_t take(void* closure, unsigned char* data, unsigned int length) {
  auto* source = static_cast<PngSource*>(closure);
  if (source->bytes->size() - source->at < length) return CAIRO_STATUS_READ_ERROR;
  std::memcpy(data, source->bytes->data() + source->at, length);
  source->at += length;
  return CAIRO_STATUS_SUCCESS;
}

using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

Surface pngSurface(const std::string& bytes) {
  PngSource source{&bytes};
  Surface surface(cairo_image_surface_create_from_png_stream(take, &source), cairo_surface_destroy);
  if (cairo_surface_status(surface.get()) != CAIRO_STATUS_SUCCESS) surface.reset();
  return surface;
}

constexpr double kLap = 0.6;  ///< of a piece over the next, so that no hairline of paper shows between them
constexpr const char* kOrnament = "NonStruct";  // taken out of the structure again by finishPdf()

}  // namespace

PdfCanvas::PdfCanvas(const Document& document, double width, double height)
    : width_(width),
      height_(height),
      bytes_(std::make_unique<std::string>()),
      surface_(cairo_pdf_surface_create_for_stream(append, bytes_.get(), width, height)),
      cairo_(cairo_create(surface_.get())) {
  const auto say = [&](cairo_pdf_metadata_t what, const std::string& text) {
    if (!text.empty()) cairo_pdf_surface_set_metadata(surface_.get(), what, text.c_str());
  };
  say(CAIRO_PDF_METADATA_TITLE, document.title + (document.client.empty() ? "" : ": " + document.client));
  say(CAIRO_PDF_METADATA_AUTHOR, document.clinic);
  say(CAIRO_PDF_METADATA_CREATOR, "Stile");
  // Never the clock: the same input gives the same bytes.
  const std::string date = (document.date ? document.date->toText() : std::string("2000-01-01")) + "T12:00:00Z";
  say(CAIRO_PDF_METADATA_CREATE_DATE, date);
  say(CAIRO_PDF_METADATA_MOD_DATE, date);
}

void PdfCanvas::open(const std::string& tag, const std::string& alternative, const std::string& scope) {
  if (isOrnament_) return;
  cairo_tag_begin(cairo(), tag.c_str(), nullptr);
  if (!alternative.empty()) notes_.alternatives[notes_.count] = alternative;
  if (!scope.empty()) notes_.scopes[notes_.count] = scope;
  ++notes_.count;
  openTags_.push_back(tag);
}

void PdfCanvas::close() {
  if (isOrnament_) return;
  cairo_tag_end(cairo(), openTags_.back().c_str());
  openTags_.pop_back();
}

void PdfCanvas::ornament(const std::function<void()>& paint) {
  if (isOrnament_) return paint();
  notes_.artifacts.push_back(notes_.count);
  open(kOrnament);
  isOrnament_ = true;
  paint();
  isOrnament_ = false;
  close();
}

void PdfCanvas::bookmark(const std::string& title, double y) {
  bookmarks_.emplace_back(title, "page=" + std::to_string(page_) + " pos=[0 " +
                                     std::to_string(static_cast<int>(std::max(0.0, y - 6))) + "]");
}

void PdfCanvas::newPage() {
  cairo_show_page(cairo());
  ++page_;
}

void PdfCanvas::use(Colour colour) {
  const std::string value(drawing::valueOf(colour, drawing::Theme::Paper));
  const auto part = [&](std::size_t at) { return std::stoi(value.substr(at, 2), nullptr, 16) / 255.0; };
  cairo_set_source_rgb(cairo(), part(1), part(3), part(5));
}

void PdfCanvas::fill(double x, double y, double width, double height, Colour colour) {
  use(colour);
  cairo_new_path(cairo());
  cairo_rectangle(cairo(), x, y, width, height);
  cairo_fill(cairo());
}

void PdfCanvas::frame(double x, double y, double width, double height, double line, Colour colour, bool isDashed) {
  use(colour);
  cairo_save(cairo());
  if (isDashed) {
    const double dashes[] = {4.5, 3};
    cairo_set_dash(cairo(), dashes, 2, 0);
  }
  cairo_set_line_width(cairo(), line);
  cairo_new_path(cairo());
  cairo_rectangle(cairo(), x + line / 2, y + line / 2, width - line, height - line);
  cairo_stroke(cairo());
  cairo_restore(cairo());
}

void PdfCanvas::notice(double x, double y, double width, double height, double cut, bool isBlackOnly) {
  const double half = 1;
  cairo_new_path(cairo());
  cairo_move_to(cairo(), x + cut, y + half);
  cairo_line_to(cairo(), x + width - cut, y + half);
  cairo_line_to(cairo(), x + width - half, y + cut);
  cairo_line_to(cairo(), x + width - half, y + height - half);
  cairo_line_to(cairo(), x + half, y + height - half);
  cairo_line_to(cairo(), x + half, y + cut);
  cairo_close_path(cairo());
  use(isBlackOnly ? Colour::OnSlab : Colour::ShutTint);
  cairo_fill_preserve(cairo());
  use(isBlackOnly ? Colour::Ink : Colour::Shut);
  cairo_set_line_width(cairo(), 2);
  cairo_stroke(cairo());
}

void PdfCanvas::noticePart(double x, double y, double width, double height, double cut, bool isFirst, bool isLast, bool isBlackOnly) {
  const double half = 1, left = x + half, right = x + width - half;
  const double top = isFirst ? y + half : y - kLap, bottom = isLast ? y + height - half : y + height + kLap;
  cairo_new_path(cairo());
  cairo_move_to(cairo(), left, bottom);
  cairo_line_to(cairo(), left, y + cut);
  cairo_line_to(cairo(), left + cut, top);
  cairo_line_to(cairo(), right - cut, top);
  cairo_line_to(cairo(), right, y + cut);
  cairo_line_to(cairo(), right, bottom);
  use(isBlackOnly ? Colour::OnSlab : Colour::ShutTint);
  cairo_fill(cairo());
  cairo_move_to(cairo(), left, bottom);
  cairo_line_to(cairo(), left, isFirst ? y + cut : top);
  if (isFirst) {
    cairo_line_to(cairo(), left + cut, top);
    cairo_line_to(cairo(), right - cut, top);
    cairo_line_to(cairo(), right, y + cut);
  } else {
    cairo_move_to(cairo(), right, top);
  }
  cairo_line_to(cairo(), right, bottom);
  if (isLast) {
    cairo_line_to(cairo(), left, bottom);
    if (isFirst) cairo_close_path(cairo());
  }
  use(isBlackOnly ? Colour::Ink : Colour::Shut);
  cairo_set_line_width(cairo(), 2);
  cairo_stroke(cairo());
}

void PdfCanvas::rule(double x, double y, double width, double line, Colour colour, bool isDashed) {
  use(colour);
  cairo_save(cairo());
  if (isDashed) {
    const double dashes[] = {6, 4};
    cairo_set_dash(cairo(), dashes, 2, 0);
  }
  cairo_set_line_width(cairo(), line);
  cairo_new_path(cairo());
  cairo_move_to(cairo(), x, y);
  cairo_line_to(cairo(), x + width, y);
  cairo_stroke(cairo());
  cairo_restore(cairo());
}

bool PdfCanvas::png(const std::string& bytes, double x, double y, double width, double height) {
  const Surface surface = pngSurface(bytes);
  if (!surface) return false;
  const double w = cairo_image_surface_get_width(surface.get()), h = cairo_image_surface_get_height(surface.get());
  const double scale = std::min(width / w, height / h);
  cairo_save(cairo());
  cairo_translate(cairo(), x, y + (height - h * scale) / 2);
  cairo_scale(cairo(), scale, scale);
  cairo_set_source_surface(cairo(), surface.get(), 0, 0);
  // A fill, for cairo_paint() loses the tags that are open around it (cairo 1.16).
  cairo_new_path(cairo());
  cairo_rectangle(cairo(), 0, 0, w, h);
  cairo_fill(cairo());
  cairo_restore(cairo());
  return true;
}

base::Result<std::string> PdfCanvas::finish() {
  while (!openTags_.empty()) close();
  cairo_show_page(cairo());
  const cairo_status_t painted = cairo_status(cairo());
  cairo_.reset();
  // Only now: after trouble there are no pages, and bookmarks to pages that are none end in a crash.
  if (painted == CAIRO_STATUS_SUCCESS)
    for (const auto& [title, where] : bookmarks_)
      cairo_pdf_surface_add_outline(surface_.get(), CAIRO_PDF_OUTLINE_ROOT, title.c_str(), where.c_str(),
                                    static_cast<cairo_pdf_outline_flags_t>(0));
  cairo_surface_finish(surface_.get());
  const cairo_status_t written = cairo_surface_status(surface_.get());
  for (const cairo_status_t status : {painted, written})
    if (status != CAIRO_STATUS_SUCCESS)
      return base::Failure{base::FailureKind::File,
                           std::string("the PDF could not be made (") + cairo_status_to_string(status) + ")"};
  return std::move(*bytes_);
}

double shapeOfPng(const std::string& bytes) {
  const Surface surface = pngSurface(bytes);
  if (!surface) return 0;
  const int height = cairo_image_surface_get_height(surface.get());
  return height == 0 ? 0 : static_cast<double>(cairo_image_surface_get_width(surface.get())) / height;
}

}  // namespace stile::documents
