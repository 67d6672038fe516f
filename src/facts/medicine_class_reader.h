// Reading rules/medicines/classes.json.
#pragma once

#include "facts/medicine_class.h"

namespace stile::facts {

class MedicineClassReader {
 public:
  explicit MedicineClassReader(base::Issues& issues) : issues_(issues) {}

  MedicineClasses read(json::Node root);

 private:
  void readClass(json::Node node);
  /// Takes the names of other classes into those that ask for them, once all are read.
  void borrowNames(json::Node root);
  void index(int classIndex);

  base::Issues& issues_;
  MedicineClasses result_;
};

}  // namespace stile::facts
