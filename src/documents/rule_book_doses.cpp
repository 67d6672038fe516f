#include "documents/rule_book_doses.h"

#include <algorithm>
#include <cctype>

#include "documents/decision_words.h"
#include "documents/rule_book.h"
#include "plan/doses.h"

namespace stile::documents {
namespace {

using plan::Library;

using Cells = std::vector<std::string>;

/// "aerobicMinutes" -> "aerobic minutes".
std::string spaced(std::string_view id) {
  std::string words;
  for (const char c : id) {
    if (std::isupper(static_cast<unsigned char>(c)) != 0) words += ' ';
    words += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  }
  return words;
}

std::string together(const Cells& parts, const char* between) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : between) + part;
  return text;
}

std::string number(const base::Rational& value) {
  return value.toText(2);
}

std::string span(const base::Rational& low, const base::Rational& high) {
  return low == high ? number(low) : number(low) + " to " + number(high);
}

Table doseTable(const std::string& caption, const Cells& columns, const std::vector<int>& shares) {
  return {caption, columns, {}, false, shares};
}

void addRow(Table& table, const Cells& cells) {
  std::vector<Cell> row;
  for (const std::string& cell : cells) row.push_back({cell, CellKind::Text});
  table.rows.push_back(std::move(row));
}

/// Writes the parts of doses.json and wishes.json as sections, in the order in which a plan is made.
class DoseBook {
 public:
  DoseBook(const screening::Content& content, SourceList& sources)
      : content_(content), doses_(*content.library.doses), sources_(sources) {}

  Section effort() {
    Table scale =
        doseTable("Effort scale", {"Effort", "Name", "Highest rung", "Words for the client", "Sources"},
                  {2, 4, 3, 10, 3});
    for (const auto& anchor : doses_.anchors)
      addRow(scale, {span(anchor.from, anchor.to), anchor.name,
                     anchor.rung ? wordsOf(*anchor.rung) : "not dosed", anchor.client, cited("effortScale")});
    Table rows = doseTable("Effort by kind of exercise",
                           {"Kind", "Rung", "Effort", "Words for the client", "Kept in reserve", "Sources"},
                           {4, 3, 3, 10, 3, 3});
    for (const auto& row : doses_.efforts)
      addRow(rows,
             {plan::idOf(row.section), wordsOf(row.rung), span(row.low, row.high) + ", " + row.words,
              row.client, row.repetitionsInReserve ? number(*row.repetitionsInReserve) + " repetitions" : "",
              sources_.cite(row.sources)});
    return {"Doses: effort", {{std::move(scale)}, {std::move(rows)}}, false};
  }

  Section levels() {
    Table table = doseTable("Starting levels",
                            {"Level", "If", "Starts no higher than", "At most so many exercises", "Sources"},
                            {3, 8, 5, 7, 4});
    Table amounts = doseTable("Amounts at each level", {"Amount"}, {6});
    for (const auto& level : doses_.levels) {
      Cells lines;
      for (const auto& [section, count] : level.lines)
        lines.push_back(std::string(plan::idOf(section)) + " " + std::to_string(count));
      const std::string start = std::string("aerobic ") + wordsOf(level.rung.aerobic) + ", strength " +
                                wordsOf(level.rung.strength) +
                                (level.keepsModerate ? "; moderate activity done now goes on" : "") +
                                (level.staysSame ? "; always the same exercises" : "");
      addRow(table, {level.dose.level + ": " + level.title,
                     level.when ? inWords(*level.when) : "none of the others", asSentence(capitalized(start)),
                     asSentence(capitalized(together(lines, ", "))), sources_.cite(level.sources)});
      amounts.columns.push_back(level.dose.level);
      amounts.shares.push_back(2);
    }
    for (const std::string_view name : plan::kAmounts) {
      Cells row{capitalized(spaced(name))};
      for (const auto& level : doses_.levels) {
        const auto at = level.dose.amounts.find(std::string(name));
        row.push_back(at == level.dose.amounts.end() ? "" : number(at->second));
      }
      addRow(amounts, row);
    }
    return {"Doses: starting levels", {{std::move(table)}, {std::move(amounts)}}, false};
  }

  Section growth() {
    const plan::Growth& growth = doses_.growth;
    Table table = doseTable("How a plan grows", {"What", "How", "Sources"}, {4, 14, 3});
    addRow(table, {"Weeks",
                   std::to_string(growth.weeks) + " weeks; every " + std::to_string(growth.holdEvery) +
                       "th week nothing grows; slow progression takes " + std::to_string(growth.slowFactor) +
                       " times as long.",
                   cited("growth")});
    addRow(table, {"Aims",
                   number(growth.minutesGoal) + " minutes on " + number(growth.daysGoal) + " days, " +
                       number(growth.weeklyGoal) + " minutes a week.",
                   cited("growth")});
    addRow(table, {"Steps",
                   "Strength by " + number(growth.repetitionsStep) + " repetitions, then a set; balance by " +
                       number(growth.balanceMinutesStep) + " minutes.",
                   cited("growth")});
    for (const auto& way : doses_.aerobicGrowth)
      addRow(table, {"Aerobic time", (way.when ? "If " + inWords(*way.when) + ": " : "Else: ") + way.because,
                     sources_.cite(way.sources)});
    addRow(table,
           {"Care",
            "Surgical limits are kept by " + number(doses_.surgicalMargin) + "°; " +
                number(doses_.hoursBetweenStrength) + " hours between strength days; warm-up at least " +
                number(doses_.leastWarmUpMinutes) + ", cool-down at least " +
                number(doses_.leastCoolDownMinutes) + ", aerobic part at least " +
                number(doses_.leastAerobicMinutes) + " minutes where a session is cut short.",
            cited("care")});
    for (const auto& [rung, percent] : doses_.loadPercentOfMaximum)
      addRow(table, {"Load",
                     std::string(capitalized(wordsOf(rung))) + ": at most " + number(percent) +
                         " % of the most that can be lifted once.",
                     cited("loadBands")});
    for (const auto& [rung, band] : doses_.heartRate)
      addRow(table, {"Heart rate",
                     std::string(capitalized(wordsOf(rung))) + ": from " + inWords(band.low) + " to " +
                         inWords(band.high) + "; only where no finding asks for the effort scale alone.",
                     sources_.cite(band.sources)});
    return {"Doses: growth and care", {{std::move(table)}}, false};
  }

  Section purposes() {
    Table table = doseTable(
        "Purposes", {"Purpose", "Kind", "Priority", "If nothing fits, turn to", "Sources"}, {6, 4, 3, 5, 3});
    for (const auto& purpose : content_.library.purposes) {
      const auto service = content_.rules.vocabulary.services.find(purpose.turnTo);
      addRow(table, {purpose.title + " (" + purpose.id + ")", plan::idOf(purpose.section),
                     std::to_string(purpose.priority),
                     service == content_.rules.vocabulary.services.end() ? purpose.turnTo
                                                                         : service->second.clinician,
                     sources_.cite(purpose.sources)});
    }
    return {"Doses: purposes", {{std::move(table)}}, false};
  }

  Section wishes() {
    Table table = doseTable("Goals, likings and dislikes",
                            {"The client", "Comes sooner", "Rather", "Rather not", "First step", "Sources"},
                            {4, 5, 5, 5, 6, 3});
    for (const auto& wish : content_.library.wishes.all) {
      const auto at = doses_.wishSources.find(wish.id);
      addRow(table, {wish.clinician + " (" + wish.id + ")", together(wish.purposes, ", "),
                     together(wish.prefer, ", "), together(wish.discourage, ", "), wish.firstStep,
                     at == doses_.wishSources.end() ? "" : sources_.cite(at->second)});
    }
    const std::string rule =
        "A wish orders what is open. It opens nothing, and findings come before it. A named purpose gains " +
        std::to_string(content_.library.wishes.priorityRaise) + " over its priority.";
    return {"Wishes", {{Paragraph{rule, "", Tone::Body}}, {std::move(table)}}, false};
  }

  Section sentences() {
    Table table =
        doseTable("What a plan says besides",
                  {"When", "Words for the client", "Only with, or not with", "Sources"}, {4, 11, 6, 3});
    for (const std::string_view key : plan::kSentences)
      if (const auto at = doses_.sentences.find(key); at != doses_.sentences.end())
        for (const auto& sentence : at->second) {
          Cells bound;
          if (!sentence.ifRules.empty()) bound.push_back("only with " + together(sentence.ifRules, " or "));
          if (!sentence.unlessRules.empty())
            bound.push_back("not with " + together(sentence.unlessRules, " or "));
          addRow(table, {capitalized(spaced(key)), sentence.say, together(bound, "; "),
                         sources_.cite(sentence.sources)});
        }
    return {"Doses: what a plan says besides", {{std::move(table)}}, false};
  }

  Section exercises() {
    Table table =
        doseTable("Exercises", {"Exercise", "For", "Effort", "Asks of the body and the place", "Sources"},
                  {5, 4, 3, 10, 3});
    for (const auto& exercise : content_.library.exercises)
      addRow(table, {exercise.title + " (" + exercise.id + ")", exercise.purpose + ", " + exercise.position,
                     wordsOf(exercise.intensity), asks(exercise), sources_.cite(exercise.sources)});
    return {"Exercises", {{std::move(table)}}, false};
  }

 private:
  std::string cited(std::string_view part) const {
    const auto at = doses_.sources.find(part);
    return at == doses_.sources.end() ? "" : sources_.cite(at->second);
  }
  std::string inWords(const expression::Program& program) const {
    return conditionInWords(program.text(), content_.dictionary);
  }

  std::string asks(const plan::Exercise& exercise) const {
    const auto& vocabulary = content_.rules.vocabulary;
    const auto term = [](const auto& terms, const std::string& id) {
      const auto at = terms.find(id);
      return at == terms.end() ? id : at->second.clinician;
    };
    Cells parts;
    for (const std::string& id : exercise.involves) parts.push_back(term(vocabulary.bans, id));
    for (const auto& demand : exercise.demands)
      parts.push_back(term(vocabulary.movements, demand.movement) + " " + number(demand.degrees) + "°");
    for (const std::string& id : exercise.settings) parts.push_back(term(vocabulary.settings, id));
    return parts.empty() ? "" : asSentence(capitalized(together(parts, "; ")));
  }

  const screening::Content& content_;
  const Library::Doses& doses_;
  SourceList& sources_;
};

std::string bandWords(const facts::NormTable& table, const facts::NormRow& row) {
  const std::string edge = table.equalIsBelow ? (table.higherIsBetter ? "at or under " : "at or over ")
                                              : (table.higherIsBetter ? "under " : "over ");
  std::string words = "below: " + edge + number(row.below);
  if (row.above)
    words += "; above: " + std::string(table.higherIsBetter ? "over " : "under ") + number(*row.above);
  return words;
}

/// Each table once, in the order in which facts use them.
std::vector<const facts::NormTable*> normsOf(const facts::Dictionary& dictionary) {
  std::vector<const facts::NormTable*> list;
  for (int slot = 0; slot < dictionary.size(); ++slot) {
    const auto& derivation = dictionary.at(slot).derived;
    if (derivation.kind != facts::DerivedKind::Norm) continue;
    const auto* table = dictionary.norm(derivation.table);
    if (table != nullptr && std::find(list.begin(), list.end(), table) == list.end()) list.push_back(table);
  }
  return list;
}

}  // namespace

std::vector<Section> doseSectionsOf(const screening::Content& content, SourceList& sources) {
  if (content.library.doses == nullptr) return {};
  DoseBook book(content, sources);
  return {book.effort(), book.levels(),    book.growth(),   book.purposes(),
          book.wishes(), book.sentences(), book.exercises()};
}

std::vector<Section> measureSectionsOf(const screening::Content& content, SourceList& sources) {
  Table norms =
      doseTable("Norms", {"Test", "Sex", "Ages", "Where a result lies", "Sources"}, {8, 3, 3, 7, 3});
  for (const facts::NormTable* table : normsOf(content.dictionary))
    for (const facts::NormRow& row : table->rows)
      addRow(norms, {table->title, row.sex, std::to_string(row.ageFrom) + " to " + std::to_string(row.ageTo),
                     bandWords(*table, row), sources.cite(table->sources)});
  Table checks =
      doseTable("Checks", {"Check", "Says to the clinician", "Says to the client", "Sources"}, {4, 8, 8, 3});
  for (const auto& [id, check] : content.rules.checks)
    addRow(checks, {id, check.say.clinician, check.say.client, sources.cite(check.sources)});
  return {{"Norms", {{std::move(norms)}}, false}, {"Checks", {{std::move(checks)}}, false}};
}

}  // namespace stile::documents
