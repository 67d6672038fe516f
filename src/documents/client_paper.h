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

/// A client who has said so gets the larger letters.
TextSize textSizeFor(const screening::Screening& screening);

}  // namespace stile::documents
