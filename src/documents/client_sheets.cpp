#include "documents/client_sheets.h"

#include <algorithm>

#include "documents/client_boxes.h"
#include "documents/client_wishes.h"
#include "documents/limit_words.h"
#include "documents/not_for_now.h"
#include "documents/paper_head.h"
#include "documents/week_grid.h"

namespace stile::documents {
namespace {

using screening::PlanState;

bool hasPlan(const ClientRequest& request) {
  return request.screening.planState == PlanState::Made && request.screening.plan;
}

void addList(Document& paper, const std::string& heading, std::vector<std::string> items) {
  if (!items.empty()) paper.sections.push_back({heading, {{List{std::move(items), false, false}}}, false});
}

void addStops(Document& paper, const ClientRequest& request) {
  paper.sections.push_back({"", stopBoxes(request.screening, request.settings, request.texts, Choice::AllFindings), false});
}

/// Sentences of a text, each with its full stop.
std::vector<std::string> sentencesOf(const std::string& text) {
  std::vector<std::string> sentences;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t stop = std::min(text.find(". ", at), text.size());
    sentences.push_back(text.substr(at, stop == text.size() ? stop : stop + 1 - at));
    at = stop == text.size() ? stop : stop + 2;
  }
  return sentences;
}

/// What every row says is said once, in a row before them.
void sayOnce(Table& table, const std::string& everyWeek) {
  if (table.rows.size() < 3) return;
  std::vector<std::string> shared = sentencesOf(table.rows.front()[1].text);
  for (const auto& row : table.rows) {
    const auto these = sentencesOf(row[1].text);
    std::erase_if(shared, [&](const std::string& one) { return std::find(these.begin(), these.end(), one) == these.end(); });
  }
  std::string words;
  for (const std::string& one : shared) words += (words.empty() ? "" : " ") + one;
  if (shared.empty()) return;
  for (auto& row : table.rows) {
    std::string own;
    for (const std::string& one : sentencesOf(row[1].text))
      if (std::find(shared.begin(), shared.end(), one) == shared.end()) own += (own.empty() ? "" : " ") + one;
    if (own.empty()) return;  // a row would be empty: the table stays as it is
    row[1].text = own;
  }
  table.rows.insert(table.rows.begin(), {{everyWeek, CellKind::Text}, {words, CellKind::Text}});
}

}  // namespace

Table weeksTable(const plan::StarterPlan& plan, const HandoutTexts& texts) {
  Table table{texts.heading("weeksAhead"), {texts.phrase("weekColumn"), texts.phrase("planColumn")}, {}, false, {1, 4}};
  const std::vector<std::string> said = weekWords(plan);
  for (std::size_t first = 0, next = 0; first < plan.weeks.size(); first = next) {
    next = first + 1;
    while (next < plan.weeks.size() && said[next] == said[first]) ++next;
    const std::string from = std::to_string(plan.weeks[first].number), to = std::to_string(plan.weeks[next - 1].number);
    table.rows.push_back({{from == to ? from : texts.phrase("weeks", {{"from", from}, {"to", to}}), CellKind::Text},
                          {said[first], CellKind::Text}});
  }
  sayOnce(table, texts.phrase("everyWeek"));
  return table;
}

Section weekSection(const plan::StarterPlan& plan, const limits::Limits& limits, const HandoutTexts& texts) {
  const int last = lastWeekOfGrid(plan);
  const std::string heading = last == 0   ? texts.heading("week")
                              : last == 1 ? texts.phrase("gridWeek")
                                          : texts.phrase("gridWeeks", {{"to", std::to_string(last)}});
  return {heading, {{weekGrid(plan, limits, texts)}}, false};
}

std::optional<Document> weekPlanOf(const ClientRequest& request) {
  if (!hasPlan(request)) return std::nullopt;
  const plan::StarterPlan& plan = *request.screening.plan;
  const HandoutTexts& texts = request.texts;
  Document paper = startClientPaper(texts.weekPlanTitle, request);
  paper.sections.push_back(weekSection(plan, request.screening.floor.limits, texts));
  if (!plan.weeks.empty())
    paper.sections.push_back({texts.heading("weeksAhead"), {{weeksTable(plan, texts)}}, false});
  addList(paper, texts.heading("goingOn"), plan.goingOn);
  addList(paper, texts.heading("badDay"), plan.badDay);
  addList(paper, texts.heading("missedWeek"), plan.missedWeek);
  addList(paper, texts.heading("afterIllness"), plan.afterIllness);
  addStops(paper, request);
  return paper;
}

std::optional<Document> recordSheetOf(const ClientRequest& request) {
  if (!hasPlan(request)) return std::nullopt;
  const HandoutTexts& texts = request.texts;
  Document paper = startClientPaper(texts.recordTitle, request);
  Section section{texts.heading("record"), {}, false};
  Table table;
  table.isGrid = true;
  table.caption = texts.heading("record");
  table.columns = {texts.phrase("recordDay")};
  for (const std::string& measure : measuresOf(request)) table.columns.push_back(measure);
  for (const char* key : {"recordDone", "recordEffort", "recordPain", "recordMorning"})
    table.columns.push_back(texts.phrase(key));
  for (int week = 0; week < 2; ++week)
    for (const std::string& day : texts.wordsOf("weekdays")) {
      std::vector<Cell> cells{{day, CellKind::Text}};
      while (cells.size() < table.columns.size()) cells.push_back({"", CellKind::Blank});
      table.rows.push_back(std::move(cells));
    }
  section.blocks.push_back({std::move(table)});
  section.blocks.push_back({WriteLine{texts.phrase("recordNote"), 2}});
  paper.sections.push_back(std::move(section));
  addStops(paper, request);
  return paper;
}

std::optional<Document> carerSheetOf(const ClientRequest& request) {
  if (!hasPlan(request)) return std::nullopt;
  const HandoutTexts& texts = request.texts;
  Document paper = startClientPaper(texts.carerTitle, request);
  Section first;
  if (!request.client.name.empty())
    first.blocks.push_back({Paragraph{texts.phrase("madeForClient", {{"client", isolated(request.client.name)}}), ""}});
  const std::string whom = request.client.name.empty() ? texts.phrase("thePerson") : isolated(request.client.name);
  first.blocks.push_back({Paragraph{texts.phrase("youMeans", {{"client", whom}}), ""}});
  auto boxes = stopBoxes(request.screening, request.settings, texts, Choice::AllFindings);
  auto help = HandoutTexts::chosen(texts.carer, request.screening, Choice::CertainOnly);
  // In large letters a box is a page: what fits beside the head goes first.
  const bool isLarge = paper.textSize != TextSize::Points14;
  if (!isLarge) first.blocks.insert(first.blocks.end(), std::make_move_iterator(boxes.begin()), std::make_move_iterator(boxes.end()));
  paper.sections.push_back(std::move(first));
  addList(paper, texts.heading("carerHelp"), std::move(help));
  if (isLarge) paper.sections.push_back({"", std::move(boxes), false});
  addList(paper, texts.heading("gates"), gateSentences(request));
  addList(paper, texts.heading("checks"), checkSentences(request));
  Section avoid{texts.heading("carerAvoid"), {}, false};
  addNotForNow(avoid, notForNowRows(request.screening, request.content.rules.vocabulary, texts));
  if (!avoid.blocks.empty()) paper.sections.push_back(std::move(avoid));
  addList(paper, texts.heading("badDay"), request.screening.plan->badDay);
  if (auto contact = contactBlocks(request.settings, texts); !contact.empty())
    paper.sections.push_back({"", std::move(contact), false});
  return paper;
}

}  // namespace stile::documents
