// JSON texts -> assembled forms, with all issues collected. For src/questionnaire only.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "questionnaire/form.h"

namespace stile::questionnaire {

class FormLoader {
 public:
  /// `files`: file name (a folder before it is allowed) -> JSON text.
  FormLoader(const std::map<std::string, std::string>& files, base::Issues& issues);

  /// Root forms in the order of the file names, modules taken in. A form with issues is in the list
  /// as far as it could be read, so that later checks can add theirs; nobody uses it then.
  std::vector<std::shared_ptr<const Form>> load();

 private:
  /// One file: a Questionnaire as written, before anything is taken in.
  struct Source {
    std::shared_ptr<const json::Document> document;
    std::string name, url, version, title;
    bool isRoot = true;
    bool isModule = false;
    bool isTakenIn = false;  ///< some form used it
    std::vector<json::Node> items;
    base::Place place;
  };
  /// A form on its way.
  struct Assembly {
    std::shared_ptr<Form> form;
    std::vector<const Source*> open;                          ///< modules around the current place
    std::vector<const Source*> done;                          ///< everything taken in so far
    std::map<std::string, base::Place, std::less<>> linkIds;  ///< also of helps and places of modules
  };
  using Items = std::vector<std::unique_ptr<Item>>;

  void readSource(const std::string& file, const std::string& text);
  void readExpectation(json::Node root, Source& source);
  void checkUrls();
  Source* sourceOf(const std::string& canonical);
  std::shared_ptr<const Form> assemble(Source& source);
  void addItems(const std::vector<json::Node>& nodes, Item* parent, Items& into, Assembly& assembly);
  void addItem(json::Node node, Item* parent, Items& into, Assembly& assembly);
  void takeIn(const std::string& canonical, const Item& placeholder, Item* parent, Items& into,
              Assembly& assembly);
  bool isNewLinkId(const Item& item, Assembly& assembly);

  const std::map<std::string, std::string>& files_;
  base::Issues& issues_;
  base::Issues found_;  ///< may hold an issue twice: once per form that takes a module in
  std::vector<std::unique_ptr<Source>> sources_;
};

}  // namespace stile::questionnaire
