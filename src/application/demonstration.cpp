#include "application/demonstration.h"

#include <cstdlib>
#include <filesystem>
#include <random>

#include "application/client_records.h"
#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "application/content_folder.h"
#include "application/scripted_interview.h"
#include "json/reader.h"

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;

constexpr const char* kFile = "/rules/demonstration.json";

std::string textOf(json::Node node) {
  json::Writer writer(0);
  writer.copy(node);
  return writer.text();
}

/// Nobody types it: the file is opened by whoever made it.
std::string randomPassphrase() {
  std::random_device source;
  std::string words;
  for (int i = 0; i < 32; ++i) words += static_cast<char>('a' + source() % 26);
  return words;
}

base::Result<std::string> ownFolder() {
  std::error_code trouble;
  std::string name = (fs::temp_directory_path(trouble) / "stile-demo-XXXXXX").string();
  if (trouble || mkdtemp(name.data()) == nullptr) return Failure{FailureKind::File, name + ": the folder for the demo clinic cannot be made"};
  return name;
}

class Filling {
 public:
  Filling(Clinic& clinic, const screening::Content& content, base::Date today) : clinic_(clinic), content_(content), today_(today) {}

  base::Result<bool> fill(json::Node root) {
    base::Issues issues;
    json::ObjectReader reader(root, "demonstration", issues);
    if (const auto settings = reader.require("settings")) {
      auto saved = saveClinicSettings(clinic_, textOf(*settings), kFile, {}, today_, issues);
      if (!saved) return saved;
    }
    for (const json::Node& node : reader.array("clients"))
      if (auto added = add(node, issues); !added) return added;
    reader.finish();
    if (issues.hasErrors()) return Failure{FailureKind::Refused, base::toText(issues.all().front())};
    return true;
  }

 private:
  base::Result<bool> add(json::Node node, base::Issues& issues) {
    json::ObjectReader entry(node, "demonstration client", issues);
    const auto client = entry.require("client"), says = entry.find("says");
    const auto ago = entry.integer("daysAgo"), most = entry.integer("stopsAfter");
    const bool isSigned = entry.boolean("signed").value_or(false), isShared = entry.boolean("sharedWithPhysician").value_or(false);
    entry.finish();
    if (!client) return Failure{FailureKind::Refused, std::string(kFile) + ": a client without a name"};
    const auto added = addClient(clinic_, textOf(*client), kFile, issues);
    if (!added) return added.failure();
    const base::Date day = base::Date::fromDayNumber(today_.dayNumber() - static_cast<int>(ago.value_or(0)));
    if (isShared)
      if (auto agreed = agree(added.value().id, day); !agreed) return agreed;
    if (!says) return true;
    const auto interview = ClientInterview::open(clinic_, added.value().id, content_, "", day);
    if (!interview) return interview.failure();
    if (auto said = answerAll(*interview.value(), *says, static_cast<int>(most.value_or(0))); !said || most) return said;
    const auto filed = interview.value()->complete(issues);
    if (!filed) return filed.failure();
    if (!isSigned) return true;
    const auto done = signOff(clinic_, added.value().id, filed.value().entry, day);
    if (!done) return done.failure();
    return true;
  }

  /// The client agrees to letters to the physician.
  base::Result<bool> agree(const std::string& id, base::Date day) {
    auto work = RecordWork::open(clinic_, id);
    if (!work) return work.failure();
    json::Writer writer(0);
    writer.beginObject().member("date", day.toText()).member("what", "physician").member("given", true).member("how", "signed").endObject();
    work.value().add("consent", writer.text());
    return work.value().commit();
  }

  Clinic& clinic_;
  const screening::Content& content_;
  base::Date today_;
};

}  // namespace

base::Result<Demonstration> makeDemonstration(const std::string& contentFolder, const screening::Content& content, base::Date today) {
  const auto text = readFile(contentFolder + kFile);
  if (!text) return text.failure();
  base::Issues issues;
  const auto document = json::Document::parse(text.value(), kFile, issues);
  if (!document) return Failure{FailureKind::Refused, base::toText(issues.all().front())};
  auto folder = ownFolder();
  if (!folder) return folder.failure();
  Demonstration made{folder.value(), {folder.value() + "/clinic.stile", "ines", randomPassphrase(), false}};
  const records::Clinician first{"ines", "Ines Calloway", "physiotherapist", records::Role::Lead, false, false, {}};
  const auto created = Clinic::create(made.access, first);
  const auto clinic = created ? Clinic::open(made.access, contentFolder, issues) : base::Result<std::unique_ptr<Clinic>>(created.failure());
  const auto filled = clinic ? Filling(*clinic.value(), content, today).fill(document->root()) : base::Result<bool>(clinic.failure());
  if (filled) return made;
  removeDemonstration(made);
  return filled.failure();
}

void removeDemonstration(const Demonstration& demonstration) {
  std::error_code ignored;
  fs::remove_all(demonstration.folder, ignored);
}

}  // namespace stile::application
