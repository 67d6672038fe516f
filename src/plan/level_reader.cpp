#include "plan/level_reader.h"

namespace stile::plan {

std::vector<Level> readLevels(json::ObjectReader& root, ContentReading& content) {
  std::vector<Level> list;
  for (const json::Node& node : root.array("levels")) {
    json::ObjectReader reader(node, "levels", content.issues());
    Level level;
    level.dose.level = reader.requireString("id");
    reader.setSubject("level " + level.dose.level);
    level.title = reader.requireString("title");
    level.because = reader.requireString("because");
    level.when = content.program(reader, "when", expression::Type{});
    level.keepsModerate = reader.boolean("keepsModerate").value_or(false);
    level.staysSame = reader.boolean("staysSame").value_or(false);
    if (const auto rungs = reader.require("rung")) {
      json::ObjectReader both(*rungs, reader.subject(), content.issues());
      level.rung.aerobic = content.rung(both, "aerobic").value_or(limits::Rung::Light);
      level.rung.strength = content.rung(both, "strength").value_or(limits::Rung::Light);
      both.finish();
    }
    if (const auto lines = reader.require("lines")) {
      json::ObjectReader each(*lines, reader.subject(), content.issues());
      for (Section where : kSections) level.lines[where] = content.requireInteger(each, idOf(where));
      each.finish();
    }
    if (const auto amounts = reader.require("amounts")) {
      json::ObjectReader each(*amounts, reader.subject(), content.issues());
      for (std::string_view name : kAmounts)
        level.dose.amounts[std::string(name)] = content.requireNumber(each, name);
      each.finish();
    }
    level.sources = content.sourcesOf(reader);
    reader.finish();
    list.push_back(std::move(level));
  }
  return list;
}

}  // namespace stile::plan
