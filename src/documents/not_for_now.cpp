#include "documents/not_for_now.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "documents/decision_words.h"
#include "documents/limit_words.h"

namespace stile::documents {
namespace {

using limits::Bay;
using limits::Limits;
using limits::Rung;
using screening::Screening;

/// How grave the gravest finding that holds something is; smaller is graver.
using Weight = std::tuple<bool, bool, int, int>;

Weight weightOf(const Screening& screening, const std::function<bool(const limits::Limits&)>& holds) {
  Weight gravest{true, true, 0, static_cast<int>(Rung::Vigorous)};
  for (const rules::Finding* finding : holdersOf(screening, holds)) {
    int left = static_cast<int>(Rung::Vigorous);
    for (const Bay bay : limits::kBays)
      left = std::min({left, static_cast<int>(finding->full.ceiling[bay]),
                       static_cast<int>(leftOpenBy(finding->full.clearance[bay]))});
    gravest =
        std::min(gravest, Weight{finding->standing != rules::Standing::Certain, !finding->rule->absolute,
                                 -static_cast<int>(finding->full.action), left});
  }
  return gravest;
}

const EffortLine* effortLine(const HandoutTexts& texts, std::optional<Bay> bay, Rung upTo) {
  for (const EffortLine& line : texts.effortLines)
    if (line.bay == bay && line.upTo == upTo) return &line;
  return nullptr;
}

class NotForNow {
 public:
  NotForNow(const Screening& screening, const Limits& limits, const rules::Vocabulary& vocabulary,
            const HandoutTexts& texts)
      : screening_(screening), limits_(limits), vocabulary_(vocabulary), texts_(texts) {}

  std::vector<Row> rows() {
    addEffort();
    addBans();
    addCaps();
    for (const std::string& id : limits_.settings) {
      const auto term = vocabulary_.settings.find(id);
      add(texts_.phrase("setting", {{"setting", termWords(vocabulary_.settings, id, true)}}),
          term == vocabulary_.settings.end() ? "" : possibleInstead(term->second));
    }
    return std::move(rows_);
  }

  /// Bans and caps alone, without what an exercise does instead.
  std::vector<std::string> movements() {
    addBans();
    addCaps();
    std::vector<std::string> sentences;
    for (const Row& row : rows_) sentences.push_back(row.term);
    return sentences;
  }

 private:
  void add(const std::string& what, const std::string& instead) {
    Row row{asSentence(capitalized(what)), {}, {}};
    if (!instead.empty()) row.text.push_back(texts_.phrase("instead", {{"instead", instead}}));
    rows_.push_back(std::move(row));
  }

  /// Nobody who may not stand is told to walk.
  const std::string& possibleInstead(const rules::Term& term) const {
    for (const std::string& other : term.insteadNot)
      if (std::any_of(limits_.bans.begin(), limits_.bans.end(), [&](const limits::BanKey& key) { return key.ban == other; }))
        return vocabulary_.bans.at(other).instead;
    return term.instead;
  }

  void addEffort() {
    const auto& usable = screening_.floor.usable;
    if (usable.aerobic == usable.strength) {
      if (const EffortLine* line = effortLine(texts_, std::nullopt, usable.aerobic))
        add(line->what, line->instead);
      return;
    }
    for (const Bay bay : limits::kBays)
      if (const EffortLine* line = effortLine(texts_, bay, usable[bay])) add(line->what, line->instead);
  }

  std::string inClientList(const std::vector<std::string>& items) const {
    std::string text;
    for (std::size_t i = 0; i < items.size(); ++i)
      text += (i == 0 ? "" : i + 1 == items.size() ? " " + texts_.phrase("listAnd") + " " : ", ") + items[i];
    return text;
  }

  std::string sided(const std::string& what, limits::Side side) const {
    if (side == limits::Side::Both) return what;
    return texts_.phrase("oneSide", {{"what", what}, {"side", texts_.phrase(idOf(side))}});
  }

  void addBans() {
    struct Gathered {
      Weight weight;
      std::string instead;
      std::vector<std::string> what;
    };
    std::vector<Gathered> lines;
    const auto& bans = limits_.bans;
    for (const limits::BanKey& key : bans) {
      // A ban of both sides says more than the same ban of one side.
      if (key.side != limits::Side::Both && bans.contains({key.ban, limits::Side::Both})) continue;
      const auto term = vocabulary_.bans.find(key.ban);
      const std::string instead = term == vocabulary_.bans.end() ? "" : possibleInstead(term->second);
      const std::string what = sided(termWords(vocabulary_.bans, key.ban, true), key.side);
      const Weight weight =
          weightOf(screening_, [&](const limits::Limits& one) { return one.bans.contains(key); });
      const auto same = std::find_if(lines.begin(), lines.end(),
                                     [&](const Gathered& line) { return line.instead == instead; });
      if (same == lines.end()) {
        lines.push_back({weight, instead, {what}});
      } else {
        same->weight = std::min(same->weight, weight);
        same->what.push_back(what);
      }
    }
    std::stable_sort(lines.begin(), lines.end(),
                     [](const Gathered& a, const Gathered& b) { return a.weight < b.weight; });
    for (const Gathered& line : lines) add(inClientList(line.what), line.instead);
  }

  /// One line a movement and side: "past 20 degrees or with a weight".
  void addCaps() {
    const auto& caps = limits_.caps;
    std::map<std::pair<std::string, limits::Side>, std::vector<std::string>> lines;
    for (const auto& [key, degrees] : caps) {
      auto& ways = lines[{key.movement, key.side}];
      const auto any = caps.find({key.movement, key.side, limits::Qualifier::Any});
      // A cap on every way of doing it says more than the same cap, or a wider one, on one way.
      if (key.qualifier != limits::Qualifier::Any && any != caps.end() && any->second <= degrees) continue;
      const bool isNone = degrees == base::Rational(0);
      const char* phrase = isNone ? "" : "capAny";
      if (key.qualifier == limits::Qualifier::Loaded) phrase = isNone ? "capNoneLoaded" : "capLoaded";
      if (key.qualifier == limits::Qualifier::EndRange) phrase = isNone ? "capNoneEndRange" : "capEndRange";
      if (key.qualifier == limits::Qualifier::Fast) phrase = isNone ? "capNoneFast" : "capFast";
      if (const std::string way = texts_.phrase(phrase, {{"degrees", degrees.toText(0)}}); !way.empty())
        ways.push_back(way);
    }
    // What a cap asks instead is the same for all: it stands once, behind the last.
    std::size_t left = lines.size();
    for (const auto& [where, ways] : lines) {
      std::string what = sided(termWords(vocabulary_.movements, where.first, true), where.second);
      for (std::size_t i = 0; i < ways.size(); ++i) what += (i == 0 ? " " : " " + texts_.phrase("listOr") + " ") + ways[i];
      rows_.push_back({asSentence(capitalized(what)), {}, {}});
      if (--left == 0) rows_.back().text.push_back(texts_.phrase(hasOverride() ? "capInsteadBut" : "capInstead"));
    }
  }

  bool hasOverride() const {
    return screening_.plan && std::any_of(screening_.plan->lines.begin(), screening_.plan->lines.end(),
                                          [](const plan::Line& line) { return line.override.has_value(); });
  }

  const Screening& screening_;
  const Limits& limits_;
  const rules::Vocabulary& vocabulary_;
  const HandoutTexts& texts_;
  std::vector<Row> rows_;
};

}  // namespace

std::vector<Row> notForNowRows(const Screening& screening, const rules::Vocabulary& vocabulary,
                               const HandoutTexts& texts) {
  return NotForNow(screening, screening.floor.limits, vocabulary, texts).rows();
}

std::vector<std::string> movementsToLeaveOut(const Screening& screening, const Limits& limits,
                                             const rules::Vocabulary& vocabulary, const HandoutTexts& texts) {
  return NotForNow(screening, limits, vocabulary, texts).movements();
}

void addNotForNow(Section& section, std::vector<Row> rows) {
  if (!rows.empty()) section.blocks.push_back({Box{BoxKind::NotForNow, "", {{Rows{std::move(rows), true}}}}});
}

}  // namespace stile::documents
