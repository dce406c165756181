#include "core/words/pad_line.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/room_line.h"

namespace combwright {
namespace {

QString padTr(const char* text) { return QCoreApplication::translate("pad_line", text); }

/// The whole number typed, of at most three digits.
std::optional<int> typedWhole(const QString& typed) {
    if (typed.isEmpty() || typed.size() > 3) return std::nullopt;
    if (!std::all_of(typed.begin(), typed.end(), [](QChar each) {
            return each >= QLatin1Char('0') && each <= QLatin1Char('9');
        }))
        return std::nullopt;
    return typed.toInt();
}

/// A point first is a number on the pad: ".4".
std::optional<Known<Mass>> padReading(const QString& typed) {
    const bool point = typed.startsWith(QLatin1Char('.')) || typed.startsWith(QLatin1Char(','));
    return typedReading(point ? QLatin1Char('0') + typed : typed);
}

PadDeed padNotRead(const QString& sentence) {
    PadDeed deed;
    deed.what = PadDeed::What::NotRead;
    deed.notRead = sentence;
    return deed;
}

PadDeed noMass(const QString& typed) {
    return padNotRead(
        padTr("“%1” is no weight in %2; nothing was written down.").arg(typed, massUnit()));
}

/// A weight and the water of the same box, parted by a stroke: "21.4/17.2", or "/17.2" alone.
struct WithWater {
    QString mass;
    QString water;
    bool has = false;
};

WithWater partedWater(const QString& typed) {
    const auto at = typed.indexOf(QLatin1Char('/'));
    const bool words =
        std::any_of(typed.begin(), typed.end(), [](QChar each) { return each.isLetter(); });
    if (at < 0 || words) return {typed, {}, false};
    return {typed.left(at).trimmed(), typed.mid(at + 1).trimmed(), true};
}

/// Honey holds so much water, per cent, as the file takes it of a bucket.
constexpr double driestPercent = 10;
constexpr double wettestPercent = 30;

std::optional<double> padWater(QString typed) {
    if (typed.endsWith(QLatin1Char('%'))) typed.chop(1);
    const auto percent = typedNumber(typed.trimmed());
    return percent && *percent >= driestPercent && *percent <= wettestPercent ? percent
                                                                              : std::nullopt;
}

bool weighsBox(PadAsk::What what) {
    return what == PadAsk::What::Full || what == PadAsk::What::Wet ||
           what == PadAsk::What::StillWet || what == PadAsk::What::NotSpun ||
           what == PadAsk::What::StillFull;
}

/// "/17.2" while a box is weighed; "/17" is a bucket.
bool isWaterOfBox(PadAsk::What asked, const QString& typed) {
    return weighsBox(asked) && typed.startsWith(QLatin1Char('/')) &&
           (typed.contains(QLatin1Char('.')) || typed.contains(QLatin1Char(',')));
}

PadDeed deedOf(PadDeed::What what) {
    PadDeed deed;
    deed.what = what;
    return deed;
}

/// No box with honey in it is lighter. Common practice, no source.
constexpr Mass lightestFull = Mass::grams(3000);

bool lightForFull(const PadBox& box, Mass full) {
    return full < lightestFull || (box.empty && full <= *box.empty);
}

/// Over half again as heavy as before it is no full weight put right but a slip.
bool putsFullRight(const PadBox& box, Mass mass) {
    return mass.grams() * 2 <= box.gross->grams() * 3;
}

}  // namespace

std::optional<QChar> padKey(int key, bool onPad, const QString& text) {
    if (key == Qt::Key_Return || key == Qt::Key_Enter) return QLatin1Char('\n');
    if (key == Qt::Key_Backspace) return QLatin1Char('\b');
    if (key >= Qt::Key_0 && key <= Qt::Key_9 && text.size() == 1) return text.front();
    switch (key) {
        case Qt::Key_Slash:
            return QLatin1Char('/');
        case Qt::Key_Asterisk:
        case Qt::Key_multiply:
            return QLatin1Char('*');
        case Qt::Key_Plus:
            return QLatin1Char('+');
        case Qt::Key_Minus:
            return QLatin1Char('-');
        case Qt::Key_Period:
        case Qt::Key_Comma:
            return QLatin1Char('.');
        default:
            break;
    }
    if (!onPad) return std::nullopt;
    // Num Lock is off: told from the other arrows only by coming from the pad.
    switch (key) {
        case Qt::Key_Insert:
            return QLatin1Char('0');
        case Qt::Key_End:
            return QLatin1Char('1');
        case Qt::Key_Down:
            return QLatin1Char('2');
        case Qt::Key_PageDown:
            return QLatin1Char('3');
        case Qt::Key_Left:
            return QLatin1Char('4');
        case Qt::Key_Clear:
            return QLatin1Char('5');
        case Qt::Key_Right:
            return QLatin1Char('6');
        case Qt::Key_Home:
            return QLatin1Char('7');
        case Qt::Key_Up:
            return QLatin1Char('8');
        case Qt::Key_PageUp:
            return QLatin1Char('9');
        case Qt::Key_Delete:
            return QLatin1Char('.');
        default:
            return std::nullopt;
    }
}

bool PadLine::acts(QChar key, const QString& typed) const {
    if (!typed.isEmpty()) return false;
    switch (key.unicode()) {
        case u'+':
        case u'-':
        case u'*':
        case u'\b':
            return true;
        case u'.':
            // Where a number is asked the point begins one: ".4".
            return m_ask.what == PadAsk::What::Nothing || m_ask.what == PadAsk::What::AsideBox ||
                   m_ask.what == PadAsk::What::AsideWhy || m_ask.what == PadAsk::What::Settle ||
                   m_ask.what == PadAsk::What::RunEmpty || m_ask.what == PadAsk::What::Close;
        default:
            return false;
    }
}

PadDeed PadLine::press(QChar key) {
    const PadAsk asked = m_ask;
    const bool walkedBefore = m_walked;
    m_walked = false;
    m_ask = {};
    switch (key.unicode()) {
        case u'+':
            return deedOf(asked.what == PadAsk::What::Close ? PadDeed::What::Close
                                                            : PadDeed::What::Plus);
        case u'-':
            m_walked = !walkedBefore;
            return deedOf(walkedBefore ? PadDeed::What::Stopped : PadDeed::What::Walked);
        case u'*':
            return deedOf(PadDeed::What::Aside);
        default:
            // What is only asked yet is let go; the next time the last entry is taken back.
            return deedOf(asked.what == PadAsk::What::Nothing ? PadDeed::What::TakeBack
                                                              : PadDeed::What::Left);
    }
}

PadDeed PadLine::asks(const PadAsk& ask) {
    m_ask = ask;
    return deedOf(PadDeed::What::Asks);
}

PadDeed PadLine::enter(const QString& text, const PadRoom& room) {
    const QString typed = text.trimmed();
    m_walked = false;
    if (typed.startsWith(QLatin1Char('/')) && !isWaterOfBox(m_ask.what, typed)) {
        m_ask = {};
        return begin(typed, room);
    }
    // A point alone takes back what is asked; the pad has no other key for it.
    if (m_ask.what != PadAsk::What::Nothing &&
        (typed == QLatin1String(".") || typed == QLatin1String(","))) {
        m_ask = {};
        return deedOf(PadDeed::What::Left);
    }
    switch (m_ask.what) {
        case PadAsk::What::Nothing:
            return begin(typed, room);
        case PadAsk::What::Full:
        case PadAsk::What::Wet:
        case PadAsk::What::StillWet:
        case PadAsk::What::NotSpun:
        case PadAsk::What::StillFull:
            return weigh(typed, room);
        case PadAsk::What::Stray:
            return stray(typed, room);
        case PadAsk::What::OverBrim:
        case PadAsk::What::BucketMass:
        case PadAsk::What::BucketWater:
        case PadAsk::What::Cappings:
        case PadAsk::What::Scrapings:
            return bucket(typed, room);
        case PadAsk::What::AsideBox:
            return asideBox(typed);
        case PadAsk::What::AsideWhy:
            return choice(typed, room, PadDeed::What::AsideWhy, 6);
        case PadAsk::What::Settle:
            return choice(typed, room, PadDeed::What::Settle, 5);
        case PadAsk::What::Frames:
            return choice(typed, room, PadDeed::What::Frames, 72);
        case PadAsk::What::RunEmpty:
            // Enter again starts it all the same.
            m_ask = {};
            return begin(typed, room);
        case PadAsk::What::Close:
            m_ask = {};
            return typed.isEmpty() ? deedOf(PadDeed::What::Left) : begin(typed, room);
    }
    return {};
}

PadDeed PadLine::begin(const QString& typed, const PadRoom& room) {
    if (typed.isEmpty()) return deedOf(PadDeed::What::Clock);
    if (isFelt(typed)) {
        const auto letters = feltLetters(typed, room.slotCount);
        if (!letters)
            return padNotRead(padTr("Frames by feel are 3 heavy, 2 middling, 1 light, %1 at most; "
                                    "nothing was written down.")
                                  .arg(room.slotCount));
        PadDeed deed = deedOf(PadDeed::What::Feel);
        deed.letters = *letters;
        return deed;
    }
    if (typed.startsWith(QLatin1Char('/'))) {
        const QString rest = typed.mid(1);
        PadAsk ask;
        if (rest.isEmpty()) return deedOf(PadDeed::What::Gate);
        if (rest == QLatin1String("0")) {
            ask.what = PadAsk::What::Cappings;
            return asks(ask);
        }
        if (rest == QLatin1String("00")) {
            ask.what = PadAsk::What::Scrapings;
            return asks(ask);
        }
        const auto number = typedWhole(rest);
        if (!number || *number == 0)
            return padNotRead(padTr("“%1” is no bucket; nothing was written down.").arg(rest));
        ask.what = PadAsk::What::BucketMass;
        ask.bucket = *number;
        return asks(ask);
    }
    if (typed == QLatin1String("00")) return deedOf(PadDeed::What::Seen);
    if (typed == QLatin1String("000")) return deedOf(PadDeed::What::NextRun);
    if (typed == QLatin1String("0000")) return deedOf(PadDeed::What::DayLog);
    const auto peg = typedWhole(typed);
    if (!peg || (room.bareIsMass && *peg != 0)) return {};
    return choosePeg(*peg, room);
}

PadDeed PadLine::choosePeg(int peg, const PadRoom& room) {
    PadAsk ask;
    ask.what = PadAsk::What::Full;
    const auto found = room.onPeg ? room.onPeg(peg) : std::nullopt;
    if (found) {
        ask.box = *found;
    } else {
        ask.box.mark = peg == 0 ? room.withoutPeg : padTr("peg %1").arg(peg);
    }
    ask.box.peg = peg;
    ask.box.stray = peg != 0 && !found;
    if (peg != 0 && found && (found->spun || found->gross)) ask.what = PadAsk::What::Wet;
    return asks(ask);
}

PadDeed PadLine::weigh(const QString& whole, const PadRoom& room) {
    const PadAsk asked = m_ask;
    m_ask = {};
    PadDeed deed = deedOf(PadDeed::What::Weigh);
    deed.box = asked.box;
    const WithWater parts = partedWater(whole);
    const QString& typed = parts.mass;
    deed.water = asked.water;
    if (parts.has) {
        deed.water = padWater(parts.water);
        if (!deed.water) {
            m_ask = asked;
            return padNotRead(
                padTr("“%1” is no water of honey in per cent, 10 to 30; nothing was written down.")
                    .arg(parts.water));
        }
        if (typed.isEmpty()) {
            // Only the water: its weight is asked on.
            m_ask = asked;
            return deed;
        }
    }
    const bool fullAsked =
        asked.what == PadAsk::What::Full || asked.what == PadAsk::What::StillFull;
    if (asked.mass && typed.isEmpty()) {
        deed.wet = !fullAsked;
        deed.mass = asked.mass;
        return fullAsked ? weighFull(deed, asked) : deed;
    }
    const bool wetAsked = !fullAsked;
    if (typed.isEmpty()) {
        if (wetAsked || (asked.box.peg == 0 && !asked.box.known && asked.box.gross))
            return deedOf(PadDeed::What::Left);
        deed.mass = Known<Mass>{std::nullopt, std::nullopt, How::Unknown};
        return weighFull(deed, asked);
    }
    deed.mass = padReading(typed);
    if (!deed.mass) {
        m_ask = asked;
        // A whole line of the letter keyboard is no slip.
        return std::any_of(typed.begin(), typed.end(), [](QChar each) { return each.isLetter(); })
                   ? PadDeed{}
                   : noMass(typed);
    }
    const bool near = asked.box.gross && deed.mass->value && room.heavyForWet &&
                      room.heavyForWet(asked.box, *deed.mass->value);
    if (asked.box.peg == 0) {
        // Of a box without a peg only its weight says which is meant.
        deed.wet = asked.box.gross && !near;
        if (asked.box.gross && near) {
            deed.box = {};
            deed.box.mark = room.withoutPeg;
        }
        return deed.wet ? weighWet(deed, asked, room) : weighFull(deed, asked);
    }
    deed.wet = wetAsked;
    if (!wetAsked) return weighFull(deed, asked);
    if (!near) return weighWet(deed, asked, room);
    // Nothing of it was spun: the full weight put right.
    if (!asked.box.spun) {
        deed.wet = !putsFullRight(asked.box, *deed.mass->value);
        return deed;
    }
    if (room.spinning) {
        m_ask = asked;
        return padNotRead(padTr("%1 wet is nearly what %2 weighed full; nothing was kept.")
                              .arg(padMassText(*deed.mass), calledText(asked.box)));
    }
    PadAsk again = asked;
    again.what = PadAsk::What::StillWet;
    again.mass = deed.mass;
    again.water = deed.water;
    return asks(again);
}

/// A full weight, asked about where no box full of honey weighs so or nobody clipped its peg.
PadDeed PadLine::weighFull(PadDeed deed, const PadAsk& asked) {
    PadAsk again = asked;
    again.box = deed.box;
    again.mass = deed.mass;
    again.water = deed.water;
    if (deed.mass->value && lightForFull(deed.box, *deed.mass->value) && asked.mass != deed.mass) {
        again.what = PadAsk::What::StillFull;
        return asks(again);
    }
    if (!deed.box.stray) return deed;
    again.what = PadAsk::What::Stray;
    return asks(again);
}

/// A wet weight, asked about while frames of the box are not spun: once it is wet they are in no
/// load any more.
PadDeed PadLine::weighWet(const PadDeed& deed, const PadAsk& asked, const PadRoom& room) {
    if (asked.box.unspun == 0 || !deed.mass->value) return deed;
    if (room.spinning) {
        m_ask = asked;
        return padNotRead(notSpunText(asked.box) + padTr("; nothing was kept."));
    }
    PadAsk again = asked;
    again.what = PadAsk::What::NotSpun;
    again.mass = deed.mass;
    again.water = deed.water;
    return asks(again);
}

PadDeed PadLine::stray(const QString& typed, const PadRoom& room) {
    const PadAsk asked = m_ask;
    m_ask = {};
    PadDeed deed = deedOf(PadDeed::What::Weigh);
    deed.box = asked.box;
    deed.mass = asked.mass;
    deed.water = asked.water;
    if (typed.isEmpty()) return deed;
    // A whole number is the next peg, anything else its weight put right.
    const auto mass = typedWhole(typed) ? std::nullopt : padReading(typed);
    if (!mass) return begin(typed, room);
    deed.mass = mass;
    return weighFull(deed, asked);
}

PadDeed PadLine::bucket(const QString& typed, const PadRoom& room) {
    const PadAsk asked = m_ask;
    m_ask = {};
    const bool honey =
        asked.what == PadAsk::What::BucketMass || asked.what == PadAsk::What::OverBrim;
    const bool isBucket = honey || asked.what == PadAsk::What::BucketWater;
    PadDeed deed = deedOf(isBucket                               ? PadDeed::What::Bucket
                          : asked.what == PadAsk::What::Cappings ? PadDeed::What::Cappings
                                                                 : PadDeed::What::Scrapings);
    deed.number = asked.bucket;
    PadAsk water = asked;
    water.what = PadAsk::What::BucketWater;
    water.mass.reset();
    if (asked.what == PadAsk::What::OverBrim && typed.isEmpty()) {
        deed.mass = asked.mass;
        m_ask = water;
        return deed;
    }
    if (typed.isEmpty()) {
        if (asked.what == PadAsk::What::BucketMass) return asks(water);
        return deedOf(PadDeed::What::Left);
    }
    if (asked.what == PadAsk::What::BucketWater) {
        QString figure = typed;
        if (figure.endsWith(QLatin1Char('%'))) figure.chop(1);
        deed.water = typedNumber(figure.trimmed());
        if (deed.water) return deed;
        m_ask = asked;
        return padNotRead(
            padTr("“%1” is no water in per cent; nothing was written down.").arg(typed));
    }
    deed.mass = padReading(typed);
    if (!deed.mass) {
        m_ask = asked;
        return noMass(typed);
    }
    if (honey && room.bucketHolds && deed.mass->value && *deed.mass->value > *room.bucketHolds) {
        PadAsk again = asked;
        again.what = PadAsk::What::OverBrim;
        again.mass = deed.mass;
        again.most = room.bucketHolds;
        return asks(again);
    }
    if (honey) m_ask = water;
    return deed;
}

/// By its peg, 0 for the one without, or by its mark.
PadDeed PadLine::asideBox(const QString& typed) {
    const PadAsk asked = m_ask;
    m_ask = {};
    if (typed.isEmpty()) return deedOf(PadDeed::What::Left);
    const auto peg = typedWhole(typed);
    const auto meant =
        std::find_if(asked.among.begin(), asked.among.end(), [&](const PadBox& each) {
            return peg ? each.peg == *peg : each.mark.compare(typed, Qt::CaseInsensitive) == 0;
        });
    if (meant == asked.among.end()) {
        m_ask = asked;
        return padNotRead(
            (peg ? padTr("Peg %1 hangs in no slot of this load; Enter alone leaves it "
                         "unknown.")
                 : padTr("No box “%1” hangs in this load; Enter alone leaves it "
                         "unknown."))
                .arg(typed));
    }
    PadDeed deed = deedOf(PadDeed::What::AsideBox);
    deed.box = *meant;
    return deed;
}

PadDeed PadLine::choice(const QString& typed, const PadRoom& room, PadDeed::What what, int most) {
    const PadAsk asked = m_ask;
    m_ask = {};
    if (typed.isEmpty()) return deedOf(PadDeed::What::Left);
    const auto number = typedWhole(typed);
    // Two digits are a peg: the next entry, and what was asked stays unknown.
    if (!number || (what != PadDeed::What::Frames && typed.size() > 1)) return begin(typed, room);
    if (*number < 1 || *number > most) {
        m_ask = asked;
        return padNotRead(padTr("1 to %1, or Enter alone leaves it.").arg(most));
    }
    PadDeed deed = deedOf(what);
    deed.box = asked.box;
    deed.number = *number;
    return deed;
}

bool isFelt(const QString& typed) { return typed.startsWith(QLatin1String("//")); }

std::optional<QString> feltLetters(const QString& typed, int slotCount) {
    if (!isFelt(typed)) return std::nullopt;
    QString letters;
    for (const QChar each : QStringView(typed).mid(2)) {
        if (each.isSpace()) continue;
        switch (each.toLower().unicode()) {
            case u'3':
            case u'h':
                letters += QLatin1Char('h');
                break;
            case u'2':
            case u'm':
                letters += QLatin1Char('m');
                break;
            case u'1':
            case u'l':
                letters += QLatin1Char('l');
                break;
            default:
                return std::nullopt;
        }
    }
    return letters.size() <= slotCount ? std::optional(letters) : std::nullopt;
}

}  // namespace combwright
