#include "desktop/client_fields.h"

#include <wx/textctrl.h>

#include <algorithm>
#include <utility>

#include "desktop/form_field.h"
#include "desktop/typed_date.h"

namespace stile::desktop {
namespace {

constexpr int kAbove = 16;
constexpr const char* kMayBeLeftOut = "May be left out for now.";

/// A practice or a telephone without a name would be nobody's.
std::string troubleWith(const records::Person& person) {
  const bool hasMore = !person.place.empty() || !person.telephone.empty();
  return person.name.empty() && hasMore ? "Write a name here too, or leave out what belongs to it." : "";
}

}  // namespace

ClientFields::ClientFields(wxWindow* parent, const Theme& theme, const records::Client* known) : Stack(parent), client_(known == nullptr ? records::Client{} : *known), before_(client_.physician) {
  const auto field = [&](std::string* kept, const std::string& words, const std::string& help = {}) {
    auto* made = new FormField(this, theme, words, FormField::Kind::Text, help);
    if (kept != nullptr) made->set(*kept);
    put(made, kAbove);
    fields_.push_back({made, kept, made->text()});
    return made;
  };
  given_ = field(&client_.given, "Given name");
  family_ = field(&client_.family, "Family name");
  born_ = field(nullptr, "Date of birth", "Such as 14 March 1963 or 1963-03-14.");
  if (client_.born) born_->set(client_.born->toLongText());
  fields_.back().first = born_->text();
  field(&client_.record, "Record number", "Your own number. May be left out.");
  field(&client_.telephone, "Telephone", kMayBeLeftOut);
  if (known != nullptr) {
    field(&client_.email, "E-mail");
    field(&client_.address, "Address");
  }
  physician_ = field(&client_.physician.name, "Physician", std::string("Who would get a letter. ") + kMayBeLeftOut);
  practice_ = field(&client_.physician.place, "Physician's practice", kMayBeLeftOut);
  if (known == nullptr) return;
  field(&client_.physician.telephone, "Physician's telephone");
  emergency_ = field(&client_.emergencyContact.name, "Who to call in an emergency");
  field(&client_.emergencyContact.telephone, "Their telephone");
}

std::optional<records::Client> ClientFields::client(base::Date today) {
  for (const Row& row : fields_)
    if (row.kept != nullptr) *row.kept = row.field->text();
  client_.born = typedDate(born_->text());
  FieldCheck check;
  check.needs(*given_);
  check.needs(*family_);
  check(*born_, !client_.born ? kNoDay : *client_.born > today ? "This day is still to come." : "");
  check(*physician_, troubleWith(client_.physician));
  if (isOfPhysicianBefore() && !std::exchange(isPracticeAsked_, true))
    check(*practice_, "This is how " + before_.name + " is reached. Change it, or save once more if it is the same.");
  if (emergency_ != nullptr) check(*emergency_, troubleWith(client_.emergencyContact));
  if (check.enterFirst()) return std::nullopt;
  return client_;
}

/// Whether only the name of the physician is another.
bool ClientFields::isOfPhysicianBefore() const {
  const records::Person& now = client_.physician;
  const bool isSame = now.place == before_.place && now.telephone == before_.telephone;
  return !before_.name.empty() && !now.name.empty() && now.name != before_.name && isSame && !(now.place.empty() && now.telephone.empty());
}

bool ClientFields::isChanged() const {
  return std::any_of(fields_.begin(), fields_.end(), [](const Row& row) { return row.field->text() != row.first; });
}

void ClientFields::enter() { given_->enter(); }

bool ClientFields::enterNext() {
  for (std::size_t i = 0; i + 1 < fields_.size(); ++i)
    if (fields_[i].field->control().HasFocus()) return fields_[i + 1].field->enter(), true;
  return false;
}

}  // namespace stile::desktop
