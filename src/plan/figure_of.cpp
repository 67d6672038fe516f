#include "plan/figure_of.h"

#include "plan/picture_shelf.h"

namespace stile::plan {
namespace {

/// One for the program: its doses tell libraries apart, which a loaded library never changes nor shares.
PictureShelf& shelf() {
  static PictureShelf one;
  return one;
}

bool isDrawn(const Library& library, const Exercise& exercise) {
  const auto at = library.figures.find(exercise.id);
  return at != library.figures.end() && !at->second.forms.empty();
}

void addWords(drawing::Drawing& drawing, const Exercise& exercise) {
  drawing.title = exercise.title;
  for (const std::string& step : exercise.steps)
    drawing.description += (drawing.description.empty() ? "" : " ") + step;
}

}  // namespace

std::optional<drawing::Drawing> figureFrameOf(const Library& library, const Line& line, const movement::PictureOptions& options) {
  if (line.exercise == nullptr || !isDrawn(library, *line.exercise)) return std::nullopt;
  drawing::Drawing frame;
  frame.width = options.width;
  frame.height = options.height;
  addWords(frame, *line.exercise);
  return frame;
}

std::optional<drawing::Drawing> figureOf(const Library& library, const Exercise& exercise, std::size_t form,
                                         std::string_view side, movement::PictureOptions options) {
  if (!isDrawn(library, exercise)) return std::nullopt;
  const movement::Figure& figure = library.figures.find(exercise.id)->second;
  const bool isLeftDrawn = figure.working == movement::Hand::Left;
  const bool wantsLeft = side.substr(0, 4) == "left", wantsRight = side.substr(0, 5) == "right";
  options.isMirrored = exercise.oneSided && ((wantsLeft && !isLeftDrawn) || (wantsRight && isLeftDrawn));
  options.hasSeatHeight =
      options.hasSeatHeight || (form < figure.forms.size() &&
                                propsOf(scaled(figure.forms[form], options.share)) != figure.forms[0].props);
  drawing::Drawing drawing = shelf().get(library.doses, exercise.id, form, options,
                                         [&] { return pictureOf(figure, form, options); });
  addWords(drawing, exercise);
  return drawing;
}

std::optional<drawing::Drawing> figureOf(const Library& library, const Line& line,
                                         movement::PictureOptions options) {
  if (line.exercise == nullptr) return std::nullopt;
  options.share = line.percent / 100.0;
  return figureOf(library, *line.exercise, line.form, line.side, options);
}

}  // namespace stile::plan
