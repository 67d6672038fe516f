#include "plan/picture_shelf.h"

namespace stile::plan {

drawing::Drawing PictureShelf::get(const Owner& owner, const std::string& exercise, std::size_t form,
                                   const movement::PictureOptions& options,
                                   const std::function<drawing::Drawing()>& draw) {
  if (owner == nullptr) return draw();
  const Key key{exercise,           form,         options.width,        options.height, options.build,
                options.isMirrored, options.share, options.turn, options.hasSeatHeight};
  {
    const std::lock_guard lock(mutex_);
    if (owner_.lock() != owner) pictures_.clear(), owner_ = owner;
    if (const auto at = pictures_.find(key); at != pictures_.end()) return at->second;
  }
  drawing::Drawing picture = draw();  // the others do not wait for it
  const std::lock_guard lock(mutex_);
  if (pictures_.size() >= kMost) pictures_.clear();
  if (owner_.lock() == owner) pictures_.emplace(key, picture);
  return picture;
}

}  // namespace stile::plan
