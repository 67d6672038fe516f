// One whole person as a file: title, source, date, answers, clearances, expectations.
#pragma once

#include <string>
#include <vector>

#include "../support/content.h"
#include "application/screen_client.h"
#include "base/date.h"

namespace stile::test {

class CaseFile {
 public:
  explicit CaseFile(const std::filesystem::path& path)
      : folder_(path.parent_path()), name_(path.filename().string()), document_(parsed(textOf(path), path.filename().string())) {}

  const std::string& name() const { return name_; }
  std::string title() const { return root().find("title")->string(); }
  std::string source() const { return root().find("source")->string(); }
  base::Date date() const {
    const auto date = root().find("date");
    return date ? *base::Date::parse(date->string()) : *base::Date::of(2026, 11, 25);
  }
  json::Node root() const { return document_->root(); }
  json::Node expect() const { return *root().find("expect"); }

  /// Facts or responses, clearance replies, and files named beside the case, as texts of their own.
  std::vector<application::Input> inputs() const {
    std::vector<application::Input> all;
    for (const char* key : {"facts", "response", "clearances"})
      if (const auto node = root().find(key)) all.push_back({name_ + "/" + key, textBetween(*node)});
    if (const auto files = root().find("files"))
      for (std::size_t i = 0; i < files->size(); ++i)
        all.push_back({files->at(i).string(), textOf(folder_ / files->at(i).string())});
    return all;
  }

 private:
  std::string textBetween(json::Node node) const {
    return document_->text().substr(node.offset(), node.endOffset() - node.offset());
  }

  std::filesystem::path folder_;
  std::string name_;
  std::shared_ptr<const json::Document> document_;
};

}  // namespace stile::test
