#include "expression/type_model.h"

#include <algorithm>
#include <utility>

#include "expression/r4_types.h"

namespace stile::expression {
namespace {

constexpr std::string_view kSystem = "System.";

}  // namespace

bool ModelType::isKindOf(const ModelType& other) const {
  for (const ModelType* type = this; type; type = type->base) {
    if (type == &other) return true;
  }
  return false;
}

const ModelElement* ModelType::element(std::string_view elementName) const {
  for (const ModelType* type = this; type; type = type->base) {
    for (const ModelElement& candidate : type->elements) {
      if (candidate.name == elementName) return &candidate;
    }
  }
  return nullptr;
}

const ModelType* TypeModel::find(std::string_view path) const {
  const auto found = types_.find(path);
  return found == types_.end() ? nullptr : found->second.get();
}

/// Reads the lines. Elements name their types by path, so they are resolved once all are known.
class TypeModel::Reader {
 public:
  Reader(TypeModel& model, std::string_view text) : model_(model), rest_(text) {}

  bool run() {
    while (!rest_.empty()) {
      const std::size_t end = std::min(rest_.find('\n'), rest_.size());
      line_ = rest_.substr(0, end);
      rest_.remove_prefix(std::min(end + 1, rest_.size()));
      if (line_.empty() || line_[0] == '#') continue;
      if (!type()) return false;
    }
    return resolve();
  }

 private:
  struct Pending {
    ModelType* type;
    std::size_t element;
    std::string typeName;
  };

  std::string word(std::string_view ends) {
    const std::size_t end = std::min(line_.find_first_of(ends), line_.size());
    std::string result(line_.substr(0, end));
    line_.remove_prefix(end);
    return result;
  }
  bool take(char c) {
    if (!line_.starts_with(c)) return false;
    line_.remove_prefix(1);
    return true;
  }

  ModelType& add(const std::string& path, std::string name) {
    auto& place = model_.types_[path];
    place = std::make_unique<ModelType>();
    place->path = path;
    place->capitalised = name;
    char& first = place->capitalised.front();
    if (first >= 'a' && first <= 'z') first = static_cast<char>(first - 'a' + 'A');
    place->name = std::move(name);
    return *place;
  }

  bool type() {
    const std::string kind = word(" ");
    if (!take(' ')) return false;
    const std::string name = word(":");
    if (!take(':') || name.empty()) return false;
    const std::string base = word(" ");
    ModelType& added = add(name, name.starts_with(kSystem) ? name.substr(kSystem.size()) : name);
    added.isSystem = kind == "system";
    added.isPrimitive = kind == "primitive";
    added.isResource = kind == "resource";
    if (!base.empty()) bases_.emplace_back(&added, base);
    if (!added.isResource && base != "") dataTypes_.push_back(&added);
    while (take(' ')) {
      if (!element(added)) return false;
    }
    return line_.empty();
  }

  bool element(ModelType& owner) {
    std::string name = word(":[{");
    const std::size_t index = owner.elements.size();
    owner.elements.push_back({name, false, {}});
    if (take(':')) {
      pending_.push_back({&owner, index, word(" }")});
      return true;
    }
    if (take('[')) {
      owner.elements[index].isChoice = true;
      do {
        pending_.push_back({&owner, index, word("|]")});
      } while (take('|'));
      return take(']');
    }
    if (!take('{')) return false;
    ModelType& group = add(owner.path + "." + name, "BackboneElement");
    bases_.emplace_back(&group, "BackboneElement");
    owner.elements[index].types.push_back(&group);
    do {
      if (!element(group)) return false;
    } while (take(' '));
    return take('}');
  }

  bool resolve() {
    for (const auto& [derived, base] : bases_) {
      derived->base = model_.find(base);
      if (!derived->base) return false;
    }
    for (const Pending& pending : pending_) {
      auto& types = pending.type->elements[pending.element].types;
      if (pending.typeName == "*") {
        types = dataTypes_;
        continue;
      }
      const ModelType* found = model_.find(pending.typeName);
      if (!found) return false;
      types.push_back(found);
    }
    return true;
  }

  TypeModel& model_;
  std::string_view rest_;
  std::string_view line_;
  std::vector<std::pair<ModelType*, std::string>> bases_;
  std::vector<Pending> pending_;
  std::vector<const ModelType*> dataTypes_;
};

std::shared_ptr<const TypeModel> TypeModel::parse(std::string_view text) {
  std::shared_ptr<TypeModel> model(new TypeModel);
  model->space_ = "FHIR";
  if (!Reader(*model, text).run()) return nullptr;
  return model;
}

const TypeModel& r4Model() {
  static const std::shared_ptr<const TypeModel> model = TypeModel::parse(kR4Types);
  return *model;
}

}  // namespace stile::expression
