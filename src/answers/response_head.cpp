#include "answers/response_head.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "base/near_names.h"
#include "json/reader.h"
#include "questionnaire/canonical.h"
#include "questionnaire/extension.h"
#include "questionnaire/moment.h"

namespace stile::answers {
namespace {

using questionnaire::Form;
using questionnaire::FormSet;

const char* const kSubject = "response";

void note(base::Issues& issues, json::Node at, std::string message, std::string remedy) {
  issues.add({base::Severity::Note, at.place(), kSubject, std::move(message), std::move(remedy)});
}

const Form* formOf(json::ObjectReader& reader, const FormSet& forms, base::Issues& issues) {
  const auto at = reader.find("questionnaire");
  reader.find("_questionnaire");
  const auto canonical = questionnaire::splitCanonical(reader.string("questionnaire"));
  if (canonical.url.empty()) {
    const bool isOnly = forms.forms().size() == 1;
    note(issues, reader.node(), "the response does not say which form it answers",
         isOnly ? "it was held against " + forms.forms().front()->name()
                : "write its url in \"questionnaire\"");
    return isOnly ? forms.forms().front().get() : nullptr;
  }
  const Form* sameUrl = nullptr;
  for (const auto& form : forms.forms()) {
    if (form->url() != canonical.url) continue;
    if (canonical.version.empty() || canonical.version == form->version()) return form.get();
    sameUrl = form.get();
  }
  if (sameUrl) {
    note(issues, *at,
         "the response answers version " + canonical.version + " of the form, not " +
             (sameUrl->version().empty() ? "the one given, which has none" : sameUrl->version()),
         "give the form in that version");
    return sameUrl;
  }
  std::vector<std::string> urls;
  for (const auto& form : forms.forms()) urls.push_back(form->url());
  note(issues, *at,
       "the form " + canonical.url + " is not among those given, so nothing could be held against it",
       base::didYouMean(canonical.url, urls, "give the file of the form"));
  return nullptr;
}

void readStatus(json::ObjectReader& reader, ResponseHead& head) {
  head.status = questionnaire::requireWords(reader, "status");
  static const std::vector<std::string> kKnown{"in-progress", "completed", "amended", "entered-in-error",
                                               "stopped"};
  if (head.status.empty() || std::find(kKnown.begin(), kKnown.end(), head.status) != kKnown.end()) return;
  reader.issue(*reader.find("status"), "\"" + head.status + "\" is no status of a QuestionnaireResponse",
               base::didYouMean(head.status, kKnown,
                                "use in-progress, completed, amended, entered-in-error or stopped"));
}

void readAuthored(json::ObjectReader& reader, ResponseHead& head, base::Issues& issues) {
  const auto node = reader.find("authored");
  head.authored = reader.string("authored");
  if (!node || head.authored.empty()) return;
  const auto moment = questionnaire::momentOf(head.authored);
  if (!moment) {
    reader.issue(*node, "\"" + head.authored + "\" is not a date of the calendar",
                 "write it like 2026-11-25T09:30:00+01:00, or the day alone");
    return;
  }
  if (!head.form) return;
  using questionnaire::EnableOperator;
  const auto from = questionnaire::momentOf(head.form->effectiveFrom());
  const auto until = questionnaire::momentOf(head.form->effectiveUntil());
  const auto isSo = [&](const questionnaire::Moment& bound, EnableOperator op) {
    return questionnaire::compareMoments(*moment, bound, op) == expression::Truth::True;
  };
  if (from && isSo(*from, EnableOperator::Less)) {
    note(issues, *node, "the response is older than the form, which holds from " + head.form->effectiveFrom(),
         "check the date");
  }
  if (until && isSo(*until, EnableOperator::Greater)) {
    note(issues, *node, "the form was to be answered until " + head.form->effectiveUntil(), "check the date");
  }
}

}  // namespace

ResponseHead readResponseHead(json::Node response, const FormSet& forms, base::Issues& issues) {
  ResponseHead head;
  json::ObjectReader reader(response, kSubject, issues);
  if (!reader.isObject()) return head;
  const std::string type = questionnaire::requireWords(reader, "resourceType");
  if (type != "QuestionnaireResponse") {
    if (!type.empty()) {
      reader.issue(*reader.find("resourceType"), "this is a " + type + ", not a QuestionnaireResponse",
                   "give a response to one of the forms");
    }
    return head;
  }
  questionnaire::Extensions extensions(reader);
  if (const auto rules = reader.find("implicitRules")) {
    reader.issue(*rules, "implicit rules are not understood", "remove implicitRules");
  }
  head.form = formOf(reader, forms, issues);
  readStatus(reader, head);
  readAuthored(reader, head, issues);
  const auto items = reader.find("item");
  if (items && (!items->isArray() || items->size() == 0)) {
    reader.issue(*items, "\"item\" must be a list of items", "leave it out if there are none");
  }
  questionnaire::acceptUnused(
      reader, {"id", "meta", "implicitRules", "language", "text", "contained", "identifier", "basedOn",
               "partOf", "status", "subject", "encounter", "authored", "author", "source"});
  reader.finish();
  return head;
}

}  // namespace stile::answers
