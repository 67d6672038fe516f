#include "json/node_path.h"

#include <catch2/catch.hpp>

using namespace stile;

TEST_CASE("Every value and every name has the path that leads to it") {
  const std::string text = "{\"resourceType\": \"Thing\",\n \"a\": [1, {\"b\": \"x\"},\n  2],\n \"c\": {}}";
  base::Issues issues;
  const auto document = json::Document::parse(text, "t.json", issues);
  REQUIRE(document);
  const json::Node root = document->root();
  const json::Node a = *root.find("a");
  CHECK(json::pathAt(root, root.place()) == "Thing");
  CHECK(json::pathAt(root, a.place()) == "Thing.a");
  CHECK(json::pathAt(root, a.at(0).place()) == "Thing.a[0]");
  CHECK(json::pathAt(root, a.at(1).place()) == "Thing.a[1]");
  CHECK(json::pathAt(root, a.at(1).find("b")->place()) == "Thing.a[1].b");
  CHECK(json::pathAt(root, a.at(1).keyPlaceAt(0)) == "Thing.a[1].b");
  CHECK(json::pathAt(root, a.at(2).place()) == "Thing.a[2]");
  CHECK(json::pathAt(root, root.find("c")->place()) == "Thing.c");
}

TEST_CASE("A value without a resourceType begins its path with a dollar sign") {
  base::Issues issues;
  const auto document = json::Document::parse("[3, 4]", "t.json", issues);
  REQUIRE(document);
  CHECK(json::pathAt(document->root(), document->root().at(1).place()) == "$[1]");
}
