#include "documents/handout.h"

#include <algorithm>

#include "documents/client_boxes.h"
#include "documents/client_sheets.h"
#include "documents/client_wishes.h"
#include "documents/decision_words.h"
#include "documents/exercise_blocks.h"
#include "documents/limit_words.h"
#include "documents/not_for_now.h"
#include "documents/paper_head.h"
#include "documents/week_grid.h"
#include "facts/fact_display.h"

namespace stile::documents {
namespace {

using limits::Limits;
using screening::Screening;

class HandoutMaker {
 public:
  explicit HandoutMaker(const ClientRequest& request)
      : request_(request),
        screening_(request.screening),
        content_(request.content),
        settings_(request.settings),
        texts_(request.texts),
        plan_(*request.screening.plan),
        limits_(request.screening.floor.limits) {}

  void addTo(Document& paper) {
    auto rows = notForNowRows(screening_, content_.rules.vocabulary, texts_);
    std::vector<Row> rest;
    if (rows.size() > kNotForNowLines) {
      rest.assign(rows.begin() + static_cast<std::ptrdiff_t>(kNotForNowLines), rows.end());
      rows.resize(kNotForNowLines);
    }
    paper.sections.push_back(firstPage(std::move(rows), !rest.empty(), paper.isOneExerciseAPage));
    addList(paper, "gates", gateSentences(request_));
    addList(paper, "checks", checkSentences(request_));
    addList(paper, "keepTo", keepToSentences(request_));
    addList(paper, "goals", plan_.firstSteps);
    // Where each exercise has a page of its own, what holds for several of them stands before them all.
    const bool isApart = paper.isOneExerciseAPage;
    if (isApart) addEffort(paper, true);
    for (Section& section : exerciseSections(request_, !isApart))
      paper.sections.push_back(std::move(section));
    if (!isApart) addEffort(paper, false);
    // A sheet of its own, to hang up.
    paper.sections.push_back(weekSection(plan_, limits_, texts_));
    paper.sections.back().startsPage = true;
    if (!plan_.weeks.empty()) paper.sections.push_back({texts_.heading("weeksAhead"), {{weeksTable(plan_, texts_)}}, false});
    addList(paper, "goingOn", plan_.goingOn);
    addList(paper, "pain", HandoutTexts::chosen(texts_.pain, screening_, Choice::CertainOnly));
    addList(paper, "badDay", plan_.badDay);
    addList(paper, "missedWeek", plan_.missedWeek);
    addList(paper, "afterIllness", plan_.afterIllness);
    addList(paper, "notes", plan_.notes);
    addList(paper, "findings", findingSentences());
    if (!rest.empty()) {
      Section more{texts_.heading("notForNowRest"), {}, false};
      addNotForNow(more, std::move(rest));
      paper.sections.push_back(std::move(more));
    }
  }

 private:
  /// `isLarge`: large letters leave room for the boxes only; who made it stands after them.
  Section firstPage(std::vector<Row> rows, bool isMoreBehind, bool isLarge) const {
    Section section;
    Block made{Paragraph{texts_.phrase("madeFor", {{"by", madeBy(settings_, texts_)},
                                                                  {"date", texts_.date(screening_.date)},
                                                                  {"until", texts_.date(until())}}) +
                                            " " + texts_.phrase("callAgain"),
                                        "", Tone::Small}};
    if (!isLarge) section.blocks.push_back(made);
    if (!rows.empty()) {
      const std::string more = isMoreBehind ? " " + texts_.phrase("restIsOnLastPage") : "";
      Box box{BoxKind::NotForNow, texts_.heading("notForNow") + more, {{Rows{std::move(rows), true}}}};
      section.blocks.push_back({std::move(box)});
    }
    for (Block& block : stopBoxes(screening_, settings_, texts_, Choice::AllFindings))
      section.blocks.push_back(std::move(block));
    if (isLarge) section.blocks.push_back(std::move(made));
    return section;
  }

  /// How hard it should feel, and whom to ask: before a part that starts a page, where there is room.
  void addEffort(Document& paper, bool saysShared) const {
    Section section = effort(saysShared);
    for (Block& block : contactBlocks(settings_, texts_)) section.blocks.push_back(std::move(block));
    section.staysWhole = true;
    paper.sections.push_back(std::move(section));
  }

  Section effort(bool saysShared) const {
    Section section{texts_.heading("effort"), {}, false};
    if (!plan_.effortWords.empty()) section.blocks.push_back({List{plan_.effortWords, false, false}});
    if (saysShared)
      for (const SharedManner& shared : sharedManners(plan_, content_.library, texts_))
        section.blocks.push_back({Paragraph{shared.manner, shared.heading + ":"}});
    section.blocks.push_back({Paragraph{texts_.phrase("tooHardGeneral"), texts_.phrase("tooHardLead")}});
    return section;
  }

  /// The last day of use: the length the texts give, or the end of a clearance that comes sooner.
  base::Date until() const {
    base::Date last = plus(screening_.date, texts_.useFor);
    for (const screening::Coverage& coverage : screening_.coverage)
      if (coverage.covers && coverage.until && *coverage.until < last) last = *coverage.until;
    return last;
  }

  void addList(Document& paper, const char* heading, std::vector<std::string> items) const {
    if (!items.empty())
      paper.sections.push_back({texts_.heading(heading), {{List{std::move(items), false, false}}}, false});
  }

  /// What the certain findings say to the client, and what is still wanted of those that are open.
  std::vector<std::string> findingSentences() const {
    std::vector<std::string> sentences;
    for (const rules::Finding& finding : screening_.findings) {
      if (finding.say.client.empty() || finding.floor == Limits{}) continue;
      if (std::find(sentences.begin(), sentences.end(), finding.say.client) == sentences.end())
        sentences.push_back(finding.say.client);
    }
    return sentences;
  }

  const ClientRequest& request_;
  const Screening& screening_;
  const screening::Content& content_;
  const records::ClinicSettings& settings_;
  const HandoutTexts& texts_;
  const plan::StarterPlan& plan_;
  const Limits& limits_;
};

}  // namespace

std::optional<Document> handoutOf(const ClientRequest& request) {
  if (request.screening.planState != screening::PlanState::Made || !request.screening.plan) return std::nullopt;
  Document paper = startClientPaper(request.texts.handoutTitle, request);
  HandoutMaker(request).addTo(paper);
  return paper;
}

}  // namespace stile::documents
