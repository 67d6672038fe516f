// Letters: the question to the physician with its reply slip, referrals to other services, and the
// outcome to whoever sent the client. One page each in ordinary cases.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "documents/document.h"
#include "documents/letter_texts.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// What every letter is made from. `recipient`: name and place, or "" for the service's name.
struct LetterRequest {
  const screening::Screening& screening;
  const screening::Content& content;
  const records::ClinicSettings& settings;
  const records::PaperClient& client;
  const LetterTexts& texts;
  std::string recipient = {};
};

/// The question about clearance. `toClear`: indices of the findings that wait for a reply.
/// `wanted`: the intensity asked for. nullopt when nothing waits. The reply slip holds the questions of
/// the form clearance-reply, so that it can be typed back in.
std::optional<Document> clearanceLetterOf(const LetterRequest& request, const std::vector<std::size_t>& toClear,
                                          limits::Rung wanted);

/// One letter for each service that is called for certain, soonest first, with the service's id.
/// `isAskedAlready`: the physician has the clearance letter, which asks for both.
std::vector<std::pair<std::string, Document>> referralLettersOf(const LetterRequest& request, bool isAskedAlready);

/// What was decided, for who sent the client.
Document outcomeLetterOf(const LetterRequest& request);

}  // namespace stile::documents
