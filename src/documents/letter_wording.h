// The wording of a letter, for whoever sends it to change before it goes out: as passages, and as a
// text file that is edited and given back. Reply slip, signature, caution and version are no passages.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "base/result.h"
#include "documents/document.h"
#include "documents/letter_texts.h"

namespace stile::documents {

/// A part of a letter under its name ("Why we ask"). Paragraphs of `text` stand on lines of their own.
struct Passage {
  std::string name, text;
};

/// The passages of one letter in their order. `basis` stands for the words the program wrote: wording
/// that was made from other words than today's fits no longer.
struct LetterWording {
  std::string letter;  ///< "clearance-letter", "referral-eyeCare"
  std::string basis;
  std::vector<Passage> passages;
};

/// Recipient and question, the first passages, are never empty.
inline constexpr std::size_t kNeededPassages = 2;

/// The wording of a letter as the program wrote it. The last passage is empty, for what the sender adds.
LetterWording wordingOf(const std::string& letter, const Document& document, const LetterTexts& texts);

/// Puts `wording` into the letter and names the changed passages in its foot; a passage without text is
/// left out. Refused when the program's words, and so what the client told, have changed since, when
/// passages are missing, and when the recipient or the question is empty.
base::Result<bool> reword(Document& document, const LetterWording& wording, const LetterTexts& texts);

/// The text file of a wording, and a wording from its file. What is no such file is an issue.
std::string toText(const LetterWording& wording);
LetterWording letterWordingFrom(std::string_view text, const std::string& file, base::Issues& issues);

}  // namespace stile::documents
