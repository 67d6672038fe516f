#include "application/validate_files.h"

#include <algorithm>
#include <map>
#include <memory>

#include "json/node_path.h"

namespace stile::application {
namespace {

/// An input that could be read.
struct Parsed {
  const Input* input;
  std::shared_ptr<const json::Document> document;  ///< nullptr when it is no JSON
  std::string resourceType;
  base::Issues issues;  ///< of the JSON
};

std::string typeOf(const std::shared_ptr<const json::Document>& document) {
  const auto type = document ? document->root().find("resourceType") : std::nullopt;
  return type && type->isString() ? type->string() : std::string();
}

std::vector<Parsed> parseAll(const std::vector<Input>& inputs) {
  std::vector<Parsed> list;
  for (const Input& input : inputs) {
    Parsed parsed{&input, nullptr, {}, {}};
    parsed.document = json::Document::parse(input.text, input.name, parsed.issues);
    parsed.resourceType = typeOf(parsed.document);
    list.push_back(std::move(parsed));
  }
  return list;
}

void judge(FileVerdict& verdict) {
  const bool isRefused = std::any_of(verdict.problems.begin(), verdict.problems.end(), [](const auto& each) {
    return each.issue.severity == base::Severity::Error;
  });
  if (isRefused) verdict.verdict = Verdict::Refused;
}

void addProblems(const base::Issues& issues, const Parsed& parsed, FileVerdict& verdict) {
  for (const base::Issue& issue : issues.all()) {
    if (issue.place.file != parsed.input->name) continue;
    verdict.problems.push_back(
        {parsed.document ? json::pathAt(parsed.document->root(), issue.place) : std::string(), issue});
  }
}

const char* word(Verdict verdict) {
  switch (verdict) {
    case Verdict::Acceptable:
      return "acceptable";
    case Verdict::Refused:
      return "refused";
    case Verdict::NotChecked:
      return "notChecked";
  }
  return "";
}

const char* sentence(Verdict verdict) {
  switch (verdict) {
    case Verdict::Acceptable:
      return "acceptable";
    case Verdict::Refused:
      return "refused";
    case Verdict::NotChecked:
      return "not checked; give the file of its form as well";
  }
  return "";
}

const char* word(base::Severity severity) {
  return severity == base::Severity::Error     ? "error"
         : severity == base::Severity::AskBack ? "askBack"
                                               : "note";
}

}  // namespace

bool holdsForm(const std::vector<Input>& inputs) {
  const auto parsed = parseAll(inputs);
  return std::any_of(parsed.begin(), parsed.end(),
                     [](const Parsed& each) { return each.resourceType == "Questionnaire"; });
}

std::vector<FileVerdict> validateFiles(const std::vector<Input>& inputs,
                                       const questionnaire::FormSet& otherwise, const std::string& now) {
  auto parsed = parseAll(inputs);
  std::map<std::string, std::string> forms;
  for (const Parsed& each : parsed) {
    if (each.resourceType == "Questionnaire") forms[each.input->name] = each.input->text;
  }
  base::Issues formIssues;
  const auto given = questionnaire::FormSet::loadAny(forms, formIssues);
  const questionnaire::FormSet& all = forms.empty() ? otherwise : given;
  std::vector<FileVerdict> verdicts;
  for (const Parsed& each : parsed) {
    FileVerdict verdict;
    verdict.file = each.input->name;
    verdict.resourceType = each.resourceType;
    if (!each.document) {
      addProblems(each.issues, each, verdict);
    } else if (each.resourceType == "Questionnaire") {
      const auto url = each.document->root().find("url");
      if (url && url->isString()) verdict.form = url->string();
      addProblems(formIssues, each, verdict);
    } else {
      auto validation = answers::validateResponse(each.document->root(), all, {now});
      verdict.problems = std::move(validation.problems);
      if (validation.form) verdict.form = validation.form->url();
      if (!validation.form) verdict.verdict = Verdict::NotChecked;
    }
    judge(verdict);
    verdicts.push_back(std::move(verdict));
  }
  return verdicts;
}

bool areAcceptable(const std::vector<FileVerdict>& verdicts) {
  return std::all_of(verdicts.begin(), verdicts.end(),
                     [](const FileVerdict& each) { return each.verdict == Verdict::Acceptable; });
}

std::string toText(const std::vector<FileVerdict>& verdicts) {
  std::string text;
  for (const FileVerdict& verdict : verdicts) {
    for (const answers::Problem& problem : verdict.problems) {
      text += std::string(word(problem.issue.severity)) +
              (problem.path.empty() ? "" : " at " + problem.path) + "\n";
      text += base::toText(problem.issue) + "\n";
    }
    text += verdict.file + ": " + sentence(verdict.verdict) + "\n";
  }
  return text;
}

std::string toJson(const std::vector<FileVerdict>& verdicts) {
  json::Writer out;
  out.beginObject();
  out.member("acceptable", areAcceptable(verdicts));
  out.key("files").beginArray();
  for (const FileVerdict& verdict : verdicts) {
    out.beginObject();
    out.member("file", verdict.file);
    out.member("resourceType", verdict.resourceType);
    out.member("form", verdict.form);
    out.member("verdict", word(verdict.verdict));
    out.key("problems").beginArray();
    for (const answers::Problem& problem : verdict.problems) {
      out.beginObject();
      out.member("severity", word(problem.issue.severity));
      out.member("path", problem.path);
      out.member("line", problem.issue.place.line);
      out.member("column", problem.issue.place.column);
      out.member("linkId", problem.issue.subject);
      out.member("message", problem.issue.message);
      out.member("remedy", problem.issue.remedy);
      out.endObject();
    }
    out.endArray().endObject();
  }
  out.endArray().endObject();
  return out.text();
}

}  // namespace stile::application
