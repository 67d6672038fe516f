#include "application/client_records.h"

#include <algorithm>

#include "json/document.h"
#include "records/body.h"
#include "records/duplicate.h"
#include "records/entry_kinds.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

bool isIn(const std::vector<std::string>& all, const std::string& one) { return std::find(all.begin(), all.end(), one) != all.end(); }

std::string mergeBody(const std::string& other, bool into, base::Date today) {
  json::Writer writer(0);
  writer.beginObject().member("date", today.toText()).member("other", other);
  if (into) writer.member("into", "yes");
  writer.endObject();
  return writer.text();
}

const records::Entry* entryOf(const RecordWork& work, const std::string& id) {
  for (const auto& entry : work.entries())
    if (entry.id == id) return &entry;
  return nullptr;
}

bool isEmergency(const records::Entry& screening) {
  const records::Body body(screening.body);
  const auto root = body.root();
  const auto result = root ? root->find("result") : std::nullopt;
  const auto action = result ? result->find("action") : std::nullopt;
  return action && action->isString() && action->string() == "emergency";
}

/// The body of an override with `needsSecond` as the rule asks, or why it is refused.
base::Result<std::string> checkedOverride(const RecordWork& work, const std::string& text, const OverrideRules& rules) {
  const records::Body body(text);
  const std::string rule = body.text("rule");
  if (!isIn(rules.known, rule)) return Failure{FailureKind::Refused, "override: there is no rule \"" + rule + "\" in this content"};
  if (isIn(rules.absolute, rule)) return Failure{FailureKind::Refused, "override: the rule " + rule + " is absolute; what holds it is not a matter of judgement"};
  const auto* screening = entryOf(work, body.text("screening"));
  if (screening != nullptr && isEmergency(*screening)) return Failure{FailureKind::Refused, "override: this screening calls for emergency help, and that is never overridden"};
  json::Writer writer(0);
  writer.beginObject();
  for (std::size_t i = 0; i < body.root()->size(); ++i)
    if (body.root()->keyAt(i) != "needsSecond") writer.key(body.root()->keyAt(i)).copy(body.root()->at(i));
  writer.member("needsSecond", isIn(rules.acute, rule) || body.flag("needsSecond")).endObject();
  return writer.text();
}

/// "" when the second signature may stand.
std::string troubleWithSecond(const RecordWork& work, const std::string& text, const records::Clinician& who) {
  const auto* line = entryOf(work, records::Body(text).text("override"));
  if (line != nullptr && line->signer == who.handle) return "the second signature is another clinician's, not " + who.handle + "'s own";
  if (who.role != records::Role::Lead) return "the second signature is the lead's or a physician's, and " + who.handle + " is set up as neither";
  return {};
}

}  // namespace

base::Result<RecordWork> RecordWork::open(Clinic& clinic, const std::string& id) {
  RecordWork work(clinic, id);
  auto entries = clinic.file().read(id);
  if (!entries) return entries.failure();
  work.entries_ = std::move(entries).value();
  return work;
}

RecordWork RecordWork::begin(Clinic& clinic) {
  RecordWork work(clinic, {});
  work.id_ = work.change_.newRecord("client", "");
  return work;
}

std::string RecordWork::add(std::string_view kind, std::string body, bool isSigned) {
  const std::string& handle = clinic_->file().who().handle;
  const std::string id = change_.add(id_, kind, body, isSigned);
  entries_.push_back({id, std::string(kind), 0, handle, isSigned ? handle : "", std::move(body)});
  return id;
}

void RecordWork::saveDraft(std::string body) {
  for (auto& entry : entries_) {
    if (entry.kind != records::kDraftKind) continue;
    change_.replaceDraft(id_, entry.id, body);
    entry.body = std::move(body);
    return;
  }
  add(records::kDraftKind, std::move(body));
}

void RecordWork::removeDraft() {
  for (const auto& entry : entries_)
    if (entry.kind == records::kDraftKind) change_.removeDraft(id_, entry.id);
  std::erase_if(entries_, [](const auto& entry) { return entry.kind == records::kDraftKind; });
}

void RecordWork::setCard() { change_.setCard(id_, records::toText(records::cardOf(folded(), clinic_->policy()))); }

base::Result<bool> RecordWork::commit() {
  setCard();
  return commitWithoutCard();
}

base::Result<bool> RecordWork::commitWithoutCard() {
  auto done = clinic_->commit(change_);
  if (done) change_ = {};
  return done;
}

base::Result<AddedClient> addClient(Clinic& clinic, const std::string& text, const std::string& file, base::Issues& issues) {
  const auto client = records::loadClient(text, file, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, file + ": the client was not added"};
  RecordWork work = RecordWork::begin(clinic);
  work.add("client", records::toJson(client));
  AddedClient added{work.id(), {}};
  const auto card = records::cardOf(work.folded(), clinic.policy());
  for (const auto* line : clinic.find(""))
    if (const std::string why = records::couldBeSame(card, line->card); !why.empty())
      added.couldBeSame.push_back(line->card.name() + ", born " + line->card.born + " (" + line->id.substr(0, 12) + "): " + why);
  const auto done = work.commit();
  if (!done) return done.failure();
  return added;
}

base::Result<records::Client> readClient(Clinic& clinic, const std::string& id) {
  auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  return work.value().folded().client;
}

base::Result<bool> changeClient(Clinic& clinic, const std::string& id, const std::string& text, const std::string& file, base::Issues& issues) {
  const auto client = records::loadClient(text, file, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, file + ": the client was not changed"};
  auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  work.value().add("client", records::toJson(client));
  return work.value().commit();
}

base::Result<bool> chooseBuild(Clinic& clinic, const std::string& id, std::optional<movement::Build> build) {
  auto work = RecordWork::open(clinic, id);
  if (!work) return work.failure();
  records::Client client = work.value().folded().client;
  if (client.drawnBuild == build) return true;
  client.drawnBuild = build;
  work.value().add("client", records::toJson(client));
  return work.value().commit();
}

base::Result<std::string> fileEntry(Clinic& clinic, const std::string& id, const std::string& kind, const std::string& text, const std::string& file,
                                    const OverrideRules& rules, base::Issues& issues) {
  const auto* known = records::entryKind(kind);
  if (known == nullptr || !known->isByHand) {
    std::string all;
    for (const auto& one : records::entryKinds())
      if (one.isByHand) all += (all.empty() ? "" : ", ") + one.id;
    return Failure{FailureKind::Usage, kind + ": there is no such kind to file; there are: " + all};
  }
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  records::checkBody(*known, text, file, work.entries(), issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, file + ": nothing was filed"};
  std::string body = text;
  if (kind == "override") {
    auto checked = checkedOverride(work, text, rules);
    if (!checked) return checked.failure();
    body = std::move(checked).value();
  }
  if (kind == "secondSignature")
    if (const std::string trouble = troubleWithSecond(work, text, clinic.file().who()); !trouble.empty()) return Failure{FailureKind::Refused, trouble};
  const std::string entry = work.add(kind, body, known->isSigned);
  const auto done = work.commit();
  if (!done) return done.failure();
  return entry;
}

base::Result<std::string> exportClient(Clinic& clinic, const std::string& id) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  json::Writer writer;
  writer.beginObject().member("record", id).key("entries").beginArray();
  for (const auto& entry : work.entries()) {
    writer.beginObject().member("id", entry.id).member("kind", entry.kind).member("writtenMs", entry.writtenMs).member("by", entry.by);
    if (!entry.signer.empty()) writer.member("signedBy", entry.signer);
    const records::Body body(entry.body);
    if (const auto root = body.root())
      writer.key("body").copy(*root);
    else
      writer.member("text", entry.body);
    writer.endObject();
  }
  writer.endArray().endObject();
  work.change().note("exported", id);
  const auto done = clinic.commit(work.change());
  if (!done) return done.failure();
  return writer.text();
}

base::Result<std::size_t> eraseClient(Clinic& clinic, const std::string& id) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  if (!clinic.file().who().maySign()) return Failure{FailureKind::Refused, "erasing is signed; a clinician signs in and does it"};
  store::Change change;
  std::size_t count = 1;
  for (const std::string& other : opened.value().folded().mergedFrom) {
    if (clinic.client(other) == nullptr) continue;
    change.erase(other);
    ++count;
  }
  change.erase(id);
  const auto done = clinic.commit(change);
  if (!done) return done.failure();
  return count;
}

base::Result<bool> mergeClients(Clinic& clinic, const std::string& id, const std::string& other, base::Date today) {
  if (id == other) return Failure{FailureKind::Usage, "these are one record already"};
  auto into = RecordWork::open(clinic, id);
  if (!into) return into.failure();
  auto from = RecordWork::open(clinic, other);
  if (!from) return from.failure();
  for (const auto* work : {&into.value(), &from.value()})
    if (!work->folded().mergedInto.empty()) return Failure{FailureKind::Refused, "one of these was merged into another record; undo that first"};
  // Both records in one commit: a merge is whole or nothing.
  RecordWork& one = into.value();
  RecordWork& two = from.value();
  one.add("merged", mergeBody(other, false, today), true);
  two.add("merged", mergeBody(id, true, today), true);
  one.setCard();
  two.setCard();
  return clinic.commit(one.change().append(two.change()));
}

base::Result<bool> undoMerge(Clinic& clinic, const std::string& id, const std::string& other, base::Date today) {
  auto into = RecordWork::open(clinic, id);
  if (!into) return into.failure();
  if (!isIn(into.value().folded().mergedFrom, other)) return Failure{FailureKind::Usage, "that record is not merged into this one"};
  auto from = RecordWork::open(clinic, other);
  if (!from) return from.failure();
  into.value().add("unmerged", mergeBody(other, false, today), true);
  from.value().add("unmerged", mergeBody(id, false, today), true);
  into.value().setCard();
  from.value().setCard();
  return clinic.commit(into.value().change().append(from.value().change()));
}

}  // namespace stile::application
