// What is to be written in one commit: all of it or none of it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "records/entry.h"

namespace stile::store {

/// Collects steps; ClinicFile::commit() carries them out. Every step but a draft's leaves its line
/// in the journal by itself.
class Change {
 public:
  enum class Kind { NewRecord, Card, Add, ReplaceDraft, RemoveDraft, Erase, Note };
  struct Step {
    Kind kind;
    std::string record, entry;
    std::string word;  ///< kind of record or entry, or what happened
    std::string text;  ///< card, body or detail
    bool isSigned = false;
  };

  /// The new record's id, random.
  std::string newRecord(std::string_view kind, std::string card);
  void setCard(const std::string& record, std::string card);
  /// The new entry's id. Signed entries need a clinician who may sign.
  std::string add(const std::string& record, std::string_view kind, std::string body, bool isSigned = false);
  /// The draft anew; a first draft is add()ed with kind records::kDraftKind.
  void replaceDraft(const std::string& record, const std::string& entry, std::string body);
  void removeDraft(const std::string& record, const std::string& entry);
  /// Takes the record and all its entries out of the file for good.
  void erase(const std::string& record);
  /// A line in the journal alone. `detail` must hold no name and no answer.
  void note(std::string_view what, const std::string& record = {}, std::string detail = {});

  /// The steps of another change behind these, for one commit.
  Change& append(const Change& other);

  const std::vector<Step>& steps() const { return steps_; }
  bool empty() const { return steps_.empty(); }

 private:
  std::vector<Step> steps_;
};

}  // namespace stile::store
