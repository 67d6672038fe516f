#include "drawing/shape.h"

namespace stile::drawing {
namespace {

void collect(const std::vector<Shape>& shapes, std::vector<TextRun>& runs) {
  for (const Shape& shape : shapes) {
    if (const auto* run = std::get_if<TextRun>(&shape.form)) runs.push_back(*run);
    if (const auto* group = std::get_if<Group>(&shape.form)) collect(group->shapes, runs);
  }
}

const Group* find(const std::vector<Shape>& shapes, const std::string& id) {
  for (const Shape& shape : shapes) {
    const auto* group = std::get_if<Group>(&shape.form);
    if (group == nullptr) continue;
    if (group->id == id) return group;
    if (const Group* inner = find(group->shapes, id)) return inner;
  }
  return nullptr;
}

}  // namespace

std::vector<TextRun> textRunsOf(const Drawing& drawing) {
  std::vector<TextRun> runs;
  collect(drawing.shapes, runs);
  return runs;
}

const Group* findGroup(const Drawing& drawing, const std::string& id) {
  return find(drawing.shapes, id);
}

}  // namespace stile::drawing
