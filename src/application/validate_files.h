// Validates FHIR Questionnaires and QuestionnaireResponses of any origin, as texts.
#pragma once

#include <string>
#include <vector>

#include "answers/validate_response.h"
#include "application/screen_client.h"
#include "base/result.h"
#include "questionnaire/form.h"

namespace stile::application {

enum class Verdict {
  Acceptable,  ///< nothing wrong; notes at most
  Refused,     ///< at least one error
  NotChecked,  ///< a response whose form is not among those given
};

/// What was found in one file.
struct FileVerdict {
  std::string file;
  std::string resourceType;  ///< Questionnaire, QuestionnaireResponse; "" when it is no JSON
  std::string form;          ///< url of the form it was held against; of a form its own
  Verdict verdict = Verdict::Acceptable;
  std::vector<answers::Problem> problems;
};

/// Checks every input: Questionnaires as forms, all else as responses to them. With no Questionnaire
/// among the inputs the responses are held against `otherwise`. `now` is for today() and now() in
/// expressions, text such as 2026-11-25T10:30:00+00:00. Verdicts stand in the order of the inputs.
std::vector<FileVerdict> validateFiles(const std::vector<Input>& inputs,
                                       const questionnaire::FormSet& otherwise, const std::string& now);

/// True if some input is a Questionnaire.
bool holdsForm(const std::vector<Input>& inputs);

/// Every file acceptable.
bool areAcceptable(const std::vector<FileVerdict>& verdicts);

/// For readers: one block for each problem, and a closing line for each file.
std::string toText(const std::vector<FileVerdict>& verdicts);
/// `{"acceptable", "files": [{"file", "resourceType", "form", "verdict", "problems": [{"severity", "path",
/// "line", "column", "linkId", "message", "remedy"}]}]}`
std::string toJson(const std::vector<FileVerdict>& verdicts);

}  // namespace stile::application
