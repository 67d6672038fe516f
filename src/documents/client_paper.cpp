#include "documents/client_paper.h"

#include "documents/client_boxes.h"
#include "documents/paper_head.h"

namespace stile::documents {

Document startClientPaper(const std::string& title, const ClientRequest& request) {
  const HandoutTexts& texts = request.texts;
  const auto& settings = request.settings;
  Document paper = startPaper(title, Reader::Client, request.screening, request.content, settings, request.client);
  paper.textSize = request.style.textSize;
  paper.isBlackOnly = request.style.isBlackOnly;
  paper.isOneExerciseAPage = request.style.textSize != TextSize::Points14;
  paper.language = request.style.language;
  paper.logoPng = request.style.logoPng;
  paper.words = {texts.phrase("page"), texts.phrase("rest"), texts.phrase("name"), texts.phrase("tickBox")};
  paper.about.clear();
  if (!request.client.born.empty()) {
    const auto born = base::Date::parse(request.client.born);
    paper.about.push_back(texts.phrase("born", {{"born", born ? texts.date(*born) : request.client.born}}));
  }
  paper.about.push_back(texts.date(request.screening.date));
  if (!request.style.sizeReason.empty()) paper.footer = {request.style.sizeReason, texts.phrase("caution")};
  else paper.footer = {texts.phrase("caution")};
  if (hasUnreviewedRules(request.content)) paper.footer.push_back(texts.phrase("notReviewed"));
  if (!request.style.notice.empty()) paper.footer.push_back(request.style.notice);
  paper.footer.push_back(texts.phrase("version", {{"version", request.content.version}}));
  paper.runningFoot = settings.telephone.empty()
                          ? title
                          : texts.phrase("foot", {{"emergencyNumber", emergencyNumberOf(settings, texts)},
                                                  {"telephone", settings.telephone}});
  if (!request.client.record.empty()) paper.runningFoot += " · " + texts.phrase("record", {{"record", request.client.record}});
  return paper;
}

LetterSize letterSizeFor(const screening::Screening& screening, const HandoutTexts& texts) {
  for (const LetterSizeLine& line : texts.letterSizes) {
    const auto* definition = screening.facts.dictionary().find(line.fact);
    if (definition == nullptr || !definition->group.empty()) continue;
    const auto& value = screening.facts.at(definition->slot).value;
    const bool holds = line.is.empty() ? value.truth == expression::Truth::True : value.text && *value.text == line.is;
    if (!holds) continue;
    const TextSize size = line.points == 24 ? TextSize::Points24 : line.points == 18 ? TextSize::Points18 : TextSize::Points14;
    return {size, line.say};
  }
  return {};
}

}  // namespace stile::documents
