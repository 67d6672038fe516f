// What the interview page shows of the question that is asked now. No window in it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "interview/session.h"

namespace stile::desktop {

/// One answer that can be given with one key.
struct AnswerRow {
  enum class Kind { Yes, No, Option, NotSure, Declined, Later };
  Kind kind = Kind::Option;
  std::string key;     ///< as on the key cap: "1"
  std::string words;
  std::size_t option = 0;  ///< index into the item's options
  bool isNone = false;     ///< "none of these"
};

enum class QuestionKind {
  YesNo,
  OneOf,
  SeveralOf,
  Typed,    ///< a number, a date, words
  List,     ///< several questions that "no to all of these" answers
  Another,  ///< is there another one of these?
};

/// A question as a line of a list, and as it is asked alone.
struct ListLine {
  std::string words;
  std::string question;
};

struct QuestionView {
  QuestionKind kind = QuestionKind::YesNo;
  std::string section;             ///< of the form
  std::string question;
  std::string help;                ///< why we ask; may be empty
  std::vector<std::string> about;  ///< titles of the rules its answer can move, a few
  std::vector<AnswerRow> answers;  ///< in the order shown; for a list its questions stand in `items`
  std::vector<ListLine> items;     ///< of a list
  std::vector<std::string> units;  ///< UCUM codes offered, the usual one first
  std::vector<std::string> unitWords;
  std::string example;             ///< what a typed answer may look like
  std::string range;               ///< which values are taken, in words; may be empty
  std::string before;              ///< what was said before; may be empty
  std::vector<int> marks;          ///< of a list or of several answers, to begin with: 0 none, 1 yes, 2 not sure; may be empty
};
/// Of what is asked now.
QuestionView questionViewOf(interview::Session& session);
/// Of one question, asked or not.
QuestionView questionViewOf(interview::Session& session, const interview::QuestionRef& question);

/// An answer that was taken back stands there again: what was marked is marked, what was said is told.
void putBack(QuestionView& view, interview::Session& session, const std::vector<answers::Answered>& takenBack);

/// How far the interview is: "12 answered, 2 left open".
std::string standingWords(const interview::Session& session);

/// Something that was said, newest last.
struct SaidRow {
  interview::QuestionRef question;
  std::string words, answer;
};
std::vector<SaidRow> saidLately(const interview::Session& session, std::size_t most);

/// A question that is still open, the one that narrows most first.
struct OpenRow {
  interview::QuestionRef question;
  std::string words;
};
std::vector<OpenRow> stillOpen(const interview::Session& session, std::size_t most);

/// What hangs on each answer of the question asked now: a sentence each, in the order of the answers
/// of the view; empty for typed answers and lists.
std::vector<std::string> consequencesOf(interview::Session& session, const QuestionView& view);

/// "yes", "170 cm", "Angina; Pacemaker", "not sure".
std::string answerInWords(const interview::FormQuestion& question, const answers::Answered& answered);

}  // namespace stile::desktop
