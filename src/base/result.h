// A value, or the failure that prevented it: files, databases and refused input.
#pragma once

#include <string>
#include <utility>
#include <variant>

namespace stile::base {

/// What kind of failure; the command line turns it into its exit code.
enum class FailureKind { Usage, Refused, File, Secret, Promise };

struct Failure {
  FailureKind kind = FailureKind::File;
  std::string message;  ///< names the place and the remedy
};

/// Holds either a T or a Failure. Ask `ok()` first; taking the other one is a programming error.
template <class T>
class [[nodiscard]] Result {
 public:
  Result(T value) : content_(std::in_place_index<0>, std::move(value)) {}
  Result(Failure failure) : content_(std::in_place_index<1>, std::move(failure)) {}

  bool ok() const { return content_.index() == 0; }
  explicit operator bool() const { return ok(); }
  const T& value() const& { return std::get<0>(content_); }
  T& value() & { return std::get<0>(content_); }
  T&& value() && { return std::get<0>(std::move(content_)); }
  const Failure& failure() const { return std::get<1>(content_); }

 private:
  std::variant<T, Failure> content_;
};

}  // namespace stile::base
