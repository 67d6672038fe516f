#include "documents/client_boxes.h"

#include "documents/paper_head.h"

namespace stile::documents {

std::vector<Block> stopBoxes(const screening::Screening& screening, const records::ClinicSettings& settings,
                             const HandoutTexts& texts, Choice choice) {
  Box emergency{
      BoxKind::Emergency, texts.heading("emergency", {{"emergencyNumber", emergencyNumberOf(settings, texts)}}), {}};
  emergency.blocks.push_back({List{HandoutTexts::chosen(texts.emergency, screening, choice), false, true}});
  emergency.blocks.push_back({Paragraph{"", texts.phrase("emergencyLine")}});
  // Without a line of the clinic's own, the emergency number stands: nobody is left without a number.
  const std::string crisis =
      settings.crisisLine.empty()
          ? texts.phrase("crisisNoLine", {{"emergencyNumber", emergencyNumberOf(settings, texts)}})
          : texts.phrase("crisisLine", {{"crisisLine", settings.crisisLine}});
  emergency.blocks.push_back({Paragraph{crisis, ""}});
  Box stop{BoxKind::Stop, texts.heading("stopAndCall"), {}};
  stop.blocks.push_back({List{HandoutTexts::chosen(texts.stopAndCall, screening, choice), false, true}});
  if (!settings.telephone.empty() || !settings.outOfHours.empty())
    stop.blocks.push_back({Paragraph{
        settings.outOfHours.empty() ? "" : texts.phrase("outOfHours", {{"outOfHours", settings.outOfHours}}),
        settings.telephone}});
  return {{std::move(emergency)}, {std::move(stop)}};
}

std::vector<Block> contactBlocks(const records::ClinicSettings& settings, const HandoutTexts& texts) {
  if (settings.telephone.empty()) return {};
  Box box{BoxKind::Stop, texts.heading("questions"), {}};
  if (!settings.clinician.empty()) box.blocks.push_back({Paragraph{settings.clinician, ""}});
  box.blocks.push_back({Paragraph{"", settings.telephone, Tone::Number}});
  if (!settings.openingHours.empty()) box.blocks.push_back({Paragraph{settings.openingHours, ""}});
  if (!settings.email.empty()) box.blocks.push_back({Paragraph{texts.phrase("byEmail", {{"email", settings.email}}), ""}});
  return {{std::move(box)}};
}

std::string madeBy(const records::ClinicSettings& settings, const HandoutTexts& texts) {
  const std::string by = clinicianAndClinic(settings);
  return by.empty() ? texts.phrase("yourClinic") : by;
}

std::string emergencyNumberOf(const records::ClinicSettings& settings, const HandoutTexts& texts) {
  return settings.emergencyNumber.empty() ? texts.phrase("anyEmergencyNumber") : settings.emergencyNumber;
}

}  // namespace stile::documents
