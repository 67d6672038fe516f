#include "documents/letter_wording.h"

#include <algorithm>
#include <array>
#include <cstdint>

namespace stile::documents {
namespace {

using base::Failure;
using base::FailureKind;

constexpr std::string_view kFirstWords = "Wording of a letter: ";
constexpr std::string_view kHelp =
    "Change what stands under the names in brackets and give this file back with --letter.\n"
    "An empty line parts paragraphs. A passage with nothing under its name is left out.\n"
    "Reply slip, signature and caution stay as they are.\n";

/// Where a passage stands: a paragraph of the first section, or a row of it.
struct Spot {
  std::string name;
  Paragraph* paragraph = nullptr;
  Row* row = nullptr;
};

/// The makers of letters put recipient, question and opening first, then the rows.
std::vector<Spot> spotsOf(Document& document, const LetterTexts& texts) {
  std::vector<Spot> spots;
  if (document.sections.empty()) return spots;
  constexpr std::array<const char*, 3> kParagraphs{"toWhom", "theQuestion", "opening"};
  std::size_t paragraphs = 0;
  for (Block& block : document.sections.front().blocks) {
    if (auto* paragraph = std::get_if<Paragraph>(&block.form);
        paragraph != nullptr && paragraphs < kParagraphs.size())
      spots.push_back({texts.headings.say(kParagraphs[paragraphs++]), paragraph, nullptr});
    if (auto* rows = std::get_if<Rows>(&block.form))
      for (Row& row : rows->rows) spots.push_back({row.term, nullptr, &row});
  }
  return spots;
}

std::string textOf(const Spot& spot) {
  if (spot.paragraph != nullptr) return spot.paragraph->text;
  std::string text;
  for (const std::string& one : spot.row->text) text += (text.empty() ? "" : "\n") + one;
  return text;
}

std::vector<std::string> linesOf(std::string_view text) {
  std::vector<std::string> lines;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    lines.emplace_back(text.substr(0, end));
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return lines;
}

std::string trimmed(std::string_view text) {
  const auto first = text.find_first_not_of(" \t\r\n");
  return first == std::string_view::npos
             ? std::string()
             : std::string(text.substr(first, text.find_last_not_of(" \t\r\n") + 1 - first));
}

/// Paragraphs on lines of their own, without empty ones.
std::string tidied(const std::string& text) {
  std::string out;
  for (const std::string& line : linesOf(text))
    if (const std::string words = trimmed(line); !words.empty()) out += (out.empty() ? "" : "\n") + words;
  return out;
}

/// FNV-1a over names and words: no proof against forgery, only a sign that the words have changed.
std::string basisOf(const std::vector<Spot>& spots) {
  std::uint64_t hash = 14695981039346656037u;
  const auto take = [&hash](std::string_view text) {
    for (const char c : text) hash = (hash ^ static_cast<unsigned char>(c)) * 1099511628211u;
    hash = (hash ^ 0xFFu) * 1099511628211u;
  };
  for (const Spot& spot : spots) {
    take(spot.name);
    take(textOf(spot));
  }
  std::string digits;
  for (int shift = 60; shift >= 0; shift -= 4) digits += "0123456789abcdef"[(hash >> shift) & 0xFu];
  return digits;
}

Failure refused(const LetterWording& wording, const std::string& why) {
  return {FailureKind::Refused, "the wording of " + wording.letter + ": " + why};
}

void put(const Spot& spot, const std::string& text) {
  if (spot.row != nullptr) {
    spot.row->text = linesOf(text);
    return;
  }
  spot.paragraph->text = text;
  std::replace(spot.paragraph->text.begin(), spot.paragraph->text.end(), '\n', ' ');
}

/// Rows and paragraphs that say nothing any more.
void dropEmpty(Section& section) {
  for (Block& block : section.blocks)
    if (auto* rows = std::get_if<Rows>(&block.form))
      std::erase_if(rows->rows, [](const Row& row) { return row.text.empty(); });
  std::erase_if(section.blocks, [](const Block& block) {
    const auto* paragraph = std::get_if<Paragraph>(&block.form);
    const auto* rows = std::get_if<Rows>(&block.form);
    return (paragraph != nullptr && paragraph->text.empty() && paragraph->lead.empty()) ||
           (rows != nullptr && rows->rows.empty());
  });
}

}  // namespace

LetterWording wordingOf(const std::string& letter, const Document& document, const LetterTexts& texts) {
  Document copy = document;
  const auto spots = spotsOf(copy, texts);
  LetterWording wording{letter, basisOf(spots), {}};
  for (const Spot& spot : spots) wording.passages.push_back({spot.name, textOf(spot)});
  wording.passages.push_back({texts.headings.say("added"), ""});
  return wording;
}

base::Result<bool> reword(Document& document, const LetterWording& wording, const LetterTexts& texts) {
  const auto spots = spotsOf(document, texts);
  if (spots.empty() || wording.basis != basisOf(spots))
    return refused(wording,
                   "the letter says something else by now, so this wording fits no longer; write the wording "
                   "anew and carry your changes over");
  if (wording.passages.size() != spots.size() + 1)
    return refused(wording,
                   "it has " + std::to_string(wording.passages.size()) + " passages in place of " +
                       std::to_string(spots.size() + 1) +
                       "; keep every name in brackets, with nothing under it to leave the passage out");
  for (std::size_t i = 0; i < spots.size(); ++i) {
    const Passage& passage = wording.passages[i];
    if (passage.name != spots[i].name)
      return refused(wording, "\"" + passage.name + "\" stands where \"" + spots[i].name + "\" belongs");
    if (i < kNeededPassages && tidied(passage.text).empty())
      return refused(wording, "\"" + passage.name + "\" is empty; a letter needs it");
  }
  std::string changed;
  const auto name = [&changed](const std::string& passage) {
    changed += (changed.empty() ? "" : ", ") + passage;
  };
  for (std::size_t i = 0; i < spots.size(); ++i) {
    const std::string text = tidied(wording.passages[i].text);
    if (text == tidied(textOf(spots[i]))) continue;
    put(spots[i], text);
    name(spots[i].name);
  }
  Section& section = document.sections.front();
  if (const std::string added = tidied(wording.passages.back().text); !added.empty()) {
    section.blocks.push_back({Rows{{Row{texts.headings.say("added"), linesOf(added), {}}}}});
    name(texts.headings.say("added"));
  }
  dropEmpty(section);
  if (!changed.empty() && !document.footer.empty())
    document.footer.back() += ". " + texts.phrases.say("reworded", {{"passages", changed}});
  return true;
}

std::string toText(const LetterWording& wording) {
  std::string text =
      std::string(kFirstWords) + wording.letter + " " + wording.basis + "\n" + std::string(kHelp);
  for (const Passage& passage : wording.passages) {
    text += "\n[" + passage.name + "]\n";
    bool isFirst = true;
    for (const std::string& line : linesOf(passage.text)) {
      text += (isFirst ? "" : "\n") + line + "\n";
      isFirst = false;
    }
  }
  return text;
}

LetterWording letterWordingFrom(std::string_view text, const std::string& file, base::Issues& issues) {
  LetterWording wording;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  const auto lines = linesOf(text);
  const std::string first = lines.empty() ? "" : trimmed(lines.front());
  const auto blank = first.rfind(' ');
  if (!first.starts_with(kFirstWords) || blank < kFirstWords.size()) {
    issues.error({file, 1, 1, first}, "", "this is no wording of a letter",
                 "give a file that was written with --wording");
    return wording;
  }
  wording.letter = first.substr(kFirstWords.size(), blank - kFirstWords.size());
  wording.basis = first.substr(blank + 1);
  bool isNewParagraph = false;
  for (std::size_t i = 1; i < lines.size(); ++i) {
    const std::string line = trimmed(lines[i]);
    if (line.starts_with('[') && line.ends_with(']')) {
      wording.passages.push_back({line.substr(1, line.size() - 2), ""});
      isNewParagraph = false;
    } else if (line.empty()) {
      isNewParagraph = true;
    } else if (!wording.passages.empty()) {
      std::string& words = wording.passages.back().text;
      words += (words.empty() ? "" : isNewParagraph ? "\n" : " ") + line;
      isNewParagraph = false;
    }
  }
  return wording;
}

}  // namespace stile::documents
