// What a draft or a filed screening keeps of what went in: responses, plain facts, and with an
// interview what could be answered to each question when it was asked.
#pragma once

#include <string>
#include <vector>

#include "application/carried_response.h"
#include "application/client_records.h"
#include "application/screen_client.h"
#include "base/date.h"

namespace stile::application {

class StoredInputs {
 public:
  explicit StoredInputs(const std::string& body);

  const std::vector<Input>& inputs() const { return inputs_; }
  /// The response of an interview with all that was said, "" when this is none.
  const std::string& interview() const { return interview_; }
  const Shapes& asked() const { return asked_; }
  /// Of an interview's draft: how a clinician changed the plan so far, as JSON; "" when nobody did.
  const std::string& edits() const { return edits_; }
  /// Of a draft: the day of its plain facts; its newest answers may be younger.
  const std::optional<base::Date>& day() const { return day_; }
  /// The inputs for a screening on `today`: plain facts of an earlier day say so.
  std::vector<Input> inputsOn(base::Date today) const;

  static std::string draft(base::Date day, const std::vector<Input>& inputs);
  /// `counting` goes into the screening; `whole` is kept beside it where answers do not apply any longer,
  /// and so is what changes the plan, `edits`.
  static std::string interviewDraft(base::Date day, const std::string& contentVersion, const std::string& counting, const std::string& whole,
                                    const Shapes& asked, const std::string& edits);
  static void write(json::Writer& writer, const std::vector<Input>& inputs, const Shapes& asked);

 private:
  std::vector<Input> inputs_;
  std::string interview_, edits_;
  Shapes asked_;
  std::optional<base::Date> day_;
};

/// What the names of physicians' replies among the inputs of a screening begin with.
inline constexpr const char* kReplyInput = "reply ";
/// The replies of every request that still stands, as inputs of a screening.
std::vector<Input> repliesOnRecord(const RecordWork& work);

/// The form a response answers, whatever its version; nullptr when it is no response to one of ours.
const questionnaire::Form* formOf(json::Node response, const screening::Content& content);

}  // namespace stile::application
