// One small document model for every paper. Makers (summary, letter, handout …) fill it; writers
// (text, HTML, PDF) set it. It holds words and shapes only, no layout.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/date.h"
#include "drawing/shape.h"
#include "records/clinic_settings.h"

namespace stile::documents {

struct Block;

enum class Tone {
  Body,
  Small,      ///< second lines
  Statement,  ///< the one sentence that matters
  Dose,       ///< how much of an exercise
  Number,     ///< a telephone number to be read from across the room
};

/// `lead` stands before the text in bold.
struct Paragraph {
  std::string text;
  std::string lead;
  Tone tone = Tone::Body;
};

/// A term, what is said of it, at the side what it rests on, and below it what is small.
struct Row {
  std::string term;
  std::vector<std::string> text;
  std::vector<std::string> note;
  std::vector<std::string> fine = {};
  std::optional<drawing::Drawing> plot = std::nullopt;  ///< small, in the column of the notes
};

/// `isCompact`: small, each row run into one paragraph, two columns where there is room.
struct Rows {
  std::vector<Row> rows;
  bool isCompact = false;
};

enum class CellKind {
  Text,
  TickBox,
  Rest,
  Blank,  ///< to write in
};

struct Cell {
  std::string text;
  CellKind kind = CellKind::Text;
};

/// The first cell of a row names the row.
struct Table {
  std::string caption;  ///< for readers who cannot see the table
  std::vector<std::string> columns;
  std::vector<std::vector<Cell>> rows;
  bool isGrid = false;  ///< every cell framed, as for ticking
  std::vector<int> shares = {};  ///< of the width, by column; empty: by what the columns hold
};

struct List {
  std::vector<std::string> items;
  bool isNumbered = false;
  bool isInColumns = false;  ///< set in two columns where there is room
};

/// A drawing, and the same for a terminal.
struct Figure {
  drawing::Drawing drawing;
  std::vector<std::string> inText;
};

enum class BoxKind {
  Plain,
  Emergency,  ///< call for help now: the heaviest frame
  Stop,       ///< stop today and call the clinic
  NotForNow,  ///< what is left out: the notice with cut corners
  Held,       ///< not for the client's eyes
  Exercise,
  Question,   ///< of a form to fill in: number, words, places to answer
};

/// An exercise has its number and may have a picture, which stands beside its blocks.
struct Box {
  BoxKind kind = BoxKind::Plain;
  std::string title;
  std::vector<Block> blocks;
  std::string number = {};
  std::optional<Figure> picture = std::nullopt;
};

/// More of the same, folded away; on a terminal only the title. In print it is opened, unless it is
/// for the screen only.
struct Fold {
  std::string title;
  std::vector<Block> blocks;
  bool isScreenOnly = false;
};

/// Side by side where there is room; `shares` gives the widths.
struct Columns {
  std::vector<std::vector<Block>> columns;
  std::vector<int> shares;
};

/// A line to write on, or several below each other.
struct WriteLine {
  std::string label;
  int lines = 1;
};

/// Boxes to tick, each with its words; side by side where there is room for all.
struct Choices {
  std::string label;  ///< before the boxes, may be empty
  std::vector<std::string> options;
  bool isOnePerLine = false;
};

/// Where a slip is cut off; the words stand above the slip.
struct CutLine {
  std::string title;
  std::string words;
};

struct Block {
  std::variant<Paragraph, Rows, Table, List, Figure, Box, Fold, Columns, WriteLine, Choices, CutLine> form;
};

struct Section {
  std::string heading;  ///< may be empty
  std::vector<Block> blocks;
  bool startsPage = false;
  double sharedUpTo = 0;  ///< … unless no more than this share of the page at hand is used
  bool staysWhole = false;  ///< on one page, where it fits on one
};

/// Clinician's papers are set small; letters in between; a client's large, with nothing under 14 pt.
enum class Reader { Clinician, Physician, Client };

/// Sizes for clients: nothing under 14, 18 or 24 pt.
enum class TextSize { Points14, Points18, Points24 };

/// Words that the writers themselves set.
struct WriterWords {
  std::string page = "page {page} of {pages}";
  std::string rest = "rest";
  std::string name = "name";
  std::string tickBox = "box to tick";
};

struct Document {
  std::string title;
  Reader reader = Reader::Clinician;
  TextSize textSize = TextSize::Points14;
  bool isBlackOnly = false;                     ///< no tints, no colours
  bool isOneExerciseAPage = false;
  std::string language = "en";                  ///< BCP 47
  records::PaperSize paperSize = records::PaperSize::A4;
  std::optional<base::Date> date;               ///< of the screening; PDF files carry it, never the clock
  std::string logoPng;                          ///< bytes of the clinic's logo, or "" for our mark
  WriterWords words;
  std::string clinic;              ///< name, address, telephone in one line
  std::string client;              ///< name, or "" for a line to write on
  std::vector<std::string> about;  ///< lines beside the title: born, record, date
  std::vector<Section> sections;
  std::vector<std::string> footer;  ///< caution, content version
  std::string runningFoot;          ///< one line on every page, beside the page number
};

}  // namespace stile::documents
