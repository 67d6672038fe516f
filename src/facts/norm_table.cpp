#include "facts/norm_table.h"

#include <set>
#include <utility>

#include "json/reader.h"

namespace stile::facts {
namespace {

using base::Rational;
using expression::Value;
using expression::ValueKind;

constexpr int kOldestAge = 150;

std::optional<NormRow> readRow(json::Node node, const NormTable& table, base::Issues& issues) {
  json::ObjectReader reader(node, table.id, issues);
  NormRow row;
  row.sex = reader.requireString("sex");
  const auto ages = reader.require("ages");
  const auto below = reader.require("below") ? reader.number("below") : std::nullopt;
  row.above = reader.number("above");
  reader.finish();
  if (!ages || !below || row.sex.empty()) return std::nullopt;
  row.below = *below;
  const bool isPair =
      ages->isArray() && ages->size() == 2 && ages->at(0).isNumber() && ages->at(1).isNumber();
  const auto from = isPair ? ages->at(0).integer() : std::nullopt;
  const auto to = isPair ? ages->at(1).integer() : std::nullopt;
  if (!from || !to || *from < 0 || *to < *from || *to > kOldestAge) {
    issues.error(ages->place(), table.id, "\"ages\" must be two whole numbers of years, the younger first",
                 "write for example [60, 64]");
    return std::nullopt;
  }
  row.ageFrom = static_cast<int>(*from);
  row.ageTo = static_cast<int>(*to);
  if (row.above && (table.higherIsBetter ? *row.above < row.below : *row.above > row.below)) {
    issues.error(node.place(), table.id, "the cut-offs of this row stand in the wrong order",
                 "\"below\" is the worse end; see also \"higherIsBetter\"");
    return std::nullopt;
  }
  return row;
}

void refuseOverlap(const NormTable& table, const NormRow& row, json::Node node, base::Issues& issues) {
  for (const NormRow& other : table.rows) {
    if (other.sex == row.sex && row.ageFrom <= other.ageTo && other.ageFrom <= row.ageTo) {
      issues.error(node.place(), table.id,
                   "this row shares ages with the row from " + std::to_string(other.ageFrom) + " to " +
                       std::to_string(other.ageTo),
                   "give every age one row");
      return;
    }
  }
}

/// -1 below, 0 within, 1 above.
int outcomeOf(const NormTable& table, const NormRow& row, const Rational& result) {
  if (table.higherIsBetter ? result < row.below : result > row.below) return -1;
  if (table.equalIsBelow && result == row.below) return -1;
  if (row.above && (table.higherIsBetter ? result > *row.above : result < *row.above)) return 1;
  return 0;
}

/// The outcome past every number at the good end (true) or the bad end.
int outcomeAtEnd(const NormRow& row, bool good) {
  if (!good) return -1;
  return row.above ? 1 : 0;
}

const char* codeOf(int outcome) {
  return outcome < 0 ? kNormBelow : outcome > 0 ? kNormAbove : kNormWithin;
}

std::set<std::string> possibleSexes(const NormTable& table, const Value& sex) {
  if (sex.text) return {*sex.text};
  std::set<std::string> sexes;
  for (const NormRow& row : table.rows) sexes.insert(row.sex);
  return sexes;
}

const NormRow* rowFor(const NormTable& table, const std::string& sex, std::int64_t age) {
  for (const NormRow& row : table.rows) {
    if (row.sex == sex && row.ageFrom <= age && age <= row.ageTo) return &row;
  }
  return nullptr;
}

}  // namespace

std::optional<NormTable> readNormTable(json::Node root, base::Issues& issues) {
  json::ObjectReader reader(root, "norm table", issues);
  NormTable table;
  table.id = reader.requireString("id");
  if (!table.id.empty()) reader.setSubject(table.id);
  table.title = reader.requireString("title");
  const std::string unitText = reader.requireString("unit");
  table.higherIsBetter = reader.boolean("higherIsBetter").value_or(true);
  table.equalIsBelow = reader.boolean("equalIsBelow").value_or(false);
  table.sources = reader.strings("sources");
  if (!reader.find("sources") || table.sources.empty()) {
    reader.issue(root, "the norm table names no source", "list the ids of its sources in \"sources\"");
  }
  if (!unitText.empty()) {
    if (const auto unit = base::parseUnit(unitText)) {
      table.unit = *unit;
    } else {
      reader.issue(*reader.find("unit"), "\"" + unitText + "\" is no unit known here", "write a UCUM unit");
    }
  }
  for (const json::Node& node : reader.array("rows")) {
    auto row = readRow(node, table, issues);
    if (!row) continue;
    refuseOverlap(table, *row, node, issues);
    table.rows.push_back(std::move(*row));
  }
  if (reader.require("rows") && table.rows.empty())
    reader.issue(root, "the norm table has no usable row", "add rows");
  reader.finish();
  if (table.id.empty()) return std::nullopt;
  return table;
}

Value normOutcome(const NormTable& table, const Value& measured, const base::Unit& measuredUnit,
                  const Value& sex, const Value& age, base::Analyte analyte) {
  if (measured.notApplicable) return Value::ofNotApplicable(ValueKind::Code);
  const Value unknown = Value::unknown(ValueKind::Code);
  if (sex.notApplicable || age.notApplicable || measured.isUnknown()) return unknown;
  // An age without a bound may be one the table says nothing about.
  if (!age.low || !age.high || *age.high > Rational(kOldestAge) || *age.low < Rational(0)) return unknown;
  std::optional<Rational> low = measured.low;
  std::optional<Rational> high = measured.high;
  for (auto* bound : {&low, &high}) {
    if (!*bound) continue;
    *bound = base::convert(**bound, measuredUnit, table.unit, analyte);
    if (!*bound) return unknown;
  }
  std::optional<int> agreed;
  const std::int64_t youngest = age.low->isWhole() ? age.low->floor() : age.low->floor() + 1;
  for (const std::string& possibleSex : possibleSexes(table, sex)) {
    for (std::int64_t years = youngest; years <= age.high->floor(); ++years) {
      const NormRow* row = rowFor(table, possibleSex, years);
      if (!row) return unknown;
      const int atLow = low ? outcomeOf(table, *row, *low) : outcomeAtEnd(*row, !table.higherIsBetter);
      const int atHigh = high ? outcomeOf(table, *row, *high) : outcomeAtEnd(*row, table.higherIsBetter);
      if (atLow != atHigh || (agreed && *agreed != atLow)) return unknown;
      agreed = atLow;
    }
  }
  return agreed ? Value::code(codeOf(*agreed)) : unknown;
}

}  // namespace stile::facts
