#include "application/evaluate_expression.h"

#include "expression/evaluator.h"
#include "json/document.h"

namespace stile::application {
namespace {

using expression::Collection;
using expression::Item;

void writeValue(json::Writer& writer, const Item& item) {
  const auto quantity = item.isElement ? std::nullopt : item.quantity();
  if (quantity) {
    writer.beginObject().key("value").numberText(quantity->value.toText());
    writer.member("unit", quantity->unit).member("isCalendarDuration", quantity->isCalendar).endObject();
  } else if (const auto* type = std::get_if<std::shared_ptr<const expression::TypeName>>(&item.value)) {
    writer.beginObject().member("namespace", (*type)->space).member("name", (*type)->name).endObject();
  } else if (item.isBoolean()) {
    writer.boolean(item.boolean());
  } else if (const auto number = item.number()) {
    writer.numberText(item.node && item.node->isNumber() ? item.node->numberText() : number->toText());
  } else if (const auto text = item.toText(); text && !(item.node && item.node->isObject())) {
    writer.string(*text);
  } else if (item.node) {
    writer.copy(*item.node);
  } else {
    writer.null();
  }
}

std::string asJson(const Collection& items) {
  json::Writer writer;
  writer.beginArray();
  for (const Item& item : items) {
    const expression::TypeName type = item.typeName();
    writer.beginObject();
    writer.member("type", type.name.empty() ? "not known" : type.space + "." + type.name);
    writer.key("value");
    writeValue(writer, item);
    const auto place = item.node ? item.node : item.extras;
    if (place) {
      const base::Place at = place->place();
      writer.member("file", at.file).member("line", at.line).member("column", at.column);
    }
    writer.endObject();
  }
  writer.endArray();
  return writer.text();
}

base::Failure refused() {
  return {base::FailureKind::Refused, "the expression gave no result; the reason stands above"};
}

}  // namespace

base::Result<std::string> evaluateExpression(const EvaluationRequest& request,
                                             std::vector<std::string>& traces, base::Issues& issues) {
  const expression::TypeModel& model = expression::r4Model();
  expression::Environment environment;
  environment.clock = request.clock;
  environment.isStrict = request.isStrict;
  std::vector<expression::Traced> traced;
  environment.traces = &traced;

  // Documents must outlive every collection that was read from them.
  std::vector<std::shared_ptr<const json::Document>> documents;
  const auto itemsIn = [&](const std::string& text, const std::string& file) -> std::optional<Collection> {
    documents.push_back(json::Document::parse(text, file, issues));
    if (!documents.back()) return std::nullopt;
    return expression::itemsOf(documents.back()->root(), model);
  };
  bool isReadable = true;
  for (const GivenVariable& variable : request.variables) {
    std::optional<Collection> value;
    if (variable.isResource) {
      value = itemsIn(variable.text, variable.file);
    } else if (const auto written =
                   expression::Expression::parse(variable.text, "%" + variable.name, issues)) {
      value = written->evaluate({}, environment, issues);
    }
    if (!value) isReadable = false;
    environment.variables[variable.name] = value.value_or(Collection{});
  }
  Collection focus;
  if (request.resource) {
    auto items = itemsIn(*request.resource, request.file);
    if (!items) isReadable = false;
    focus = std::move(items).value_or(Collection{});
  }
  const auto parsed = expression::Expression::parse(request.expression, "expression", issues);
  if (!parsed || !isReadable) return refused();
  const auto result = parsed->evaluate(focus, environment, issues);
  for (const expression::Traced& entry : traced) {
    std::string line = "trace " + entry.name + ":";
    for (const Item& item : entry.items) line += " " + item.toText().value_or("{…}");
    traces.push_back(std::move(line));
  }
  if (!result) return refused();
  return asJson(*result);
}

}  // namespace stile::application
