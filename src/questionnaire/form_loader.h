// JSON texts -> assembled forms, with all issues collected. For src/questionnaire only.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "base/issue.h"
#include "json/document.h"
#include "json/reader.h"
#include "questionnaire/extension.h"
#include "questionnaire/form.h"
#include "questionnaire/value_set.h"

namespace stile::questionnaire {

class FormLoader {
 public:
  enum class Rules {
    Standard,    ///< any Questionnaire of FHIR R4
    OwnContent,  ///< forms whose items are facts: checkOwnForm() as well
  };

  /// `files`: file name (a folder before it is allowed) -> JSON text.
  FormLoader(const std::map<std::string, std::string>& files, Rules rules, base::Issues& issues);

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
    ContainedValueSets valueSets;
    std::vector<Expression> variables;
    std::vector<Constraint> constraints;
    std::vector<std::string> launchContext;
    std::string effectiveFrom, effectiveUntil;
    base::Place place;

    explicit Source(json::Node root) : valueSets(root), place(root.place()) {}
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
  void readStatus(json::ObjectReader& reader);
  void readExtensions(json::ObjectReader& reader, Source& source);
  void readExpectation(json::ObjectReader& reader, Extensions& extensions, Source& source);
  void readRenderingCritical(json::ObjectReader& reader);
  void checkUrls();
  Source* sourceOf(const std::string& canonical);
  std::shared_ptr<const Form> assemble(Source& source);
  void addItems(const std::vector<json::Node>& nodes, Item* parent, Items& into, Assembly& assembly);
  static void connectConditions(Items& items, const Form& form);
  void addItem(json::Node node, Item* parent, Items& into, Assembly& assembly);
  void takeIn(const std::string& canonical, const Item& placeholder, Item* parent, Items& into,
              Assembly& assembly);
  bool isNewLinkId(const Item& item, Assembly& assembly);

  const std::map<std::string, std::string>& files_;
  Rules rules_;
  base::Issues& issues_;
  base::Issues found_;  ///< may hold an issue twice: once per form that takes a module in
  std::vector<std::unique_ptr<Source>> sources_;
};

}  // namespace stile::questionnaire
