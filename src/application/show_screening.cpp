#include "application/show_screening.h"

#include "documents/summary.h"
#include "documents/text_writer.h"
#include "exchange/screening_json.h"

namespace stile::application {

std::string screeningAsText(const screening::Screening& screening, const screening::Content& content,
                            const base::Issues& askedBack) {
  return documents::toText(documents::summaryOf(screening, content, {}, {}, askedBack));
}

std::string screeningAsJson(const screening::Screening& screening, const screening::Content& content,
                            const base::Issues& askedBack) {
  return exchange::toJson(screening, content, askedBack);
}

}  // namespace stile::application
