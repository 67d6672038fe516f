// Use cases on one client's record: add, file what happened, show, merge, export, erase.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "application/clinic.h"

namespace stile::application {

/// One record being written to: its entries as they will stand, and the change that makes them so.
class RecordWork {
 public:
  /// Opens the record (journaled).
  static base::Result<RecordWork> open(Clinic& clinic, const std::string& id);
  /// A record that is new in `change()`.
  static RecordWork begin(Clinic& clinic);

  const std::string& id() const { return id_; }
  const Clinic& clinic() const { return *clinic_; }
  const std::vector<records::Entry>& entries() const { return entries_; }
  records::ClientRecord folded() const { return records::fold(entries_, clinic_->policy().painNextMorningFrom); }
  std::string add(std::string_view kind, std::string body, bool isSigned = false);
  void saveDraft(std::string body);  ///< replaces the draft there is
  void removeDraft();
  store::Change& change() { return change_; }
  void setCard();  ///< of the entries as they stand now
  /// Writes the card anew and commits. What failed is tried again by the next commit.
  base::Result<bool> commit();
  /// The same for a change that no list shows.
  base::Result<bool> commitWithoutCard();

 private:
  RecordWork(Clinic& clinic, std::string id) : clinic_(&clinic), id_(std::move(id)) {}
  Clinic* clinic_;
  std::string id_;
  std::vector<records::Entry> entries_;
  store::Change change_;
};

struct AddedClient {
  std::string id;
  std::vector<std::string> couldBeSame;  ///< a sentence for each client who could be the same person
};
/// `text` is the client as JSON (records/client.h).
base::Result<AddedClient> addClient(Clinic& clinic, const std::string& text, const std::string& file, base::Issues& issues);
base::Result<records::Client> readClient(Clinic& clinic, const std::string& id);
/// Name, contacts or physician anew; what was written before stays in the record.
base::Result<bool> changeClient(Clinic& clinic, const std::string& id, const std::string& text, const std::string& file, base::Issues& issues);

/// Which figure the client wants to see in drawings; nothing = the clinic's.
base::Result<bool> chooseBuild(Clinic& clinic, const std::string& id, std::optional<movement::Build> build);

/// Files an entry of a kind that people file by hand. Overrides are held to the rules of design:
/// an emergency and an `absolute` rule are refused, an `acute` one waits for a second signature.
/// `absolute` and `acute` list the rules of the content that are so. Gives the entry's id.
struct OverrideRules {
  std::vector<std::string> known, absolute, acute;
};
base::Result<std::string> fileEntry(Clinic& clinic, const std::string& id, const std::string& kind, const std::string& text, const std::string& file,
                                    const OverrideRules& rules, base::Issues& issues);

/// The record as text for reading.
base::Result<std::string> showClient(Clinic& clinic, const std::string& id, base::Date today);
/// Everything of one client as one JSON document.
base::Result<std::string> exportClient(Clinic& clinic, const std::string& id);
/// Takes the client and all records merged into it out of the file; backups still hold them.
base::Result<std::size_t> eraseClient(Clinic& clinic, const std::string& id);
/// `other` turned out to be the same person: it is shown with `id`, and rests. undoMerge() undoes it.
base::Result<bool> mergeClients(Clinic& clinic, const std::string& id, const std::string& other, base::Date today);
base::Result<bool> undoMerge(Clinic& clinic, const std::string& id, const std::string& other, base::Date today);

}  // namespace stile::application
