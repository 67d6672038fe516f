#include "documents/override_words.h"

#include "documents/decision_words.h"

namespace stile::documents {

std::string overrideWords(const records::OverrideNote& note) {
  std::string words = "Set by " + note.by + " on " + note.date.toLongText() + ": " + asSentence(note.instead) +
                      " Why: " + asSentence(note.reason);
  if (!note.secondBy.empty()) return words + " Second signature: " + asSentence(note.secondBy);
  return note.needsSecond ? words + " It waits for a second signature and does not hold yet." : words;
}

}  // namespace stile::documents
