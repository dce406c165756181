#include "core/words/room_line.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <algorithm>

#include "core/words/figures.h"

namespace combwright {
namespace {

bool isWord(const QString& typed, const char* english) {
    return typed.compare(QLatin1String(english), Qt::CaseInsensitive) == 0 ||
           typed.compare(QCoreApplication::translate("room_line", english), Qt::CaseInsensitive) ==
               0;
}

QString joinedFrom(const QStringList& words, qsizetype from, qsizetype end) {
    return words.mid(from, end - from).join(QLatin1Char(' '));
}

std::optional<double> readPercent(QString text) {
    if (text.endsWith(QLatin1Char('%'))) text.chop(1);
    return typedNumber(text.trimmed());
}

void readBucket(const QStringList& words, RoomLine& line) {
    for (qsizetype i = 1; i < words.size(); ++i)
        if (isWord(words[i], "lid")) line.lidded = true;
    QStringList rest = words.mid(1);
    rest.removeIf([](const QString& word) { return isWord(word, "lid"); });
    if (rest.isEmpty()) {
        if (!line.lidded) line.notRead = line.name;
        return;
    }
    if (isWord(rest.front(), "water")) {
        line.water = readPercent(joinedFrom(rest, 1, rest.size()));
        if (!line.water) line.notRead = joinedFrom(rest, 1, rest.size());
        return;
    }
    const auto level = [&](const QString& text) {
        line.level = typedLevel(text);
        if (!line.level) line.mass = typedReading(text);
        return line.level || line.mass;
    };
    const QString whole = rest.join(QLatin1Char(' '));
    if (level(whole)) return;
    // The water stands last, with or without its sign.
    qsizetype from = rest.size() - 1;
    if (rest[from] == QLatin1String("%") && from > 0) --from;
    line.water = readPercent(joinedFrom(rest, from, rest.size()));
    const QString before = joinedFrom(rest, 0, from);
    if (!before.isEmpty() && level(before)) {
        if (!line.water) line.notRead = joinedFrom(rest, from, rest.size());
        return;
    }
    line.notRead = before.isEmpty() ? whole : before;
}

/// The water of a box stands last, with its sign or its word: "21.4 17.2 %", "water 17.2". A bare
/// number there is the end of a name.
std::optional<double> takeWater(QStringList& words) {
    const auto many = words.size();
    if (many < 2) return std::nullopt;
    const bool sign = words.back() == QLatin1String("%");
    const qsizetype at = sign ? many - 2 : many - 1;
    if (at < 1) return std::nullopt;
    const bool word = isWord(words[at - 1], "water");
    if (!sign && !words.back().endsWith(QLatin1Char('%')) && !word) return std::nullopt;
    const auto water = readPercent(words[at]);
    const qsizetype left = word ? at - 1 : at;
    if (!water || left < 1) return std::nullopt;
    words = words.mid(0, left);
    return water;
}

/// The mass at the end and how many words it takes; the name before it is as short as it can be.
void readBox(const QStringList& words, RoomLine& line) {
    for (qsizetype i = 1; i < words.size(); ++i) {
        const bool wet = isWord(words[i], "wet");
        const bool full = isWord(words[i], "full");
        if (isWord(words[i], "hive") && i + 1 < words.size()) {
            line.about = RoomLine::About::Hive;
            line.name = joinedFrom(words, 0, i);
            line.behind = joinedFrom(words, i + 1, words.size());
            return;
        }
        if (isWord(words[i], "frames") && i + 2 == words.size()) {
            bool isNumber = false;
            const int frames = words[i + 1].toInt(&isNumber);
            line.name = joinedFrom(words, 0, i);
            if (isNumber && frames > 0 && frames < 73)
                line.frames = frames;
            else
                line.notRead = words[i + 1];
            return;
        }
        const qsizetype from = wet || full ? i + 1 : i;
        line.mass = typedReading(joinedFrom(words, from, words.size()));
        if (line.mass) {
            line.name = joinedFrom(words, 0, i);
            if (wet || full) line.wet = wet;
            return;
        }
        if (wet || full) break;
    }
    if (line.water) {
        line.name = joinedFrom(words, 0, words.size());
        return;
    }
    line.name = words.front();
    line.notRead = words.size() > 1 ? words.back() : words.front();
}

}  // namespace

std::optional<Known<Mass>> typedReading(const QString& text) {
    const QString typed = text.trimmed();
    if (typed == QLatin1String("?")) return Known<Mass>{std::nullopt, std::nullopt, How::Unknown};
    const bool byEye = typed.startsWith(QLatin1Char('~'));
    const auto mass = typedMass(byEye ? typed.mid(1) : typed);
    if (!mass) return std::nullopt;
    return Known<Mass>{*mass, std::nullopt, byEye ? How::ByEye : How::Weighed};
}

std::optional<double> typedLevel(const QString& text) {
    const QString typed = text.trimmed();
    if (isWord(typed, "full")) return 1.0;
    if (isWord(typed, "half")) return 0.5;
    if (isWord(typed, "third")) return 1.0 / 3.0;
    if (isWord(typed, "quarter")) return 0.25;
    static const QRegularExpression part(QStringLiteral("^(\\d)/(\\d)$"));
    if (const auto match = part.match(typed); match.hasMatch()) {
        const double of = match.captured(2).toDouble();
        const double share = of > 0 ? match.captured(1).toDouble() / of : 2;
        return share <= 1 ? std::optional(share) : std::nullopt;
    }
    if (!typed.endsWith(QLatin1Char('%'))) return std::nullopt;
    const auto percent = readPercent(typed);
    return percent && *percent <= 100 ? std::optional(*percent / 100.0) : std::nullopt;
}

RoomLine readRoomLine(const QString& text) {
    RoomLine line;
    QStringList words = text.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.isEmpty()) return line;
    const QString first = words.front();
    static const QRegularExpression bucket(QStringLiteral("^[bB]\\d+$"));
    if (!bucket.match(first).hasMatch() && !isWord(first, "buckets")) line.water = takeWater(words);
    const QString rest = joinedFrom(words, 1, words.size());
    if (isWord(first, "open")) {
        line.about = RoomLine::About::Open;
        line.name = words.value(1);
        line.behind = joinedFrom(words, 2, words.size());
        if (line.name.isEmpty()) line.notRead = first;
        return line;
    }
    if (isWord(first, "cappings") || isWord(first, "scrapings")) {
        line.about =
            isWord(first, "cappings") ? RoomLine::About::Cappings : RoomLine::About::Scrapings;
        line.mass = typedReading(rest);
        if (!line.mass) line.notRead = rest.isEmpty() ? first : rest;
        return line;
    }
    if (isWord(first, "wet") || isWord(first, "full")) {
        line.about = RoomLine::About::Chosen;
        line.wet = isWord(first, "wet");
        line.mass = typedReading(rest);
        if (!line.mass) line.notRead = rest.isEmpty() ? first : rest;
        return line;
    }
    if ((line.mass = typedReading(words.join(QLatin1Char(' '))))) {
        line.about = RoomLine::About::Chosen;
        return line;
    }
    if (bucket.match(first).hasMatch()) {
        line.about = RoomLine::About::Bucket;
        line.name = first.toUpper();
        readBucket(words, line);
        return line;
    }
    if (isWord(first, "buckets")) {
        line.about = RoomLine::About::Bucket;
        line.name = QStringLiteral("all");
        readBucket(words, line);
        return line;
    }
    line.about = RoomLine::About::Box;
    readBox(words, line);
    return line;
}

}  // namespace combwright
