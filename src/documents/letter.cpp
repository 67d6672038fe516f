#include "documents/letter.h"

#include <algorithm>
#include <set>
#include <tuple>

#include "documents/decision_words.h"
#include "documents/letter_asks.h"
#include "documents/letter_facts.h"
#include "documents/limit_words.h"
#include "documents/paper_head.h"
#include "documents/reply_slip.h"

namespace stile::documents {
namespace {

using limits::Rung;
using screening::PlanState;
using screening::Screening;

/// More findings than these make the outcome letter longer than a page.
constexpr std::size_t kMostReasons = 10;
constexpr std::size_t kMostQuestions = 4;

std::string clientOf(const LetterRequest& request) {
  return request.client.name.empty() ? request.texts.phrases.say("aboutClient") : isolated(request.client.name);
}

Document start(const LetterRequest& request, const std::string& title, const std::string& recipient,
               const std::string& question) {
  Document paper = startPaper(title, Reader::Physician, request.screening, request.content, request.settings, request.client);
  // One line for the caution: a letter is one page.
  std::string caution;
  for (std::size_t i = 0; i + 1 < paper.footer.size(); ++i) caution += (i == 0 ? "" : " ") + paper.footer[i];
  paper.footer = {caution, paper.footer.back()};
  Section section;
  section.blocks.push_back({Paragraph{request.texts.phrases.say("dear", {{"recipient", recipient}}), ""}});
  section.blocks.push_back({Paragraph{question, "", Tone::Statement}});
  paper.sections.push_back(std::move(section));
  return paper;
}

/// Who writes, with the clinic.
std::string writer(const LetterRequest& request) {
  const std::string by = clinicianAndClinic(request.settings);
  return by.empty() ? request.texts.phrases.say("thisClinic") : by;
}

/// The sooner the matter, the nearer the day; what is wanted today is wanted today.
std::string replyBy(const LetterRequest& request, limits::Within within) {
  base::Date day = request.screening.date;
  if (within == limits::Within::Routine) day = plus(day, request.texts.replyWithin);
  if (within == limits::Within::Days) day = plus(day, request.texts.replySoon);
  return request.texts.phrases.say("replyBy", {{"date", day.toLongText()}});
}

/// The first aerobic and the first strength line of the plan, made or held.
std::string planned(const LetterRequest& request, Rung wanted) {
  const auto& phrases = request.texts.phrases;
  const auto& plan = request.screening.plan ? request.screening.plan : request.screening.heldPlan;
  std::string aerobic, strength;
  if (plan)
    for (const plan::Line& line : plan->lines) {
      const plan::Dose& dose = line.dose;
      if (aerobic.empty() && line.exercise->section == plan::Section::Aerobic && dose.minutes && dose.daysPerWeek &&
          dose.effortLow && dose.effortHigh)
        aerobic = asSentence(line.exercise->title) + " " +
                  phrases.say("plannedAerobic",
                              {{"minutes", dose.minutes->toText(0)},
                               {"days", dose.daysPerWeek->toText(0)},
                               {"effort", dose.effortLow->toText(0) + (*dose.effortLow == *dose.effortHigh
                                                                           ? ""
                                                                           : " to " + dose.effortHigh->toText(0))}});
      if (strength.empty() && line.exercise->section == plan::Section::Strength && dose.repetitions && dose.daysPerWeek)
        strength = phrases.say("plannedStrength", {{"rounds", dose.sets ? dose.sets->toText(0) : "1"},
                                                   {"repetitions", dose.repetitions->toText(0)},
                                                   {"days", dose.daysPerWeek->toText(0)}});
    }
  const auto means = request.texts.intensities.find(wanted);
  const std::string intensity = means == request.texts.intensities.end() ? "" : means->second.second;
  if (aerobic.empty() && strength.empty()) return phrases.say("plannedLater", {{"intensity", intensity}});
  return phrases.say("plannedHome", {{"by", writer(request)}, {"aerobic", aerobic}, {"strength", strength}, {"intensity", intensity}});
}

bool isShut(const LetterRequest& request) {
  const auto& usable = request.screening.floor.usable;
  return usable.aerobic == Rung::None && usable.strength == Rung::None;
}

std::string meanwhile(const LetterRequest& request) {
  const auto& usable = request.screening.floor.usable;
  if (isShut(request)) return request.texts.phrases.say("meanwhileShut");
  return request.texts.phrases.say("meanwhileOpen",
                                   {{"aerobic", wordsOf(usable.aerobic)}, {"strength", wordsOf(usable.strength)}});
}

/// A sentence that another one begins with is said by that one.
std::string joined(const std::set<std::string>& sentences) {
  std::string text;
  for (const std::string& one : sentences) {
    const std::string start = one.ends_with('.') ? one.substr(0, one.size() - 1) : one;
    const bool isSaid = std::any_of(sentences.begin(), sentences.end(), [&](const std::string& other) {
      return other.size() > one.size() && other.starts_with(start);
    });
    if (!isSaid) text += (text.empty() ? "" : " ") + asSentence(capitalized(one));
  }
  return text;
}

/// What was decided after an operation, as told: each with the limits it sets.
std::string limitsKept(const LetterRequest& request) {
  std::set<std::string> sentences;
  for (const rules::Finding& finding : request.screening.findings)
    if (finding.rule->surgical && finding.standing == rules::Standing::Certain) sentences.insert(finding.say.clinician);
  return joined(sentences);
}

/// True when the finding keeps the client from any exercise at all.
bool shutsLight(const Screening& screening, const rules::Finding& finding) {
  for (const screening::RungView& view : screening.rungs)
    if (view.rung == Rung::Light)
      for (const screening::RungReason& reason : view.reasons)
        if (&screening.findings[reason.finding] == &finding) return true;
  return false;
}

/// What the certain findings that made the decision say, gravest first, how many there are besides, and
/// what is still to be answered. While everything is shut, what a finding leaves open is not said.
std::string whyDecided(const LetterRequest& request) {
  const Screening& screening = request.screening;
  std::vector<const rules::Finding*> findings;
  for (const rules::Finding& finding : screening.findings) {
    if (finding.standing != rules::Standing::Certain || finding.full == limits::Limits{}) continue;
    const bool isGrave = finding.full.action >= limits::Action::WithinDays || finding.rule->surgical;
    if (!isShut(request) || isGrave || shutsLight(screening, finding)) findings.push_back(&finding);
  }
  const auto weight = [&](const rules::Finding* one) {
    return std::make_tuple(shutsLight(screening, *one), one->full.action, one->rule->surgical);
  };
  std::stable_sort(findings.begin(), findings.end(),
                   [&](const auto* a, const auto* b) { return weight(a) > weight(b); });
  std::string why;
  for (std::size_t i = 0; i < std::min(findings.size(), kMostReasons); ++i) why += (why.empty() ? "" : " ") + findings[i]->say.clinician;
  if (findings.size() > kMostReasons)
    why += " " + request.texts.phrases.say("lessWeight", {{"count", std::to_string(findings.size() - kMostReasons)}});
  if (!isShut(request)) return why;
  std::string open;
  std::size_t count = 0;
  for (const screening::OpenQuestion& question : screening.openQuestions)
    if (question.shutsRungs && count++ < kMostQuestions) open += (open.empty() ? "" : " ") + question.label;
  if (!open.empty()) why += (why.empty() ? "" : " ") + request.texts.phrases.say("stillOpen", {{"questions", open}});
  return why;
}

/// Signature, consent and copies in one row.
Section ending(const LetterRequest& request) {
  const auto& phrases = request.texts.phrases;
  const std::string signer = request.settings.clinician.empty() ? writer(request) : request.settings.clinician;
  Section section;
  std::vector<Block> left, right;
  left.push_back({Paragraph{signer, phrases.say("regards")}});
  left.push_back({WriteLine{""}});
  right.push_back({WriteLine{phrases.say("consent")}});
  right.push_back({WriteLine{phrases.say("copies")}});
  section.blocks.push_back({Columns{{std::move(left), std::move(right)}, {1, 1}}});
  return section;
}

}  // namespace

std::optional<Document> clearanceLetterOf(const LetterRequest& request, const std::vector<std::size_t>& toClear,
                                          Rung wanted) {
  if (toClear.empty()) return std::nullopt;
  const auto& texts = request.texts;
  const auto words = texts.intensities.find(wanted);
  const std::string intensity = words == texts.intensities.end() ? wordsOf(wanted) : words->second.first;
  const std::string question = texts.phrases.say("question", {{"intensity", intensity}, {"client", clientOf(request)}});
  const std::string recipient =
      request.recipient.empty() ? texts.kindFor("physician").address : request.recipient;
  Document paper = start(request, texts.kindFor("physician").title, recipient, question);
  Section& section = paper.sections.back();
  // The physician's referral, if there is one, is asked here and not in a letter of its own.
  const auto& referrals = request.screening.reach.limits.referrals;
  const auto referral = referrals.find("physician");
  const limits::Within within = referral == referrals.end() ? limits::Within::Routine : referral->second.within;
  const std::string urgency = referral == referrals.end() ? "" : capitalized(wordsOf(within)) + ".";
  section.blocks.push_back({Paragraph{replyBy(request, within) + " " + texts.phrases.say("opensNothing"), urgency}});
  std::vector<Row> rows;
  std::vector<std::string> asks = asksOf(request.screening, texts, "physician", toClear);
  asks.push_back(texts.phrases.say("opinion"));
  rows.push_back({texts.headings.say(asks.size() > 2 ? "whyAndAsked" : "whyAsked"), std::move(asks), {}});
  if (const std::string kept = limitsKept(request); !kept.empty()) rows.push_back({texts.headings.say("limitsKept"), {kept}, {}});
  for (Row& row : letterFactRows(request.screening, request.content, texts, texts.kindFor("physician"))) rows.push_back(std::move(row));
  rows.push_back({texts.headings.say("planned"), {planned(request, wanted)}, {}});
  rows.push_back({texts.headings.say("meanwhile"), {meanwhile(request)}, {}});
  section.blocks.push_back({Rows{std::move(rows)}});
  paper.sections.push_back(ending(request));
  paper.sections.push_back(replySlipOf(request, toClear));
  return paper;
}

std::vector<std::pair<std::string, Document>> referralLettersOf(const LetterRequest& request, bool isAskedAlready) {
  const auto& texts = request.texts;
  std::vector<std::pair<std::string, limits::Referral>> referrals(request.screening.reach.limits.referrals.begin(),
                                                                  request.screening.reach.limits.referrals.end());
  std::stable_sort(referrals.begin(), referrals.end(),
                   [](const auto& a, const auto& b) { return a.second.within > b.second.within; });
  std::vector<std::pair<std::string, Document>> letters;
  for (const auto& [service, referral] : referrals) {
    if (service == "emergency") continue;  // a call, never a letter
    if (service == "physician" && isAskedAlready) continue;
    const LetterKind& kind = texts.kindFor(service);
    const std::string recipient =
        kind.address.empty() ? termWords(request.content.rules.vocabulary.services, service, false) : kind.address;
    Document paper = start(request, kind.title, recipient,
                           filled(kind.question, {{"client", clientOf(request)}}));
    Section& section = paper.sections.back();
    section.blocks.push_back({Paragraph{replyBy(request, referral.within), capitalized(wordsOf(referral.within)) + "."}});
    std::vector<Row> rows;
    const auto add = [&](const char* heading, std::string text) {
      if (!text.empty()) rows.push_back({texts.headings.say(heading), {std::move(text)}, {}});
    };
    rows.push_back({texts.headings.say("whyAndAsked"), asksOf(request.screening, texts, service, {}), {}});
    if (service == "surgeon") add("limitsKept", limitsKept(request));
    for (Row& row : letterTestRows(request.screening, texts, kind)) rows.push_back(std::move(row));
    for (Row& row : letterFactRows(request.screening, request.content, texts, kind)) rows.push_back(std::move(row));
    // While everything is shut, no other word about what goes on may stand beside it.
    const std::string goesOn = isShut(request) ? "" : joined(referral.meanwhile);
    add("meanwhile", goesOn + (goesOn.empty() ? "" : " ") + meanwhile(request));
    section.blocks.push_back({Rows{std::move(rows)}});
    paper.sections.push_back(ending(request));
    paper.sections.push_back(opinionSlipOf(request));
    letters.emplace_back(service, std::move(paper));
  }
  return letters;
}

Document outcomeLetterOf(const LetterRequest& request) {
  const auto& texts = request.texts;
  const Screening& screening = request.screening;
  const LetterKind& kind = texts.kindFor("referrer");
  Document paper = start(request, kind.title, request.recipient.empty() ? writer(request) : request.recipient,
                         filled(kind.question, {{"client", clientOf(request)}}));
  Section& section = paper.sections.back();
  section.blocks.push_back({Paragraph{
      texts.phrases.say("outcomeThanks", {{"client", clientOf(request)}, {"date", screening.date.toLongText()}}), ""}});
  std::vector<Row> rows;
  // What is only routine stands under what comes next.
  std::string decided = decisionSentence(screening);
  if (screening.reach.limits.action >= limits::Action::SameDay) decided += " " + actionSentence(screening);
  rows.push_back({texts.headings.say("decided"), {decided}, {}});
  if (const std::string why = whyDecided(request); !why.empty()) rows.push_back({texts.headings.say("why"), {why}, {}});
  if (screening.planState == PlanState::Made && screening.plan)
    rows.push_back({texts.headings.say("plan"), {planned(request, std::max(screening.floor.usable.aerobic, screening.floor.usable.strength))}, {}});
  else if (screening.planState == PlanState::Held)
    rows.push_back({texts.headings.say("plan"), {texts.phrases.say("outcomeNoPlan", {{"because", screening.planBecause}})}, {}});
  else
    rows.push_back({texts.headings.say("plan"), {texts.phrases.say("outcomeNotYet")}, {}});
  std::string checks;
  // Checks go with a plan.
  const bool hasPlan = screening.planState == PlanState::Made;
  for (const std::string& id : hasPlan ? screening.floor.limits.checks : decltype(screening.floor.limits.checks){})
    if (const auto check = request.content.rules.checks.find(id); check != request.content.rules.checks.end())
      checks += (checks.empty() ? "" : " ") + check->second.say.clinician;
  if (!checks.empty()) rows.push_back({texts.headings.say("checks"), {checks}, {}});
  std::string next = texts.phrases.say("outcomeReview");
  std::vector<std::string> services;
  for (const auto& [service, referral] : screening.reach.limits.referrals) {
    const LetterKind& to = texts.kindFor(service);
    const std::string words = to.to == service && !to.address.empty()
                                  ? to.address
                                  : termWords(request.content.rules.vocabulary.services, service, false);
    services.push_back(texts.phrases.say("outcomeService", {{"service", words}, {"within", wordsOf(referral.within)}}));
  }
  if (!services.empty()) next += " " + texts.phrases.say("outcomeReferrals", {{"services", listed(services)}});
  rows.push_back({texts.headings.say("next"), {next}, {}});
  section.blocks.push_back({Rows{std::move(rows)}});
  paper.sections.push_back(ending(request));
  return paper;
}

}  // namespace stile::documents
