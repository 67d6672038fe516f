#include "case_writer.h"

#include <memory>
#include <vector>

#include "expression/evaluator.h"
#include "expression_maker.h"
#include "json/document.h"

namespace stile::differential {
namespace {

using expression::Collection;
using expression::Item;

/// Scalars as JSON scalars; dates, times and quantities as text, as the reference engine gives them.
void writeItem(json::Writer& writer, const Item& item) {
  if (const auto* type = std::get_if<std::shared_ptr<const expression::TypeName>>(&item.value)) {
    writer.beginObject().member("namespace", (*type)->space).member("name", (*type)->name).endObject();
  } else if (item.isBoolean()) {
    writer.boolean(item.boolean());
  } else if (const auto number = item.number()) {
    writer.numberText(number->toText());
  } else if (item.node && item.node->isObject()) {
    writer.copy(*item.node);
  } else {
    writer.string(item.toText().value_or(""));
  }
}

}  // namespace

std::string writeCases(unsigned seed, int count, Counts& counts) {
  Random random(seed);
  json::Writer writer(0);
  writer.beginObject().member("seed", static_cast<long long>(seed)).key("resources").beginArray();
  std::vector<std::shared_ptr<const json::Document>> documents;
  std::vector<ResourceKind> kinds;
  for (int i = 0; i < kResources; ++i) {
    kinds.push_back(static_cast<ResourceKind>(i % 4));
    base::Issues issues;
    documents.push_back(json::Document::parse(makeResource(kinds.back(), random), "resource", issues));
    writer.copy(documents.back()->root());
  }
  writer.endArray().key("cases").beginArray();
  expression::Environment environment;
  environment.clock = *expression::Clock::parse("2026-11-25T10:30:00.000+00:00");
  for (int i = 0; i < count; ++i) {
    const auto index = static_cast<std::size_t>(random.below(kResources));
    const std::string text = ExpressionMaker(kinds[index], random).make(random.between(1, 4));
    if (text.size() > 2000) continue;
    base::Issues issues;
    const auto parsed = expression::Expression::parse(text, "generated", issues);
    const Collection focus = expression::itemsOf(documents[index]->root(), expression::r4Model());
    const auto result = parsed ? parsed->evaluate(focus, environment, issues) : std::nullopt;
    ++counts.cases;
    writer.beginObject().member("resource", static_cast<long long>(index)).member("expression", text);
    if (result) {
      ++(result->empty() ? counts.empty : counts.answered);
      writer.key("answer").beginArray();
      for (const Item& item : *result) writeItem(writer, item);
      writer.endArray();
    } else {
      ++counts.refused;
      writer.member("error", issues.empty() ? "" : issues.all().front().message);
    }
    writer.endObject();
  }
  writer.endArray().endObject();
  return writer.text();
}

}  // namespace stile::differential
