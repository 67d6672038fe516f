#include "documents/html_writer.h"

#include <algorithm>

#include "documents/paper_style.h"
#include "drawing/svg.h"

namespace stile::documents {
namespace {

using drawing::escaped;

std::string base64(const std::string& bytes) {
  constexpr char kDigits[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
  std::string out;
  for (std::size_t i = 0; i < bytes.size(); i += 3) {
    const std::size_t have = std::min<std::size_t>(3, bytes.size() - i);
    unsigned value = 0;
    for (std::size_t k = 0; k < 3; ++k) value = value << 8 | (k < have ? static_cast<unsigned char>(bytes[i + k]) : 0u);
    for (std::size_t k = 0; k < 4; ++k) out += k <= have ? kDigits[value >> (18 - 6 * k) & 63] : '=';
  }
  return out;
}

/// The mark: two slant-cut uprights; from below a whole rung, a broken rung, an empty wire.
std::string mark(int size) {
  using drawing::Colour;
  const auto value = [](Colour colour) { return std::string(valueOf(colour, drawing::Theme::Paper)); };
  return "<svg class=\"mark\" width=\"" + std::to_string(size) + "\" height=\"" + std::to_string(size) +
         "\" viewBox=\"0 0 34 34\" aria-hidden=\"true\"><path d=\"M4 33V4l5-3v32zM25 33V4l5-3v32z\" fill=\"" +
         value(Colour::Post) + "\"/><rect x=\"9\" y=\"24\" width=\"16\" height=\"5\" fill=\"" +
         value(Colour::Open) + "\"/><path d=\"M9 16.5h4m3 0h3m3 0h3\" stroke=\"" + value(Colour::Open) +
         "\" stroke-width=\"4\"/><path d=\"M9 7q8 4 16 0\" fill=\"none\" stroke=\"" + value(Colour::Shut) +
         "\" stroke-width=\"2\"/></svg>";
}

const char* classOf(BoxKind kind) {
  switch (kind) {
    case BoxKind::Plain:
      return "box";
    case BoxKind::Emergency:
      return "box emergency";
    case BoxKind::Stop:
      return "box stop";
    case BoxKind::NotForNow:
      return "box notfornow";
    case BoxKind::Held:
      return "box held";
    case BoxKind::Exercise:
      return "box exercise";
    case BoxKind::Question:
      return "box question";
  }
  return "box";
}

const char* classOf(Tone tone) {
  switch (tone) {
    case Tone::Body:
      return "";
    case Tone::Small:
      return " class=\"small\"";
    case Tone::Statement:
      return " class=\"statement\"";
    case Tone::Dose:
      return " class=\"dose\"";
    case Tone::Number:
      return " class=\"telephone\"";
  }
  return "";
}

class HtmlWriter {
 public:
  std::string write(const Document& document) {
    words_ = document.words;
    html_ = "<!DOCTYPE html>\n<html lang=\"" + escaped(document.language) + "\">\n<head>\n<meta charset=\"utf-8\">\n"
        "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>" +
        escaped(document.title + (document.client.empty() ? "" : ": " + document.client)) +
        "</title>\n<style>\n" + paperStyle(document) + "</style>\n</head>\n<body>\n";
    head(document);
    html_ += "<main>\n";
    for (const Section& section : document.sections) this->section(section);
    html_ += "</main>\n<footer>\n";
    for (const std::string& line : document.footer) html_ += "<p>" + escaped(line) + "</p>\n";
    return html_ + "</footer>\n</body>\n</html>\n";
  }

 private:
  void head(const Document& document) {
    html_ += "<header>\n<div class=\"name\">" +
             (document.logoPng.empty() ? mark(document.reader == Reader::Client ? 44 : 38)
                                       : "<img class=\"logo\" alt=\"\" src=\"data:image/png;base64," +
                                             base64(document.logoPng) + "\">") +
             "<div><h1>" + escaped(document.title) + "</h1>";
    if (!document.clinic.empty()) html_ += "<p>" + escaped(document.clinic) + "</p>";
    html_ += "</div></div>\n<div class=\"about\">";
    html_ += document.client.empty() ? "<div>" + escaped(document.words.name) + " <span class=\"blank\"></span></div>"
                                     : "<div class=\"who\"><bdi>" + escaped(document.client) + "</bdi></div>";
    for (const std::string& line : document.about) html_ += "<div>" + escaped(line) + "</div>";
    html_ += "</div>\n</header>\n";
  }

  void section(const Section& section) {
    const std::string id = "section-" + std::to_string(++sections_);
    html_ += section.startsPage ? "<section class=\"page\"" : "<section";
    if (!section.heading.empty()) hasHeading_ = true;
    if (!section.heading.empty())
      html_ +=
          " aria-labelledby=\"" + id + "\">\n<h2 id=\"" + id + "\">" + escaped(section.heading) + "</h2>\n";
    else
      html_ += ">\n";
    blocks(section.blocks);
    html_ += "</section>\n";
  }

  void blocks(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit([this](const auto& form) { of(form); }, block.form);
  }

  void of(const Paragraph& form) {
    html_ += std::string("<p") + classOf(form.tone) + ">";
    if (!form.lead.empty()) html_ += "<b>" + escaped(form.lead) + "</b>" + (form.text.empty() ? "" : " ");
    html_ += escaped(form.text) + "</p>\n";
  }

  static std::string joined(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += (text.empty() ? "" : "<br>") + escaped(line);
    return text;
  }

  /// Each row run into one paragraph, small, in two columns.
  void compact(const Rows& form) {
    html_ += "<div class=\"compact\">\n";
    for (const Row& row : form.rows) {
      const bool ends = row.term.empty() || row.term.back() == '.' || row.term.back() == '?';
      html_ += "<p>" + (row.term.empty() ? "" : "<b>" + escaped(row.term) + (ends ? "" : ".") + "</b>");
      for (const auto* list : {&row.text, &row.fine})
        for (const std::string& text : *list) html_ += " " + escaped(text);
      for (std::size_t i = 0; i < row.note.size(); ++i) html_ += (i == 0 ? " (" : "; ") + escaped(row.note[i]);
      html_ += row.note.empty() ? "</p>\n" : ")</p>\n";
    }
    html_ += "</div>\n";
  }

  void of(const Rows& form) {
    if (form.rows.empty()) return;
    if (form.isCompact) return compact(form);
    const bool hasNotes = std::any_of(form.rows.begin(), form.rows.end(),
                                      [](const Row& row) { return !row.note.empty() || row.plot; });
    const bool hasText =
        std::any_of(form.rows.begin(), form.rows.end(), [](const Row& row) { return !row.text.empty() || !row.fine.empty(); });
    const bool hasTerms = std::any_of(form.rows.begin(), form.rows.end(), [](const Row& row) { return !row.term.empty(); });
    html_ += std::string("<table class=\"rows ") + (!hasTerms ? "free" : hasNotes ? "three" : hasText ? "two" : "one") + "\">\n<tbody>\n";
    for (const Row& row : form.rows) {
      // A term that stands in the row above is not repeated; an empty header cell would be none.
      html_ += "<tr>";
      if (hasTerms) html_ += row.term.empty() ? "<td></td>" : "<th scope=\"row\">" + escaped(row.term) + "</th>";
      if (hasText || hasNotes) html_ += "<td>" + joined(row.text) +
                 (row.fine.empty() ? "" : "<div class=\"small\">" + joined(row.fine) + "</div>") + "</td>";
      if (hasNotes) {
        html_ += "<td class=\"note\">";
        if (row.plot) html_ += toSvg(*row.plot, {drawing::Theme::Paper, "figure-" + std::to_string(++figures_)});
        html_ += joined(row.note) + "</td>";
      }
      html_ += "</tr>\n";
    }
    html_ += "</tbody>\n</table>\n";
  }

  void of(const Table& form) {
    html_ += std::string("<table class=\"") + (form.isGrid ? "grid" : "plain") + "\"";
    if (!form.caption.empty()) html_ += " aria-label=\"" + escaped(form.caption) + "\"";
    html_ += ">\n<thead><tr>";
    for (const std::string& column : form.columns) html_ += "<th scope=\"col\">" + escaped(column) + "</th>";
    html_ += "</tr></thead>\n<tbody>\n";
    for (const auto& cells : form.rows) {
      html_ += "<tr>";
      for (std::size_t i = 0; i < cells.size(); ++i) {
        const Cell& cell = cells[i];
        if (i == 0 && !cell.text.empty())  // one to write in heads nothing
          html_ += "<th scope=\"row\">" + escaped(cell.text) + "</th>";
        else if (cell.kind == CellKind::TickBox)
          html_ += "<td><span class=\"tick\" role=\"img\" aria-label=\"" + escaped(words_.tickBox) + "\"></span></td>";
        else if (cell.kind == CellKind::Rest)
          html_ += "<td class=\"rest\">" + escaped(words_.rest) + "</td>";
        else
          html_ += (cell.kind == CellKind::Blank ? "<td class=\"blankcell\">" : "<td>") + escaped(cell.text) + "</td>";
      }
      html_ += "</tr>\n";
    }
    html_ += "</tbody>\n</table>\n";
  }

  void of(const List& form) {
    const std::string tag = form.isNumbered ? "ol" : "ul";
    html_ += "<" + tag + (form.isInColumns ? " class=\"incolumns\"" : "") + ">\n";
    for (const std::string& item : form.items) html_ += "<li>" + escaped(item) + "</li>\n";
    html_ += "</" + tag + ">\n";
  }

  void of(const Figure& form) {
    html_ += "<figure>" +
             toSvg(form.drawing, {drawing::Theme::Paper, "figure-" + std::to_string(++figures_), true}) +
             "</figure>\n";
  }

  void of(const Box& form) {
    html_ += std::string("<div class=\"") + classOf(form.kind) + (form.picture ? " pictured" : "") + "\">\n";
    if (form.picture) {
      html_ += "<div class=\"picture\">";
      of(*form.picture);
      html_ += "</div><div>\n";
    }
    if (!form.title.empty())
      // No level is left out: before the first section heading a box is one itself.
      html_ += std::string(hasHeading_ ? "<h3>" : "<h2>") +
               (form.number.empty() ? "" : "<span class=\"number\">" + escaped(form.number) + "</span> ") +
               escaped(form.title) + (hasHeading_ ? "</h3>\n" : "</h2>\n");
    blocks(form.blocks);
    html_ += form.picture ? "</div></div>\n" : "</div>\n";
  }

  void of(const Fold& form) {
    html_ += std::string(form.isScreenOnly ? "<details class=\"screen\">" : "<details>") + "\n<summary>" +
             escaped(form.title) + "</summary>\n";
    blocks(form.blocks);
    html_ += "</details>\n";
  }

  void of(const Columns& form) {
    html_ += "<div class=\"columns\">\n";
    for (std::size_t i = 0; i < form.columns.size(); ++i) {
      const int share = i < form.shares.size() ? form.shares[i] : 1;
      html_ += "<div class=\"column\" style=\"flex:" + std::to_string(share) + " 1 0\">\n";
      blocks(form.columns[i]);
      html_ += "</div>\n";
    }
    html_ += "</div>\n";
  }

  void of(const WriteLine& form) {
    for (int i = 0; i < std::max(1, form.lines); ++i)
      html_ += "<div class=\"writeline\"><span>" + (i == 0 ? escaped(form.label) : "") + "</span><span></span></div>\n";
  }

  void of(const Choices& form) {
    html_ += std::string("<div class=\"choices") + (form.isOnePerLine ? " single\">" : "\">");
    if (!form.label.empty()) html_ += "<span>" + escaped(form.label) + "</span>";
    html_ += "<ul>\n";
    for (const std::string& option : form.options) html_ += "<li>" + escaped(option) + "</li>\n";
    html_ += "</ul></div>\n";
  }

  void of(const CutLine& form) {
    html_ += "<div class=\"cut\"><h2>" + escaped(form.title) + "</h2><p>" + escaped(form.words) + "</p></div>\n";
  }

  std::string html_;
  WriterWords words_;
  bool hasHeading_ = false;
  int sections_ = 0, figures_ = 0;
};

}  // namespace

std::string toHtml(const Document& document) {
  return HtmlWriter().write(document);
}

}  // namespace stile::documents
