// Reading and writing records of an open clinic file.
#include <algorithm>
#include <map>

#include "store/clinic_file_inside.h"
#include "store/trouble.h"

namespace stile::store {
namespace {

using base::FailureKind;

/// The headers that a change touches, each read once and written once.
class Headers {
 public:
  Headers(Database& database, const Keyring& keys) : database_(database), keys_(keys) {}

  Header& of(const std::string& id) {
    const auto at = headers_.find(id);
    if (at != headers_.end()) return at->second;
    return headers_.emplace(id, readHeader(database_, keys_, id)).first->second;
  }

  void make(const Change::Step& step) {
    Header header;
    header.id = step.record;
    header.kind = step.word;
    header.card = step.text;
    // The row must stand before its entries; its list is written at the end.
    Query(database_, "INSERT INTO record VALUES(?,0,0,x'')").text(step.record).run();
    headers_.emplace(step.record, std::move(header));
  }

  void forget(const std::string& id) { headers_.erase(id); }

  void writeAll(Head& head) {
    for (auto& [id, header] : headers_) writeHeader(database_, keys_, header, head);
  }

  const std::map<std::string, Header>& all() const { return headers_; }

 private:
  Database& database_;
  const Keyring& keys_;
  std::map<std::string, Header> headers_;
};

HeaderLine& draftLine(Header& header, const std::string& entry) {
  for (HeaderLine& line : header.lines)
    if (line.id == entry && line.kind == records::kDraftKind) return line;
  fail(FailureKind::Refused, "record " + header.id + " has no draft " + entry + "; what was signed off or filed is never replaced");
}

}  // namespace

base::Result<bool> ClinicFile::commit(const Change& change) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Write);
    Headers headers(*inside.database, keys);
    std::vector<std::string> erased;
    inside.write([&](Head& next) {
      for (const Change::Step& step : change.steps()) {
        switch (step.kind) {
          case Change::Kind::NewRecord:
            headers.make(step);
            inside.note(next, "created", step.record, step.word, false);
            break;
          case Change::Kind::Card:
            headers.of(step.record).card = step.text;
            break;
          case Change::Kind::Add: {
            if (step.isSigned && !inside.who.maySign())
              fail(FailureKind::Refused, inside.handle + " may enter but not sign; a clinician signs in and signs");
            HeaderLine line;
            records::Entry entry{step.entry, step.word, inside.environment.nowMs(), inside.handle, step.isSigned ? inside.handle : "", step.text};
            writeEntry(*inside.database, keys, step.record, entry, line, step.isSigned ? &inside.unlocked->seed : nullptr);
            headers.of(step.record).lines.push_back(line);
            if (step.word != records::kDraftKind) inside.note(next, "added " + step.word, step.record, step.entry, step.isSigned);
            break;
          }
          case Change::Kind::ReplaceDraft: {
            HeaderLine& line = draftLine(headers.of(step.record), step.entry);
            records::Entry entry{step.entry, step.word, inside.environment.nowMs(), inside.handle, "", step.text};
            writeEntry(*inside.database, keys, step.record, entry, line, nullptr);
            break;
          }
          case Change::Kind::RemoveDraft: {
            Header& header = headers.of(step.record);
            draftLine(header, step.entry);
            std::erase_if(header.lines, [&step](const HeaderLine& line) { return line.id == step.entry; });
            removeEntry(*inside.database, step.record, step.entry);
            break;
          }
          case Change::Kind::Erase:
            eraseRecord(*inside.database, headers.of(step.record), next);
            headers.forget(step.record);
            erased.push_back(step.record);
            inside.note(next, "erased", step.record, "", true);
            break;
          case Change::Kind::Note:
            inside.note(next, step.word, step.record, step.text, false);
            break;
        }
      }
      headers.writeAll(next);
    });
    for (const auto& [id, header] : headers.all()) inside.putCard(id, header.kind, header.card);
    for (const std::string& id : erased) inside.dropCard(id);
    // What was erased must not linger in the log either.
    if (!erased.empty()) inside.database->checkpoint();
    return true;
  });
}

base::Result<std::vector<records::Entry>> ClinicFile::read(const std::string& record) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Write);
    if (inside.byId.count(record) == 0) fail(FailureKind::Usage, "there is no record " + record + " in this clinic file");
    std::map<std::string, std::string> publicKeys;
    for (const RosterRow& row : readRoster(*inside.database)) publicKeys[row.handle] = row.publicKey;
    std::vector<records::Entry> entries;
    const Header header = readHeader(*inside.database, keys, record);
    for (const HeaderLine& line : header.lines) {
      SignedEntry read = readEntry(*inside.database, keys, record, line);
      const std::string& signer = read.entry.signer;
      if (!signer.empty() && !isSignatureOf(read, keys.clinicId(), record, publicKeys[signer]))
        failDamaged("entry " + line.id + " (" + line.kind + ") of record " + record + " is not signed by " + signer + ", who is named in it");
      entries.push_back(std::move(read.entry));
    }
    inside.write([&](Head& next) { inside.note(next, "read", record, "", false); });
    return entries;
  });
}

base::Result<std::vector<std::string>> ClinicFile::panel(const std::string& kind) {
  Inside& inside = *inside_;
  return guarded(inside.path, [&] {
    const Keyring& keys = inside.keys(Access::Read);
    Transaction snapshot(*inside.database, Access::Read);
    std::vector<std::string> bodies;
    Query query(*inside.database, "SELECT id, revision, generation, sealed FROM record ORDER BY id");
    while (query.next()) {
      const Header header = openHeader(keys, {query.textAt(0), query.numberAt(1), static_cast<int>(query.numberAt(2)), query.textAt(3)});
      for (const HeaderLine& line : header.lines)
        if (line.kind == kind) bodies.push_back(readEntry(*inside.database, keys, header.id, line).entry.body);
    }
    return bodies;
  });
}

}  // namespace stile::store
