#include "json/document.h"

#include "json/node_data.h"
#include "json/syntax_check.h"

namespace stile::json {

Document::Document() = default;
Document::~Document() = default;

std::shared_ptr<const Document> Document::parse(std::string text, std::string file, base::Issues& issues) {
  if (!checkSyntax(text, file, issues)) return nullptr;
  const std::shared_ptr<Document> document(new Document());
  document->text_ = std::move(text);
  document->file_ = std::move(file);
  base::Issues found;
  Node::Data::Builder builder(document->text_, document->file_, found);
  document->root_ = std::make_unique<Node::Data>(builder.build());
  issues.append(found);
  if (found.hasErrors()) return nullptr;
  return document;
}

Node Document::root() const {
  return Node(this, root_.get());
}

}  // namespace stile::json
