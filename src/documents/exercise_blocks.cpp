#include "documents/exercise_blocks.h"

#include <algorithm>

#include "plan/doses.h"

namespace stile::documents {
namespace {

bool isIn(const std::string& word, const std::vector<std::string>& list) {
  return std::find(list.begin(), list.end(), word) != list.end();
}

/// True when every limit allows the exercise as it stands, unchanged, and it asks for nothing that
/// the exercise of the line does not ask for already. Where in doubt, false: then general advice stands.
bool isOpenBeside(const plan::Exercise& easier, const plan::Line& line, const plan::StarterPlan& plan,
                  const screening::Screening& screening, const base::Rational& margin) {
  const limits::Limits& limits = screening.floor.limits;
  if (easier.purpose != line.exercise->purpose || !easier.setups.empty()) return false;
  if (easier.intensity > screening.floor.usable[easier.bay]) return false;
  for (const plan::LeftOut& out : plan.leftOut)
    if (out.exerciseId == easier.id) return false;
  for (const auto* bans : {&easier.involves, &easier.involvesOther})
    for (const std::string& ban : *bans)
      for (const limits::Side side : {limits::Side::Left, limits::Side::Right})
        if (isBanned(limits, ban, side)) return false;
  for (const std::string& setting : easier.settings)
    if (limits.settings.contains(setting)) return false;
  for (const plan::Demand& demand : easier.demands) {
    const auto withMargin = base::Rational::add(demand.degrees, margin);
    if (!withMargin) return false;
    for (const limits::Side side : {limits::Side::Left, limits::Side::Right})
      if (const auto cap = capFor(limits, demand.movement, side, demand.done); cap && *withMargin > *cap) return false;
  }
  const auto isUsed = [&](const std::string& thing) {
    return isIn(thing, line.exercise->equipment) || isIn(thing, line.exercise->needs);
  };
  return std::all_of(easier.equipment.begin(), easier.equipment.end(), isUsed) &&
         std::all_of(easier.needs.begin(), easier.needs.end(), isUsed);
}

std::string joined(const std::vector<std::string>& sentences) {
  std::string text;
  for (const std::string& sentence : sentences) text += (text.empty() ? "" : " ") + sentence;
  return text;
}

std::string tooHard(const plan::Line& line, const plan::StarterPlan& plan, const screening::Screening& screening,
                    const plan::Library& library, const HandoutTexts& texts) {
  const plan::Exercise* easier = line.exercise->easier.empty() ? nullptr : library.find(line.exercise->easier);
  if (easier == nullptr || library.doses == nullptr ||
      !isOpenBeside(*easier, line, plan, screening, library.doses->surgicalMargin))
    return texts.phrase("tooHardGeneral");
  for (std::size_t i = 0; i < plan.lines.size(); ++i)
    if (plan.lines[i].exercise == easier) return texts.phrase("tooHardNumber", {{"number", std::to_string(i + 1)}});
  return texts.phrase("tooHard", {{"title", easier->title}, {"steps", joined(easier->steps)}});
}

}  // namespace

Block exerciseBlock(const plan::StarterPlan& plan, std::size_t index, const screening::Screening& screening,
                    const plan::Library& library, const HandoutTexts& texts) {
  const plan::Line& line = plan.lines[index];
  Box box{BoxKind::Exercise, std::to_string(index + 1) + " " + line.exercise->title, {}};
  if (!line.exercise->equipmentWords.empty())
    box.blocks.push_back({Paragraph{texts.phrase("equipment", {{"equipment", line.exercise->equipmentWords}}), ""}});
  if (!line.changed.empty()) box.blocks.push_back({Paragraph{"", texts.phrase("changed", {{"changed", line.changed}})}});
  box.blocks.push_back({List{line.exercise->steps, true}});
  box.blocks.push_back({Paragraph{line.dose.words, "", Tone::Dose}});
  box.blocks.push_back({Paragraph{tooHard(line, plan, screening, library, texts), texts.phrase("tooHardLead")}});
  return {std::move(box)};
}

}  // namespace stile::documents
