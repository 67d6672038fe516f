#include "expression/evaluator.h"

#include <algorithm>

#include "base/near_names.h"
#include "expression/function_table.h"
#include "expression/machine.h"

namespace stile::expression {
namespace {

/// Functions must be known and given the right number of arguments before anything is evaluated.
bool checkFunctions(const Syntax& syntax, const Origin& origin, const std::string& subject,
                    base::Issues& issues) {
  bool isRight = true;
  if (syntax.kind == SyntaxKind::Function) {
    const FunctionEntry* entry = findFunction(syntax.text);
    const std::size_t count = syntax.children.size() - 1;
    // The place of the name, not of what stands before it.
    const Syntax* focus = syntax.children.front().get();
    const base::Place place = origin.placeOf(focus ? focus->offset + focus->length + 1 : syntax.offset);
    if (!entry) {
      issues.error(place, subject, "there is no function " + syntax.text + "()",
                   base::didYouMean(base::nearNames(syntax.text, functionNames()), ""));
      isRight = false;
    } else if (count < entry->fewest || count > entry->most) {
      std::string wanted = std::to_string(entry->fewest);
      if (entry->most != entry->fewest) wanted += " to " + std::to_string(entry->most);
      issues.error(place, subject,
                   syntax.text + "() takes " + wanted + (entry->most == 1 ? " argument" : " arguments") +
                       ", not " + std::to_string(count));
      isRight = false;
    }
  }
  for (const auto& child : syntax.children) {
    if (child && !checkFunctions(*child, origin, subject, issues)) isRight = false;
  }
  return isRight;
}

void collectVariables(const Syntax& syntax, std::vector<std::string>& read,
                      std::vector<std::string>& defined) {
  const bool isDefinition = syntax.kind == SyntaxKind::Function && syntax.text == "defineVariable" &&
                            syntax.children.size() > 1 && syntax.children[1]->kind == SyntaxKind::String;
  if (isDefinition) defined.push_back(syntax.children[1]->text);
  if (syntax.kind == SyntaxKind::Variable && std::find(read.begin(), read.end(), syntax.text) == read.end()) {
    read.push_back(syntax.text);
  }
  for (const auto& child : syntax.children) {
    if (child) collectVariables(*child, read, defined);
  }
}

}  // namespace

struct Expression::Parts {
  std::string text;
  std::string subject;
  std::shared_ptr<const Origin> origin;
  std::unique_ptr<Syntax> syntax;
};

std::optional<Expression> Expression::parse(std::string_view text, std::shared_ptr<const Origin> origin,
                                            const std::string& subject, base::Issues& issues) {
  auto syntax = expression::parse(text, *origin, subject, issues);
  if (!syntax || !checkFunctions(*syntax, *origin, subject, issues)) return std::nullopt;
  Expression expression;
  expression.parts_ =
      std::make_shared<const Parts>(Parts{std::string(text), subject, std::move(origin), std::move(syntax)});
  return expression;
}

std::optional<Expression> Expression::parse(std::string_view text, const std::string& name,
                                            base::Issues& issues) {
  return parse(text, std::make_shared<TextOrigin>(name, std::string(text)), "", issues);
}

std::optional<Collection> Expression::evaluate(const Collection& focus, const Environment& environment,
                                               base::Issues& issues) const {
  Machine machine(focus, environment);
  try {
    return machine.evaluate(*parts_->syntax, {&focus, std::nullopt, nullptr});
  } catch (const EvaluationError& error) {
    const Syntax& at = error.at ? *error.at : *parts_->syntax;
    std::size_t offset = at.offset;
    const bool isCall = at.kind == SyntaxKind::Function && at.children.front();
    if (isCall) offset = at.children.front()->offset + at.children.front()->length + 1;
    issues.error(parts_->origin->placeOf(offset), parts_->subject, error.message, error.remedy);
    return std::nullopt;
  }
}

const std::string& Expression::text() const {
  return parts_->text;
}

std::vector<std::string> Expression::variablesRead() const {
  std::vector<std::string> read;
  std::vector<std::string> defined;
  collectVariables(*parts_->syntax, read, defined);
  std::erase_if(read, [&](const std::string& name) {
    return std::find(defined.begin(), defined.end(), name) != defined.end();
  });
  return read;
}

std::optional<bool> asCondition(const Collection& result) {
  if (result.size() > 1) return std::nullopt;
  if (result.empty()) return false;
  return result.front().isBoolean() ? result.front().boolean() : true;
}

}  // namespace stile::expression
