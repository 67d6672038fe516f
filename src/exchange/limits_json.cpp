#include "exchange/limits_json.h"

namespace stile::exchange {
namespace {

using limits::Limits;

void writeStrings(json::Writer& writer, const char* key, const std::set<std::string>& values) {
  if (values.empty()) return;
  writer.key(key).beginArray();
  for (const std::string& value : values) writer.string(value);
  writer.endArray();
}

void writeNumbers(json::Writer& writer, const char* key, const std::map<std::string, base::Rational>& values) {
  if (values.empty()) return;
  writer.key(key).beginObject();
  for (const auto& [name, value] : values) writer.key(name).number(value);
  writer.endObject();
}

template <class T>
void writePerBay(json::Writer& writer, const char* key, const limits::PerBay<T>& values) {
  writer.key(key).beginObject();
  for (const auto bay : limits::kBays) writer.member(idOf(bay), idOf(values[bay]));
  writer.endObject();
}

void writeMovements(json::Writer& writer, const Limits& limits) {
  if (!limits.caps.empty()) {
    writer.key("caps").beginArray();
    for (const auto& [key, degrees] : limits.caps) {
      writer.beginObject().member("movement", key.movement).member("side", idOf(key.side));
      writer.member("qualifier", idOf(key.qualifier)).key("degrees").number(degrees).endObject();
    }
    writer.endArray();
  }
  if (!limits.bans.empty()) {
    writer.key("bans").beginArray();
    for (const auto& ban : limits.bans) writer.beginObject().member("ban", ban.ban).member("side", idOf(ban.side)).endObject();
    writer.endArray();
  }
}

void writeNumbersOfTheSession(json::Writer& writer, const Limits& limits) {
  if (limits.loadKilograms || limits.loadPercentOfMaximum) {
    writer.key("load").beginObject();
    if (limits.loadKilograms) writer.key("kilograms").number(*limits.loadKilograms);
    if (limits.loadPercentOfMaximum) writer.key("percentOfMaximum").number(*limits.loadPercentOfMaximum);
    writer.endObject();
  }
  if (limits.heartRatePerMinute) writer.key("heartRateCeiling").beginObject().key("perMinute").number(*limits.heartRatePerMinute).endObject();
  if (!limits.stopValues.empty()) {
    writer.key("stopValues").beginArray();
    for (const auto& [key, value] : limits.stopValues) {
      writer.beginObject().member("measure", key.measure).key(key.below ? "below" : "above").number(value);
      writer.member("unit", key.unit).endObject();
    }
    writer.endArray();
  }
}

void writeGates(json::Writer& writer, const Limits& limits) {
  if (limits.gates.empty()) return;
  writer.key("gates").beginArray();
  for (const auto& [measure, gate] : limits.gates) {
    writer.beginObject().member("measure", measure);
    writeStrings(writer, "clinician", gate.clinician);
    writeStrings(writer, "client", gate.client);
    writer.endObject();
  }
  writer.endArray();
}

void writeReferrals(json::Writer& writer, const Limits& limits) {
  if (limits.referrals.empty()) return;
  writer.key("referrals").beginArray();
  for (const auto& [service, referral] : limits.referrals) {
    writer.beginObject().member("to", service).member("within", idOf(referral.within));
    writeStrings(writer, "why", referral.why);
    writeStrings(writer, "ask", referral.ask);
    writeStrings(writer, "meanwhile", referral.meanwhile);
    writer.endObject();
  }
  writer.endArray();
}

}  // namespace

void writeLimits(json::Writer& writer, const Limits& limits) {
  writer.beginObject();
  writer.member("action", idOf(limits.action));
  writePerBay(writer, "clearance", limits.clearance);
  writePerBay(writer, "ceiling", limits.ceiling);
  writeMovements(writer, limits);
  writeNumbersOfTheSession(writer, limits);
  writeNumbers(writer, "doseCaps", limits.doseCaps);
  writeNumbers(writer, "doseFloors", limits.doseFloors);
  writeStrings(writer, "settings", limits.settings);
  writeStrings(writer, "timing", limits.timing);
  writer.member("effortGuide", idOf(limits.effortGuide));
  writer.member("progression", idOf(limits.progression));
  writer.member("supervision", idOf(limits.supervision));
  writeStrings(writer, "checks", limits.checks);
  writeGates(writer, limits);
  writeReferrals(writer, limits);
  writeStrings(writer, "questions", limits.questions);
  writer.endObject();
}

}  // namespace stile::exchange
