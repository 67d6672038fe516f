#include "facts/medicine_class_reader.h"

#include <algorithm>
#include <utility>

#include "base/near_names.h"
#include "json/reader.h"

namespace stile::facts {

MedicineClasses MedicineClassReader::read(json::Node root) {
  json::ObjectReader file(root, "medicine classes", issues_);
  result_.words_ = MedicineWords::read(file.find("words"), file.array("routes"), issues_);
  for (const json::Node& node : file.array("classes")) readClass(node);
  file.require("classes");
  file.finish();
  borrowNames(root);
  for (std::size_t i = 0; i < result_.classes_.size(); ++i) index(static_cast<int>(i));
  return std::move(result_);
}

void MedicineClassReader::readClass(json::Node node) {
  json::ObjectReader reader(node, "medicine class", issues_);
  MedicineClass one;
  one.id = reader.requireString("id");
  if (!one.id.empty()) reader.setSubject(one.id);
  one.title = reader.requireString("title");
  one.namesOf = reader.strings("namesOf");
  for (const std::string& name : reader.strings("names")) {
    const auto words = medicineWordsOf(name);
    std::string normal = joinedWords(words, 0, words.size());
    if (normal.empty() || normal.find('/') != std::string::npos) {
      reader.issue(node, "\"" + name + "\" is no single name",
                   "list every medicine of a combination by itself");
      continue;
    }
    if (std::find(one.names.begin(), one.names.end(), normal) != one.names.end()) {
      reader.issue(node, "\"" + name + "\" is listed twice", "list it once");
      continue;
    }
    one.names.push_back(std::move(normal));
  }
  for (auto [key, routes] : {std::pair("onlyBy", &one.onlyBy), std::pair("notBy", &one.notBy)}) {
    for (const std::string& id : reader.strings(key)) {
      const int route = result_.words_.findRoute(id);
      if (route >= 0)
        routes->push_back(route);
      else
        reader.issue(node, "there is no route \"" + id + "\"", "list it in \"routes\"");
    }
  }
  one.sources = reader.strings("sources");
  if (one.names.empty() && one.namesOf.empty())
    reader.issue(node, "the class has no names", "list generic names in \"names\"");
  if (one.sources.empty())
    reader.issue(node, "the class names no source", "list the ids of its sources in \"sources\"");
  reader.finish();
  if (one.id.empty()) return;
  if (result_.find(one.id) >= 0)
    reader.issue(node, "there is a class \"" + one.id + "\" already", "join the two");
  else
    result_.classes_.push_back(std::move(one));
}

void MedicineClassReader::borrowNames(json::Node root) {
  // The names as written in each class; borrowed ones are not borrowed on.
  const auto own = result_.classes_;
  for (MedicineClass& one : result_.classes_) {
    for (const std::string& id : one.namesOf) {
      const int from = result_.find(id);
      if (from < 0 || own[static_cast<std::size_t>(from)].id == one.id) {
        std::vector<std::string> ids;
        for (const MedicineClass& other : own) ids.push_back(other.id);
        issues_.error(root.place(), one.id, "there is no other class \"" + id + "\" to take names of",
                      base::didYouMean(id, ids, "name a class of this file"));
        continue;
      }
      const auto& more = own[static_cast<std::size_t>(from)].names;
      one.names.insert(one.names.end(), more.begin(), more.end());
    }
  }
}

void MedicineClassReader::index(int classIndex) {
  for (const std::string& name : result_.classes_[static_cast<std::size_t>(classIndex)].names) {
    auto& classes = result_.byName_[name];
    if (classes.empty() || classes.back() != classIndex) classes.push_back(classIndex);
    const auto words = static_cast<std::size_t>(std::count(name.begin(), name.end(), ' ')) + 1;
    result_.longestName_ = std::max(result_.longestName_, words);
  }
}

}  // namespace stile::facts
