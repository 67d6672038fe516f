// One value of a plain fact file, read and checked against the dictionary.
#pragma once

#include <optional>
#include <string>

#include "facts/given.h"
#include "json/document.h"

namespace stile::facts {

struct PlainValue {
  Given given;
  ChosenOptions chosen;  ///< of a choice with several answers
};

/// The value or the reason for having none; nullopt and a located issue when it cannot be taken.
std::optional<PlainValue> readPlainValue(const Definition& definition, const std::string& subject,
                                         json::Node node, base::Date today, base::Issues& issues);

/// A date of which month or day may be missing, not after `today`.
std::optional<base::PartialDate> readPlainDate(json::Node node, base::Date today, const std::string& subject,
                                               base::Issues& issues);

/// `notSure`, `declined` …
std::optional<UnknownReason> readStatedReason(json::Node node, const std::string& subject,
                                              base::Issues& issues);

}  // namespace stile::facts
