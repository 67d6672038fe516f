// Papers that leave the clinic: written for the last screening, and kept in the record as they went out.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "application/client_records.h"
#include "application/write_papers.h"

namespace stile::application {

/// Puts into the options what a record's papers say of client, physician and clinic, which figures they draw
/// (what the options say already, the client's choice, or the clinic's) and whether letters go out; a preview
/// made with them has the words that are issued.
base::Result<bool> fillFromRecord(PaperOptions& options, Clinic& clinic, const records::ClientRecord& record);

struct IssuedPaper {
  std::string entry, name, format;  ///< "handout", "pdf"
  std::string screening;            ///< entry it was made from
  std::string language;
  std::string build;                ///< of the figures drawn: "slight", "sturdy"; "" in papers without any
  std::string by;                   ///< sign-in name
  base::Date date;
};

/// What papers are made from. Making them asks nothing more of the clinic file, so it may take its time in
/// another thread; the content must outlive the order.
struct PaperOrder {
  std::shared_ptr<const screening::Screening> screening;
  base::Issues askedBack;
  PaperOptions options;
  std::string entry;  ///< of the screening in the record, "" while it is not filed
};

/// The papers of the client's last screening, with what the record says of client, physician, clinic and
/// decisions. Written again for the same screening, figures are drawn as they went out, unless the client or
/// the options say otherwise. Refused when the content is not the one the screening was made with.
base::Result<PaperOrder> orderPapers(Clinic& clinic, const std::string& id, const screening::Content& content, PaperOptions options);
base::Result<MadePapers> makePapers(const PaperOrder& order, const screening::Content& content, const std::string& contentFolder, base::Issues& issues);

/// Papers that go out: saved into a folder ("" = nowhere, for those that were printed) and each filed as it
/// is. With `only` one of them. Gives their paths.
base::Result<std::vector<std::string>> issueMade(Clinic& clinic, const std::string& id, const PaperOrder& order, const MadePapers& made,
                                                 const std::string& folder, const std::string& only, base::Date today);

/// Writes the papers of the last screening into `options.folder` and files each of them. The clinic's
/// settings and logo come from the file, name and record number from the client. Letters to others
/// are left out without the client's consent to share with the physician. Gives what `stile papers`
/// prints. Refused when the content is not the one the screening was made with.
base::Result<std::string> issuePapers(Clinic& clinic, const std::string& id, const screening::Content& content, const std::string& contentFolder,
                                      PaperOptions options, base::Date today, base::Issues& issues);

/// Writes the letter that an event drafted (entry of the kind "eventLetter") to `path`, as PDF, HTML or
/// text by its name, and files it as it went out. Refused without the client's consent to share with
/// the physician.
base::Result<bool> issueEventLetter(Clinic& clinic, const std::string& id, const std::string& letter, const screening::Content& content,
                                    const std::string& contentFolder, const std::string& path, base::Date today, base::Issues& issues);

std::vector<IssuedPaper> issuedPapers(const std::vector<records::Entry>& entries);
/// The bytes of an issued paper, as they went out.
base::Result<std::string> readPaper(Clinic& clinic, const std::string& id, const std::string& entry);

}  // namespace stile::application
