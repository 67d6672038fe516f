#include "documents/rule_book.h"

#include <algorithm>
#include <cctype>
#include <map>

#include "documents/decision_words.h"
#include "documents/rule_book_doses.h"
#include "documents/source_list.h"
#include "documents/template_words.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using rules::Rule;

bool isIdLetter(char c) {
  return std::isalnum(static_cast<unsigned char>(c)) != 0;
}

std::string joined(const std::vector<std::string>& parts) {
  std::string text;
  for (const std::string& part : parts) text += (text.empty() ? "" : "; ") + part;
  return text.empty() ? text : asSentence(capitalized(text));
}

std::string thenWords(const Rule& rule, const screening::Content& content) {
  std::string text = joined(templateWords(rule.then, content.rules, content.dictionary));
  if (text.empty()) text = "Nothing but what is said.";
  if (rule.until.key != rules::KeyKind::None)
    text += " Until: " + asSentence(rule.until.say.empty() ? noticeOf(rule.until.key) : rule.until.say);
  for (const auto& [list, words] :
       {std::pair(&rule.prefer, " Prefer: "), std::pair(&rule.discourage, " Rather not: ")})
    if (!list->empty()) text += words + asSentence(listed(*list));
  if (rule.absolute) text += " Cannot be overridden.";
  if (rule.acute) text += " An override needs a second licensed signature.";
  return text + " Says: " + rule.say.clinician;
}

std::string unknownWords(const Rule& rule, const screening::Content& content) {
  std::string text;
  switch (rule.ifUnknown) {
    case rules::IfUnknown::Cautious:
      text = "Counts in full.";
      break;
    case rules::IfUnknown::Gate:
      text = "Measure before the first session.";
      if (rule.gate)
        for (const std::string& one : rule.gate->clinician) text += " " + asSentence(capitalized(one));
      break;
    case rules::IfUnknown::Lowest:
      text = "Start at the lowest level.";
      break;
    case rules::IfUnknown::Pass:
      text = "Does not count.";
      break;
  }
  if (!rule.passReason.empty()) text += " " + asSentence(rule.passReason);
  if (rule.meanwhile)
    if (const std::string words = joined(templateWords(*rule.meanwhile, content.rules, content.dictionary));
        !words.empty())
      text += " Meanwhile: " + words;
  if (rule.whenUnsure) text += std::string(" Asked and not sure: ") + wordsOf(*rule.whenUnsure) + ".";
  return text;
}

std::string reviewedWords(const Rule& rule) {
  std::string text = rule.reviewedDate + ", " + rule.reviewedBy;
  return text + (rule.isLicensed ? ", licensed" : ", not yet by a licensed clinician");
}

}  // namespace

std::vector<Row> ruleRows(const Rule& rule, const screening::Content& content) {
  const std::string each = rule.forEach.empty() ? "" : "For each " + rule.forEach + ": ";
  std::vector<Row> rows{{"If", {each + conditionInWords(rule.when.text(), content.dictionary)}, {}},
                        {"Then", {thenWords(rule, content)}, {}},
                        {"If unknown", {unknownWords(rule, content)}, {}}};
  if (rule.sayOpen) rows.push_back({"While open, says", {rule.sayOpen->clinician}, {}});
  if (!rule.say.client.empty()) rows.push_back({"To the client", {rule.say.client}, {}});
  for (const std::string& source : rule.sources) rows.push_back({"Source", {content.rules.cite(source)}, {}});
  rows.push_back({"Reviewed", {reviewedWords(rule)}, {}});
  rows.push_back({"Id and file", {rule.id + ", " + rule.file}, {}});
  return rows;
}

std::string conditionInWords(const std::string& condition, const facts::Dictionary& dictionary) {
  std::string out;
  for (std::size_t i = 0; i < condition.size();) {
    const char c = condition[i];
    if (c == '%') {
      std::size_t end = i + 1;
      while (end < condition.size() && isIdLetter(condition[end])) ++end;
      const std::string id = condition.substr(i + 1, end - i - 1);
      const facts::Definition* definition = dictionary.find(id);
      out += definition == nullptr ? id : "\"" + definition->label + "\"";
      i = end;
    } else if (c == '\'') {
      const std::size_t end = std::min(condition.find('\'', i + 1), condition.size());
      const std::string literal = condition.substr(i + 1, end - i - 1);
      // After a number it is a unit, else a code.
      const bool isUnit = !out.empty() && out.back() == ' ' && out.size() > 1 &&
                          std::isdigit(static_cast<unsigned char>(out[out.size() - 2])) != 0;
      out += isUnit ? facts::unitWords(literal) : literal;
      i = end + 1;
    } else if (condition.compare(i, 2, ">=") == 0 || condition.compare(i, 2, "<=") == 0) {
      out += c == '>' ? "≥" : "≤";
      i += 2;
    } else {
      out += c;
      ++i;
    }
  }
  return out;
}

Document ruleBookOf(const screening::Content& content, const records::ClinicSettings& settings) {
  Document book;
  book.title = "Rule book";
  book.reader = Reader::Clinician;
  book.paperSize = settings.paperSize;
  book.clinic = settings.name;
  book.client = content.version;
  book.about.push_back(std::to_string(content.rules.rules.size()) + " rules");
  book.footer = {content.intendedUse.caution, content.intendedUse.notReviewed};
  book.runningFoot = "Rule book · " + content.version;
  SourceList sources(content.rules);
  std::map<std::string, Table> tables;
  std::vector<std::string> order;
  for (const Rule& rule : content.rules.rules) {
    if (!tables.contains(rule.topic)) {
      order.push_back(rule.topic);
      tables[rule.topic] = {
          rule.topic, {"Rule", "If", "Then", "If unknown", "Sources, reviewed"}, {}, false, {4, 6, 11, 5, 3}};
    }
    const std::string each = rule.forEach.empty() ? "" : "For each " + rule.forEach + ": ";
    tables[rule.topic].rows.push_back(
        {{rule.title + " (" + rule.id + ")", CellKind::Text},
         {each + conditionInWords(rule.when.text(), content.dictionary), CellKind::Text},
         {thenWords(rule, content), CellKind::Text},
         {unknownWords(rule, content), CellKind::Text},
         {sources.cite(rule.sources) + ". " + reviewedWords(rule), CellKind::Text}});
  }
  for (const std::string& topic : order) {
    std::string heading = capitalized(topic);
    std::replace(heading.begin(), heading.end(), '-', ' ');
    book.sections.push_back({heading, {{std::move(tables[topic])}}, false});
  }
  if (!content.rules.policies.empty()) {
    std::vector<Row> rows;
    for (const rules::Policy& policy : content.rules.policies) {
      Row row{policy.title, {asSentence(policy.question), asSentence(policy.decides)}, {}};
      for (const auto& [code, display] : policy.alternatives)
        row.text.push_back((code == policy.value ? "In force: " : "Or: ") + asSentence(display));
      if (const std::string cited = sources.cite(policy.sources); !cited.empty()) row.note.push_back(cited);
      rows.push_back(std::move(row));
    }
    book.sections.push_back({"Policies", {{Rows{std::move(rows)}}}, false});
  }
  for (auto& section : doseSectionsOf(content, sources)) book.sections.push_back(std::move(section));
  for (auto& section : measureSectionsOf(content, sources)) book.sections.push_back(std::move(section));
  if (!sources.empty()) book.sections.push_back({"Sources", {{sources.listed()}}, false});
  return book;
}

}  // namespace stile::documents
