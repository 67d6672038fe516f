#include "desktop/kept_memory.h"

#include <malloc.h>

namespace stile::desktop {
namespace {

constexpr int kLargestKept = 32 << 20, kMostKept = 64 << 20;  // bytes

}  // namespace

void keepFreedMemory() {
  mallopt(M_MMAP_THRESHOLD, kLargestKept);
  mallopt(M_TRIM_THRESHOLD, kMostKept);
}

}  // namespace stile::desktop
