#include "expression/program.h"

#include <utility>

#include "expression/compiler.h"
#include "expression/evaluation.h"

namespace stile::expression {

std::optional<Program> Program::compile(std::string_view text, const SymbolTable& symbols,
                                        std::optional<Type> expected, const Origin& origin,
                                        const std::string& subject, base::Issues& issues) {
  const std::unique_ptr<Syntax> syntax = parse(text, origin, subject, issues);
  if (!syntax) return std::nullopt;
  auto instructions = Compiler(text, symbols, origin, subject, issues).run(*syntax, expected);
  if (!instructions) return std::nullopt;
  Program program;
  program.code_ = std::make_shared<const Code>(Code{std::move(*instructions)});
  return program;
}

Value Program::evaluate(const Slots& slots) const {
  return Evaluation(code_->instructions, slots).value();
}

const Type& Program::type() const {
  return code_->instructions.type;
}

const std::string& Program::text() const {
  return code_->instructions.text;
}

const std::vector<int>& Program::slotsRead() const {
  return code_->instructions.slots;
}

std::vector<int> Program::decidedBy(const Slots& slots) const {
  return Evaluation(code_->instructions, slots).decidedBy();
}

std::set<int> Program::knownWhen(bool outcome) const {
  return expression::knownWhen(code_->instructions, outcome);
}

}  // namespace stile::expression
