// The medicine names: what people write finds its classes, and names stand in the classes that the
// stems of their international names say (name_stems.json).
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "../support/content.h"

using namespace stile;

namespace {

std::shared_ptr<const json::Document> nameFile() {
  return test::parsed(test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "tests/content/name_stems.json"),
                      "name_stems.json");
}

const facts::MedicineClasses& medicines() {
  return test::content().dictionary.medicines();
}

std::vector<std::string> stringsOf(const std::optional<json::Node>& node) {
  std::vector<std::string> strings;
  for (std::size_t i = 0; node && i < node->size(); ++i) strings.push_back(node->at(i).string());
  return strings;
}

bool isIn(const std::vector<std::string>& strings, const std::string& one) {
  return std::find(strings.begin(), strings.end(), one) != strings.end();
}

bool hasStem(const std::string& name, const std::string& stem, bool isBeginning) {
  if (name.size() < stem.size()) return false;
  return isBeginning ? name.compare(0, stem.size(), stem) == 0
                     : name.compare(name.size() - stem.size(), stem.size(), stem) == 0;
}

std::vector<std::string> classesOf(const std::vector<int>& indices) {
  std::vector<std::string> ids;
  for (const int index : indices) ids.push_back(medicines().all()[static_cast<std::size_t>(index)].id);
  return ids;
}

/// The classes a name is listed in, whatever its route.
std::vector<std::string> listedIn(const std::string& name) {
  std::vector<std::string> ids;
  for (const auto& one : medicines().all())
    if (isIn(one.names, name)) ids.push_back(one.id);
  return ids;
}

}  // namespace

TEST_CASE("What people write beside a name does not keep it from its classes") {
  const auto document = nameFile();
  const json::Node written = *document->root().find("written");
  for (std::size_t i = 0; i < written.size(); ++i) {
    const json::Node one = written.at(i);
    const std::string text = one.find("text")->string();
    const auto match = medicines().match(text);
    const auto found = classesOf(match.classes);
    INFO(text);
    CHECK(match.isResolved != one.find("unresolved").has_value());
    for (const std::string& id : stringsOf(one.find("in"))) {
      INFO("in " << id);
      CHECK(isIn(found, id));
    }
    for (const std::string& id : stringsOf(one.find("notIn"))) {
      INFO("not in " << id);
      CHECK_FALSE(isIn(found, id));
    }
    for (const std::string& name : stringsOf(one.find("near"))) {
      INFO("near " << name);
      CHECK(isIn(medicines().near(text), name));
    }
  }
}

TEST_CASE("A name whose stem tells its class stands in that class") {
  const auto document = nameFile();
  const json::Node stems = *document->root().find("stems");
  int checked = 0;
  for (std::size_t i = 0; i < stems.size(); ++i) {
    const std::string stem = stems.at(i).find("stem")->string();
    const auto classes = stringsOf(stems.at(i).find("classes"));
    const auto exceptions = stringsOf(stems.at(i).find("except"));
    bool any = false;
    for (const auto& medicineClass : medicines().all()) {
      for (const std::string& name : medicineClass.names) {
        if (!hasStem(name, stem, stems.at(i).find("isBeginning").has_value()) || isIn(exceptions, name))
          continue;
        const auto listed = listedIn(name);
        INFO(name << " has the stem " << stem << " and is not of " << classes.front());
        CHECK(std::any_of(classes.begin(), classes.end(), [&](const auto& id) { return isIn(listed, id); }));
        any = true;
        ++checked;
      }
    }
    INFO("no name with the stem " << stem);
    CHECK(any);
  }
  WARN(stems.size() << " stems, " << checked << " names");
}

TEST_CASE("Every listed name is found under itself") {
  for (const auto& one : medicines().all()) {
    for (const std::string& name : one.names) {
      INFO(name);
      const auto match = medicines().match(name);
      CHECK(match.isResolved);
      std::vector<int> all = match.classes;
      all.insert(all.end(), match.possible.begin(), match.possible.end());
      const auto found = classesOf(all);
      const auto listed = listedIn(name);
      CHECK(std::any_of(listed.begin(), listed.end(), [&](const auto& id) { return isIn(found, id); }));
    }
  }
}
