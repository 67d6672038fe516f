// What the desk does about papers: it orders them from the record, and files those that go out.
#include <algorithm>

#include "desktop/desk.h"
#include "documents/decision_words.h"

namespace stile::desktop {

base::Result<application::PaperOrder> Desk::orderPapers() {
  const auto* screening = this->screening();
  if (screening == nullptr)
    return base::Failure{base::FailureKind::Usage,
                         whyNoScreening_.empty()
                             ? "Nothing is decided yet, so there is nothing to write."
                             : documents::asSentence(documents::capitalized(whyNoScreening_))};
  application::PaperOptions options;
  options.html = false;
  options.wordings = wordings_;
  if (!filedEntry().empty())
    return application::orderPapers(*clinic_, clientId_, *content_, std::move(options));
  const auto work = application::RecordWork::open(*clinic_, clientId_);
  if (!work) return work.failure();
  if (const auto filled = application::fillFromRecord(options, *clinic_, work.value().folded()); !filled)
    return filled.failure();
  return application::PaperOrder{
      std::make_shared<const screening::Screening>(*screening), {}, std::move(options), {}};
}

base::Result<bool> Desk::chooseBuild(std::optional<movement::Build> build) {
  if (client() == nullptr) return base::Failure{base::FailureKind::Usage, "No client is open."};
  const auto done = application::chooseBuild(*clinic_, clientId_, build);
  if (done) recordChanged();
  return done;
}

base::Result<std::vector<std::string>> Desk::issue(const application::PaperOrder& order,
                                                   const application::MadePapers& made,
                                                   const std::string& folder, const std::string& only) {
  return application::issueMade(*clinic_, clientId_, order, made, folder, only, today());
}

void Desk::setWording(documents::LetterWording wording) {
  dropWording(wording.letter);
  wordings_.push_back(std::move(wording));
}

const documents::LetterWording* Desk::wordingOf(const std::string& letter) const {
  const auto at = std::find_if(wordings_.begin(), wordings_.end(),
                               [&letter](const auto& one) { return one.letter == letter; });
  return at == wordings_.end() ? nullptr : &*at;
}

void Desk::dropWording(const std::string& letter) {
  std::erase_if(wordings_, [&letter](const auto& one) { return one.letter == letter; });
}

}  // namespace stile::desktop
