#include "core/words/read_back.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/support/refusal.h"
#include "core/words/all_line.h"
#include "core/words/figures.h"
#include "core/words/shorthand.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString tell(const char* text) { return QCoreApplication::translate("read_back", text); }

QString plain(double number) { return QLocale().toString(number, 'g', 6); }

/// "7", "about 6", "5 to 7", "unclear".
template <class Unit>
QString amountText(const Known<Unit>& known, double smallestPerShown) {
    if (!known.value) return known.how == How::Unknown ? tell("unclear how many") : tell("some");
    const auto shown = [&](const Unit& unit) {
        return plain(static_cast<double>(unit.count()) / smallestPerShown);
    };
    if (known.to) return tell("%1 to %2").arg(shown(*known.value), shown(*known.to));
    if (known.how == How::ByEye) return tell("about %1").arg(shown(*known.value));
    return shown(*known.value);
}

/// "2.5 kg", "about 5.5 lb", "1 to 2 kg".
QString fedText(const Known<Mass>& fed, std::optional<FeedKind> as) {
    const QString how = as == FeedKind::Fondant ? tell("%1 fed as fondant")
                        : as == FeedKind::Dry   ? tell("%1 fed dry")
                                                : tell("%1 fed");
    if (!fed.value) return fed.how == How::ByEye ? tell("fed, some") : tell("fed");
    QString amount = massTold(*fed.value);
    if (fed.to)
        amount = tell("%1 to %2").arg(amount, massTold(*fed.to));
    else if (fed.how == How::ByEye)
        amount = tell("about %1").arg(amount);
    return how.arg(ShownFigure{amount, massUnit()}.text());
}

class Sentences {
  public:
    void add(const QString& text) {
        if (!text.isEmpty()) m_list << text.left(1).toUpper() + text.mid(1);
    }
    QString joined() const {
        return m_list.isEmpty() ? QString() : m_list.join(QLatin1String(". ")) + QLatin1Char('.');
    }
    bool isEmpty() const { return m_list.isEmpty(); }

  private:
    QStringList m_list;
};

QString framesText(const Seen& seen) {
    QStringList parts;
    if (seen.brood) parts << tell("%1 brood").arg(amountText(*seen.brood, 10));
    if (seen.stores) parts << tell("%1 stores").arg(amountText(*seen.stores, 10));
    if (seen.seams) parts << tell("%1 seams of bees").arg(amountText(*seen.seams, 10));
    return parts.join(QLatin1String(", "));
}

QString cellsText(const Seen& seen) {
    QString text;
    if (seen.queenCells) {
        const auto& cells = *seen.queenCells;
        if (cells.value && cells.value->value() == 0 && !cells.to)
            text = tell("looked for queen cells, none");
        else {
            const QString amount = amountText(cells, 1);
            text = !seen.cellState                        ? tell("%1 queen cells")
                   : *seen.cellState == CellState::Capped ? tell("%1 capped queen cells")
                                                          : tell("%1 open queen cells");
            text = text.arg(amount);
        }
    }
    if (seen.cellsLeft) {
        const QString left = tell("%1 left").arg(amountText(*seen.cellsLeft, 1));
        text += text.isEmpty() ? left : QLatin1String(", ") + left;
    }
    return text;
}

QString boxesText(const char* text, const std::optional<Count>& boxes) {
    if (!boxes) return {};
    return QCoreApplication::translate("read_back", text, nullptr,
                                       static_cast<int>(boxes->value()));
}

/// Plurals without a translation file: "1 super on", "2 supers on".
QString boxesSentence(const std::optional<Count>& boxes, const char* one, const char* many) {
    if (!boxes) return {};
    const int n = static_cast<int>(boxes->value());
    return boxesText(n == 1 ? one : many, boxes).replace(QLatin1String("%n"), QString::number(n));
}

QString heftText(Heft heft) {
    switch (heft) {
        case Heft::Light:
            return tell("light");
        case Heft::AllRight:
            return tell("heft all right");
        case Heft::Heavy:
            return tell("heavy");
    }
    return {};
}

QString washText(const SheetLine& line) {
    if (!line.mites) return {};
    const QString mites = amountText(*line.mites, 1);
    const bool rolled = line.sampledBy == FindingMethod::SugarRoll;
    if (!line.bees || !line.bees->value)
        return (rolled ? tell("sugar roll: %1 mites, bees not counted")
                       : tell("wash: %1 mites, bees not counted"))
            .arg(mites);
    // The bees of a wash are measured, not counted, and everybody knows; "about" would only be
    // noise.
    const auto bees = [](const Count& count) { return plain(static_cast<double>(count.count())); };
    return (rolled ? tell("sugar roll: %1 in %2") : tell("wash: %1 in %2"))
        .arg(mites, line.bees->to
                        ? tell("%1 to %2").arg(bees(*line.bees->value), bees(*line.bees->to))
                        : bees(*line.bees->value));
}

QString boardText(const SheetLine& line) {
    if (!line.boardMites) return {};
    const QString mites = amountText(*line.boardMites, 1);
    if (!line.boardDays) return tell("board: %1 mites, days not said").arg(mites);
    return line.boardDays->value() == 1
               ? tell("board: %1 mites in 1 day").arg(mites)
               : tell("board: %1 mites in %2 days").arg(mites).arg(line.boardDays->value());
}

QString dronesText(const SheetLine& line) {
    if (!line.droneMites || !line.droneCells) return {};
    return tell("drone brood: %1 of %2 cells with mites")
        .arg(amountText(*line.droneMites, 1), amountText(*line.droneCells, 1));
}

QString weightText(const SheetLine& line) {
    const auto shown = [](const std::optional<Known<Mass>>& mass) {
        return massTold(*mass->value);
    };
    if (line.whole && line.whole->value)
        return tell("weighs %1").arg(ShownFigure{shown(line.whole), massUnit()}.text());
    if (!line.left || !line.right || !line.left->value || !line.right->value) return {};
    return tell("weighs %1 and %2")
        .arg(shown(line.left), ShownFigure{shown(line.right), massUnit()}.text());
}

QString pestText(const QString& pest, const std::optional<Level>& level) {
    if (!level) return {};
    switch (*level) {
        case Level::None:
            return tell("looked for %1, none").arg(pest);
        case Level::Few:
            return tell("a few %1").arg(pest);
        case Level::Some:
            return tell("some %1").arg(pest);
        case Level::Many:
            return tell("many %1").arg(pest);
        case Level::Seen:
            return tell("%1 seen").arg(pest);
    }
    return {};
}

}  // namespace

QString readBack(const SheetLine& line) {
    const Seen& seen = line.seen;
    Sentences said;
    if (seen.looked == Looked::NotOpened) said.add(tell("not opened"));
    if (seen.looked == Looked::LidOnly) said.add(tell("lid only"));
    if (seen.looked == Looked::FoundDead) said.add(tell("found dead"));
    if (seen.eggs) said.add(*seen.eggs ? tell("eggs") : tell("looked for eggs, none"));
    if (seen.openBrood)
        said.add(*seen.openBrood ? tell("open brood") : tell("looked for open brood, none"));
    if (seen.cappedBrood)
        said.add(*seen.cappedBrood ? tell("capped brood") : tell("looked for capped brood, none"));
    if (seen.queenSeen)
        said.add(*seen.queenSeen ? tell("queen seen") : tell("queen looked for, not seen"));
    said.add(framesText(seen));
    said.add(cellsText(seen));
    said.add(boxesSentence(line.supersOn, QT_TRANSLATE_NOOP("read_back", "%n super on"),
                           QT_TRANSLATE_NOOP("read_back", "%n supers on")));
    said.add(boxesSentence(line.supersOff, QT_TRANSLATE_NOOP("read_back", "%n super off"),
                           QT_TRANSLATE_NOOP("read_back", "%n supers off")));
    said.add(boxesSentence(line.deepsOn, QT_TRANSLATE_NOOP("read_back", "%n deep on"),
                           QT_TRANSLATE_NOOP("read_back", "%n deeps on")));
    said.add(boxesSentence(line.deepsOff, QT_TRANSLATE_NOOP("read_back", "%n deep off"),
                           QT_TRANSLATE_NOOP("read_back", "%n deeps off")));
    said.add(washText(line));
    said.add(boardText(line));
    said.add(dronesText(line));
    said.add(pestText(tell("hive beetles"), line.beetles));
    said.add(pestText(tell("wax moths"), line.moths));
    said.add(pestText(tell("chalkbrood mummies"), line.chalk));
    if (line.fed) said.add(fedText(*line.fed, line.fedAs));
    said.add(weightText(line));
    if (seen.temper) said.add(tell("temper %1 of 5").arg(seen.temper->value()));
    if (seen.heft) said.add(heftText(*seen.heft));
    if (seen.comeBack.value_or(false)) said.add(tell("come back"));
    if (seen.note.empty()) return said.joined();
    const QString note = tell("“%1”").arg(fromUtf8(seen.note));
    return said.isEmpty() ? note : said.joined() + QLatin1Char(' ') + note;
}

QString readBackYard(const YardLine& line) {
    QString text = tell("Every hive not written yet: ") + readBack(line.each);
    if (!line.note.empty()) text += tell(" Of the yard: “%1”").arg(fromUtf8(line.note));
    return text;
}

QString readBackForAll(std::string_view all) {
    if (const auto sayable = demandSaidOfAll(all); !sayable) return sentence(sayable.error());
    if (const auto yard = readYardLine(all)) return readBackYard(*yard);
    return readBackTyped({}, all);
}

QString readBackTyped(std::string_view all, std::string_view own) {
    if (const auto two = contradictionIn(own))
        return sentence(
            Refusal{Code::Contradiction, "line", {{"one", two->one}, {"two", two->two}}});
    return readBack(readShorthand(all, own));
}

}  // namespace combwright
