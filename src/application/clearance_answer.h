// A physician's reply as somebody types it in, finding by finding, made into a response to the form
// clearance-reply. What the form asks stands in the form.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "application/client_records.h"
#include "screening/content.h"

namespace stile::application {

/// One finding that was asked about.
struct FindingAsked {
  std::string rule, title, basis;
};
/// Of a request on record, by the screening it asks about. Refused when that cannot be read with this content.
base::Result<std::vector<FindingAsked>> findingsAsked(Clinic& clinic, const std::string& id, const std::string& request, const screening::Content& content);

/// What was typed by linkId: codes for choices, days as YYYY-MM-DD, numbers for quantities (in the first unit of the item).
using TypedReply = std::map<std::string, std::string>;
struct PhysicianReply {
  TypedReply whole;                  ///< replyBy, replyDate
  std::vector<TypedReply> findings;  ///< in the order of `asked`; without an answer a finding is left out
};
std::string replyResponse(const screening::Content& content, const std::vector<FindingAsked>& asked, const PhysicianReply& reply);

}  // namespace stile::application
