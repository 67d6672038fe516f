// What every paper for a client shares: head and foot in the client's language, size and colours.
#pragma once

#include <string>

#include "documents/document.h"
#include "documents/handout_texts.h"
#include "movement/build.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::documents {

/// How a paper for a client looks and in which language it is.
struct ClientStyle {
  TextSize textSize = TextSize::Points14;
  bool isBlackOnly = false;
  movement::Build build = movement::Build::Sturdy;  ///< of the figures drawn
  std::string language = "en";
  std::string notice;   ///< of a translation that nobody has reviewed yet, or ""
  std::string logoPng;  ///< bytes, or ""
  std::string sizeReason = {};  ///< why the letters are of that size, where the program chose it; or ""
};

/// What the makers of clients' papers are given.
struct ClientRequest {
  const screening::Screening& screening;
  const screening::Content& content;
  const records::ClinicSettings& settings;
  const records::PaperClient& client;
  const HandoutTexts& texts;
  ClientStyle style = {};
};

/// A paper with its head and foot; sections are added by its maker.
Document startClientPaper(const std::string& title, const ClientRequest& request);

/// The size of a client's letters by what the client told, and what is said of it on the papers.
struct LetterSize {
  TextSize textSize = TextSize::Points14;
  std::string say;
};
LetterSize letterSizeFor(const screening::Screening& screening, const HandoutTexts& texts);

}  // namespace stile::documents
