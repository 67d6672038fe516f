// A screening on record, made again from what was filed with it: the same answers give the same findings.
#pragma once

#include <string>

#include "application/client_records.h"
#include "application/screen_client.h"

namespace stile::application {

struct FiledScreening {
  std::string entry;
  base::Date date;
  std::string body;  ///< what went in, and how a clinician changed the plan
  bool isSignedOff = false;
};

/// The last screening of the record. A usage failure when there is none yet; refused when the content
/// is not the one it was made with. `record` is what `work` folds into.
base::Result<FiledScreening> lastFiled(const RecordWork& work, const records::ClientRecord& record, const screening::Content& content);

/// The screening as it was filed: its answers on its own day, and the plan as it was changed. `content`
/// may be a translation of the one it was made with.
base::Result<screening::Screening> screenedAgain(const screening::Content& content, const FiledScreening& filed, base::Issues& askedBack);

}  // namespace stile::application
