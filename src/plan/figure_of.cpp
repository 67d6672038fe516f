#include "plan/figure_of.h"

#include "plan/picture_shelf.h"

namespace stile::plan {
namespace {

/// One for the program: its doses tell libraries apart, which a loaded library never changes nor shares.
PictureShelf& shelf() {
  static PictureShelf one;
  return one;
}

}  // namespace

std::optional<drawing::Drawing> figureOf(const Library& library, const Exercise& exercise, std::size_t form,
                                         std::string_view side, movement::PictureOptions options) {
  const auto at = library.figures.find(exercise.id);
  if (at == library.figures.end() || at->second.forms.empty()) return std::nullopt;
  const movement::Figure& figure = at->second;
  const bool isLeftDrawn = figure.working == movement::Hand::Left;
  const bool wantsLeft = side.substr(0, 4) == "left", wantsRight = side.substr(0, 5) == "right";
  options.isMirrored = exercise.oneSided && ((wantsLeft && !isLeftDrawn) || (wantsRight && isLeftDrawn));
  options.hasSeatHeight =
      options.hasSeatHeight || (form < figure.forms.size() &&
                                propsOf(scaled(figure.forms[form], options.share)) != figure.forms[0].props);
  drawing::Drawing drawing = shelf().get(library.doses, exercise.id, form, options,
                                         [&] { return pictureOf(figure, form, options); });
  drawing.title = exercise.title;
  for (const std::string& step : exercise.steps)
    drawing.description += (drawing.description.empty() ? "" : " ") + step;
  return drawing;
}

std::optional<drawing::Drawing> figureOf(const Library& library, const Line& line,
                                         movement::PictureOptions options) {
  if (line.exercise == nullptr) return std::nullopt;
  options.share = line.percent / 100.0;
  return figureOf(library, *line.exercise, line.form, line.side, options);
}

}  // namespace stile::plan
