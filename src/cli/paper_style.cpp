#include "cli/paper_style.h"

namespace stile::cli {

void addPaperStyle(CLI::App& command, application::PaperOptions& options) {
  command.add_option("--into", options.folder, "folder for the papers")->required();
  command.add_option("--text", options.textPoints, "14, 18 or 24: size of the client's papers in points");
  command
      .add_option_function<std::string>(
          "--build", [&options](const std::string& build) { options.build = movement::buildOf(build); },
          "slight or sturdy: the figure that drawings show (the client's or the clinic's choice if left out)")
      ->check(CLI::IsMember({"slight", "sturdy"}));
  command.add_flag("--black", options.isBlackOnly, "the client's papers in black only");
  command.add_option("--language", options.language, "of the client's papers, such as es");
  command.add_option("--to", options.physician, "whom the letter is addressed to, name and place");
  command.add_option("--referrer", options.referrer, "who sent the client: writes an outcome letter too");
  command.add_flag("--wording", options.isWordingOnly, "write no papers, only the wording of each letter, to change it");
  command.add_option("--letter", options.wordingFiles, "changed wording of a letter (a file from --wording), to be printed in its place");
  command.add_option_function<std::string>("--format", [&options](const std::string& format) {
    options.html = format != "pdf";
    options.pdf = format != "html";
  }, "html or pdf (both if left out)")->check(CLI::IsMember({"html", "pdf"}));
}

}  // namespace stile::cli
