#include "plan/library.h"

#include <algorithm>

#include "plan/computed_demands.h"
#include "plan/content_reading.h"
#include "plan/doses.h"
#include "plan/doses_reader.h"
#include "plan/exercise_reader.h"
#include "plan/library_checker.h"

namespace stile::plan {
namespace {

constexpr std::string_view kExerciseFolder = "rules/exercises/";
constexpr std::string_view kDosesFile = "rules/doses.json";
constexpr std::string_view kEasingFile = "rules/easing.json";
constexpr std::string_view kWishesFile = "rules/wishes.json";

bool isExerciseFile(std::string_view path) {
  return path.size() > kExerciseFolder.size() && path.substr(0, kExerciseFolder.size()) == kExerciseFolder &&
         path.substr(path.size() - 5) == ".json";
}

/// Sorts by id and removes the later one of two with the same id.
void sortAndCheckIds(std::vector<Exercise>& exercises, base::Issues& issues) {
  std::stable_sort(exercises.begin(), exercises.end(),
                   [](const Exercise& a, const Exercise& b) { return a.id < b.id; });
  for (std::size_t i = 1; i < exercises.size(); ++i) {
    if (exercises[i].id == exercises[i - 1].id)
      issues.error(exercises[i].place, exercises[i].id, "this exercise id stands twice",
                   "give one of them another id");
  }
  const auto same = [](const Exercise& a, const Exercise& b) { return a.id == b.id; };
  exercises.erase(std::unique(exercises.begin(), exercises.end(), same), exercises.end());
}

/// Reads the wishes, and keeps beside the doses what each of them rests on.
Wishes wishesWithSources(const std::string& text, const std::string& file,
                         const facts::Dictionary& dictionary, NamedSources& sources, Library::Doses& doses,
                         base::Issues& issues) {
  NamedSources own;
  Wishes wishes = readWishes(text, file, dictionary, own, issues);
  for (const Wish& wish : wishes.all)
    for (const auto& [id, place] : own)
      if (place.line == wish.place.line && place.column == wish.place.column)
        doses.wishSources[wish.id].push_back(id);
  sources.insert(sources.end(), own.begin(), own.end());
  return wishes;
}

void readEasing(const std::map<std::string, std::string>& files, const facts::Dictionary& dictionary,
                NamedSources& sources, Library::Doses& doses, base::Issues& issues) {
  const auto at = files.find(std::string(kEasingFile));
  if (at == files.end()) {
    issues.error(base::Place{std::string(kEasingFile), 0, 0, {}}, "easing", "the file is missing");
    return;
  }
  ContentReading content(dictionary, sources, issues);
  doses.easingWords = readEasingWords(at->second, at->first, content);
}

}  // namespace

const Exercise* Library::find(std::string_view id) const {
  const auto at = std::lower_bound(
      exercises.begin(), exercises.end(), id,
      [](const Exercise& exercise, std::string_view wanted) { return exercise.id < wanted; });
  return at != exercises.end() && at->id == id ? &*at : nullptr;
}

Library Library::load(const std::map<std::string, std::string>& files, const facts::Dictionary& dictionary,
                      const rules::RuleSet& rules, base::Issues& issues) {
  Library library;
  for (const auto& [path, text] : files) {
    if (isExerciseFile(path)) readExercises(text, path, library.exercises, issues);
  }
  sortAndCheckIds(library.exercises, issues);
  library.figures = movement::readFigures(files, issues);
  applyFigures(library.figures, library.exercises, issues);
  const auto at = files.find(std::string(kDosesFile));
  if (at == files.end()) {
    issues.error(base::Place{std::string(kDosesFile), 0, 0, {}}, "doses", "the file is missing");
    return library;
  }
  NamedSources sources;
  auto doses = readDoses(at->second, at->first, dictionary, library.purposes, sources, issues);
  if (doses == nullptr) return library;
  doses->vocabulary = rules.vocabulary;
  library.doses = doses;
  readEasing(files, dictionary, sources, *doses, issues);
  const auto wishes = files.find(std::string(kWishesFile));
  if (wishes == files.end())
    issues.error(base::Place{std::string(kWishesFile), 0, 0, {}}, "wishes", "the file is missing");
  else
    library.wishes = wishesWithSources(wishes->second, wishes->first, dictionary, sources, *doses, issues);
  checkExercises(library, dictionary, rules, issues);
  checkDoses(library, rules, sources, base::Place{at->first, 1, 1, {}}, issues);
  return library;
}

}  // namespace stile::plan
