// A whole QuestionnaireResponse, read and held against its form. For src/answers only.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "answers/response.h"
#include "json/reader.h"
#include "questionnaire/extension.h"

namespace stile::answers {

class ResponseReader {
 public:
  explicit ResponseReader(const questionnaire::FormSet& forms) : forms_(forms) {}

  /// As far as it can be read; acceptable only if issues() has no errors afterwards.
  Response read(json::Node node);
  const base::Issues& issues() const { return issues_; }

 private:
  void readHead(json::ObjectReader& reader);
  void readForm(json::ObjectReader& reader);
  void readVersion(json::Node at, const std::string& version);
  void readStatus(json::ObjectReader& reader);
  /// Items at one level: of the whole form, of one group, or nested in one question.
  void readItems(const std::vector<json::Node>& nodes, const questionnaire::Item* parent, int repetition);
  void readItem(json::Node node, const questionnaire::Item* parent, int repetition,
                std::map<std::string, int>& seen);
  const questionnaire::Item* itemOf(json::ObjectReader& reader, const questionnaire::Item* parent);
  void readGroup(json::ObjectReader& reader, const questionnaire::Item& group, int repetition);
  void readQuestion(json::ObjectReader& reader, const questionnaire::Item& question,
                    questionnaire::Extensions& extensions, int repetition);
  void readAbsence(json::ObjectReader& reader, const questionnaire::Item& question,
                   questionnaire::Extensions& extensions, Answered& answered);
  std::string readGivenBy(questionnaire::Extensions& extensions, const std::string& subject);
  void refuseOwnExtensions(json::ObjectReader& reader, const questionnaire::Extensions& extensions,
                           const questionnaire::Item& item);

  const questionnaire::FormSet& forms_;
  base::Issues issues_;
  Response response_;
};

}  // namespace stile::answers
