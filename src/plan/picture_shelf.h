// Pictures drawn once and kept, so that a batch of papers does not draw the same exercise for each client.
// They belong to one library at a time: the pictures of another one take their place.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <mutex>
#include <string>
#include <tuple>

#include "movement/picture.h"

namespace stile::plan {

class PictureShelf {
 public:
  /// Whatever lives as long as the library whose pictures they are.
  using Owner = std::shared_ptr<const void>;

  /// The picture of that exercise in that form, drawn by `draw` the first time. Safe from several threads.
  drawing::Drawing get(const Owner& owner, const std::string& exercise, std::size_t form,
                       const movement::PictureOptions& options,
                       const std::function<drawing::Drawing()>& draw);

 private:
  static constexpr std::size_t kMost =
      400;  ///< pictures; then the shelf is cleared, so that memory stays flat

  using Key = std::tuple<std::string, std::size_t, double, double, movement::Build, bool, double, double, bool>;

  std::mutex mutex_;
  std::weak_ptr<const void> owner_;
  std::map<Key, drawing::Drawing> pictures_;
};

}  // namespace stile::plan
