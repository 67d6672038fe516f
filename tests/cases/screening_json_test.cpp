// The JSON of a screening against its schema, for every whole person. The validator knows the part
// of JSON Schema (2020-12) that the schema uses, and refuses a keyword it does not know.
#include <catch2/catch.hpp>
#include <set>

#include "case_file.h"
#include "reply_slip.h"
#include "exchange/screening_json.h"

using namespace stile;
using json::Node;

namespace {

class Schema {
 public:
  explicit Schema(const std::string& file)
      : document_(test::parsed(test::textOf(std::filesystem::path(STILE_SOURCE_DIR) / "src/exchange" / file), file)), root_(document_->root()) {}

  void check(Node value) { check(value, root_, ""); }

  void check(Node value, Node schema, const std::string& path) {
    static const std::set<std::string> known{"$schema", "$id", "$defs", "$ref", "title", "description", "type", "enum", "const",
                                             "properties", "required", "additionalProperties", "items"};
    for (std::size_t i = 0; i < schema.size(); ++i)
      if (known.count(schema.keyAt(i)) == 0) FAIL("the schema uses " << schema.keyAt(i));
    if (const auto reference = schema.find("$ref")) follow(value, reference->string(), path);
    if (const auto type = schema.find("type")) checkType(value, type->string(), path);
    if (const auto words = schema.find("enum")) checkEnum(value, *words, path);
    if (const auto constant = schema.find("const"); constant && value.numberText() != constant->numberText()) wrong(path, "constant");
    if (const auto items = schema.find("items"))
      for (std::size_t i = 0; i < value.size(); ++i) check(value.at(i), *items, path + "/" + std::to_string(i));
    if (value.isObject()) checkMembers(value, schema, path);
  }

  std::vector<std::string> problems;

 private:
  /// A definition of this file, or another file beside it.
  void follow(Node value, const std::string& reference, const std::string& path) {
    if (reference.starts_with("#/$defs/")) return check(value, *root_.find("$defs")->find(reference.substr(8)), path);
    Schema other(reference);
    other.check(value, other.root_, path);
    problems.insert(problems.end(), other.problems.begin(), other.problems.end());
  }

  void wrong(const std::string& path, const std::string& what) { problems.push_back(path + ": " + what); }

  void checkType(Node value, const std::string& type, const std::string& path) {
    const bool fits = (type == "object" && value.isObject()) || (type == "array" && value.isArray()) ||
                      (type == "string" && value.isString()) || (type == "number" && value.isNumber()) ||
                      (type == "boolean" && value.isBoolean());
    if (!fits) wrong(path, "is no " + type);
  }

  void checkEnum(Node value, Node words, const std::string& path) {
    for (std::size_t i = 0; i < words.size(); ++i)
      if (value.isString() && words.at(i).string() == value.string()) return;
    wrong(path, "none of the words: " + (value.isString() ? value.string() : ""));
  }

  void checkMembers(Node value, Node schema, const std::string& path) {
    const auto properties = schema.find("properties");
    const auto others = schema.find("additionalProperties");
    for (std::size_t i = 0; i < value.size(); ++i) {
      const std::string& key = value.keyAt(i);
      const auto own = properties ? properties->find(key) : std::nullopt;
      if (own)
        check(value.at(i), *own, path + "/" + key);
      else if (others && others->isObject())
        check(value.at(i), *others, path + "/" + key);
      else if (others && !others->boolean())
        wrong(path + "/" + key, "is not in the schema");
    }
    const auto required = schema.find("required");
    for (std::size_t i = 0; required && i < required->size(); ++i)
      if (!value.find(required->at(i).string())) wrong(path + "/" + required->at(i).string(), "is missing");
  }

  std::shared_ptr<const json::Document> document_;
  Node root_;
};

}  // namespace

TEST_CASE("What a screening prints as JSON fits its published schema, for every whole person") {
  int checked = 0;
  for (const auto& path : test::jsonFiles("cases")) {
    const test::CaseFile file(path);
    base::Issues issues;
    const auto screened = application::screenClient(test::content(), test::inputsWithReplies(file), file.date(), issues);
    REQUIRE(screened.ok());
    const auto output = test::parsed(exchange::toJson(screened.value(), test::content(), issues), path.filename().string());
    Schema validator("screening.schema.json");
    validator.check(output->root());
    std::string told;
    for (std::size_t i = 0; i < validator.problems.size() && i < 8; ++i) told += validator.problems[i] + "\n";
    INFO(path.filename().string() << "\n" << told);
    CHECK(validator.problems.empty());
    ++checked;
  }
  CHECK(checked >= 25);
}

TEST_CASE("The exported plan says in which form each line is: place, easing, share and their sentences") {
  int eased = 0, smaller = 0;
  for (const auto& path : test::jsonFiles("cases")) {
    const test::CaseFile file(path);
    base::Issues issues;
    const auto screened =
        application::screenClient(test::content(), test::inputsWithReplies(file), file.date(), issues);
    REQUIRE(screened.ok());
    if (!screened.value().plan) continue;
    const auto output =
        test::parsed(exchange::toJson(screened.value(), test::content(), issues), path.filename().string());
    const Node lines = *output->root().find("plan")->find("lines");
    for (std::size_t i = 0; i < lines.size(); ++i) {
      const plan::Line& line = screened.value().plan->lines[i];
      INFO(path.filename().string() << " " << line.exercise->id);
      const auto form = lines.at(i).find("eased"), share = lines.at(i).find("smaller");
      REQUIRE(form.has_value() == (line.form > 0));
      REQUIRE(share.has_value() == (line.percent < 100));
      if (form) {
        const plan::Easing& easing = line.exercise->easings[line.form - 1];
        CHECK(form->find("form")->integer() == static_cast<long long>(line.form));
        CHECK(form->find("clinician")->string() == easing.sayClinician);
        CHECK(form->find("client")->string() == easing.sayClient);
        ++eased;
      }
      if (share) {
        CHECK(share->find("percent")->integer() == line.percent);
        CHECK(line.changed.find(share->find("client")->string()) != std::string::npos);
        ++smaller;
      }
    }
  }
  CHECK(eased > 0);
  CHECK(smaller > 0);
}

TEST_CASE("The schema test notices a member that is missing, misspelt or of the wrong kind") {
  const auto output = test::parsed(R"({"format": 1, "action": "soon", "settled": "yes", "extra": 1})", "output");
  Schema validator("screening.schema.json");
  validator.check(output->root());
  const std::set<std::string> found(validator.problems.begin(), validator.problems.end());
  CHECK(found.count("/action: none of the words: soon") == 1);
  CHECK(found.count("/settled: is no boolean") == 1);
  CHECK(found.count("/extra: is not in the schema") == 1);
  CHECK(found.count("/facts: is missing") == 1);
}
