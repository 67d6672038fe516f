// Where an expression stands when it is a string inside a JSON document.
#pragma once

#include "expression/syntax.h"
#include "json/document.h"

namespace stile::expression {

/// Places inside the decoded string of a JSON node.
class JsonOrigin : public Origin {
 public:
  explicit JsonOrigin(json::Node node) : node_(node) {}
  base::Place placeOf(std::size_t offset) const override { return node_.placeInString(offset); }

 private:
  json::Node node_;
};

}  // namespace stile::expression
