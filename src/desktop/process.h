// What holds for the whole process of the desk.
#pragma once

namespace stile::desktop {

/// To be called once, before the toolkit starts.
void prepareProcess();

/// Makes room for what answers need, while nobody waits: the system takes its time over each new page.
void makeRoomAhead();

}  // namespace stile::desktop
