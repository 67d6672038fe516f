#include "plan/easing_words.h"

#include <algorithm>

#include "json/document.h"
#include "plan/content_reading.h"

namespace stile::plan {
namespace {

Landmarks readLandmarks(const json::Node& node, ContentReading& content) {
  json::ObjectReader reader(node, "easing", content.issues());
  Landmarks landmarks;
  landmarks.place = node.place();
  landmarks.id = reader.requireString("id");
  reader.setSubject(landmarks.id);
  landmarks.movement = reader.string("movement");
  for (const json::Node& each : reader.array("rows")) {
    json::ObjectReader row(each, landmarks.id, content.issues());
    landmarks.rows.push_back({content.requireInteger(row, "from"), row.requireString("client")});
    row.finish();
  }
  content.sourcesOf(reader);
  reader.finish();
  const auto& rows = landmarks.rows;
  const auto isNotAbove = [](const Landmark& a, const Landmark& b) { return b.from <= a.from; };
  if (rows.empty() || rows.front().from != 0 ||
      std::adjacent_find(rows.begin(), rows.end(), isNotAbove) != rows.end())
    reader.issue(node, "the rows must begin at 0 and rise");
  if (rows.empty()) landmarks.rows.push_back({});
  return landmarks;
}

}  // namespace

const std::string& Landmarks::at(int value) const {
  const auto above = std::find_if(std::next(rows.begin()), rows.end(),
                                  [&](const Landmark& row) { return row.from > value; });
  return std::prev(above)->client;
}

const Landmarks* EasingWords::find(std::string_view id) const {
  const auto at =
      std::find_if(landmarks.begin(), landmarks.end(), [&](const Landmarks& each) { return each.id == id; });
  return at == landmarks.end() ? nullptr : &*at;
}

EasingWords readEasingWords(const std::string& text, const std::string& file, ContentReading& content) {
  EasingWords words;
  const auto document = json::Document::parse(text, file, content.issues());
  if (!document) return words;
  json::ObjectReader root(document->root(), "easing", content.issues());
  words.clinician = root.requireString("clinician");
  words.angle = root.requireString("angle");
  for (const json::Node& node : root.array("landmarks")) {
    words.landmarks.push_back(readLandmarks(node, content));
    if (words.find(words.landmarks.back().id) != &words.landmarks.back())
      content.issues().error(node.place(), words.landmarks.back().id, "these landmarks stand twice",
                             "give one of them another id");
  }
  if (const auto node = root.require("reviewed")) {
    json::ObjectReader reviewed(*node, "reviewed", content.issues());
    reviewed.requireString("date");
    reviewed.requireString("by");
    reviewed.boolean("licensed");
    reviewed.finish();
  }
  root.finish();
  return words;
}

}  // namespace stile::plan
