// Dialogs that stand open: ours and the system's own.
#pragma once

namespace stile::desktop {

/// Ends the dialog in front as its Cancel would. False when there is none.
bool cancelDialog();

}  // namespace stile::desktop
