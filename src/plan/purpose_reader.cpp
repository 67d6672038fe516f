#include "plan/purpose_reader.h"

#include <algorithm>

namespace stile::plan {

std::vector<Purpose> readPurposes(json::ObjectReader& root, ContentReading& content) {
  std::vector<Purpose> list;
  for (const json::Node& node : root.array("purposes")) {
    json::ObjectReader reader(node, "purposes", content.issues());
    Purpose purpose;
    purpose.id = reader.requireString("id");
    reader.setSubject(purpose.id);
    purpose.title = reader.requireString("title");
    purpose.priority = content.requireInteger(reader, "priority");
    const auto where = content.section(reader, "section");
    purpose.perPlan = static_cast<int>(reader.integer("perPlan").value_or(1));
    purpose.turnTo = reader.requireString("turnTo");
    purpose.sources = content.sourcesOf(reader);
    reader.finish();
    if (purpose.perPlan < 1 || purpose.perPlan > 5) reader.issue(node, "\"perPlan\" must be 1 to 5");
    if (!where) continue;
    purpose.section = *where;
    const bool isKnown = std::any_of(list.begin(), list.end(), [&](const Purpose& p) { return p.id == purpose.id; });
    if (isKnown) reader.issue(node, "this purpose stands twice", "remove one of the two");
    list.push_back(std::move(purpose));
  }
  std::stable_sort(list.begin(), list.end(), [](const Purpose& a, const Purpose& b) {
    return a.priority != b.priority ? a.priority > b.priority : a.id < b.id;
  });
  return list;
}

}  // namespace stile::plan
