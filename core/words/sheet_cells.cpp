#include "core/words/sheet_cells.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/words/figures.h"
#include "core/words/shorthand.h"
#include "core/words/shorthand_phrases.h"
#include "core/words/typed_words.h"
#include "core/words/units.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString cellWord(const char* text) { return QCoreApplication::translate("sheet_cells", text); }

/// Copies what belongs to one cell from a line to another; the one list of what a cell holds.
void copyCell(const SheetLine& from, SheetLine& to, SheetCell cell) {
    switch (cell) {
        case SheetCell::Opened:
            to.seen.looked = from.seen.looked;
            to.lookSaid = from.lookSaid;
            return;
        case SheetCell::Eggs:
            to.seen.eggs = from.seen.eggs;
            return;
        case SheetCell::OpenBrood:
            to.seen.openBrood = from.seen.openBrood;
            return;
        case SheetCell::CappedBrood:
            to.seen.cappedBrood = from.seen.cappedBrood;
            return;
        case SheetCell::Queen:
            to.seen.queenSeen = from.seen.queenSeen;
            return;
        case SheetCell::Brood:
            to.seen.brood = from.seen.brood;
            return;
        case SheetCell::Stores:
            to.seen.stores = from.seen.stores;
            return;
        case SheetCell::Seams:
            to.seen.seams = from.seen.seams;
            return;
        case SheetCell::QueenCells:
            to.seen.queenCells = from.seen.queenCells;
            to.seen.cellState = from.seen.cellState;
            return;
        case SheetCell::CellsLeft:
            to.seen.cellsLeft = from.seen.cellsLeft;
            return;
        case SheetCell::Boxes:
            to.supersOn = from.supersOn;
            to.supersOff = from.supersOff;
            to.deepsOn = from.deepsOn;
            to.deepsOff = from.deepsOff;
            return;
        case SheetCell::Wash:
            to.mites = from.mites;
            to.bees = from.bees;
            to.sampledBy = from.sampledBy;
            return;
        case SheetCell::Board:
            to.boardMites = from.boardMites;
            to.boardDays = from.boardDays;
            return;
        case SheetCell::Drones:
            to.droneMites = from.droneMites;
            to.droneCells = from.droneCells;
            return;
        case SheetCell::Pests:
            to.beetles = from.beetles;
            to.moths = from.moths;
            to.chalk = from.chalk;
            return;
        case SheetCell::Weight:
            to.left = from.left;
            to.right = from.right;
            to.whole = from.whole;
            return;
        case SheetCell::Fed:
            to.fed = from.fed;
            to.fedAs = from.fedAs;
            return;
        case SheetCell::Temper:
            to.seen.temper = from.seen.temper;
            return;
        case SheetCell::Heft:
            to.seen.heft = from.seen.heft;
            return;
        case SheetCell::ComeBack:
            to.seen.comeBack = from.seen.comeBack;
            return;
        case SheetCell::Note:
            to.seen.note = from.seen.note;
            return;
    }
}

SheetLine onlyCell(const SheetLine& line, SheetCell cell) {
    SheetLine only;
    copyCell(line, only, cell);
    return only;
}

/// The mark a reading's cell begins with in the shorthand; empty for cells that are whole marks.
QString markOf(SheetCell cell) {
    switch (cell) {
        case SheetCell::Brood:
            return QStringLiteral("b");
        case SheetCell::Stores:
            return QStringLiteral("s");
        case SheetCell::Seams:
            return QStringLiteral("n");
        case SheetCell::QueenCells:
            return QStringLiteral("qc");
        case SheetCell::CellsLeft:
            return QStringLiteral("left");
        case SheetCell::Wash:
            return QStringLiteral("w");
        case SheetCell::Board:
            return QStringLiteral("bd");
        case SheetCell::Drones:
            return QStringLiteral("dr");
        case SheetCell::Fed:
            return QStringLiteral("f");
        case SheetCell::Temper:
            return QStringLiteral("t");
        default:
            return {};
    }
}

/// Yes and no of the cells that know only these: the marks, and the words one would type.
struct YesNo {
    SheetCell cell;
    const char* yes;
    const char* no;
};
constexpr YesNo yesNoCells[] = {{SheetCell::Eggs, "e", "e0"},
                                {SheetCell::OpenBrood, "l", "l0"},
                                {SheetCell::CappedBrood, "c", "c0"},
                                {SheetCell::Queen, "q", "q?"}};

const YesNo* yesNoOf(SheetCell cell) {
    for (const YesNo& each : yesNoCells)
        if (each.cell == cell) return &each;
    return nullptr;
}

bool isOneOf(const QString& typed, std::initializer_list<const char*> words) {
    for (const char* each : words)
        if (typed == QLatin1String(each)) return true;
    return false;
}

/// "45 lb", "900g": what is typed says its own unit.
bool endsWithUnit(const QString& typed) { return !typed.isEmpty() && typed.back().isLetter(); }

/// What is fed in another shape than syrup: how it is said in the cell and its mark, "fo" or "fd".
struct FedShape {
    FeedKind as;
    const char* said;
    const char* mark;
};
constexpr FedShape fedShapes[] = {{FeedKind::Fondant, "fondant", "fo"},
                                  {FeedKind::Dry, "dry", "fd"}};

/// "2.5", "2.5 kg", "1 fondant", "fo1": the mark of what is fed, and the amount behind it.
QString fedAsShorthand(const QString& lower) {
    QString bare = lower;
    bare.remove(QLatin1Char(' '));
    QString mark = QStringLiteral("f");
    for (const FedShape& shape : fedShapes) {
        const QLatin1String said(shape.said);
        const QLatin1String marked(shape.mark);
        if (bare.endsWith(said))
            bare.chop(said.size());
        else if (bare.startsWith(said))
            bare.remove(0, said.size());
        else if (bare.startsWith(marked))
            bare.remove(0, marked.size());
        else
            continue;
        mark = marked;
        break;
    }
    const bool hasUnit = endsWithUnit(bare);
    const bool noFigure = bare == QLatin1String("?") || bare == QLatin1String("~");
    const bool pounds = !hasUnit && !noFigure && shownUnits() == Units::UsCustomary;
    return mark + bare + (pounds ? QStringLiteral("lb") : QString());
}

/// What is typed in a cell as the shorthand has it; other words come back as they are and will not
/// be understood.
QString asShorthand(SheetCell cell, const QString& typed) {
    const QString lower = typedInEnglish(typed).toLower();
    if (const YesNo* flag = yesNoOf(cell)) {
        if (isOneOf(lower, {"y", "yes", "+", "1"})) return QLatin1String(flag->yes);
        if (isOneOf(lower, {"n", "no", "-", "0", "?"})) return QLatin1String(flag->no);
        return lower;
    }
    switch (cell) {
        case SheetCell::Opened:
            return isOneOf(lower, {"n", "no", "0"})    ? QStringLiteral("x")
                   : isOneOf(lower, {"y", "yes", "1"}) ? QStringLiteral("o")
                                                       : lower;
        case SheetCell::Heft:
            return lower == QLatin1String("l")   ? QStringLiteral("light")
                   : lower == QLatin1String("h") ? QStringLiteral("heavy")
                                                 : lower;
        case SheetCell::ComeBack:
            return isOneOf(lower, {"y", "yes", "1"}) ? QStringLiteral("!") : lower;
        case SheetCell::Boxes: {
            QStringList marks = lower.split(QLatin1Char(' '), Qt::SkipEmptyParts);
            for (QString& mark : marks)
                if (mark.front().isDigit()) mark.prepend(QLatin1Char('+'));
            return marks.join(QLatin1Char(' '));
        }
        case SheetCell::Fed:
            return fedAsShorthand(lower);
        case SheetCell::Weight: {
            const bool hasUnit =
                lower.startsWith(QLatin1String("kg")) || lower.startsWith(QLatin1String("lb"));
            QString bare = lower;
            bare.remove(QLatin1Char(' '));
            return (hasUnit                              ? QString()
                    : shownUnits() == Units::UsCustomary ? QStringLiteral("lb")
                                                         : QStringLiteral("kg")) +
                   bare;
        }
        case SheetCell::Wash:
            // A sugar roll keeps its mark; a wash is what is meant without one.
            return lower.startsWith(QLatin1String("sr")) ? lower : markOf(cell) + lower;
        case SheetCell::Pests:
            return lower;
        case SheetCell::Note:
            return typed;
        default:
            return markOf(cell) + lower;
    }
}

QString fedShapeText(std::optional<FeedKind> as) {
    for (const FedShape& shape : fedShapes)
        if (as == shape.as) return QLatin1Char(' ') + QLatin1String(shape.said);
    return {};
}

QString fedCell(const Known<Mass>& fed) {
    if (!fed.value) return fed.how == How::ByEye ? QStringLiteral("~") : QStringLiteral("?");
    if (fed.to) return massTyped(*fed.value) + QLatin1Char('-') + massTyped(*fed.to);
    return (fed.how == How::ByEye ? QStringLiteral("~") : QString()) + massTyped(*fed.value);
}

/// Blank where nobody said it and the other cells tell how far it was opened.
QString openedCell(const SheetLine& line) {
    const Looked looked = line.seen.looked;
    if (!line.lookSaid && looked == plainlyLooked(line)) return {};
    return looked == Looked::NotOpened   ? QStringLiteral("x")
           : looked == Looked::LidOnly   ? QStringLiteral("lid")
           : looked == Looked::FoundDead ? QStringLiteral("dead")
                                         : QStringLiteral("o");
}

QString weightCell(const SheetLine& line) {
    if (line.whole) return fedCell(*line.whole);
    if (!line.left || !line.right) return {};
    return fedCell(*line.left) + QLatin1Char('+') + fedCell(*line.right);
}

}  // namespace

const std::vector<SheetCell>& sheetCells() {
    static const std::vector<SheetCell> all{
        SheetCell::Opened,     SheetCell::Eggs,      SheetCell::OpenBrood, SheetCell::CappedBrood,
        SheetCell::Queen,      SheetCell::Brood,     SheetCell::Stores,    SheetCell::Seams,
        SheetCell::QueenCells, SheetCell::CellsLeft, SheetCell::Boxes,     SheetCell::Wash,
        SheetCell::Board,      SheetCell::Drones,    SheetCell::Pests,     SheetCell::Weight,
        SheetCell::Fed,        SheetCell::Temper,    SheetCell::Heft,      SheetCell::ComeBack,
        SheetCell::Note};
    return all;
}

QString cellHead(SheetCell cell) {
    switch (cell) {
        case SheetCell::Opened:
            return cellWord("opened");
        case SheetCell::Eggs:
            return word("eggs");
        case SheetCell::OpenBrood:
            return word("open_brood");
        case SheetCell::CappedBrood:
            return word("capped_brood");
        case SheetCell::Queen:
            return cellWord("queen");
        case SheetCell::Brood:
            return cellWord("brood");
        case SheetCell::Stores:
            return cellWord("stores");
        case SheetCell::Seams:
            return cellWord("seams");
        case SheetCell::QueenCells:
            return word("queen_cells");
        case SheetCell::CellsLeft:
            return word("cells_left");
        case SheetCell::Boxes:
            return cellWord("boxes ±");
        case SheetCell::Wash:
            return cellWord("mites/bees");
        case SheetCell::Board:
            return cellWord("board");
        case SheetCell::Drones:
            return cellWord("drone brood");
        case SheetCell::Pests:
            return cellWord("pests");
        case SheetCell::Weight:
            return cellWord("weight, %1").arg(massUnit());
        case SheetCell::Fed:
            return cellWord("fed, %1").arg(massUnit());
        case SheetCell::Temper:
            return word("temper");
        case SheetCell::Heft:
            return word("heft");
        case SheetCell::ComeBack:
            return word("come_back");
        case SheetCell::Note:
            return word("note");
    }
    return {};
}

QString cellExample(SheetCell cell) {
    if (yesNoOf(cell)) return cellWord("y or n");
    switch (cell) {
        case SheetCell::Opened:
            return cellWord("x for not opened, lid for lid only, o for opened, dead");
        case SheetCell::QueenCells:
            return cellWord("2, 2c for capped, 3o for open, 0 or ?");
        case SheetCell::Boxes:
            return cellWord("+1, -1 for supers, +1d for a deep");
        case SheetCell::Wash:
            return cellWord("4/300: mites in so many bees; sr4/300 by sugar roll");
        case SheetCell::Board:
            return cellWord("20/5: mites in so many days");
        case SheetCell::Drones:
            return cellWord("6/100: cells with mites, of so many opened");
        case SheetCell::Pests:
            return cellWord("shb beetles, wm moths, cb chalkbrood; 0 none to 3 many");
        case SheetCell::Weight:
            return cellWord("20+21 lifted at each side, or 41");
        case SheetCell::Fed:
            return shownUnits() == Units::UsCustomary ? cellWord("5.5 or 2.5 kg; 2 fondant, 2 dry")
                                                      : cellWord("2.5 or 5.5 lb; 1 fondant, 1 dry");
        case SheetCell::Temper:
            return cellWord("1 calm to 5 fierce");
        case SheetCell::Heft:
            return cellWord("light or heavy");
        case SheetCell::ComeBack:
            return cellWord("! or y");
        case SheetCell::Note:
            return cellWord("words that are no marks");
        default:
            return cellWord("7, 6.5, ~6, 5-7 or ?");
    }
}

QString cellText(const SheetLine& line, SheetCell cell) {
    if (cell == SheetCell::Fed)
        return line.fed ? fedCell(*line.fed) + fedShapeText(line.fedAs) : QString();
    if (cell == SheetCell::Weight) return weightCell(line);
    if (cell == SheetCell::Note) return fromUtf8(line.seen.note);
    if (cell == SheetCell::Opened) return openedCell(line);
    SheetLine only = onlyCell(line, cell);
    only.seen.looked = plainlyLooked(only);
    const QString text = fromUtf8(writeShorthand(only));
    if (const YesNo* flag = yesNoOf(cell)) {
        if (text.isEmpty()) return {};
        return text == QLatin1String(flag->yes) ? QStringLiteral("y") : QStringLiteral("n");
    }
    if (cell == SheetCell::Wash && text.startsWith(QLatin1String("sr"))) return text;
    return text.mid(markOf(cell).size());
}

std::optional<SheetLine> withCell(const SheetLine& line, SheetCell cell, const QString& typed) {
    const QString text = typed.simplified();
    SheetLine changed = line;
    copyCell(SheetLine{}, changed, cell);
    if (cell == SheetCell::Note) {
        changed.seen.note = std::string(withoutComma(text.toStdString()));
    } else if (!text.isEmpty()) {
        SheetLine read = readShorthand(asShorthand(cell, text).toStdString());
        if (!read.lookSaid) read.seen.looked = Looked::Opened;
        // Only this cell may be filled: "b7" in the cell of stores is no stores.
        const SheetLine only = onlyCell(read, cell);
        if (read != only || only == SheetLine{}) return std::nullopt;
        copyCell(read, changed, cell);
    }
    // What nobody said goes by what was seen and done.
    if (!changed.lookSaid) changed.seen.looked = plainlyLooked(changed);
    // A note that holds a mark would be read as the mark when the line is read again.
    if (readShorthand(writeShorthand(changed)) != changed) return std::nullopt;
    return changed;
}

}  // namespace combwright
