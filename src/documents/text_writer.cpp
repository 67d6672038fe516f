#include "documents/text_writer.h"

#include <algorithm>

#include "base/utf8.h"

namespace stile::documents {
namespace {

constexpr std::size_t kTermWidth = 20;
constexpr std::size_t kUnbroken = 1u << 24;

std::size_t widthOf(const std::string& text) {
  return base::countCodePoints(text);
}

std::string padded(std::string text, std::size_t width) {
  const std::size_t now = widthOf(text);
  if (now < width) text.append(width - now, ' ');
  return text;
}

std::vector<std::string> brokenAt(const std::string& text, std::size_t width) {
  std::vector<std::string> lines;
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t start = text.find_first_not_of(" \n", at);
    if (start == std::string::npos) break;
    const std::size_t end = std::min(text.find_first_of(" \n", start), text.size());
    const std::string word = text.substr(start, end - start);
    if (!lines.empty() && widthOf(lines.back()) + 1 + widthOf(word) <= width)
      lines.back() += " " + word;
    else
      lines.push_back(word);
    at = end;
  }
  return lines;
}

class TextWriter {
 public:
  TextWriter(std::size_t columns, bool opensFolds) : columns_(columns), opensFolds_(opensFolds) {}

  std::string write(const Document& document) {
    heading(document.title, '=');
    if (!document.clinic.empty()) put(document.clinic);
    if (!document.client.empty()) put(document.client);
    for (const std::string& line : document.about) put(line);
    for (const Section& section : document.sections) {
      blank();
      if (!section.heading.empty()) heading(section.heading, '-');
      blocks(section.blocks);
    }
    if (!document.footer.empty()) blank();
    for (const std::string& line : document.footer) put(line);
    return std::move(text_);
  }

 private:
  void line(const std::string& words) {
    const std::size_t last = words.find_last_not_of(' ');
    const std::string body = prefix_ + (last == std::string::npos ? "" : words.substr(0, last + 1));
    const std::size_t end = body.find_last_not_of(' ');
    text_ += (end == std::string::npos ? "" : body.substr(0, end + 1)) + "\n";
  }
  void blank() {
    if (!text_.empty() && !text_.ends_with("\n\n")) line("");
  }
  std::size_t room() const { return columns_ > prefix_.size() + 20 ? columns_ - prefix_.size() : 20; }

  /// Wrapped, with later lines indented under the first.
  void put(const std::string& words, const std::string& first = "", std::size_t indent = 0) {
    const std::string hang(indent, ' ');
    bool isFirst = true;
    for (const std::string& piece : brokenAt(words, room() - std::min(room() - 1, indent))) {
      line((isFirst ? padded(first, indent) : hang) + piece);
      isFirst = false;
    }
    if (isFirst && !first.empty()) line(first);
  }

  void heading(const std::string& words, char underline) {
    const auto lines = brokenAt(words, room());
    std::size_t longest = 0;
    for (const std::string& piece : lines) {
      line(piece);
      longest = std::max(longest, widthOf(piece));
    }
    line(std::string(longest, underline));
  }

  void blocks(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit([this](const auto& form) { of(form); }, block.form);
  }

  void of(const Paragraph& form) {
    put(form.lead.empty() ? form.text : form.lead + (form.text.empty() ? "" : " " + form.text));
  }

  /// Each row run into one paragraph.
  void compact(const Rows& form) {
    for (const Row& row : form.rows) {
      std::string words = row.term;
      if (!words.empty() && !row.text.empty() && words.back() != '.' && words.back() != '?') words += ".";
      for (const auto* list : {&row.text, &row.fine})
        for (const std::string& text : *list) words += (words.empty() ? "" : " ") + text;
      for (std::size_t i = 0; i < row.note.size(); ++i) words += (i == 0 ? " [" : "; ") + row.note[i];
      put(words + (row.note.empty() ? "" : "]"), "- ", 2);
    }
  }

  void of(const Rows& form) {
    if (form.isCompact) return compact(form);
    for (const Row& row : form.rows) {
      std::string first = row.term;
      if (widthOf(first) >= kTermWidth) {
        put(first);
        first.clear();
      }
      std::vector<std::string> all = row.text;
      all.insert(all.end(), row.fine.begin(), row.fine.end());
      for (const std::string& note : row.note) all.push_back("[" + note + "]");
      if (all.empty() && !first.empty()) line(first);
      for (const std::string& words : all) {
        put(words, first, kTermWidth);
        first.clear();
      }
    }
  }

  static std::string wordsOf(const Cell& cell) {
    return cell.kind == CellKind::TickBox ? "[ ]" : cell.kind == CellKind::Rest ? "rest" : cell.text;
  }

  void of(const Table& form) {
    std::vector<std::vector<std::string>> rows{form.columns};
    for (const auto& cells : form.rows) {
      rows.emplace_back();
      for (const Cell& cell : cells) rows.back().push_back(wordsOf(cell));
    }
    std::vector<std::size_t> widths;
    for (const auto& row : rows)
      for (std::size_t i = 0; i < row.size(); ++i) {
        if (widths.size() <= i) widths.push_back(0);
        widths[i] = std::max(widths[i], widthOf(row[i]));
      }
    std::size_t total = 0;
    for (const std::size_t width : widths) total += width + 2;
    if (total <= room() + 2) {
      for (const auto& row : rows) {
        std::string text;
        for (std::size_t i = 0; i < row.size(); ++i) text += padded(row[i], widths[i] + 2);
        line(text);
      }
      return;
    }
    // Too wide for columns: one paragraph a row, its name first.
    for (std::size_t r = 1; r < rows.size(); ++r) {
      put(rows[r].empty() ? "" : rows[r].front());
      for (std::size_t i = 1; i < rows[r].size(); ++i)
        if (!rows[r][i].empty()) put(rows[r][i], "  ", 2);
    }
  }

  void of(const List& form) {
    int number = 0;
    for (const std::string& item : form.items) {
      const std::string mark = form.isNumbered ? std::to_string(++number) + ". " : "- ";
      put(item, mark, mark.size());
    }
  }

  void of(const Figure& form) {
    for (const std::string& words : form.inText) line(words);
  }

  void of(const Box& form) {
    blank();
    const std::string outer = prefix_;
    prefix_ += form.kind == BoxKind::Exercise || form.kind == BoxKind::Question ? "" : form.kind == BoxKind::Emergency ? "! " : "| ";
    if (!form.title.empty()) put((form.number.empty() ? "" : form.number + " ") + form.title);
    if (form.kind == BoxKind::Exercise || form.kind == BoxKind::Question) prefix_ += "   ";
    blocks(form.blocks);
    prefix_ = outer;
    blank();
  }

  void of(const Fold& form) {
    put(form.title);
    if (opensFolds_) blocks(form.blocks);
  }

  void of(const Columns& form) {
    bool isFirst = true;
    for (const auto& column : form.columns) {
      if (!isFirst) blank();
      isFirst = false;
      blocks(column);
    }
  }

  void of(const WriteLine& form) {
    for (int i = 0; i < std::max(1, form.lines); ++i)
      line((i == 0 && !form.label.empty() ? form.label + ": " : "") +
           std::string(room() > widthOf(form.label) + 12 && columns_ < kUnbroken ? 10 : 4, '_'));
  }

  void of(const Choices& form) {
    std::string words = form.label;
    for (const std::string& option : form.options) words += (words.empty() ? "[ ] " : "  [ ] ") + option;
    put(words);
  }

  void of(const CutLine& form) {
    blank();
    line(std::string(std::min<std::size_t>(room(), 40), '-'));
    put(form.title);
    put(form.words);
  }

  std::size_t columns_;
  bool opensFolds_;
  std::string text_;
  std::string prefix_;
};

}  // namespace

std::string toText(const Document& document, int columns) {
  return TextWriter(static_cast<std::size_t>(std::max(columns, 20)), false).write(document);
}

std::string wordsOf(const Document& document) {
  return TextWriter(kUnbroken, true).write(document);
}

}  // namespace stile::documents
