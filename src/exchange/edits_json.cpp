#include "exchange/edits_json.h"

#include "json/document.h"
#include "json/reader.h"

namespace stile::exchange {
namespace {

plan::Edit readEdit(json::Node node, base::Issues& issues) {
  json::ObjectReader reader(node, "edit", issues);
  plan::Edit edit;
  int kinds = 0;
  for (const plan::EditKind kind : plan::kEditKinds) {
    const std::string exercise = reader.string(idOf(kind));
    if (exercise.empty()) continue;
    edit.kind = kind;
    edit.exercise = exercise;
    ++kinds;
  }
  if (kinds != 1)
    reader.issue(node, "an edit is one of swap, pin, drop, add", "name one exercise under one of them");
  if (edit.kind == plan::EditKind::Swap && kinds == 1) edit.with = reader.requireString("with");
  edit.overrideReason = reader.string("override");
  reader.finish();
  return edit;
}

}  // namespace

plan::Edits readEdits(const std::string& text, const std::string& name, base::Issues& issues) {
  plan::Edits edits;
  const auto document = json::Document::parse(text, name, issues);
  if (!document) return edits;
  json::ObjectReader reader(document->root(), "edits", issues);
  edits.by = reader.string("by");
  reader.require("edits");
  for (const json::Node& node : reader.array("edits")) edits.list.push_back(readEdit(node, issues));
  reader.finish();
  return edits;
}

void writeEdits(json::Writer& writer, const plan::Edits& edits) {
  writer.beginObject();
  if (!edits.by.empty()) writer.member("by", edits.by);
  writer.key("edits").beginArray();
  for (const auto& edit : edits.list) {
    writer.beginObject().member(idOf(edit.kind), edit.exercise);
    if (!edit.with.empty()) writer.member("with", edit.with);
    if (!edit.overrideReason.empty()) writer.member("override", edit.overrideReason);
    writer.endObject();
  }
  writer.endArray().endObject();
}

std::string editsAsJson(const plan::Edits& edits) {
  json::Writer writer(0);
  writeEdits(writer, edits);
  return writer.text();
}

}  // namespace stile::exchange
