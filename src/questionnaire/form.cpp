#include "questionnaire/form.h"

#include "questionnaire/canonical.h"
#include "questionnaire/form_loader.h"

namespace stile::questionnaire {

const Item* Form::find(std::string_view linkId) const {
  const auto found = byLinkId_.find(linkId);
  return found == byLinkId_.end() ? nullptr : found->second;
}

const Item* Form::repeatingGroupOf(const Item& item) {
  for (const Item* group = item.parent; group; group = group->parent) {
    if (group->type == ItemType::Group && group->repeats) return group;
  }
  return nullptr;
}

FormSet FormSet::loadAny(const std::map<std::string, std::string>& files, base::Issues& issues) {
  FormSet set;
  set.forms_ = FormLoader(files, FormLoader::Rules::Standard, issues).load();
  return set;
}

FormSet FormSet::load(const std::map<std::string, std::string>& files, base::Issues& issues) {
  FormSet set;
  set.forms_ = FormLoader(files, FormLoader::Rules::OwnContent, issues).load();
  return set;
}

const Form* FormSet::byName(std::string_view name) const {
  for (const auto& form : forms_) {
    if (form->name() == name) return form.get();
  }
  return nullptr;
}

const Form* FormSet::byUrl(std::string_view canonical) const {
  // The version is not compared: which versions may be read is for whoever reads a response.
  const Canonical wanted = splitCanonical(canonical);
  for (const auto& form : forms_) {
    if (!wanted.url.empty() && form->url() == wanted.url) return form.get();
  }
  return nullptr;
}

}  // namespace stile::questionnaire
