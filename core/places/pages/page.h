// A page as neutral content: what one pins to the wall of a place, before it is painted on paper
// (ui/print) or written as plain text (page_text.h). A page holds words and figures, no fonts and
// no colours; drawings are values of their own.
#pragma once

#include <QString>
#include <optional>
#include <variant>
#include <vector>

#include "core/units/known.h"

namespace combwright {

/// A box of a small stack drawn in a row: its height, and whether it is the nest's.
struct StackedBox {
    double heightMm = 0;
    bool nest = false;
    bool excluderAbove = false;
};

struct Cell {
    enum class Look {
        Text,
        Pencil,  ///< empty lines to write on, with a small box to tick
        Shut,    ///< hatched: not to be opened; the text says until when
        Bar,     ///< a bar to scale, with a stroke for another year
        Stack,   ///< a hive's boxes, small
    };
    Look look = Look::Text;
    QString text;
    QString second;  ///< a line below, muted
    std::optional<How> how;
    bool strong = false;
    bool muted = false;
    double bar = 0;                ///< share of the scale, 0 to 1
    std::optional<double> stroke;  ///< likewise
    bool hatched = false;
    bool dashed = false;
    std::vector<StackedBox> stack;
};

enum class Rule { Hairline, Ink, Double };

struct TableRow {
    std::vector<Cell> cells;
    Rule below = Rule::Hairline;
    bool group = false;  ///< a head row within the table; a page breaks before it, not after
};

struct TableColumn {
    QString head;
    double share = 1;  ///< of the page's width
    bool right = false;
};

struct TableBlock {
    QString title;
    std::vector<TableColumn> columns;
    std::vector<TableRow> rows;
    double rowMm = 7;  ///< at least so high
};

/// Lines to tick: "☐ 1 feeder and 5 kg syrup   ML6".
struct TickBlock {
    QString title;
    struct Line {
        QString text;
        QString about;
    };
    std::vector<Line> lines;
    int columns = 2;
};

struct TextBlock {
    QString title;
    QString text;
    bool small = false;
    bool caution = false;  ///< what can hurt: framed
};

/// Words with a line to write on: "hives opened ____ of 12".
struct BlanksBlock {
    std::vector<QString> labels;
    bool framed = false;
};

using Block = std::variant<TextBlock, TickBlock, TableBlock, BlanksBlock>;

struct Page {
    QString title;
    QString keeper;
    QString day;  ///< "for Wed 16 Jun 2027"
    std::vector<Block> blocks;
    std::vector<How> letters;  ///< how-known letters explained in the foot
    bool invented = false;
};

/// The letters used on a page, best first, gathered from its cells.
std::vector<How> lettersOf(const Page& page);

}  // namespace combwright
