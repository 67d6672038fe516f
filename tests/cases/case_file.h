// One whole person as a file: title, source, date, answers, clearances, expectations.
//
// A case may stand on a base, the complete answers of somebody without a finding
// (tests/cases/base/<name>.json): `facts` then holds only what differs, and `without` names the
// answers that nobody gave. The base's `gateways` name the question before a question: a case that
// answers the second says yes to the first.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "../support/content.h"
#include "application/screen_client.h"
#include "base/date.h"
#include "json/document.h"

namespace stile::test {

class CaseFile {
 public:
  explicit CaseFile(const std::filesystem::path& path)
      : folder_(path.parent_path()),
        name_(path.filename().string()),
        document_(parsed(textOf(path), path.filename().string())) {}

  const std::string& name() const { return name_; }
  std::string title() const { return root().find("title")->string(); }
  std::string source() const { return root().find("source")->string(); }
  base::Date date() const {
    const auto date = root().find("date");
    return date ? *base::Date::parse(date->string()) : *base::Date::of(2026, 11, 25);
  }
  json::Node root() const { return document_->root(); }
  json::Node expect() const { return *root().find("expect"); }

  /// The plain facts: those of the base that the case neither changes nor leaves out, then its own.
  /// Members of `changes` (an object, of a case that was seen before) come last and win over both.
  std::string facts(const json::Node* changes = nullptr) const {
    std::set<std::string> written;
    json::Writer writer;
    writer.beginObject();
    if (changes != nullptr) copyMembers(writer, *changes, written);
    if (const auto own = root().find("facts")) copyMembers(writer, *own, written);
    if (const auto left = root().find("without"))
      for (std::size_t i = 0; i < left->size(); ++i) written.insert(left->at(i).string());
    if (const auto base = root().find("base")) {
      const auto path = folder_ / "base" / (base->string() + ".json");
      const auto whole = parsed(textOf(path), path.filename().string());
      openGateways(writer, whole->root(), written);
      copyMembers(writer, *whole->root().find("facts"), written);
    }
    writer.endObject();
    return writer.text();
  }

  /// Facts or responses, clearance replies, and files named beside the case, as texts of their own.
  std::vector<application::Input> inputs() const {
    std::vector<application::Input> all;
    if (root().find("facts") || root().find("base")) all.push_back({name_ + "/facts", facts()});
    for (const char* key : {"response", "clearances"})
      if (const auto node = root().find(key)) all.push_back({name_ + "/" + key, textBetween(*node)});
    if (const auto files = root().find("files"))
      for (std::size_t i = 0; i < files->size(); ++i)
        all.push_back({files->at(i).string(), textOf(folder_ / files->at(i).string())});
    return all;
  }

 private:
  static void copyMembers(json::Writer& writer, json::Node from, std::set<std::string>& written) {
    for (std::size_t i = 0; i < from.size(); ++i)
      if (written.insert(from.keyAt(i)).second) writer.key(from.keyAt(i)).copy(from.at(i));
  }

  /// Who answers a question that the base's person is not asked, said yes to the one before it.
  static void openGateways(json::Writer& writer, json::Node base, std::set<std::string>& written) {
    const auto gateways = base.find("gateways");
    for (std::size_t i = 0; gateways && i < gateways->size(); ++i) {
      if (written.count(gateways->keyAt(i)) == 0) continue;
      const std::string gateway = gateways->at(i).string();
      if (written.insert(gateway).second) writer.key(gateway).boolean(true);
    }
  }

  std::string textBetween(json::Node node) const {
    return document_->text().substr(node.offset(), node.endOffset() - node.offset());
  }

  std::filesystem::path folder_;
  std::string name_;
  std::shared_ptr<const json::Document> document_;
};

}  // namespace stile::test
