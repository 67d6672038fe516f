// Use cases that ask and decide: answers saved as they are given, a screening made and filed, a
// physician asked, the reply taken in.
#pragma once

#include <string>
#include <vector>

#include "application/client_records.h"
#include "application/screen_client.h"

namespace stile::application {

/// Saves a whole draft: responses or plain facts, as screenClient() takes them. The text must be
/// JSON; what it says is checked when it is screened.
base::Result<bool> saveDraft(Clinic& clinic, const std::string& id, const Input& input, base::Date today, base::Issues& issues);

/// Takes answers one at a time: each call merges an object of plain facts into the draft, and
/// gives true once they are on the disk. A line with an error is refused whole. The record is read
/// once. The content must outlive the session.
class AnswerSession {
 public:
  static base::Result<AnswerSession> open(Clinic& clinic, const std::string& id, const screening::Content& content, base::Date today);
  base::Result<bool> save(const std::string& answers, base::Issues& issues);

 private:
  AnswerSession(RecordWork work, const screening::Content& content, base::Date today) : work_(std::move(work)), content_(&content), today_(today) {}
  RecordWork work_;
  const screening::Content* content_;
  base::Date today_;
};

/// What was filed.
struct Filed {
  std::string entry;                      ///< of the screening
  std::string actionRecord;               ///< entry, when this opened one
  screening::Screening screening;
  std::string text;                       ///< the summary, followed by what else holds the plan
};

/// What becomes of the draft that was screened.
enum class DraftAfter { Removed, Kept };

/// Screens the draft (or `inputs` when given) with all replies of physicians that are in the record,
/// and files it with everything that went in, the plan as the clinician changed it. Same-day action and
/// emergencies open an action record, unless one of that day is open. Nothing is filed when one of the
/// edits cannot be followed.
base::Result<Filed> screenAndFile(Clinic& clinic, const std::string& id, const screening::Content& content, const std::vector<Input>& inputs,
                                  base::Date today, base::Issues& issues, DraftAfter draft = DraftAfter::Removed,
                                  const plan::Edits& edits = {});

/// Asks a physician about the findings of the last screening that wait for a clearance. Refused
/// without the client's consent to share with the physician. Gives the request's entry id and a
/// reply form to fill in.
struct Asked {
  std::string request;
  std::string blankReply;
};
base::Result<Asked> askPhysician(Clinic& clinic, const std::string& id, const screening::Content& content, const std::string& to, base::Date today);

/// Takes in a reply: a response to the form clearance-reply.
base::Result<std::string> fileReply(Clinic& clinic, const std::string& id, const std::string& request, const screening::Content& content,
                                    const Input& reply, base::Date today, base::Issues& issues);

}  // namespace stile::application
