// Any bytes as JSON: reading must not crash, and what was read and written again must read the same.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>

#include "json/document.h"

using namespace stile;

namespace {

void require(bool isTrue) {
  if (!isTrue) std::abort();
}

/// Asks every value for its place and its content.
void visit(json::Node node) {
  require(node.place().line > 0);
  require(node.offset() <= node.endOffset());
  if (node.isNumber()) {
    node.number();
    node.integer();
  }
  if (node.isString()) node.placeInString(node.string().size() / 2);
  for (std::size_t i = 0; i < node.size(); ++i) {
    if (node.isObject()) {
      require(node.keyPlaceAt(i).line > 0);
      require(node.find(node.keyAt(i)).has_value());
    }
    visit(node.at(i));
  }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  base::Issues issues;
  const auto document =
      json::Document::parse(std::string(reinterpret_cast<const char*>(data), size), "fuzz", issues);
  require(document != nullptr || issues.hasErrors());
  for (const base::Issue& issue : issues.all()) require(!base::toText(issue).empty());
  if (!document) return 0;
  visit(document->root());

  json::Writer writer;
  writer.copy(document->root());
  base::Issues again;
  const auto copy = json::Document::parse(writer.text(), "copy", again);
  require(copy != nullptr);
  json::Writer second;
  second.copy(copy->root());
  require(second.text() == writer.text());
  return 0;
}
