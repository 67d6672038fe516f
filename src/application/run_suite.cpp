#include "application/run_suite.h"

#include <filesystem>
#include <map>

#include "application/content_folder.h"
#include "expression/suite.h"
#include "json/document.h"

namespace stile::application {
namespace {

using Documents = std::map<std::string, std::shared_ptr<const json::Document>>;

std::string pathOf(const std::string& folder, const std::string& name) {
  const std::filesystem::path path = std::filesystem::path(folder) / name;
  if (std::filesystem::exists(path) || path.extension() != ".xml") return path.string();
  return std::filesystem::path(path).replace_extension(".json").string();
}

/// Reads an input once. A failure when it cannot be read or is no JSON.
base::Result<std::shared_ptr<const json::Document>> inputOf(const std::string& folder,
                                                            const std::string& name, Documents& known,
                                                            base::Issues& issues) {
  if (const auto found = known.find(name); found != known.end()) return found->second;
  const std::string path = pathOf(folder, name);
  auto text = readFile(path);
  if (!text) return text.failure();
  auto document = json::Document::parse(std::move(text).value(), path, issues);
  if (!document) {
    return base::Failure{base::FailureKind::Refused,
                         path + " is not acceptable JSON; the reasons stand above"};
  }
  known[name] = document;
  return document;
}

std::string totals(const SuiteReport& report) {
  return std::to_string(report.agreeing) + " agree, " + std::to_string(report.differing) + " differ, of " +
         std::to_string(report.agreeing + report.differing) + " cases.\n";
}

}  // namespace

base::Result<SuiteReport> runSuite(const std::string& suiteFile, const std::string& inputFolder,
                                   const expression::Clock& clock, bool asJson, base::Issues& issues) {
  auto text = readFile(suiteFile);
  if (!text) return text.failure();
  const auto document = json::Document::parse(std::move(text).value(), suiteFile, issues);
  const auto cases = document ? expression::readSuite(document->root(), issues) : std::nullopt;
  if (!cases) {
    return base::Failure{base::FailureKind::Refused, suiteFile + " is no suite; the reasons stand above"};
  }
  SuiteReport report;
  Documents inputs;
  json::Writer writer;
  writer.beginObject().key("cases").beginArray();
  for (const expression::SuiteCase& suiteCase : *cases) {
    std::optional<json::Node> input;
    if (!suiteCase.inputFile.empty()) {
      auto read = inputOf(inputFolder, suiteCase.inputFile, inputs, issues);
      if (!read) return read.failure();
      input = read.value()->root();
    }
    const expression::Verdict verdict = expression::judge(suiteCase, input, clock, expression::r4Model());
    ++(verdict.agrees ? report.agreeing : report.differing);
    const std::string name = suiteCase.group + "/" + suiteCase.name;
    report.text += (verdict.agrees ? "agrees   " : "differs  ") + name;
    report.text += verdict.agrees ? "\n" : ": wanted " + verdict.wanted + ", given " + verdict.given + "\n";
    writer.beginObject().member("group", suiteCase.group).member("name", suiteCase.name);
    writer.member("expression", suiteCase.text).member("agrees", verdict.agrees);
    writer.member("wanted", verdict.wanted).member("given", verdict.given).endObject();
  }
  writer.endArray();
  writer.member("agreeing", static_cast<long long>(report.agreeing));
  writer.member("differing", static_cast<long long>(report.differing)).endObject();
  report.text = asJson ? writer.text() : report.text + totals(report);
  return report;
}

}  // namespace stile::application
