// The picture of an exercise: its panels side by side (or under each other), same scale, same floor,
// with props, arrow and marked area. Plain vector shapes for screen, SVG and PDF alike.
#pragma once

#include <string>

#include "drawing/shape.h"
#include "movement/body.h"
#include "movement/figure.h"

namespace stile::movement {

struct PictureOptions {
  double width = 300, height = 190;  ///< drawing units; the picture fits into it, centred
  Build build = Build::Sturdy;
  bool isMirrored = false;     ///< the other side: seen in a mirror
  double share = 1;            ///< of the full movement, when it is done smaller
  double turn = 0;             ///< degrees the camera is turned about the figure
  bool hasSeatHeight = false;  ///< write the height of an eased seat beside it
};

/// The panels of a figure in one of its forms (0 = as written, then one per easing).
/// `title` and `description` are left to the caller.
drawing::Drawing pictureOf(const Figure& figure, std::size_t form, const PictureOptions& options = {});

/// One frame on the way through the key poses, `t` from 0 to 1, for animation.
drawing::Drawing frameOf(const Figure& figure, std::size_t form, double t,
                         const PictureOptions& options = {});

/// The body a fraction of the way through the key poses of a form.
Body bodyAt(const Form& form, double t);

}  // namespace stile::movement
