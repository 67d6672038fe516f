#include "plan/edited_offers.h"

#include <algorithm>
#include <map>

#include "base/near_names.h"
#include "plan/line_dose.h"

namespace stile::plan {
namespace {

/// What the edits ask of one exercise in the end.
struct AskedLine {
  enum class State { Dropped, InPlace, Extra } state = State::Dropped;
  std::size_t edit = 0;
};

class Editor {
 public:
  Editor(std::vector<Offer>& offers, const OfferEditing& editing) : offers_(offers), editing_(editing) {}

  EditedOffers run();

 private:
  void refuse(std::size_t edit, std::string because, bool needsOverride = false) {
    result_.refused.push_back({edit, std::move(because), needsOverride});
  }
  bool isKnown(std::size_t edit, const std::string& exercise);
  void read(std::size_t index);
  Offer& offerOf(const std::string& purpose);
  void drop(const std::string& exercise, std::size_t edit);
  void fix(const std::string& exercise, const AskedLine& wish);
  std::optional<FixedLine> beyondLimits(const Refusal& refusal, std::size_t edit);
  int minutesOf(const FixedLine& line) const;
  void fitIntoSession();
  void dropPurposes();

  std::vector<Offer>& offers_;
  const OfferEditing& editing_;
  std::map<std::string, AskedLine> wishes_;                  // by exercise
  std::map<std::string, std::size_t> droppedPurposes_;  // to the edit
  EditedOffers result_;
};

Offer& Editor::offerOf(const std::string& purpose) {
  return *std::find_if(offers_.begin(), offers_.end(),
                       [&](const Offer& each) { return each.purpose->id == purpose; });
}

bool Editor::isKnown(std::size_t edit, const std::string& exercise) {
  if (editing_.library.find(exercise) != nullptr) return true;
  std::vector<std::string> names;
  for (const Exercise& each : editing_.library.exercises) names.push_back(each.id);
  refuse(edit, "there is no exercise \"" + exercise + "\"; " +
                   base::didYouMean(exercise, names, "look it up in the exercise library"));
  return false;
}

// Later edits about the same exercise take the place of earlier ones.
void Editor::read(std::size_t index) {
  const Edit& edit = editing_.edits.list[index];
  const auto isPurpose = [&](const Offer& each) { return each.purpose->id == edit.exercise; };
  if (edit.kind == EditKind::Drop && std::any_of(offers_.begin(), offers_.end(), isPurpose)) {
    droppedPurposes_[edit.exercise] = index;
    return;
  }
  if (!isKnown(index, edit.exercise)) return;
  switch (edit.kind) {
    case EditKind::Drop:
      wishes_[edit.exercise] = {AskedLine::State::Dropped, index};
      return;
    case EditKind::Pin:
      wishes_[edit.exercise] = {AskedLine::State::InPlace, index};
      return;
    case EditKind::Add: {
      const auto& lines = editing_.unedited.lines;
      if (std::any_of(lines.begin(), lines.end(),
                      [&](const Line& line) { return line.exercise->id == edit.exercise; }))
        return refuse(index, edit.exercise + " is in the plan already; pin it to keep it there");
      wishes_[edit.exercise] = {AskedLine::State::Extra, index};
      return;
    }
    case EditKind::Swap: {
      if (!isKnown(index, edit.with)) return;
      const std::string& from = editing_.library.find(edit.exercise)->purpose;
      const std::string& to = editing_.library.find(edit.with)->purpose;
      if (from != to)
        return refuse(index, edit.exercise + " is for " + from + ", " + edit.with + " for " + to +
                                 "; drop the one and add the other");
      if (edit.exercise == edit.with) return refuse(index, "an exercise cannot be swapped for itself");
      wishes_[edit.exercise] = {AskedLine::State::Dropped, index};
      wishes_[edit.with] = {AskedLine::State::InPlace, index};
      return;
    }
  }
}

void Editor::drop(const std::string& exercise, std::size_t edit) {
  Offer& offer = offerOf(editing_.library.find(exercise)->purpose);
  for (std::size_t i = 0; i < offer.candidates.size(); ++i) {
    if (offer.candidates[i].exercise->id != exercise) continue;
    offer.dropped.push_back({offer.candidates[i].exercise, edit});
    offer.candidates.erase(offer.candidates.begin() + static_cast<std::ptrdiff_t>(i));
    offer.doses.erase(offer.doses.begin() + static_cast<std::ptrdiff_t>(i));
    return;
  }
}

std::optional<FixedLine> Editor::beyondLimits(const Refusal& refusal, std::size_t edit) {
  const Exercise& exercise = *refusal.exercise;
  if (!editing_.fitting.prescription.sections.at(exercise.section).isOpen) {
    refuse(edit, exercise.title + ": cannot be dosed: " + refusal.because);
    return std::nullopt;
  }
  if (exercise.intensity > editing_.fitting.request.usable[exercise.bay]) {
    refuse(edit, exercise.title + ": " + refusal.because + "; that wants a clearance, not an override");
    return std::nullopt;
  }
  Refusal beyond = refusal;
  FixedLine line;
  line.candidate = fitBeyond(exercise, editing_.fitting, beyond);
  line.beyond = LineOverride{beyond.because, editing_.edits.list[edit].overrideReason, beyond.heldBy, false};
  for (const rules::Finding& finding : editing_.fitting.request.findings) {
    if (finding.rule == nullptr ||
        std::find(beyond.heldBy.begin(), beyond.heldBy.end(), finding.rule->id) == beyond.heldBy.end())
      continue;
    if (finding.rule->absolute) {
      refuse(edit, exercise.title + ": " + beyond.because + "; the rule " + finding.rule->id +
                       " is absolute and cannot be overridden");
      return std::nullopt;
    }
    line.beyond->needsSecond = line.beyond->needsSecond || finding.rule->acute;
  }
  if (line.beyond->reason.empty()) {
    refuse(edit, exercise.title + " is not open: " + beyond.because + "; it needs an override with a reason",
           true);
    return std::nullopt;
  }
  return line;
}

void Editor::fix(const std::string& exercise, const AskedLine& wish) {
  Offer& offer = offerOf(editing_.library.find(exercise)->purpose);
  std::optional<FixedLine> line;
  for (std::size_t i = 0; i < offer.candidates.size() && !line; ++i) {
    if (offer.candidates[i].exercise->id != exercise) continue;
    line = FixedLine{offer.candidates[i], offer.doses[i], 0, false, std::nullopt};
    offer.candidates.erase(offer.candidates.begin() + static_cast<std::ptrdiff_t>(i));
    offer.doses.erase(offer.doses.begin() + static_cast<std::ptrdiff_t>(i));
  }
  if (!line) {
    const auto refusal = std::find_if(offer.refusals.begin(), offer.refusals.end(),
                                      [&](const Refusal& each) { return each.exercise->id == exercise; });
    line = beyondLimits(*refusal, wish.edit);
    if (!line) return;
    line->dose = doseOf(line->candidate, editing_.fitting);
    offer.refusals.erase(refusal);
  }
  line->edit = wish.edit;
  line->isExtra = wish.state == AskedLine::State::Extra;
  if (!line->isExtra) offer.toChoose = std::max(0, offer.toChoose - 1);
  offer.fixed.push_back(std::move(*line));
}

int Editor::minutesOf(const FixedLine& line) const {
  if (line.candidate.exercise->section == Section::Aerobic) return 0;  // fitted beforehand
  return plan::minutesOf(line.candidate, line.dose, editing_.fitting.doses);
}

// Warm-up and cool-down keep their minutes; what is fixed has to fit beside them.
void Editor::fitIntoSession() {
  result_.sessionMinutes = editing_.fitting.prescription.sessionMinutes;
  if (!result_.sessionMinutes) return;
  int taken = 0;
  for (Section section : {Section::WarmUp, Section::CoolDown}) {
    const auto& lines = editing_.unedited.lines;
    const auto at = std::find_if(lines.begin(), lines.end(),
                                 [&](const Line& line) { return line.exercise->section == section; });
    if (at != lines.end())
      taken += static_cast<int>(roundedUp(at->dose.minutes.value_or(base::Rational(0))).floor());
  }
  for (Offer& offer : offers_) {
    const bool isFrame =
        offer.purpose->section == Section::WarmUp || offer.purpose->section == Section::CoolDown;
    for (auto line = offer.fixed.begin(); line != offer.fixed.end();) {
      const int minutes = isFrame && !line->isExtra ? 0 : minutesOf(*line);
      if (taken + minutes <= *result_.sessionMinutes) {
        taken += minutes;
        ++line;
        continue;
      }
      const std::string words = "the session has " +
                                std::to_string(*editing_.fitting.prescription.sessionMinutes) +
                                " minutes, and with this it takes " + std::to_string(taken + minutes);
      const std::string& reason = editing_.edits.list[line->edit].overrideReason;
      if (reason.empty()) {
        refuse(line->edit,
               line->candidate.exercise->id + ": " + words + "; it needs an override with a reason", true);
        if (!line->isExtra) ++offer.toChoose;
        line = offer.fixed.erase(line);
        continue;
      }
      if (!line->beyond) line->beyond = LineOverride{"", reason, {}, false};
      line->beyond->beyond += (line->beyond->beyond.empty() ? "" : "; ") + words;
      taken += minutes;
      result_.sessionMinutes = taken;
      ++line;
    }
  }
}

void Editor::dropPurposes() {
  for (const auto& [purpose, edit] : droppedPurposes_) {
    Offer& offer = offerOf(purpose);
    for (const Candidate& candidate : offer.candidates) offer.dropped.push_back({candidate.exercise, edit});
    offer.candidates.clear();
    offer.doses.clear();
    offer.toChoose = 0;
  }
}

EditedOffers Editor::run() {
  for (std::size_t i = 0; i < editing_.edits.list.size(); ++i) read(i);
  for (const auto& [exercise, wish] : wishes_)
    if (wish.state == AskedLine::State::Dropped) drop(exercise, wish.edit);
  for (const auto& [exercise, wish] : wishes_)
    if (wish.state != AskedLine::State::Dropped) fix(exercise, wish);
  dropPurposes();
  fitIntoSession();
  std::sort(result_.refused.begin(), result_.refused.end(),
            [](const RefusedEdit& a, const RefusedEdit& b) { return a.index < b.index; });
  return result_;
}

}  // namespace

EditedOffers edit(std::vector<Offer>& offers, const OfferEditing& editing) {
  return Editor(offers, editing).run();
}

}  // namespace stile::plan
