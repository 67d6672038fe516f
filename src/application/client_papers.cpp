#include "application/client_papers.h"

#include <filesystem>

#include "application/client_signing.h"
#include "application/clinic_document.h"
#include "application/content_folder.h"
#include "application/filed_screening.h"
#include "application/paper_texts.h"
#include "application/save_file.h"
#include "base/base64.h"
#include "documents/event_letter.h"
#include "json/document.h"
#include "records/body.h"

namespace stile::application {
namespace {

using base::Failure;
using base::FailureKind;

constexpr const char* kPaper = "paper";

const records::Entry* entryOf(const std::vector<records::Entry>& entries, const std::string& id) {
  for (const auto& entry : entries)
    if (entry.id == id) return &entry;
  return nullptr;
}

/// The entry that holds these bytes already, or "".
std::string sameBytes(const std::vector<records::Entry>& entries, const std::string& text) {
  for (const auto& entry : entries)
    if (entry.kind == kPaper && records::Body(entry.body).text("bytes") == text) return entry.id;
  return {};
}

std::string add(RecordWork& work, const IssuedPaper& paper, const std::string& bytes) {
  const std::string text = base::toBase64(bytes);
  const std::string same = sameBytes(work.entries(), text);
  json::Writer writer(0);
  writer.beginObject().member("date", paper.date.toText()).member("screening", paper.screening).member("name", paper.name);
  writer.member("format", paper.format).member("language", paper.language);
  if (!paper.build.empty()) writer.member("build", paper.build);
  if (same.empty())
    writer.member("bytes", text);
  else
    writer.member("sameAs", same);
  writer.endObject();
  return work.add(kPaper, writer.text());
}

/// The handout is the one paper with figures.
std::string drawnIn(const MadePaper& paper, const PaperOptions& options) {
  return paper.name == "handout" && options.build ? movement::idOf(*options.build) : "";
}

/// The figures of the papers that went out last for this screening.
std::optional<movement::Build> buildIssued(const std::vector<records::Entry>& entries,
                                           const std::string& screening) {
  std::optional<movement::Build> build;
  for (const IssuedPaper& paper : issuedPapers(entries))
    if (const auto drawn = movement::buildOf(paper.build); drawn && paper.screening == screening)
      build = drawn;
  return build;
}

}  // namespace

base::Result<bool> fillFromRecord(PaperOptions& options, Clinic& clinic, const records::ClientRecord& record) {
  ClinicDocument document = clinicDocument(clinic);
  if (document.text.empty()) return Failure{FailureKind::Usage, "the clinic file says nothing of the clinic yet; \"stile clinic settings\" puts it in"};
  auto logo = clinicLogo(clinic);
  if (!logo) return logo.failure();
  options.given = GivenSettings{std::move(document.settings), std::move(logo).value()};
  options.client = {record.client.fullName(), record.client.born ? record.client.born->toText() : "", record.client.record};
  if (options.physician.empty() && !record.client.physician.name.empty())
    options.physician = record.client.physician.name + (record.client.physician.place.empty() ? "" : ", " + record.client.physician.place);
  options.isSharedWithPhysician = record.hasConsent("physician");
  if (!options.build) options.build = record.client.drawnBuild.value_or(options.given->settings.drawnBuild);
  return true;
}

base::Result<PaperOrder> orderPapers(Clinic& clinic, const std::string& id, const screening::Content& content, PaperOptions options) {
  const auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  const RecordWork& work = opened.value();
  const records::ClientRecord record = work.folded();
  const auto filed = lastFiled(work, record, content);
  if (!filed) return filed.failure();
  if (!options.build && !record.client.drawnBuild)
    options.build = buildIssued(work.entries(), filed.value().entry);
  if (const auto filled = fillFromRecord(options, clinic, record); !filled) return filled.failure();
  PaperOrder order;
  auto screened = screenedAgain(content, filed.value(), order.askedBack);
  if (!screened) return screened.failure();
  order.screening = std::make_shared<const screening::Screening>(std::move(screened).value());
  options.notes = decisionNotes(clinic, work.entries(), filed.value().entry);
  options.screenAgain = [filed = filed.value()](const screening::Content& other) {
    base::Issues ignored;
    return screenedAgain(other, filed, ignored);
  };
  order.options = std::move(options);
  order.entry = filed.value().entry;
  return order;
}

base::Result<MadePapers> makePapers(const PaperOrder& order, const screening::Content& content, const std::string& contentFolder, base::Issues& issues) {
  return makePapers(*order.screening, content, order.askedBack, contentFolder, order.options, issues);
}

base::Result<std::vector<std::string>> issueMade(Clinic& clinic, const std::string& id, const PaperOrder& order, const MadePapers& made,
                                                 const std::string& folder, const std::string& only, base::Date today) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  if (entryOf(work.entries(), order.entry) == nullptr) return Failure{FailureKind::Usage, "the screening is not filed yet; papers are kept with it"};
  // The files first: a record that says a paper went out is worse than a paper that is written twice.
  std::vector<std::string> paths;
  if (!folder.empty()) {
    auto saved = savePapers(made.papers, folder, only);
    if (!saved) return saved;
    paths = std::move(saved).value();
  }
  for (const MadePaper& paper : made.papers)
    if (only.empty() || paper.name == only)
      add(work,
          {{},
           paper.name,
           paper.ending.substr(1),
           order.entry,
           order.options.language,
           drawnIn(paper, order.options),
           {},
           today},
          paper.bytes);
  if (const auto done = work.commit(); !done) return done.failure();
  return paths;
}

base::Result<std::string> issuePapers(Clinic& clinic, const std::string& id, const screening::Content& content, const std::string& contentFolder,
                                      PaperOptions options, base::Date today, base::Issues& issues) {
  const auto order = orderPapers(clinic, id, content, std::move(options));
  if (!order) return order.failure();
  const PaperOptions& asked = order.value().options;
  if (asked.isWordingOnly) {
    const auto written = writePapers(*order.value().screening, content, order.value().askedBack, contentFolder, asked, issues);
    return written ? base::Result<std::string>(written.value().text) : written.failure();
  }
  const auto made = makePapers(order.value(), content, contentFolder, issues);
  if (!made) return made.failure();
  const auto paths = issueMade(clinic, id, order.value(), made.value(), asked.folder, "", today);
  if (!paths) return paths.failure();
  std::string text = made.value().summary + "\nPapers:\n";
  for (const std::string& path : paths.value()) text += "  " + path + "\n";
  if (!asked.isSharedWithPhysician) text += "No letter to others: the client has not agreed to share with the physician.\n";
  return text;
}

base::Result<bool> issueEventLetter(Clinic& clinic, const std::string& id, const std::string& letter, const screening::Content& content,
                                    const std::string& contentFolder, const std::string& path, base::Date today, base::Issues& issues) {
  auto opened = RecordWork::open(clinic, id);
  if (!opened) return opened.failure();
  RecordWork& work = opened.value();
  const auto* drafted = entryOf(work.entries(), letter);
  if (drafted == nullptr || drafted->kind != "eventLetter") return Failure{FailureKind::Usage, letter + ": this client has no drafted letter of that id"};
  PaperOptions options;
  if (const auto filled = fillFromRecord(options, clinic, work.folded()); !filled) return filled.failure();
  if (!options.isSharedWithPhysician)
    return Failure{FailureKind::Refused, "the client has not agreed to share with the physician; file the consent first, or tell the physician by another lawful way"};
  const auto texts = loadPaperTexts(contentFolder, "", issues);
  if (!texts) return texts.failure();
  const records::Body body(drafted->body);
  const documents::EventLetter words{*body.date("date"), body.text("to"), body.text("text")};
  documents::Document paper = documents::eventLetterOf(words, content, options.given->settings, options.client, texts.value().letters);
  paper.logoPng = options.given->logoPng;
  const std::filesystem::path file(path);
  const auto bytes = bytesOf(paper, file.extension().string());
  if (!bytes) return bytes.failure();
  // The file first: a record that says a letter went out is worse than a letter that is written twice.
  if (const auto failure = saveFile(path, bytes.value())) return *failure;
  const std::string format = file.extension().empty() ? "txt" : file.extension().string().substr(1);
  add(work, {{}, "event-letter", format, {}, options.language, {}, {}, today}, bytes.value());
  return work.commit();
}

std::vector<IssuedPaper> issuedPapers(const std::vector<records::Entry>& entries) {
  std::vector<IssuedPaper> papers;
  for (const auto& entry : entries) {
    if (entry.kind != kPaper) continue;
    const records::Body body(entry.body);
    if (const auto date = body.date("date"))
      papers.push_back({entry.id, body.text("name"), body.text("format"), body.text("screening"),
                        body.text("language"), body.text("build"), entry.by, *date});
  }
  return papers;
}

base::Result<std::string> readPaper(Clinic& clinic, const std::string& id, const std::string& entry) {
  const auto entries = clinic.file().read(id);
  if (!entries) return entries.failure();
  const auto* paper = entryOf(entries.value(), entry);
  if (paper == nullptr || paper->kind != kPaper) return Failure{FailureKind::Usage, entry + ": this client has no paper of that id"};
  const std::string same = records::Body(paper->body).text("sameAs");
  if (!same.empty()) paper = entryOf(entries.value(), same);
  const auto bytes = paper == nullptr ? std::nullopt : base::fromBase64(records::Body(paper->body).text("bytes"));
  if (!bytes) return Failure{FailureKind::File, entry + ": the paper's bytes cannot be read"};
  return *bytes;
}

}  // namespace stile::application
