#include "plan/edit.h"

namespace stile::plan {

const char* idOf(EditKind kind) {
  switch (kind) {
    case EditKind::Swap:
      return "swap";
    case EditKind::Pin:
      return "pin";
    case EditKind::Drop:
      return "drop";
    case EditKind::Add:
      return "add";
  }
  return "";
}

}  // namespace stile::plan
