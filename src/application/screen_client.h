// The use case "screen one client": files in, a screening out.
#pragma once

#include <map>
#include <memory>
#include <string>
#include <vector>

#include "base/date.h"
#include "base/issue.h"
#include "base/result.h"
#include "screening/content.h"
#include "screening/screening.h"

namespace stile::application {

/// Policy id -> the alternative chosen in place of the content's own value.
using PolicyChoices = std::map<std::string, std::string>;

/// Loads and checks the content; refused when it has errors (they are in `issues`). The choices are
/// part of the content: its version names them too.
base::Result<std::shared_ptr<const screening::Content>> loadContent(const std::string& folder, base::Issues& issues, const PolicyChoices& policies = {});

/// One input: a QuestionnaireResponse, a Bundle or array of them, or a plain facts object.
struct Input {
  std::string name;  ///< for issues: the file's name
  std::string text;
};

/// Screens. Refused, without any output, when an input has errors or the client is one the rules
/// are not written for; implausible values stay in `issues` as questions to ask back.
base::Result<screening::Screening> screenClient(const screening::Content& content, const std::vector<Input>& inputs,
                                                base::Date today, base::Issues& issues);

/// Reads a clinician's edits of a plan from JSON ("Edits of a plan" in DEVELOPERS.md); trouble is in `issues`.
plan::Edits readEdits(const std::string& text, const std::string& name, base::Issues& issues);

/// The same as readEdits() reads it.
std::string editsAsJson(const plan::Edits& edits);

/// Chooses the plan of `screening` anew round a clinician's edits. Refused when one of them cannot be followed; which and why
/// is in `issues`, and `screening` is then as it was.
base::Result<bool> editPlan(const screening::Content& content, screening::Screening& screening, const plan::Edits& edits,
                            base::Issues& issues);

/// The clearance replies among the inputs; trouble is left to screenClient() to tell.
std::vector<screening::ClearanceReply> repliesIn(const screening::Content& content, const std::vector<Input>& inputs);

}  // namespace stile::application
