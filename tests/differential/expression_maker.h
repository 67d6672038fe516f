// Generated FHIRPath expressions: mostly well typed, now and then not.
#pragma once

#include <string>
#include <vector>

#include "resource_maker.h"

namespace stile::differential {

/// What an expression is meant to give.
enum class Wanted { Boolean, Integer, Decimal, Text, Date, DateTime, Time, Quantity };

class ExpressionMaker {
 public:
  ExpressionMaker(ResourceKind kind, Random& random) : kind_(kind), random_(random) {}

  /// Any expression at all, at most so deep.
  std::string make(int depth);

 private:
  std::string single(Wanted wanted, int depth);
  std::string literal(Wanted wanted);
  std::string boolean(int depth);
  std::string integer(int depth);
  std::string decimal(int depth);
  std::string text(int depth);
  std::string date(int depth);
  std::string dateTime(int depth);
  std::string time(int depth);
  std::string quantity(int depth);
  std::string rare(int depth);
  /// Several items of one kind.
  std::string collection(Wanted wanted, int depth);
  /// Elements of the resource, of any type.
  std::string path();
  std::string path(Wanted wanted);
  /// A criterion on one item of that kind.
  std::string criterion(Wanted wanted, int depth);
  std::string projection(Wanted wanted, int depth);
  Wanted anyKind();

  ResourceKind kind_;
  Random& random_;
  std::vector<Wanted> items_;  ///< what $this is, innermost last
};

}  // namespace stile::differential
