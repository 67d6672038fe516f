#include "desktop/process.h"

#include <malloc.h>

#include <cstdlib>

namespace stile::desktop {
namespace {

constexpr int kLargestKept = 32 << 20, kMostKept = 64 << 20, kAhead = 6 << 20;  // bytes
constexpr std::size_t kPage = 4096;

}  // namespace

void prepareProcess() {
  // Bars that only show under a moving mouse hide from a reader with keys that the page goes on.
  setenv("GTK_OVERLAY_SCROLLING", "0", 0);
  // Nothing here is drawn by a graphics card: its driver would be read all the same, which takes 50 MB.
  setenv("GDK_GL", "disable", 0);
  // The C library gives large pieces back to the system as soon as they are free, and the next answer would pay for
  // each page of them again.
  mallopt(M_MMAP_THRESHOLD, kLargestKept);
  mallopt(M_TRIM_THRESHOLD, kMostKept);
}

void makeRoomAhead() {
  auto* const room = static_cast<volatile char*>(std::malloc(kAhead));
  for (std::size_t at = 0; room != nullptr && at < kAhead; at += kPage) room[at] = 0;
  std::free(const_cast<char*>(room));
}

}  // namespace stile::desktop
