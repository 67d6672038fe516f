// The grammar of FHIRPath 2.0.0 (https://hl7.org/fhirpath/N1/grammar.html) by precedence climbing.
#include <algorithm>
#include <utility>

#include "base/utf8.h"
#include "expression/grammar_words.h"
#include "expression/lexer.h"
#include "expression/syntax.h"

namespace stile::expression {
namespace {

using Tree = std::unique_ptr<Syntax>;

class Parser {
 public:
  Parser(std::vector<Token> tokens, const Origin& origin, const std::string& subject, base::Issues& issues)
      : tokens_(std::move(tokens)), origin_(origin), subject_(subject), issues_(issues) {}

  Tree run() {
    if (now().kind == TokenKind::End) return fail(now(), "an expression is missing");
    Tree tree = expression(1);
    if (tree && now().kind != TokenKind::End) return unexpected();
    return tree;
  }

 private:
  const Token& now() const { return tokens_[at_]; }
  bool isSymbol(std::string_view text) const { return now().kind == TokenKind::Symbol && now().text == text; }
  bool isWord(std::string_view text) const {
    return now().kind == TokenKind::Identifier && now().text == text;
  }
  bool take(std::string_view symbol) {
    if (!isSymbol(symbol)) return false;
    ++at_;
    return true;
  }

  Tree fail(const Token& token, std::string message, std::string remedy = {}) {
    if (!hasFailed_) {
      issues_.error(origin_.placeOf(token.offset), subject_, std::move(message), std::move(remedy));
    }
    hasFailed_ = true;
    return nullptr;
  }

  Tree unexpected() {
    const Token& token = now();
    if (token.kind == TokenKind::End) return fail(token, "the expression ends too early");
    return fail(token, describe(token) + " is not expected here", remedy());
  }

  static std::string describe(const Token& token) {
    switch (token.kind) {
      case TokenKind::String:
        return "a text";
      case TokenKind::Number:
        return "a number";
      case TokenKind::Date:
      case TokenKind::DateTime:
      case TokenKind::Time:
        return "a date or time";
      default:
        return token.length <= 40 ? token.text : "this name";
    }
  }

  /// What was probably meant, for operators of other languages.
  std::string remedy() const {
    const Token& token = now();
    const std::string before = at_ > 0 ? tokens_[at_ - 1].text : "";
    if (before == "not") return "write (…).not() after the condition";
    if (token.text == "=" && before == "=") return "write a single =";
    if (token.text == "&" && before == "&") return "write and";
    if (token.text == "|" && before == "|") return "write or";
    if (token.text == ">" && before == "<") return "write !=";
    if (token.kind == TokenKind::Identifier) {
      std::string lower = token.text;
      for (char& c : lower) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
      const bool isOperator = contains(kReservedWords, lower) || lower == "in" || lower == "is";
      if (isOperator && lower != token.text) return "operators are written in small letters";
      if (contains(kReservedWords, token.text) || contains(kCalendarWords, token.text)) {
        return "put backticks around it if it is a name";
      }
    }
    return {};
  }

  /// Gives the node its span and height; null when the tree becomes too high.
  Tree finish(Tree node, const Token& first) {
    const Token& last = tokens_[at_ - 1];
    node->offset = first.offset;
    node->length = last.offset + last.length - first.offset;
    for (const Tree& child : node->children) {
      if (child) node->height = std::max(node->height, child->height + 1);
    }
    if (node->height > kMaxHeight) {
      return fail(first, "the expression is too long a chain", "split it into several facts or rules");
    }
    return node;
  }

  static Tree make(SyntaxKind kind, std::string text = {}) {
    Tree node = std::make_unique<Syntax>();
    node->kind = kind;
    node->text = std::move(text);
    return node;
  }

  const OperatorLevel* operatorHere() const {
    if (now().kind != TokenKind::Symbol && now().kind != TokenKind::Identifier) return nullptr;
    const auto found = std::find_if(kOperators.begin(), kOperators.end(),
                                    [&](const OperatorLevel& level) { return level.text == now().text; });
    return found == kOperators.end() ? nullptr : &*found;
  }

  /// An expression of operators that bind at least as tightly as `lowest`.
  Tree expression(int lowest) {
    const Token first = now();
    Tree left = signedOperand();
    while (left) {
      const OperatorLevel* level = operatorHere();
      if (!level || level->level < lowest) break;
      const bool isType = level->level == kTypeLevel;
      Tree node = make(isType ? SyntaxKind::TypeOperator : SyntaxKind::Binary, now().text);
      ++at_;
      node->children.push_back(std::move(left));
      if (isType) {
        if (!typeName(node->unit)) return nullptr;
      } else {
        Tree right = expression(level->level + 1);
        if (!right) return nullptr;
        node->children.push_back(std::move(right));
      }
      left = finish(std::move(node), first);
    }
    return left;
  }

  bool enter() {
    if (++depth_ <= kMaxDepth) return true;
    fail(now(), "the expression is nested too deeply", "split it into several facts or rules");
    return false;
  }

  /// Signs bind looser than `.`: -1.abs() is -(1.abs()).
  Tree signedOperand() {
    if (!isSymbol("+") && !isSymbol("-")) return postfix();
    const Token first = now();
    Tree node = make(SyntaxKind::Unary, first.text);
    ++at_;
    if (!enter()) return nullptr;
    Tree operand = signedOperand();
    --depth_;
    if (!operand) return nullptr;
    node->children.push_back(std::move(operand));
    return finish(std::move(node), first);
  }

  Tree postfix() {
    const Token first = now();
    Tree tree = term();
    while (tree) {
      if (take(".")) {
        tree = invocation(std::move(tree), first);
      } else if (take("[")) {
        Tree node = make(SyntaxKind::Indexer);
        if (!enter()) return nullptr;
        Tree index = expression(1);
        --depth_;
        if (!index) return nullptr;
        if (!take("]")) return unexpected();
        node->children.push_back(std::move(tree));
        node->children.push_back(std::move(index));
        tree = finish(std::move(node), first);
      } else {
        break;
      }
    }
    return tree;
  }

  Tree leaf(SyntaxKind kind) {
    const Token& token = now();
    ++at_;
    return finish(make(kind, token.text), token);
  }

  Tree term() {
    switch (now().kind) {
      case TokenKind::Number:
        return number();
      case TokenKind::String:
        return leaf(SyntaxKind::String);
      case TokenKind::Date:
        return leaf(SyntaxKind::Date);
      case TokenKind::DateTime:
        return leaf(SyntaxKind::DateTime);
      case TokenKind::Time:
        return leaf(SyntaxKind::Time);
      case TokenKind::Symbol:
        return bracketOrVariable();
      case TokenKind::Identifier:
        if (isWord("true") || isWord("false")) return leaf(SyntaxKind::Boolean);
        return invocation(nullptr, now());
      default:
        return invocation(nullptr, now());
    }
  }

  Tree number() {
    const Token first = now();
    ++at_;
    const bool hasWord = now().kind == TokenKind::Identifier && contains(kCalendarWords, now().text);
    if (!hasWord && now().kind != TokenKind::String)
      return finish(make(SyntaxKind::Number, first.text), first);
    Tree node = make(SyntaxKind::Quantity, first.text);
    node->unit = now().text;
    node->isCalendarWord = hasWord;
    ++at_;
    return finish(std::move(node), first);
  }

  Tree bracketOrVariable() {
    const Token first = now();
    if (take("{")) return take("}") ? finish(make(SyntaxKind::Null), first) : unexpected();
    if (take("(")) {
      if (!enter()) return nullptr;
      Tree inner = expression(1);
      --depth_;
      if (!inner) return nullptr;
      return take(")") ? std::move(inner) : unexpected();
    }
    if (take("%")) {
      std::string name;
      if (now().kind == TokenKind::String) {
        name = now().text;
        ++at_;
      } else if (!identifier(name)) {
        return nullptr;
      }
      return finish(make(SyntaxKind::Variable, std::move(name)), first);
    }
    return unexpected();
  }

  bool identifier(std::string& name) {
    const bool isPlain = now().kind == TokenKind::Identifier && !contains(kReservedWords, now().text) &&
                         !contains(kCalendarWords, now().text);
    if (!isPlain && now().kind != TokenKind::DelimitedIdentifier) {
      unexpected();
      return false;
    }
    name = now().text;
    ++at_;
    return true;
  }

  bool typeName(std::string& name) {
    if (!identifier(name)) return false;
    while (take(".")) {
      std::string next;
      if (!identifier(next)) return false;
      name += "." + next;
    }
    return true;
  }

  /// A member, a function or a $name; `focus` is what it is asked of, or null.
  Tree invocation(Tree focus, const Token& start) {
    const Token first = start;
    if (now().kind == TokenKind::Dollar) {
      const std::string& name = now().text;
      Tree node = make(name == "this"    ? SyntaxKind::This
                       : name == "index" ? SyntaxKind::Index
                                         : SyntaxKind::Total);
      ++at_;
      node->children.push_back(std::move(focus));
      return finish(std::move(node), first);
    }
    Tree node = make(SyntaxKind::Identifier);
    if (!identifier(node->text)) return nullptr;
    node->children.push_back(std::move(focus));
    if (take("(")) {
      node->kind = SyntaxKind::Function;
      if (!take(")") && !arguments(*node)) return nullptr;
    }
    return finish(std::move(node), first);
  }

  bool arguments(Syntax& function) {
    if (!enter()) return false;
    do {
      Tree argument = expression(1);
      if (!argument) return false;
      function.children.push_back(std::move(argument));
    } while (take(","));
    --depth_;
    if (take(")")) return true;
    unexpected();
    return false;
  }

  std::vector<Token> tokens_;
  const Origin& origin_;
  const std::string& subject_;
  base::Issues& issues_;
  std::size_t at_ = 0;
  int depth_ = 0;
  bool hasFailed_ = false;
};

}  // namespace

std::unique_ptr<Syntax> parse(std::string_view text, const Origin& origin, const std::string& subject,
                              base::Issues& issues) {
  if (text.size() > kMaxLength) {
    issues.error(origin.placeOf(0), subject,
                 "the expression is longer than " + std::to_string(kMaxLength) + " bytes",
                 "split it into several facts or rules");
    return nullptr;
  }
  const std::size_t bad = base::invalidUtf8At(text);
  if (bad != std::string_view::npos) {
    issues.error(origin.placeOf(bad), subject, "the expression is not UTF-8 here");
    return nullptr;
  }
  std::vector<Token> tokens = tokensOf(text, origin, subject, issues);
  if (tokens.empty()) return nullptr;
  return Parser(std::move(tokens), origin, subject, issues).run();
}

base::Place TextOrigin::placeOf(std::size_t offset) const {
  return base::placeAt(name_, text_, offset);
}

}  // namespace stile::expression
