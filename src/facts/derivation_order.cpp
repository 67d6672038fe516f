#include "facts/derivation_order.h"

#include <algorithm>
#include <string>

namespace stile::facts {
namespace {

enum class Mark { New, Open, Done, Circular };

class Walk {
 public:
  Walk(const Dictionary& dictionary, base::Issues& issues)
      : dictionary_(dictionary),
        issues_(issues),
        marks_(static_cast<std::size_t>(dictionary.size()), Mark::New) {}

  std::vector<int> order() {
    for (int slot = 0; slot < dictionary_.size(); ++slot) visit(slot);
    return std::move(order_);
  }

 private:
  Mark& markOf(int slot) { return marks_[static_cast<std::size_t>(slot)]; }

  void visit(int slot) {
    const Definition& definition = dictionary_.at(slot);
    if (!definition.isDerived() || markOf(slot) == Mark::Done || markOf(slot) == Mark::Circular) return;
    if (markOf(slot) == Mark::Open) {
      reportCircle(slot);
      return;
    }
    markOf(slot) = Mark::Open;
    path_.push_back(slot);
    for (const int read : slotsReadBy(definition)) visit(read);
    path_.pop_back();
    if (markOf(slot) == Mark::Circular) return;
    markOf(slot) = Mark::Done;
    order_.push_back(slot);
  }

  void reportCircle(int slot) {
    std::string circle;
    for (auto at = std::find(path_.begin(), path_.end(), slot); at != path_.end(); ++at) {
      markOf(*at) = Mark::Circular;
      circle += dictionary_.at(*at).id + " → ";
    }
    const Definition& definition = dictionary_.at(slot);
    issues_.error(definition.place, definition.id,
                  "these facts read each other in a circle: " + circle + definition.id,
                  "let one of them read answers only");
  }

  const Dictionary& dictionary_;
  base::Issues& issues_;
  std::vector<Mark> marks_;
  std::vector<int> path_;
  std::vector<int> order_;
};

}  // namespace

std::vector<int> slotsReadBy(const Definition& definition) {
  const Derivation& derived = definition.derived;
  std::vector<int> slots;
  const auto add = [&](int slot) {
    if (slot >= 0 && std::find(slots.begin(), slots.end(), slot) == slots.end()) slots.push_back(slot);
  };
  if (derived.where) std::for_each(derived.where->slotsRead().begin(), derived.where->slotsRead().end(), add);
  if (derived.program)
    std::for_each(derived.program->slotsRead().begin(), derived.program->slotsRead().end(), add);
  add(derived.of);
  add(derived.lookedUp);
  std::for_each(derived.inputs.begin(), derived.inputs.end(), add);
  return slots;
}

std::vector<int> orderDerived(const Dictionary& dictionary, base::Issues& issues) {
  return Walk(dictionary, issues).order();
}

}  // namespace stile::facts
