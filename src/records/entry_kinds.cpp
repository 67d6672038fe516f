#include "records/entry_kinds.h"


#include "base/date.h"
#include "json/reader.h"

namespace stile::records {
namespace {

using Type = MemberType;

Member text(std::string name, bool isRequired = true) { return {std::move(name), Type::Text, isRequired, {}}; }
Member optional(std::string name) { return text(std::move(name), false); }
Member date() { return {"date", Type::Date, true, {}}; }
Member reference(std::string name) {
  std::string kind = name;
  return {std::move(name), Type::Reference, true, {std::move(kind)}};
}
Member word(std::string name, std::vector<std::string> words) { return {std::move(name), Type::Word, true, std::move(words)}; }
Member of(std::string name, Type type, bool isRequired = true) { return {std::move(name), type, isRequired, {}}; }

Member requestReference() { return {"request", Type::Reference, true, {"clearanceRequest"}}; }
Member actionReference() { return {"action", Type::Reference, true, {"actionRecord"}}; }
Member eventReference() { return {"event", Type::Reference, true, {"event"}}; }
Member letterReference() { return {"letter", Type::Reference, true, {"eventLetter"}}; }
Member referralReference() { return {"referral", Type::Reference, true, {"referralIn"}}; }

class BodyCheck {
 public:
  BodyCheck(const std::vector<Entry>& record, json::ObjectReader& reader) : record_(record), reader_(reader) {}

  void check(const Member& member) {
    const auto node = member.isRequired ? reader_.require(member.name) : reader_.find(member.name);
    if (!node) return;
    const std::string wrong = wrongWith(member, *node);
    if (!wrong.empty()) reader_.issue(*node, "\"" + member.name + "\" " + wrong);
  }

 private:
  std::string wrongWith(const Member& member, json::Node node) const {
    switch (member.type) {
      case Type::Any:
        return {};
      case Type::Flag:
        return node.isBoolean() ? "" : "must be true or false";
      case Type::Number:
        return node.isNumber() && node.integer() ? "" : "must be a whole number";
      case Type::Texts:
        for (std::size_t i = 0; i < node.size(); ++i)
          if (!node.isArray() || !node.at(i).isString()) return "must be a list of texts";
        return node.isArray() ? "" : "must be a list of texts";
      case Type::Text:
        return node.isString() && (!member.isRequired || !node.string().empty()) ? "" : "must be a text, and not empty";
      case Type::Date:
        return node.isString() && base::Date::parse(node.string()) ? "" : "must be a day, written YYYY-MM-DD";
      case Type::Word: {
        std::string all;
        for (const std::string& one : member.words) {
          if (node.isString() && node.string() == one) return {};
          all += (all.empty() ? "" : ", ") + one;
        }
        return "must be one of: " + all;
      }
      case Type::Reference:
        for (const Entry& entry : record_)
          if (node.isString() && entry.id == node.string() && entry.kind == member.words.front()) return {};
        return "must be the id of an entry of kind " + member.words.front() + " of this client";
    }
    return {};
  }

  const std::vector<Entry>& record_;
  json::ObjectReader& reader_;
};

}  // namespace

const std::vector<EntryKind>& entryKinds() {
  static const std::vector<EntryKind> kKinds{
      {"client", "Name, contacts, physician", false, false, {}},
      {"draft", "Answers in progress", false, false, {}},
      {"paper", "A paper that was issued", false, false, {}},
      {"screening", "A screening as it was", false, false, {}},
      {"clearanceRequest", "A physician is asked", false, false, {date(), reference("screening"), of("rules", Type::Texts), text("to")}},
      {"clearanceReply", "The physician's reply", false, false, {date(), requestReference(), of("response", Type::Any), of("until", Type::Date, false)}},
      {"actionRecord", "Same-day action or emergency", false, false, {date(), reference("screening"), word("action", {"sameDay", "emergency"})}},
      {"merged", "Another record of the same person", true, false, {date(), text("other")}},
      {"unmerged", "The merge was a mistake", true, false, {date(), text("other")}},
      {"signOff", "A screening is signed off", true, true, {date(), reference("screening")}},
      {"amendment", "Something to add to a screening", true, true, {date(), reference("screening"), text("text")}},
      {"override", "A clinician decides otherwise", true, true,
       {date(), reference("screening"), text("rule"), text("instead"), text("reason"), of("needsSecond", Type::Flag, false)}},
      {"secondSignature", "A second clinician agrees to an override", true, true, {date(), reference("override")}},
      {"consent", "Consent given or withdrawn", false, true,
       {date(), word("what", {"screening", "physician", "carer", "text", "voicemail", "email", "keeping"}), of("given", Type::Flag), text("how"), optional("to")}},
      {"referralIn", "A referral was received", false, true,
       {date(), text("from"), text("reason"), word("urgency", {"routine", "soon", "urgent"}), of("limits", Type::Texts, false),
        of("medicines", Type::Texts, false), of("readings", Type::Texts, false), optional("scope")}},
      {"referralOutcome", "A referral is accepted, declined or redirected", false, true,
       {date(), referralReference(), word("outcome", {"accepted", "declined", "redirected"}), text("because")}},
      {"referralReconciled", "What the referral says was compared with what the client said", false, true,
       {date(), referralReference(), of("differences", Type::Texts, false), text("settled")}},
      {"clearanceSent", "The letter went out", false, true, {date(), requestReference(), text("how")}},
      {"clearanceChase", "The physician was reminded", false, true, {date(), requestReference(), text("how")}},
      {"clearanceClosed", "No longer asked", false, true, {date(), requestReference(), text("because")}},
      {"actionStep", "What was done about same-day action or emergency", false, true,
       {date(), actionReference(), text("done"), optional("told"), optional("at"), optional("acceptedBy"), optional("outcome"), of("complete", Type::Flag)}},
      {"started", "The client began the plan", false, true, {date(), reference("screening")}},
      {"checkIn", "How it goes", false, true,
       {date(), of("sessionsDone", Type::Number, false), of("effort", Type::Number, false), of("painNextMorning", Type::Number, false),
        of("symptoms", Type::Flag), of("usualPain", Type::Number, false), of("weeksMissed", Type::Number, false), of("illness", Type::Flag, false),
        optional("note")}},
      {"contact", "An attempt to reach the client", false, true, {date(), text("how"), of("reached", Type::Flag), optional("note")}},
      {"event", "Something happened", false, true,
       {date(), word("what", {"fall", "faint", "chestPain", "lowGlucose", "defibrillatorShock", "seizure", "other"}), text("doing"), optional("time"),
        of("readings", Type::Texts, false), text("done"), optional("called"), optional("outcome"), optional("witness")}},
      {"eventLetter", "A letter about an event, drafted", false, false, {date(), eventReference(), text("to"), text("text")}},
      {"eventLetterSettled", "The letter was sent, or is not wanted", false, true, {date(), letterReference(), text("how")}},
      {"state", "Active, unreached, discharged, deceased", false, true,
       {date(), word("state", {"active", "unreached", "discharged", "deceased"}), text("because")}},
  };
  return kKinds;
}

const EntryKind* entryKind(std::string_view id) {
  for (const EntryKind& kind : entryKinds())
    if (kind.id == id) return &kind;
  return nullptr;
}

void checkBody(const EntryKind& kind, const std::string& text, const std::string& file, const std::vector<Entry>& record, base::Issues& issues) {
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return;
  json::ObjectReader reader(document->root(), kind.id, issues);
  BodyCheck check(record, reader);
  for (const Member& member : kind.members) check.check(member);
  reader.finish();
}

}  // namespace stile::records
