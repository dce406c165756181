#include "core/words/bucket_line.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <cmath>

#include "core/words/figures.h"
#include "core/words/room_line.h"

namespace combwright {
namespace {

/// Parted by semicolons, by a minus, and by commas that are no decimal comma.
QStringList bucketParts(const QString& text) {
    static const QRegularExpression between(
        QStringLiteral("\\s*(?:;|-|,(?=\\s)|,(?!\\d)|(?<!\\d),)\\s*"));
    return text.trimmed().split(between, Qt::SkipEmptyParts);
}

std::optional<double> bucketNumberTyped(QString text) {
    text = text.trimmed();
    if (text.startsWith(QLatin1Char('.')) || text.startsWith(QLatin1Char(',')))
        text.prepend(QLatin1Char('0'));
    return typedNumber(text);
}

std::optional<TypedBucket> oneBucket(const QString& text) {
    TypedBucket bucket;
    bucket.level = typedLevel(text);
    if (!bucket.level) bucket.mass = typedReading(text);
    return bucket.level || bucket.mass ? std::optional(bucket) : std::nullopt;
}

bool addBuckets(const QString& count, const QString& what, TypedBuckets& typed) {
    bool isNumber = false;
    const int many = count.toInt(&isNumber);
    const auto bucket = oneBucket(what);
    if (!isNumber || many < 1 || many > mostBucketsTyped || !bucket) return false;
    typed.each.insert(typed.each.end(), static_cast<std::size_t>(many), *bucket);
    return true;
}

/// "6.5*": so many times full, the last one only in part.
bool addTimesFull(const QString& times, TypedBuckets& typed) {
    const auto many = bucketNumberTyped(times);
    if (!many || *many <= 0 || *many > mostBucketsTyped) return false;
    const double whole = std::floor(*many);
    typed.each.insert(typed.each.end(), static_cast<std::size_t>(whole), TypedBucket{1.0, {}});
    if (*many > whole) typed.each.push_back({*many - whole, {}});
    return true;
}

bool addPart(const QString& part, TypedBuckets& typed) {
    if (const auto single = oneBucket(part)) {
        typed.each.push_back(*single);
        return true;
    }
    if (const qsizetype star = part.indexOf(QLatin1Char('*')); star > 0) {
        const QString what = part.mid(star + 1).trimmed();
        return what.isEmpty() ? addTimesFull(part.left(star), typed)
                              : addBuckets(part.left(star).trimmed(), what, typed);
    }
    const qsizetype blank = part.indexOf(QLatin1Char(' '));
    return blank > 0 && addBuckets(part.left(blank), part.mid(blank + 1), typed);
}

}  // namespace

TypedBuckets readBuckets(const QString& text) {
    TypedBuckets typed;
    for (const QString& part : bucketParts(text)) {
        if (addPart(part, typed) && typed.each.size() <= mostBucketsTyped) continue;
        typed.each.clear();
        typed.notRead = part;
        return typed;
    }
    return typed;
}

std::optional<double> typedTubLevel(const QString& text) {
    QString typed = text.trimmed();
    for (const QString& tub : {QStringLiteral("tub "),
                               QCoreApplication::translate("room_line", "tub") + QLatin1Char(' ')})
        if (typed.startsWith(tub, Qt::CaseInsensitive)) typed = typed.mid(tub.size()).trimmed();
    if (typed.endsWith(QLatin1Char('*'))) {
        const auto times = bucketNumberTyped(typed.chopped(1));
        return times && *times <= 20 ? times : std::nullopt;
    }
    return typedLevel(typed);
}

}  // namespace combwright
