// A form: an HL7 FHIR R4 Questionnaire, loaded and checked.
//
// Topic modules are Questionnaires of their own; a form takes them in through the standard's
// modular-form extension (sdc-questionnaire-subQuestionnaire on a display item). linkIds are
// unique in the assembled form; in forms of our own content they are the fact ids.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"
#include "base/text_map.h"
#include "base/unit.h"
#include "json/document.h"
#include "questionnaire/item.h"

namespace stile::questionnaire {

class Form {
 public:
  const std::string& url() const { return url_; }
  const std::string& version() const { return version_; }
  const std::string& name() const { return name_; }  ///< file name without .json, e.g. "clinic"
  const std::string& title() const { return title_; }
  const std::vector<std::unique_ptr<Item>>& items() const { return items_; }
  const Item* find(std::string_view linkId) const;
  /// Every item in form order.
  const std::vector<const Item*>& inOrder() const { return inOrder_; }
  /// Variables and constraints of the whole form.
  const std::vector<Expression>& variables() const { return variables_; }
  const std::vector<Constraint>& constraints() const { return constraints_; }
  /// Names of the launch context the form wants (sdc-questionnaire-launchContext), such as patient.
  const std::vector<std::string>& launchContext() const { return launchContext_; }
  /// The time in which the form may be answered; "" = no bound.
  const std::string& effectiveFrom() const { return effectiveFrom_; }
  const std::string& effectiveUntil() const { return effectiveUntil_; }
  /// The Questionnaire as it is written (%questionnaire).
  json::Node node() const { return documents_.front()->root(); }
  /// The innermost repeating group an item stands in, or nullptr.
  static const Item* repeatingGroupOf(const Item& item);

 private:
  friend class FormLoader;
  std::string url_, version_, name_, title_;
  std::vector<std::unique_ptr<Item>> items_;
  std::vector<const Item*> inOrder_;
  base::TextMap<const Item*> byLinkId_;
  std::vector<Expression> variables_;
  std::vector<Constraint> constraints_;
  std::vector<std::string> launchContext_;
  std::string effectiveFrom_, effectiveUntil_;
  /// The texts that the nodes of the items point into; the form's own comes first.
  std::vector<std::shared_ptr<const json::Document>> documents_;
};

/// All Questionnaires of a folder, by file name; modules taken in where a form names them.
class FormSet {
 public:
  /// Loads any FHIR R4 Questionnaires in `files` (name -> JSON text). All issues are collected:
  /// unknown members, duplicate or missing linkIds, enableWhen on an unknown item or with the wrong
  /// type, modules that are missing or contain each other, unknown modifier extensions, unknown
  /// rendering-critical extensions, options without a code. What is allowed but odd is a note.
  static FormSet loadAny(const std::map<std::string, std::string>& files, base::Issues& issues);
  /// The same for the forms of our own content, whose items are facts: with checkOwnForm(), which
  /// asks for more than the standard does.
  static FormSet load(const std::map<std::string, std::string>& files, base::Issues& issues);
  const Form* byName(std::string_view name) const;      ///< file name without .json
  const Form* byUrl(std::string_view canonical) const;  ///< with or without |version
  const std::vector<std::shared_ptr<const Form>>& forms() const {
    return forms_;
  }  ///< assembled, root forms only

 private:
  std::vector<std::shared_ptr<const Form>> forms_;
};

}  // namespace stile::questionnaire
