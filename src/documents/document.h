// One small document model for every paper. Makers (summary, handout, waiting sheet) fill it;
// writers (text, HTML) set it. It holds words and shapes only, no layout.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "drawing/shape.h"

namespace stile::documents {

struct Block;

enum class Tone {
  Body,
  Small,      ///< second lines
  Statement,  ///< the one sentence that matters
  Dose,       ///< how much of an exercise
};

/// `lead` stands before the text in bold.
struct Paragraph {
  std::string text;
  std::string lead;
  Tone tone = Tone::Body;
};

/// A term, what is said of it, and at the side what it rests on.
struct Row {
  std::string term;
  std::vector<std::string> text;
  std::vector<std::string> note;
};

struct Rows {
  std::vector<Row> rows;
};

enum class CellKind { Text, TickBox, Rest };

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
};

struct Box {
  BoxKind kind = BoxKind::Plain;
  std::string title;
  std::vector<Block> blocks;
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

/// A line to write on.
struct WriteLine {
  std::string label;
};

struct Block {
  std::variant<Paragraph, Rows, Table, List, Figure, Box, Fold, Columns, WriteLine> form;
};

struct Section {
  std::string heading;  ///< may be empty
  std::vector<Block> blocks;
  bool startsPage = false;
};

/// Clinician's papers are set small; a client's large, with nothing under 14 pt.
enum class Reader { Clinician, Client };

struct Document {
  std::string title;
  Reader reader = Reader::Clinician;
  std::string clinic;              ///< name, address, telephone in one line
  std::string client;              ///< name, or "" for a line to write on
  std::vector<std::string> about;  ///< lines beside the title: born, record, date
  std::vector<Section> sections;
  std::vector<std::string> footer;  ///< caution, content version
};

}  // namespace stile::documents
