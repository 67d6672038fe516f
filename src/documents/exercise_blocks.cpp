#include "documents/exercise_blocks.h"

#include <algorithm>
#include <set>

#include "plan/doses.h"
#include "plan/figure_of.h"

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
      if (const auto cap = capFor(limits, demand.movement, side, demand.done); cap && *withMargin > *cap)
        return false;
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

/// What to do when it is too hard; "" when only the general advice serves.
std::string tooHard(const plan::Line& line, const plan::StarterPlan& plan,
                    const screening::Screening& screening, const plan::Library& library,
                    const HandoutTexts& texts) {
  const plan::Exercise* easier =
      line.exercise->easier.empty() ? nullptr : library.find(line.exercise->easier);
  if (easier == nullptr || library.doses == nullptr ||
      !isOpenBeside(*easier, line, plan, screening, library.doses->surgicalMargin))
    return "";
  for (std::size_t i = 0; i < plan.lines.size(); ++i)
    if (plan.lines[i].exercise == easier)
      return texts.phrase("tooHardNumber", {{"number", std::to_string(i + 1)}});
  return texts.phrase("tooHard", {{"title", easier->title}, {"steps", joined(easier->steps)}});
}

const char* headingKey(plan::Section section) {
  switch (section) {
    case plan::Section::WarmUp:
      return "warmUp";
    case plan::Section::Aerobic:
      return "aerobic";
    case plan::Section::Strength:
      return "strength";
    case plan::Section::Balance:
      return "balance";
    case plan::Section::Stretching:
      return "stretching";
    case plan::Section::CoolDown:
      return "coolDown";
    case plan::Section::Breathing:
      return "breathing";
  }
  return "";
}

Block exerciseBlock(const ClientRequest& request, std::size_t index, bool saysManner,
                    std::set<std::string>& saidWishes) {
  const plan::StarterPlan& plan = *request.screening.plan;
  const plan::Library& library = request.content.library;
  const HandoutTexts& texts = request.texts;
  const plan::Line& line = plan.lines[index];
  movement::PictureOptions drawn;
  drawn.build = request.style.build;
  Box box{BoxKind::Exercise, line.exercise->title, {}, std::to_string(index + 1), {}};
  if (const auto picture = plan::figureOf(library, line, drawn)) box.picture = Figure{*picture, {}};
  if (!line.exercise->equipmentWords.empty())
    box.blocks.push_back(
        {Paragraph{texts.phrase("equipment", {{"equipment", line.exercise->equipmentWords}}), ""}});
  if (!line.changed.empty())
    box.blocks.push_back({Paragraph{"", texts.phrase("changed", {{"changed", line.changed}})}});
  // A wish is named at the first exercise that serves it.
  if (!line.saidBecause.empty() && saidWishes.insert(line.saidBecause).second) box.blocks.push_back({Paragraph{line.saidBecause, "", Tone::Small}});
  if (line.override && !line.override->rules.empty()) box.blocks.push_back({Paragraph{texts.phrase("overridden"), ""}});
  box.blocks.push_back({List{line.exercise->steps, true, false}});
  const DoseWords dose = doseWordsOf(line, library);
  box.blocks.push_back({Paragraph{dose.amount, "", Tone::Dose}});
  if (saysManner && !dose.manner.empty()) box.blocks.push_back({Paragraph{dose.manner, ""}});
  if (const std::string easier = tooHard(line, plan, request.screening, library, texts); !easier.empty())
    box.blocks.push_back({Paragraph{easier, texts.phrase("tooHardLead")}});
  if (line.next != nullptr)
    box.blocks.push_back(
        {Paragraph{texts.phrase("tooEasy", {{"title", line.next->title}}), texts.phrase("tooEasyLead")}});
  return {std::move(box)};
}

std::size_t endOfSection(const plan::StarterPlan& plan, std::size_t first) {
  std::size_t next = first;
  while (next < plan.lines.size() && plan.lines[next].exercise->section == plan.lines[first].exercise->section) ++next;
  return next;
}

/// The manner that every exercise of the section from `first` on has, when there are several; or "".
std::string sharedManner(const plan::StarterPlan& plan, std::size_t first, const plan::Library& library) {
  const std::size_t end = endOfSection(plan, first);
  const std::string manner = doseWordsOf(plan.lines[first], library).manner;
  for (std::size_t i = first; i < end; ++i)
    if (doseWordsOf(plan.lines[i], library).manner != manner) return "";
  return end - first > 1 ? manner : "";
}

}  // namespace

DoseWords doseWordsOf(const plan::Line& line, const plan::Library& library) {
  const std::string& words = line.dose.words;
  if (library.doses == nullptr) return {words, ""};
  const std::string howOften =
      line.dose.daysPerWeek ? library.doses->phrase("days", {{"days", line.dose.daysPerWeek->toText(1)}})
                            : library.doses->phrase("everySession");
  const auto at = words.find(howOften);
  if (at == std::string::npos) return {words, ""};
  const std::size_t end = at + howOften.size(), next = words.find_first_not_of(' ', end);
  return {words.substr(0, end), next == std::string::npos ? "" : words.substr(next)};
}

std::vector<SharedManner> sharedManners(const plan::StarterPlan& plan, const plan::Library& library, const HandoutTexts& texts) {
  std::vector<SharedManner> all;
  for (std::size_t first = 0; first < plan.lines.size(); first = endOfSection(plan, first))
    if (std::string manner = sharedManner(plan, first, library); !manner.empty())
      all.push_back({texts.heading(headingKey(plan.lines[first].exercise->section)), std::move(manner)});
  return all;
}

std::vector<Section> exerciseSections(const ClientRequest& request, bool saysShared) {
  const plan::StarterPlan& plan = *request.screening.plan;
  const HandoutTexts& texts = request.texts;
  std::vector<Section> sections;
  std::set<std::string> saidWishes;
  for (std::size_t first = 0, next = 0; first < plan.lines.size(); first = next) {
    next = endOfSection(plan, first);
    const std::string shared = sharedManner(plan, first, request.content.library);
    Section section{texts.heading(headingKey(plan.lines[first].exercise->section)), {}, false};
    if (saysShared && !shared.empty()) section.blocks.push_back({Paragraph{texts.phrase("forAll", {{"what", shared}}), ""}});
    for (std::size_t i = first; i < next; ++i)
      section.blocks.push_back(exerciseBlock(request, i, shared.empty(), saidWishes));
    sections.push_back(std::move(section));
  }
  return sections;
}

}  // namespace stile::documents
