// FHIRPath (HL7, normative release 2.0.0): text -> syntax tree. Knows the whole grammar; which
// parts a caller allows is the checker's business.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"

namespace stile::expression {

inline constexpr int kMaxDepth = 64;              ///< brackets, arguments and signs within each other
inline constexpr int kMaxHeight = 500;            ///< levels of nodes: a chain of `or` is one level each
inline constexpr std::size_t kMaxLength = 20000;  ///< bytes of an expression

enum class SyntaxKind {
  Null,  ///< {}
  Boolean,
  String,
  Number,
  Date,
  DateTime,
  Time,
  ///< dates and times: text without @ and @T, checked to exist; DateTime has a T or a zone
  Quantity,    ///< text = number, unit = UCUM text or calendar word
  Variable,    ///< %name; text = name
  Identifier,  ///< member access; text = name; child 0 = what it is asked of (null at the start)
  Function,    ///< text = name; child 0 = focus or null, further children = arguments
  This,
  Index,
  Total,        ///< $this $index $total; child 0 = focus or null
  Indexer,      ///< a[b]
  Unary,        ///< text = + or -
  Binary,       ///< text = operator: * / div mod + - & | <= < > >= = ~ != !~ in contains and or xor implies
  TypeOperator  ///< text = is or as; unit = type name; child 0
};

/// One node. `offset` and `length` are bytes in the expression's text, from its first operand to
/// its last token. Strings and names have their escapes resolved.
struct Syntax {
  SyntaxKind kind = SyntaxKind::Null;
  std::string text;
  std::string unit;
  bool isCalendarWord = false;  ///< of a Quantity: the unit stands without quotes
  std::size_t offset = 0;
  std::size_t length = 0;
  int height = 1;                                 ///< levels of nodes, this one included
  std::vector<std::unique_ptr<Syntax>> children;  ///< a missing focus is a null pointer
};

/// Where an expression stands, so that issues can name file, line and column.
/// `placeOf(offset)` gives the place of a byte of the expression.
class Origin {
 public:
  virtual ~Origin() = default;
  virtual base::Place placeOf(std::size_t offset) const = 0;
};

/// An expression typed on the command line or in a test: place within its own text.
class TextOrigin : public Origin {
 public:
  TextOrigin(std::string name, std::string text) : name_(std::move(name)), text_(std::move(text)) {}
  base::Place placeOf(std::size_t offset) const override;

 private:
  std::string name_;
  std::string text_;
};

/// nullptr and located issues when the text is not FHIRPath.
std::unique_ptr<Syntax> parse(std::string_view text, const Origin& origin, const std::string& subject,
                              base::Issues& issues);

}  // namespace stile::expression
