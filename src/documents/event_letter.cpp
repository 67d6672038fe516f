#include "documents/event_letter.h"

#include "documents/paper_head.h"

namespace stile::documents {

Document eventLetterOf(const EventLetter& letter, const screening::Content& content, const records::ClinicSettings& settings,
                       const records::PaperClient& client, const LetterTexts& texts) {
  const auto& phrases = texts.phrases;
  Document paper = startPaper(phrases.say("eventTitle"), Reader::Physician, letter.date, content, settings, client);
  Section section;
  section.blocks.push_back({Paragraph{phrases.say("dear", {{"recipient", letter.recipient}}), ""}});
  section.blocks.push_back({Paragraph{letter.text, ""}});
  section.blocks.push_back({Paragraph{phrases.say("eventReply"), ""}});
  const std::string by = clinicianAndClinic(settings);
  section.blocks.push_back({Paragraph{by.empty() ? phrases.say("thisClinic") : by, phrases.say("regards")}});
  section.blocks.push_back({WriteLine{""}});
  paper.sections.push_back(std::move(section));
  return paper;
}

}  // namespace stile::documents
