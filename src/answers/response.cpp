#include "answers/response.h"

#include <utility>

#include "answers/response_reader.h"

namespace stile::answers {

std::optional<Response> loadResponse(json::Node node, const questionnaire::FormSet& forms,
                                     base::Issues& issues) {
  ResponseReader reader(forms);
  Response response = reader.read(node);
  issues.append(reader.issues());
  if (reader.issues().hasErrors() || !response.form) return std::nullopt;
  return response;
}

}  // namespace stile::answers
