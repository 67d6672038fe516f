#include "store/change.h"

#include "store/sealing.h"

namespace stile::store {
namespace {

constexpr std::size_t kIdBytes = 16;

}  // namespace

std::string Change::newRecord(std::string_view kind, std::string card) {
  std::string id = hexOf(randomBytes(kIdBytes));
  steps_.push_back({Kind::NewRecord, id, {}, std::string(kind), std::move(card)});
  return id;
}

void Change::setCard(const std::string& record, std::string card) { steps_.push_back({Kind::Card, record, {}, {}, std::move(card)}); }

std::string Change::add(const std::string& record, std::string_view kind, std::string body, bool isSigned) {
  std::string id = hexOf(randomBytes(kIdBytes));
  steps_.push_back({Kind::Add, record, id, std::string(kind), std::move(body), isSigned});
  return id;
}

void Change::replaceDraft(const std::string& record, const std::string& entry, std::string body) {
  steps_.push_back({Kind::ReplaceDraft, record, entry, std::string(records::kDraftKind), std::move(body)});
}

void Change::removeDraft(const std::string& record, const std::string& entry) { steps_.push_back({Kind::RemoveDraft, record, entry, {}, {}}); }

void Change::erase(const std::string& record) { steps_.push_back({Kind::Erase, record, {}, "erased", {}}); }

void Change::note(std::string_view what, const std::string& record, std::string detail) {
  steps_.push_back({Kind::Note, record, {}, std::string(what), std::move(detail)});
}

Change& Change::append(const Change& other) {
  steps_.insert(steps_.end(), other.steps_.begin(), other.steps_.end());
  return *this;
}

}  // namespace stile::store
