// Memory that is asked for and given back with every answer stays with the process.
#pragma once

namespace stile::desktop {

/// To be called once, before the first window. The C library gives large pieces back to the system as soon as they
/// are free, and the next answer pays for each page of them again.
void keepFreedMemory();

}  // namespace stile::desktop
