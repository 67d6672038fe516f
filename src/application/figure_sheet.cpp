#include "application/figure_sheet.h"

#include <algorithm>

#include "drawing/svg.h"
#include "movement/figure.h"
#include "movement/picture.h"

namespace stile::application {
namespace {

std::string cell(const movement::Figure& figure, std::size_t form, int percent, int number,
                 const FigureSheetOptions& options) {
  movement::PictureOptions picture;
  picture.width = figure.panels.size() > 2 ? 420 : 320;
  picture.height = 210;
  picture.build = options.build;
  picture.isMirrored = options.isMirrored;
  picture.hasSeatHeight = form > 0;
  picture.share = percent / 100.0;
  drawing::Drawing drawing = pictureOf(figure, form, picture);
  const std::string title = options.hasTitles
                                ? figure.exercise + (form == 0 ? "" : ", eased " + std::to_string(form)) +
                                      (percent == 100 ? "" : ", " + std::to_string(percent) + " %")
                                : std::to_string(number);
  drawing.title = title;
  drawing.description = "Key poses of the exercise.";
  return "<figure><figcaption>" + drawing::escaped(title) + "</figcaption>" +
         toSvg(drawing, {drawing::Theme::Paper, "f" + std::to_string(number), true}) + "</figure>\n";
}

}  // namespace

std::string figureSheet(const std::map<std::string, std::string>& files, const FigureSheetOptions& options,
                        base::Issues& issues) {
  const movement::Figures figures = movement::readFigures(files, issues);
  std::string body;
  int number = 0;
  for (const auto& [id, figure] : figures) {
    const auto& wanted = options.exercises;
    if (!wanted.empty() && std::find(wanted.begin(), wanted.end(), id) == wanted.end()) continue;
    if (figure.forms.empty() || figure.forms.front().poses.size() < 2) continue;
    for (std::size_t form = 0; form < (options.hasEased ? figure.forms.size() : 1); ++form)
      for (const int percent : {100, options.smallerPercent})
        if (percent > 0) body += cell(figure, form, percent, ++number, options);
  }
  return "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Figures</title><style>\n"
         "body{font:13px 'Clear Sans','Noto Sans',Arial,sans-serif;margin:8px;color:#17212A}\n"
         "figure{display:inline-block;margin:0 6px 8px 0;border:1px solid #C3C9C1;vertical-align:top}\n"
         "figcaption{padding:2px 6px}\n</style></head><body>\n" +
         body + "</body></html>\n";
}

}  // namespace stile::application
