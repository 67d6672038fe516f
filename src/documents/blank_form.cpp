#include "documents/blank_form.h"

#include <algorithm>
#include <map>

#include "documents/decision_words.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using questionnaire::EnableOperator;
using questionnaire::EnableWhen;
using questionnaire::Form;
using questionnaire::Item;
using questionnaire::ItemType;

constexpr std::size_t kColumnsOfALine = 4;
constexpr int kLinesOfAGroup = 6;

class FormMaker {
 public:
  FormMaker(const Form& form, const FormWords& words, const records::ClinicSettings& settings,
            const BlankFormOptions& options)
      : form_(form), phrases_(words.phrases), settings_(settings), options_(options) {
    for (const Item* item : form.inOrder())
      if (isQuestion(*item) && !isLeftOut(*item)) numbers_.emplace(item->linkId, static_cast<int>(numbers_.size()) + 1);
  }

  void addTo(Document& paper) {
    Section first;
    if (options_.isForHome && !options_.emergencySigns.empty()) {
      const std::string number = settings_.emergencyNumber.empty() ? "the emergency number" : settings_.emergencyNumber;
      Box box{BoxKind::Emergency, phrases_.say("homeFirst", {{"emergencyNumber", number}}), {}};
      box.blocks.push_back({List{options_.emergencySigns, false, true}});
      first.blocks.push_back({std::move(box)});
    }
    first.blocks.push_back({Paragraph{phrases_.say("fillIn") + " " + phrases_.say("askUs"), ""}});
    first.blocks.push_back({Columns{{{{Choices{phrases_.say("who"), {phrases_.say("clientItself"), phrases_.say("helper")}}}},
                                     {{WriteLine{phrases_.say("when")}}}},
                                    {3, 1}}});
    paper.sections.push_back(std::move(first));
    paper.sections.emplace_back();
    for (const auto& item : form_.items()) add(paper, *item);
    std::erase_if(paper.sections, [](const Section& section) { return section.blocks.empty(); });
  }

 private:
  static bool isQuestion(const Item& item) {
    return item.type != ItemType::Group && item.type != ItemType::Display && !item.isHidden;
  }
  bool isLeftOut(const Item& item) const {
    return options_.isForHome && item.topic.ends_with("/acute");
  }

  void add(Document& paper, const Item& item) {
    if (item.isHidden || isLeftOut(item)) return;
    if (item.type == ItemType::Display) {
      // A note before questions is their heading.
      if (item.parent == nullptr)
        paper.sections.push_back({item.text, {}, false});
      else if (!item.text.empty())
        into(paper).push_back({Paragraph{item.text, "", Tone::Small}});
      return;
    }
    if (item.type == ItemType::Group) {
      if (item.parent == nullptr && !item.text.empty()) paper.sections.push_back({item.text, {}, false});
      else if (!item.text.empty()) into(paper).push_back({Paragraph{"", item.text}});
      addCondition(paper, item);
      if (item.repeats) {
        addLines(paper, item);
        return;
      }
      for (const auto& child : item.items) add(paper, *child);
      return;
    }
    into(paper).push_back({question(item)});
    for (const auto& child : item.items) add(paper, *child);
  }

  static std::vector<Block>& into(Document& paper) { return paper.sections.back().blocks; }

  void addCondition(Document& paper, const Item& item) {
    if (const std::string words = condition(item); !words.empty())
      into(paper).push_back({Paragraph{words, "", Tone::Small}});
  }

  /// One question, never split: its words, its condition, its help, its places to answer.
  Box question(const Item& item) {
    Box box{BoxKind::Plain, "", {}};
    box.kind = BoxKind::Question;
    box.number = std::to_string(numbers_.at(item.linkId));
    box.title = item.text;
    if (const std::string words = condition(item); !words.empty())
      box.blocks.push_back({Paragraph{"", words, Tone::Small}});
    if (!item.help.empty()) box.blocks.push_back({Paragraph{item.help, "", Tone::Small}});
    for (Block& block : answerPlaces(item)) box.blocks.push_back(std::move(block));
    return box;
  }

  std::vector<Block> answerPlaces(const Item& item) const {
    switch (item.type) {
      case ItemType::Boolean:
        return {{Choices{"", {phrases_.say("yes"), phrases_.say("no"), phrases_.say("notSure")}}}};
      case ItemType::Choice:
      case ItemType::OpenChoice: {
        Choices choices{phrases_.say(item.repeats ? "tickAll" : "tickOne"), {}};
        for (const auto& option : item.options) choices.options.push_back(option.display.empty() ? option.code : option.display);
        choices.options.push_back(phrases_.say("notSure"));
        choices.isOnePerLine = false;
        std::vector<Block> blocks{{std::move(choices)}};
        if (item.type == ItemType::OpenChoice) blocks.push_back({WriteLine{phrases_.say("other")}});
        return blocks;
      }
      case ItemType::Quantity:
      case ItemType::Integer:
      case ItemType::Decimal: {
        std::string units;
        for (const std::string& unit : item.units) {
          const std::string words = facts::unitWords(unit);
          units += (units.empty() || words.empty() ? "" : " / ") + words;
        }
        return {{Columns{{{{WriteLine{units}}}, {{Choices{"", {phrases_.say("notSure")}}}}}, {1, 2}}}};
      }
      case ItemType::Date:
      case ItemType::DateTime:
      case ItemType::Time:
        return {{Columns{{{{WriteLine{phrases_.say("day")}}}, {{Choices{"", {phrases_.say("notSure")}}}}}, {3, 2}}}};
      case ItemType::Text:
        return {{WriteLine{"", 2}}};
      default:
        return {{WriteLine{""}}};
    }
  }

  /// A repeating group: one line for each repetition, or, when it asks too much for a line, its
  /// questions twice.
  void addLines(Document& paper, const Item& group) {
    std::vector<const Item*> questions;
    for (const auto& child : group.items)
      if (isQuestion(*child)) questions.push_back(child.get());
    if (questions.empty()) return;
    if (questions.size() <= kColumnsOfALine) {
      into(paper).push_back({Paragraph{phrases_.say("onceForEach"), "", Tone::Small}});
      Table table;
      table.isGrid = true;
      table.caption = group.text;
      for (const Item* item : questions) table.columns.push_back(std::to_string(numbers_.at(item->linkId)) + " " + item->text);
      for (int i = 0; i < kLinesOfAGroup; ++i)
        table.rows.push_back(std::vector<Cell>(questions.size(), {"", CellKind::Blank}));
      into(paper).push_back({std::move(table)});
      return;
    }
    for (int i = 1; i <= 2; ++i) {
      into(paper).push_back({Paragraph{"", group.text + " (" + std::to_string(i) + ")"}});
      for (const Item* item : questions) into(paper).push_back({question(*item)});
    }
  }

  std::string numberOf(const std::string& linkId) const {
    const auto at = numbers_.find(linkId);
    return at == numbers_.end() ? linkId : std::to_string(at->second);
  }

  std::string answerWords(const EnableWhen& when) const {
    if (when.boolean) return phrases_.say(*when.boolean ? "yes" : "no");
    if (when.number) {
      const std::string unit = when.unit.empty() ? "" : facts::unitWords(when.unit);
      return when.number->toText(2) + (unit.empty() ? "" : " " + unit);
    }
    if (!when.text) return "";
    if (const Item* asked = form_.find(when.question))
      for (const auto& option : asked->options)
        if (option.code == *when.text) return option.display.empty() ? option.code : option.display;
    return *when.text;
  }

  std::string condition(const Item& item) const {
    std::string words;
    for (const EnableWhen& when : item.enableWhen) {
      const std::string number = numberOf(when.question), answer = answerWords(when);
      const char* key = when.op == EnableOperator::Equal             ? "isAnswer"
                        : when.op == EnableOperator::NotEqual        ? "isNotAnswer"
                        : when.op == EnableOperator::Greater         ? "moreThan"
                        : when.op == EnableOperator::Less            ? "lessThan"
                        : when.op == EnableOperator::GreaterOrEqual  ? "atLeast"
                        : when.op == EnableOperator::LessOrEqual     ? "atMost"
                        : when.boolean.value_or(true)                ? "isAnswered"
                                                                     : "isNotAnswered";
      if (!words.empty()) words += " " + phrases_.say(item.enableAny ? "or" : "and") + " ";
      words += phrases_.say(key, {{"number", number}, {"answer", answer}, {"value", answer}});
    }
    return words.empty() ? "" : phrases_.say("onlyIf", {{"conditions", words}});
  }

  const Form& form_;
  const PhraseBook& phrases_;
  const records::ClinicSettings& settings_;
  const BlankFormOptions& options_;
  std::map<std::string, int> numbers_;
};

}  // namespace

FormWords FormWords::load(const std::string& text, const std::string& file, base::Issues& issues) {
  FormWords words;
  const auto document = json::Document::parse(text, file, issues);
  if (!document) return words;
  json::ObjectReader reader(document->root(), "forms", issues);
  words.phrases = PhraseBook::read(reader, "phrases", kFormPhrases, issues);
  reader.require("reviewed");
  reader.finish();
  return words;
}

Document blankFormOf(const Form& form, const FormWords& words, const records::ClinicSettings& settings,
                     const BlankFormOptions& options) {
  Document paper;
  paper.title = form.title().empty() ? form.name() : form.title();
  paper.reader = Reader::Physician;
  paper.paperSize = settings.paperSize;
  paper.language = options.language;
  for (const std::string& part : {settings.name, settings.address, settings.telephone})
    if (!part.empty()) paper.clinic += (paper.clinic.empty() ? "" : " · ") + part;
  paper.footer.push_back(options.caution);
  paper.footer.push_back(form.name() + " " + form.version() + " · " + options.version);
  FormMaker(form, words, settings, options).addTo(paper);
  return paper;
}

}  // namespace stile::documents
