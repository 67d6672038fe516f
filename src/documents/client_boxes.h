// Parts that every paper for a client carries: the two stop boxes and whom to call.
#pragma once

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "records/clinic_settings.h"
#include "screening/screening.h"

namespace stile::documents {

/// "Call … now if" and "Stop today and call us if".
std::vector<Block> stopBoxes(const screening::Screening& screening, const records::ClinicSettings& settings,
                             const HandoutTexts& texts, Choice choice);
/// "Questions? Call us." with names and numbers; nothing when the settings name no telephone.
std::vector<Block> contactBlocks(const records::ClinicSettings& settings, const HandoutTexts& texts);
/// "Ines Calloway, Tarnside Movement Clinic", or "your clinic" when the settings name neither.
std::string madeBy(const records::ClinicSettings& settings, const HandoutTexts& texts);
/// The number, or "the emergency number" when the settings give none.
std::string emergencyNumberOf(const records::ClinicSettings& settings, const HandoutTexts& texts);

}  // namespace stile::documents
