#include "application/clinic.h"

#include <algorithm>
#include <chrono>
#include <filesystem>

#include "application/content_folder.h"

namespace stile::application {
namespace {

namespace fs = std::filesystem;
using base::Failure;
using base::FailureKind;

store::Environment environment() {
  store::Environment result;
  result.nowMs = [] {
    return static_cast<long long>(std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::system_clock::now().time_since_epoch()).count());
  };
  return result;
}

/// Removed again whatever happens.
class DrillFolder {
 public:
  explicit DrillFolder(const fs::path& beside) : path_(beside) { fs::create_directories(path_); }
  ~DrillFolder() {
    std::error_code ignored;
    fs::remove_all(path_, ignored);
  }
  DrillFolder(const DrillFolder&) = delete;
  DrillFolder& operator=(const DrillFolder&) = delete;
  fs::path file() const { return path_ / "restored.stile"; }

 private:
  fs::path path_;
};

}  // namespace

base::Result<records::FollowUpPolicy> loadFollowUp(const std::string& contentFolder, base::Issues& issues) {
  const std::string file = contentFolder + "/rules/follow-up.json";
  const auto text = readFile(file);
  if (!text) return text.failure();
  auto policy = records::FollowUpPolicy::load(text.value(), file, issues);
  if (issues.hasErrors()) return Failure{FailureKind::Refused, file + ": the follow-up policy has errors"};
  return policy;
}

base::Result<std::string> Clinic::create(const ClinicAccess& access, const records::Clinician& first) {
  return store::ClinicFile::create(access.file, first, access.passphrase, environment());
}

base::Result<std::unique_ptr<Clinic>> Clinic::open(const ClinicAccess& access, const std::string& contentFolder, base::Issues& issues) {
  std::unique_ptr<Clinic> clinic(new Clinic);
  auto policy = loadFollowUp(contentFolder, issues);
  if (!policy) return policy.failure();
  clinic->policy_ = std::move(policy).value();
  const auto mode = access.isBeside ? store::Access::Read : store::Access::Write;
  auto file = store::ClinicFile::open(access.file, mode, {access.handle, access.passphrase}, environment());
  if (!file) return file.failure();
  clinic->file_ = std::move(file).value();
  for (const auto& card : clinic->file_->cards()) clinic->list(card.id);
  return clinic;
}

void Clinic::lock() {
  file_->lock();
  clients_.clear();
  byId_.clear();
}

base::Result<bool> Clinic::unlock(const std::string& passphrase) {
  lock();
  auto done = file_->unlock(passphrase);
  for (const auto& card : file_->cards()) list(card.id);
  return done;
}

bool Clinic::lockIfIdle(long long milliseconds) {
  if (!file_->lockIfIdle(milliseconds)) return false;
  lock();
  return true;
}

void Clinic::list(const std::string& id) {
  const auto at = byId_.find(id);
  const auto* stored = file_->card(id);
  auto card = stored != nullptr && stored->kind == "client" ? records::cardFrom(stored->card) : std::nullopt;
  if (!card) {
    if (at == byId_.end()) return;
    // The last one takes the free place.
    const std::size_t place = at->second;
    byId_.erase(at);
    if (place + 1 != clients_.size()) {
      clients_[place] = std::move(clients_.back());
      byId_[clients_[place].id] = place;
    }
    clients_.pop_back();
    return;
  }
  ClientLine line{id, std::move(*card), {}};
  line.searched = records::searchable(line.card.name() + " " + line.card.record);
  if (at != byId_.end()) {
    clients_[at->second] = std::move(line);
    return;
  }
  byId_.emplace(id, clients_.size());
  clients_.push_back(std::move(line));
}

std::vector<const ClientLine*> Clinic::find(const std::string& part) const {
  const std::string wanted = records::searchable(part);
  std::vector<const ClientLine*> found;
  for (const ClientLine& line : clients_)
    if (line.searched.find(wanted) != std::string::npos) found.push_back(&line);
  std::sort(found.begin(), found.end(), [](const ClientLine* a, const ClientLine* b) {
    return std::tie(a->card.family, a->card.given, a->id) < std::tie(b->card.family, b->card.given, b->id);
  });
  return found;
}

const ClientLine* Clinic::client(const std::string& id) const {
  const auto at = byId_.find(id);
  return at == byId_.end() ? nullptr : &clients_[at->second];
}

base::Result<std::string> Clinic::idOf(const std::string& words) const {
  constexpr std::size_t kLeastOfAnId = 6;
  std::vector<const ClientLine*> found;
  if (words.size() >= kLeastOfAnId)
    for (const ClientLine& line : clients_)
      if (line.id.starts_with(words)) found.push_back(&line);
  if (found.empty()) found = find(words);
  if (found.size() == 1) return found.front()->id;
  if (found.empty()) return Failure{FailureKind::Usage, words + ": there is no such client; \"stile client find\" lists them"};
  std::string names;
  for (std::size_t i = 0; i < found.size() && i < 5; ++i) names += "\n  " + found[i]->id.substr(0, 12) + "  " + found[i]->card.name() + ", born " + found[i]->card.born;
  return Failure{FailureKind::Usage, words + ": " + std::to_string(found.size()) + " clients could be meant; give the beginning of the id:" + names};
}

std::vector<WorklistLine> Clinic::worklist(base::Date today, bool all) const {
  std::vector<WorklistLine> lines;
  for (const ClientLine& line : clients_)
    for (const records::Task& task : line.card.tasks)
      if (all || task.due <= today) lines.push_back({line.id, line.card.name(), task, records::nextOf(task, policy_)});
  std::sort(lines.begin(), lines.end(), [](const WorklistLine& a, const WorklistLine& b) {
    const bool isUrgentA = a.task.what == "actionRecord", isUrgentB = b.task.what == "actionRecord";
    if (isUrgentA != isUrgentB) return isUrgentA;
    return std::tie(a.task.due, a.name, a.id, a.task.what) < std::tie(b.task.due, b.name, b.id, b.task.what);
  });
  return lines;
}

base::Result<bool> Clinic::commit(const store::Change& change) {
  auto done = file_->commit(change);
  if (!done) return done;
  std::string last;
  for (const auto& step : change.steps()) {
    if (step.record.empty() || step.record == last) continue;
    list(last = step.record);
  }
  return done;
}

base::Result<std::string> restoreDrill(const ClinicAccess& access, const std::string& mark) {
  const fs::path backup = fs::absolute(access.file);
  try {
    const DrillFolder folder(backup.string() + ".drill");
    fs::copy_file(backup, folder.file());
    auto opened = store::ClinicFile::open(folder.file().string(), store::Access::Write, {access.handle, access.passphrase}, environment());
    if (!opened) return opened.failure();
    auto& file = *opened.value();
    const auto checked = file.verify(mark);
    if (!checked.isClean()) return Failure{FailureKind::File, access.file + ": would not do as a restored file: " + checked.trouble};
    const auto cards = file.cards();
    std::size_t entries = 0;
    for (const auto& card : cards) {
      const auto read = file.read(card.id);
      if (!read) return read.failure();
      entries += read.value().size();
    }
    return access.file + ": opens, verifies and reads back: " + std::to_string(cards.size()) + " records, " + std::to_string(entries) +
           " entries, " + std::to_string(checked.journalEntries) + " lines of the journal, mark " + checked.mark +
           "\nTo go back to it, end every session, move the present file aside, and put a copy of this one in its place.\n";
  } catch (const fs::filesystem_error& trouble) {
    return Failure{FailureKind::File, access.file + ": cannot be copied (" + trouble.code().message() + "); check the name and the room on the disk"};
  }
}

}  // namespace stile::application
