#include "plan/wishes.h"

#include <algorithm>
#include <set>

#include "json/document.h"
#include "plan/content_reading.h"
#include "plan/holders.h"
#include "plan/phrase.h"

namespace stile::plan {
namespace {

Wish readWish(const json::Node& node, ContentReading& content) {
  json::ObjectReader reader(node, "wishes", content.issues());
  Wish wish;
  wish.place = node.place();
  wish.id = reader.requireString("id");
  reader.setSubject(wish.id);
  wish.slot = content.slotOf(reader, "fact");
  wish.said = reader.requireString("said");
  wish.clinician = reader.requireString("clinician");
  wish.firstStep = reader.string("firstStep");
  wish.purposes = reader.strings("purposes");
  wish.prefer = reader.strings("prefer");
  wish.discourage = reader.strings("discourage");
  content.sourcesOf(reader);
  reader.finish();
  if (wish.purposes.empty() && wish.prefer.empty() && wish.discourage.empty())
    reader.issue(node, "this wish shapes nothing", "name purposes, or exercises to prefer or discourage");
  return wish;
}

}  // namespace

Wishes readWishes(const std::string& text, const std::string& file, const facts::Dictionary& dictionary,
                  std::vector<std::pair<std::string, base::Place>>& sources, base::Issues& issues) {
  Wishes wishes;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return wishes;
  ContentReading content(dictionary, sources, issues);
  json::ObjectReader root(document->root(), "wishes", issues);
  wishes.priorityRaise = content.requireInteger(root, "priorityRaise");
  if (const auto node = root.require("phrases")) {
    json::ObjectReader reader(*node, "phrases", issues);
    for (const char* key : kWishPhrases) wishes.phrases[key] = reader.requireString(key);
    reader.finish();
  }
  std::set<std::string> ids;
  for (const json::Node& node : root.array("wishes")) {
    wishes.all.push_back(readWish(node, content));
    if (!ids.insert(wishes.all.back().id).second)
      issues.error(node.place(), wishes.all.back().id, "this wish stands twice",
                   "give one of them another id");
  }
  if (const auto node = root.require("reviewed")) {
    json::ObjectReader reviewed(*node, "reviewed", issues);
    reviewed.requireString("date");
    reviewed.requireString("by");
    reviewed.boolean("licensed");
    reviewed.finish();
  }
  root.finish();
  return wishes;
}

std::vector<const Wish*> Wishes::of(const facts::FactSet& facts) const {
  std::vector<const Wish*> list;
  for (const Wish& wish : all)
    if (wish.slot >= 0 && facts.at(wish.slot).value.truth == expression::Truth::True) list.push_back(&wish);
  return list;
}

std::string Wishes::phrase(std::string_view key, const std::map<std::string, std::string>& slots) const {
  const auto at = phrases.find(key);
  return at == phrases.end() ? std::string() : filledIn(at->second, slots);
}

bool serves(const Exercise& exercise, const Wish& wish) {
  return isNamedIn(wish.prefer, exercise) ||
         std::find(wish.purposes.begin(), wish.purposes.end(), exercise.purpose) != wish.purposes.end();
}

int wishFor(const Exercise& exercise, const std::vector<const Wish*>& wishes) {
  int likes = 0, dislikes = 0;
  for (const Wish* wish : wishes) {
    if (isNamedIn(wish->prefer, exercise)) likes = 1;
    if (isNamedIn(wish->discourage, exercise)) dislikes = 1;
  }
  return likes - dislikes;
}

}  // namespace stile::plan
