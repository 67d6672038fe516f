#include "exchange/plan_json.h"

#include "exchange/edits_json.h"

namespace stile::exchange {
namespace {

void writeNumber(json::Writer& writer, const char* key, const std::optional<base::Rational>& value) {
  if (value) writer.key(key).number(*value);
}

void writeText(json::Writer& writer, const char* key, const std::string& text) {
  if (!text.empty()) writer.member(key, text);
}

void writeTexts(json::Writer& writer, const char* key, const std::vector<std::string>& texts) {
  if (texts.empty()) return;
  writer.key(key).beginArray();
  for (const std::string& text : texts) writer.string(text);
  writer.endArray();
}

void writeDose(json::Writer& writer, const plan::Dose& dose) {
  writer.key("dose").beginObject();
  writeNumber(writer, "minutes", dose.minutes);
  writeNumber(writer, "sets", dose.sets);
  writeNumber(writer, "repetitions", dose.repetitions);
  writeNumber(writer, "holdSeconds", dose.holdSeconds);
  writeNumber(writer, "restSeconds", dose.restSeconds);
  writeNumber(writer, "daysPerWeek", dose.daysPerWeek);
  writeNumber(writer, "effortLow", dose.effortLow);
  writeNumber(writer, "effortHigh", dose.effortHigh);
  writeNumber(writer, "repetitionsInReserve", dose.repetitionsInReserve);
  writeNumber(writer, "heartRateLow", dose.heartRateLow);
  writeNumber(writer, "heartRateHigh", dose.heartRateHigh);
  writeText(writer, "words", dose.words);
  writer.endObject();
}

/// In which form: place, easing, share of the full movement, side; what is as written is left out.
void writeForm(json::Writer& writer, const plan::Line& line) {
  writeText(writer, "place", line.place);
  writeText(writer, "side", line.side);
  if (line.form > 0) {
    const plan::Easing& easing = line.exercise->easings.at(line.form - 1);
    writer.key("eased").beginObject().member("form", static_cast<int>(line.form));
    writer.member("clinician", easing.sayClinician).member("client", easing.sayClient).endObject();
  }
  if (line.percent < 100) {
    writer.key("smaller").beginObject().member("percent", line.percent);
    writeText(writer, "client", line.saidSmaller);
    writer.endObject();
  }
}

void writeLine(json::Writer& writer, const plan::Line& line) {
  writer.beginObject();
  writer.member("exercise", line.exercise->id).member("title", line.exercise->title);
  writer.member("purpose", line.exercise->purpose).member("bay", idOf(line.exercise->bay));
  writer.member("intensity", idOf(line.exercise->intensity));
  writeForm(writer, line);
  writeDose(writer, line.dose);
  writeText(writer, "changed", line.changed);
  writeText(writer, "chosenBecause", line.chosenBecause);
  writeText(writer, "changedBecause", line.changedBecause);
  writeText(writer, "saidBecause", line.saidBecause);
  if (line.next != nullptr) writer.member("next", line.next->id);
  writeText(writer, "pinnedBy", line.pinnedBy);
  if (line.override) {
    writer.key("override").beginObject().member("beyond", line.override->beyond).member("reason", line.override->reason);
    writeTexts(writer, "rules", line.override->rules);
    writer.member("needsSecond", line.override->needsSecond).endObject();
  }
  writeTexts(writer, "rules", line.becauseRules);
  writer.endObject();
}

void writeWeek(json::Writer& writer, const plan::Week& week) {
  writer.beginObject().member("week", week.number);
  writer.key("aerobicMinutesPerSession").number(week.aerobicMinutesPerSession);
  writer.key("aerobicDays").number(week.aerobicDays);
  writer.key("aerobicMinutesPerWeek").number(week.aerobicMinutesPerWeek);
  writer.key("strengthDays").number(week.strengthDays);
  writer.key("strengthSets").number(week.strengthSets);
  writer.key("strengthRepetitions").number(week.strengthRepetitions);
  writer.key("balanceMinutes").number(week.balanceMinutes);
  writer.key("balanceDays").number(week.balanceDays);
  writer.key("stretchRepetitions").number(week.stretchRepetitions);
  writeText(writer, "words", week.words);
  writeText(writer, "heldBy", week.heldBy);
  writer.endObject();
}

}  // namespace

void writePlan(json::Writer& writer, const plan::StarterPlan& plan) {
  writer.beginObject();
  writer.member("level", plan.level).member("levelBecause", plan.levelBecause);
  writer.key("lines").beginArray();
  for (const auto& line : plan.lines) writeLine(writer, line);
  writer.endArray();
  writer.key("leftOut").beginArray();
  for (const auto& left : plan.leftOut) {
    writer.beginObject();
    writeText(writer, "exercise", left.exerciseId);
    writer.member("purpose", left.purpose).member("because", left.because);
    writeText(writer, "instead", left.instead);
    writeText(writer, "turnTo", left.turnTo);
    writer.endObject();
  }
  writer.endArray();
  writer.key("alsoOpen").beginArray();
  for (const auto& other : plan.alsoOpen)
    writer.beginObject().member("exercise", other.exercise->id).member("purpose", other.exercise->purpose).member("because", other.because).endObject();
  writer.endArray();
  if (!plan.edits.list.empty()) {
    writer.key("edited");
    writeEdits(writer, plan.edits);
  }
  writer.key("weeks").beginArray();
  for (const auto& week : plan.weeks) writeWeek(writer, week);
  writer.endArray();
  writeTexts(writer, "firstSteps", plan.firstSteps);
  writeTexts(writer, "effortWords", plan.effortWords);
  writeTexts(writer, "badDay", plan.badDay);
  writeTexts(writer, "missedWeek", plan.missedWeek);
  writeTexts(writer, "afterIllness", plan.afterIllness);
  writeTexts(writer, "goingOn", plan.goingOn);
  writeTexts(writer, "notes", plan.notes);
  writer.endObject();
}

}  // namespace stile::exchange
