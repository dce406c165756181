// A page as neutral content: what one pins to the wall of a place, before it is painted on paper
// (ui/print) or written as plain text (page_text.h). A page holds words and figures, no fonts and
// no colours; drawings are values of their own.
#pragma once

#include <QString>
#include <QStringList>
#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

#include "core/units/day.h"
#include "core/units/known.h"
#include "core/words/paper_mark.h"

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
        Blank,   ///< one field to write in, the text small at its left
        Marks,   ///< letters parted by blanks, each in a square of its own: the frames of a box
        Week,    ///< a square of a week: letters parted by blanks inside, a bar at its foot
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
    bool open = false;   ///< a bar without filling: from paper
    bool small = false;  ///< a caption among figures
    bool big = false;    ///< to be read from a step away
    std::vector<StackedBox> stack;
    QString dot = {};  ///< before the text: what a queen wears, by the word for its colour
    // A week's square: `strong` a solid bar, `open` an empty one, `hatched` all over, `dashed`
    // without a frame: nothing lived there.
};

enum class Rule { Hairline, Ink, Double };

struct TableRow {
    std::vector<Cell> cells;
    Rule below = Rule::Hairline;
    bool group = false;  ///< a head row within the table: what follows up to the next stays with it
};

/// A mark on the scale over a column of bars, or on the axis of a chart.
struct ScaleMark {
    double at = 0;  ///< share of the scale, 0 to 1
    QString label;
};

struct TableColumn {
    QString head;
    double share = 1;  ///< of the page's width
    bool right = false;
    std::vector<ScaleMark> scale = {};  ///< over bars; then the head is for plain text only
    bool close = false;                 ///< stands against its neighbour, without a gap
};

struct TableBlock {
    QString title;
    std::vector<TableColumn> columns;
    std::vector<TableRow> rows;
    double rowMm = 7;          ///< at least so high
    bool groupsBreak = false;  ///< a group need not begin a sheet to stay together
    int abreast = 1;           ///< so many rows beside each other on paper, read downwards
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
    QStringList strong;  ///< stretches of the text that stand out, in their order
    bool small = false;
    bool caution = false;  ///< what can hurt: framed
};

/// Words with a line to write on: "hives opened ____ of 12".
struct BlanksBlock {
    std::vector<QString> labels;
    bool framed = false;
};

/// Amounts added up over a year, drawn as steps; further years beside it, dashed.
struct StepsBlock {
    struct Step {
        Day on;
        double amount = 0;  ///< what this step adds, in the unit of the axis
        QString label;      ///< "8 Aug Creek 66.0 kg"
    };
    struct Line {
        int year = 0;
        QString end;  ///< "2027: 403.3"
        bool dashed = false;
        std::vector<Step> steps;
        double rest = 0;  ///< of the sum, on no day that is known: from paper
    };
    QString title;
    QString axis;                  ///< "kg in buckets, added up"
    std::vector<Line> lines;       ///< the year itself first, at most six
    double top = 1;                ///< of the axis
    std::vector<ScaleMark> marks;  ///< on the axis
    double heightMm = 35;          ///< on paper
};

/// Points over the days of a year in series, and the table they are: what is drawn, read out, set
/// in rows and written to a file is one and the same.
struct ChartBlock {
    enum class Join { Lines, Steps, Stems };
    struct Point {
        Day on;
        double value = 0;                           ///< in the unit of the axis
        std::optional<double> low = std::nullopt;   ///< so low, and
        std::optional<double> high = std::nullopt;  ///< so high it may be all the same
        QString figure = {};                        ///< the value as it is shown
        QString says = {};                          ///< the whole mark as a sentence
        QStringList cells = {};  ///< of its row in the table, after the name of the series
        /// What it was made of, so that it can be opened; 0: nothing.
        std::int64_t hive = 0;
        std::int64_t run = 0;
        std::int64_t finding = 0;
        std::int64_t weighing = 0;
        std::int64_t look = 0;
    };
    struct Series {
        QString name;
        QString end;  ///< beside the line: "ML9 11 in 300"
        std::vector<Point> points;
        std::optional<std::size_t> besideOf = std::nullopt;  ///< another year's of that series
    };
    /// What the points are held against, from each day on.
    struct Limit {
        struct From {
            Day on;
            double value = 0;
        };
        QString label;
        std::vector<From> steps;
    };
    struct Span {
        Day from;
        Day to;
        bool open = false;  ///< nobody said until when
        QString says;
    };
    struct Column {
        QString head;
        bool number = false;
        bool fileOnly = false;  ///< the same again in a smallest unit: not on a screen
    };
    QString title;
    QString axis;   ///< "mites in 100 bees"
    QString about;  ///< beside the title: what was treated when
    QString note;   ///< what is not drawn, and why
    QString empty;  ///< what to do where there is no point at all
    int year = 0;
    Join join = Join::Lines;
    std::vector<Series> series;  ///< those that matter first; at most six are drawn at once
    std::vector<Limit> limits;
    std::vector<Span> spans;
    double top = 1;                 ///< of the axis
    std::vector<ScaleMark> marks;   ///< on the axis
    std::vector<Column> columns;    ///< the first for the name of a series
    std::vector<QStringList> more;  ///< rows of the table that are no mark
};

/// How large a line of a card is; paper decides what that measures. A wall's is read across a room.
enum class PaperSize { Note, Body, Head, Title, Big, Poster, Wall };

/// A clothes peg; without a number it is one to write in.
struct PegDrawn {
    QString number;
};

/// Boxes as they stand, from the top down, in one stack or several beside each other.
struct StacksDrawn {
    struct Box {
        QString mark;  ///< empty: it has none
        QString peg;   ///< empty: none is clipped
        double heightMm = 168.3;
    };
    std::vector<std::vector<Box>> stacks;
};

/// An extractor from above: slot 1 at the top, then as the clock goes.
struct DrumDrawn {
    struct Place {
        QString label;                 ///< whose frame hangs there; empty: not planned
        std::optional<double> startG;  ///< none: nothing is drawn in
        std::optional<double> endG;
    };
    std::vector<Place> places;
    bool toWrite = false;    ///< nothing is weighed: a blank circle in each slot for h, m or l
    double longestG = 2600;  ///< what a bar from end to end stands for
};

struct CardText {
    QString text;
    PaperSize size = PaperSize::Body;
    bool strong = false;
    bool muted = false;
};

/// Words with a line to write on, a box to tick, or both.
struct CardField {
    QString label;
    QString unit = {};   ///< behind the line
    QString value = {};  ///< known already: stands on the line
    double share = 1;    ///< of its row's width
    bool line = true;
    bool tick = false;
    bool ticked = false;
    bool strong = false;
};

/// Something cut out, clipped on or written on with a pencil: a drawing, what it is, and fields.
struct Card {
    using Drawing = std::variant<std::monostate, PegDrawn, StacksDrawn, DrumDrawn>;
    Drawing drawing;
    double drawingShare = 0;  ///< of the width, at the left and as high as the card; 0: its corner
    CardText name;            ///< large, at the left
    std::vector<CardText> about;  ///< at the right of the name, below each other
    std::vector<CardText> lines;  ///< below, over the whole width
    bool ruled = false;           ///< a rule parts that from the fields
    std::vector<std::vector<CardField>> rows;
};

/// Cards in a grid. As many rows of them as a sheet holds share its height.
struct CardsBlock {
    QString title;
    QString about;  ///< muted, at the right of the title
    std::vector<Card> cards;
    int across = 1;
    double rowMm = 40;  ///< a row at least so high
    bool cut = true;    ///< lines to cut along; else edges
};

/// A square code as dark and light modules.
struct QrDrawn {
    int side = 0;            ///< modules along an edge; 0: none
    std::vector<bool> dark;  ///< row by row
    int rim = 4;             ///< modules of white around it
};

/// A label where it lies on the sheet, millimetres from its upper left corner.
struct PlacedCell {
    double leftMm = 0;
    double topMm = 0;
    std::size_t label = 0;  ///< of `labels`
    QString corner;         ///< on a page to calibrate by: the cell's number
};

/// What stands on a label.
struct LabelDrawn {
    QString head;       ///< "Honey"
    QString net;        ///< "454 g"
    QStringList lines;  ///< below each other
    QString caution;    ///< never left out
    QrDrawn qr;
};

/// Labels on bought sheets: nothing else stands on the paper, and it has no margins.
struct LabelsBlock {
    QString paper;  ///< "A4", "Letter"
    double paperWidthMm = 210;
    double paperHeightMm = 297;
    double cellWidthMm = 0;
    double cellHeightMm = 0;
    bool round = false;
    bool outlines = false;  ///< to calibrate by: edges, a cross and a scale
    QStringList about;      ///< then, what to do, in the middle of the sheet
    std::vector<LabelDrawn> labels;
    std::vector<std::vector<PlacedCell>> sheets;
};

using Block = std::variant<TextBlock, TickBlock, TableBlock, BlanksBlock, StepsBlock, CardsBlock,
                           LabelsBlock, ChartBlock>;

struct Page {
    QString title;
    QString keeper;
    QString day;  ///< "for Wed 16 Jun 2027"
    std::vector<Block> blocks;
    std::vector<How> letters;  ///< how-known letters explained in the foot
    bool invented = false;
    QString marked = paperMark();  ///< a what-if, or as it stood on a day: said on every sheet
    /// Pages bound behind this one, which is their list: one row of its first table for each, whose
    /// last cell paper fills with the number of the sheet it begins on.
    std::vector<Page> bound = {};
    /// Meant to hang on one sheet: set a little closer where it would else run over by some lines.
    bool oneSheet = false;
    bool wide = false;  ///< the paper lies on its long side
};

/// The letters used on a page, best first, gathered from its cells.
std::vector<How> lettersOf(const Page& page);

}  // namespace combwright
