// An interview held from a clinic file: every answer stands in the client's draft before it is
// acknowledged. The terminal and the desk hold their interviews with it.
#pragma once

#include <memory>
#include <set>
#include <string>
#include <vector>

#include "application/client_records.h"
#include "application/client_screening.h"
#include "interview/session.h"

namespace stile::application {

/// What was said at the last screening, to be asked again and confirmed: it is in no fact until then.
class LastTime {
 public:
  /// Out of the last screening among `entries` that was made from a response.
  LastTime(const std::vector<records::Entry>& entries, const screening::Content& content);

  /// nullptr when nothing was said, or when the question could be answered otherwise then.
  const answers::Answered* of(const std::string& linkId, int repetition) const;
  /// How many repetitions of a group there were (medicines, joints).
  int repetitions(const std::string& group) const;
  const std::optional<base::Date>& day() const { return day_; }

 private:
  std::vector<answers::Response> responses_;
  std::optional<base::Date> day_;
};

class ClientInterview {
 public:
  /// Goes on with the draft there is, on whatever day it was begun, or begins one with the form
  /// `form` ("" = the draft's, or clinic). Nothing is written before the first answer. `clinic` and
  /// `content` must outlive the interview.
  static base::Result<std::unique_ptr<ClientInterview>> open(Clinic& clinic, const std::string& id, const screening::Content& content,
                                                             const std::string& form, base::Date today);

  /// To look at: prompt, progress, ladder, what was said. What is changed through it is saved by save().
  interview::Session& session() { return *session_; }
  const LastTime& lastTime() const { return lastTime_; }

  /// Who saves a step that was taken: the step itself, or its caller right after something more urgent.
  enum class Saving { ByStep, ByCaller };
  void setSaving(Saving saving) { saving_ = saving; }

  // Each takes a step and saves it. True: taken, and on the disk (if the step is to save). False: not taken
  // (see the session). A failure: taken, and not saved; isSaved() is false until save() or a later step succeeds.
  base::Result<bool> answer(const interview::QuestionRef& question, std::vector<answers::Answer> answers, base::Issues& issues,
                            bool isConfirmed = false);
  base::Result<bool> answerList(const std::set<interview::QuestionRef>& yes, const std::set<interview::QuestionRef>& notSure = {});
  base::Result<bool> another(bool isThere);
  base::Result<bool> skip(answers::Absence why);
  /// The same answer as last time; false when there was none, or it is out of range by now.
  base::Result<bool> confirm(const interview::QuestionRef& question, base::Issues& issues);
  /// Takes back the last step of this sitting and asks it again; false at its beginning.
  base::Result<bool> back();

  base::Result<bool> save();
  bool isSaved() const { return isSaved_; }

  /// What was said calls for action today or for emergency help, and that action was not filed in this sitting.
  bool isUrgent() const;
  /// Files a screening of what was said so far, which opens the action record, and goes on with the draft.
  base::Result<Filed> fileUrgent(base::Issues& issues);

  /// How a clinician changes the plan; kept with the answers, and filed with them. Failures as of a step.
  base::Result<bool> keepEdits(plan::Edits edits);
  const plan::Edits& edits() const { return edits_; }

  /// Screens what was said so far with the replies in the record and files it, the plan as the edits change
  /// it; the draft is then gone, and the interview is over.
  base::Result<Filed> complete(base::Issues& issues);

 private:
  ClientInterview(Clinic& clinic, RecordWork work, const screening::Content& content, base::Date today);
  std::string draftBody();
  base::Result<bool> stepTaken();

  Clinic& clinic_;
  RecordWork work_;
  const screening::Content& content_;
  base::Date today_;
  LastTime lastTime_;
  std::unique_ptr<interview::Session> session_;
  plan::Edits edits_;
  limits::Action filedFor_ = limits::Action::None;
  Saving saving_ = Saving::ByStep;
  bool isSaved_ = true;
  bool isListed_ = false;  ///< the worklist knows of the draft
};

}  // namespace stile::application
