// The words in which a client is told how far to go when an exercise is done smaller, and the clinician by
// how much. Read from rules/easing.json.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/issue.h"

namespace stile::plan {

class ContentReading;

/// What is said from `from` on: degrees, or percent of the full movement.
struct Landmark {
  int from = 0;
  std::string client;
};

/// Plain places on the body or in the room for how far a movement goes. A landmark is used only from the
/// angle on at which the body reaches it, so that nobody is told to go further than the picture.
struct Landmarks {
  std::string id;
  std::string movement;        ///< of the vocabulary, measured in degrees; "" = percent of the full movement
  std::vector<Landmark> rows;  ///< rising; the first from 0
  base::Place place;

  /// The words for a value; the last row that begins at or below it.
  const std::string& at(int value) const;
};

struct EasingWords {
  std::string clinician;  ///< slots {angles} and {percent}
  std::string angle;      ///< slots {degrees} and {movement}; several stand behind each other with commas
  std::vector<Landmarks> landmarks;

  const Landmarks* find(std::string_view id) const;
};

EasingWords readEasingWords(const std::string& text, const std::string& file, ContentReading& content);

}  // namespace stile::plan
