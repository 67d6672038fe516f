// Which questions and groups apply only under conditions, in the forms that count for a client.
//
// Worked out once for a set of forms and shared by all fact sets settled with them.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "facts/dictionary.h"
#include "questionnaire/form.h"

namespace stile::facts {

class EnablementPlan {
 public:
  using FormPtr = std::shared_ptr<const questionnaire::Form>;

  /// A question of a form and the fact of the same id.
  struct Asked {
    const questionnaire::Item* item;
    const Definition* fact;
  };
  /// A conditional question or repeating group. An item whose conditions are the same in two forms
  /// stands here once; one that always applies in some form does not stand here.
  struct Entry {
    int slot = -1;           ///< of a question
    int group = -1;          ///< of a repeating group
    std::vector<int> slots;  ///< of the question and, of a multiple choice, its option facts
    std::vector<const questionnaire::Item*> occurrences;
    std::vector<int> gates;    ///< the facts its conditions look at, each once
    std::vector<Asked> asked;  ///< the questions its conditions look at, by form
  };

  EnablementPlan(const Dictionary& dictionary, std::vector<FormPtr> forms);

  /// The forms of `all` that count: those answered, or every one when none was named.
  static std::vector<FormPtr> formsThatCount(const questionnaire::FormSet& all,
                                             const std::vector<std::string>& answered);

  const std::vector<FormPtr>& forms() const { return forms_; }
  const std::vector<Entry>& entries() const { return entries_; }
  /// True when every entry stands after all it depends on, so that one round is exact.
  bool needsOneRound() const { return needsOneRound_; }
  /// Whether some condition looks at a derived fact.
  bool readsDerived() const { return readsDerived_; }

 private:
  void add(const Dictionary& dictionary, const questionnaire::Item& item);
  void addGates(const Dictionary& dictionary, const questionnaire::Item& item, Entry& entry);

  std::vector<FormPtr> forms_;
  std::vector<Entry> entries_;
  bool needsOneRound_ = true;
  bool readsDerived_ = false;
};

}  // namespace stile::facts
