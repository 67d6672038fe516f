// Puts the dictionary together: every id first, then the expressions that read them.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "facts/definition_reader.h"
#include "facts/dictionary.h"
#include "json/document.h"

namespace stile::facts {

/// Loads one dictionary; used once. All issues of all files are collected.
class DictionaryLoader {
 public:
  DictionaryLoader(const std::map<std::string, std::string>& files, base::Issues& issues)
      : files_(files), issues_(issues) {}

  Dictionary load();

 private:
  using DocumentPtr = std::shared_ptr<const json::Document>;
  DocumentPtr open(const std::string& path);
  void readFactFile(const std::string& path);
  void readGroup(json::Node node, const std::string& topic);
  void readPolicies(const std::string& path);
  void readNorm(const std::string& path);

  /// Adds an entry under its id; -1 and an issue when there is one already.
  int add(Definition definition);
  void addOptionFacts(int choice);
  void placeInGroups();
  void readDerivations();
  void checkRetired();
  void markSeries();

  const std::map<std::string, std::string>& files_;
  base::Issues& issues_;
  Dictionary dictionary_;
  /// What is read in the second pass, with its slot; the documents it points into.
  std::vector<std::pair<int, DefinitionParts>> parts_;
  std::vector<DocumentPtr> documents_;
};

}  // namespace stile::facts
