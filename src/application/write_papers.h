// The use case "write the papers": a screening in, files in a folder out.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "application/content_folder.h"
#include "application/translated_papers.h"
#include "base/issue.h"
#include "base/result.h"
#include "documents/letter_wording.h"
#include "records/decision_notes.h"
#include "records/clinic_settings.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

/// Settings and logo (bytes) that are at hand already.
struct GivenSettings {
  records::ClinicSettings settings;
  std::string logoPng;
};

/// Told before each paper is set: how many are done, of how many, and its name. False calls the work off.
using PaperProgress = std::function<bool(std::size_t done, std::size_t of, const std::string& name)>;

struct PaperOptions {
  std::string folder;        ///< made if it does not exist
  std::string settingsFile;  ///< "" = no clinic settings
  std::optional<GivenSettings> given;  ///< in place of the file
  records::PaperClient client;
  bool html = true, pdf = true;
  int textPoints = 0;        ///< 14, 18 or 24 for clients' papers; 0 = by the client's reading needs
  bool isBlackOnly = false;
  std::optional<movement::Build>
      build;                 ///< of the figures drawn; nothing = the client's choice, or else the clinic's
  std::string language;      ///< of clients' papers; "" = the clinic's own
  ScreenAgain screenAgain;   ///< wanted for another language
  std::string physician;     ///< whom the letter is addressed to, name and place
  records::DecisionNotes notes;  ///< what clinicians decided otherwise and signed; on the summary
  std::string referrer;      ///< who sent the client; "" = no outcome letter
  bool isSharedWithPhysician = true;  ///< without it no letter is written
  bool isWordingOnly = false;         ///< write no papers, only the wording of each letter, to change it
  std::vector<std::string> wordingFiles;            ///< changed wording, as files
  std::vector<documents::LetterWording> wordings;   ///< and at hand
  std::string only;                                 ///< name of the one paper wanted; "" = all
  PaperProgress progress;                           ///< may be empty
};

struct MadePaper {
  std::string name;    ///< of its file, without ending: "handout"
  std::string ending;  ///< ".pdf"
  std::string bytes;
};

/// Papers that were made and stand nowhere yet.
struct MadePapers {
  std::string summary;  ///< as text
  std::vector<MadePaper> papers;
  std::vector<documents::LetterWording> wordings;  ///< of each letter, as the program wrote it
};

struct WrittenPapers {
  std::string text;                ///< the summary, followed by the list of files
  std::vector<std::string> files;  ///< paths of the papers
  std::vector<documents::LetterWording> wordings;  ///< of each letter, as the program wrote it
};

/// Makes the summary, the letters, and by the state of the plan the handout with its sheets or the
/// waiting sheet. Letters take the wording that is given for them; refused when it does not fit, or when
/// its letter is not written today. Touches no file but those of the content, so it may run in a thread
/// of its own.
base::Result<MadePapers> makePapers(const screening::Screening& screening, const screening::Content& content,
                                    const base::Issues& askedBack, const std::string& contentFolder,
                                    const PaperOptions& options, base::Issues& issues);

/// Saves papers into a folder, which is made if it does not exist, and gives their paths. Papers of an
/// earlier run that no longer hold (a handout for a client who now waits) are removed. With `only` one
/// paper is saved, and the others count as those that hold.
base::Result<std::vector<std::string>> savePapers(const std::vector<MadePaper>& papers, const std::string& folder, const std::string& only = {});

/// Makes the papers and saves them into `options.folder`, or only the wording of the letters.
base::Result<WrittenPapers> writePapers(const screening::Screening& screening, const screening::Content& content,
                                      const base::Issues& askedBack, const std::string& contentFolder,
                                      const PaperOptions& options, base::Issues& issues);

}  // namespace stile::application
