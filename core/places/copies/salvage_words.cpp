#include "core/places/copies/salvage_words.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString salvageSay(const char* text) { return QCoreApplication::translate("salvage", text); }

std::int64_t totalOf(const Salvaged& done, std::int64_t SalvagedTable::*count) {
    std::int64_t total = 0;
    for (const SalvagedTable& table : done.tables) total += table.*count;
    return total;
}

/// "1 × hive, 3 × move of a box": the tables where a count is not 0.
QString byTable(const Salvaged& done, std::int64_t SalvagedTable::*count) {
    QStringList parts;
    for (const SalvagedTable& table : done.tables)
        if (table.*count > 0)
            parts << QStringLiteral("%1\u00a0×\u00a0%2").arg(table.*count).arg(word(table.table));
    return parts.join(QStringLiteral(", "));
}

}  // namespace

QString salvageSentence(const Salvaged& done, const QString& to) {
    if (done.isComplete())
        return salvageSay(QT_TRANSLATE_NOOP(
                              "salvage",
                              "Everything was saved into %1, its history too. The damaged file "
                              "was left as it is."))
            .arg(to);
    return salvageSay(QT_TRANSLATE_NOOP("salvage",
                                        "Records saved into %2: %1. What is missing stands in the "
                                        "report. The damaged file was left as it is."))
        .arg(totalOf(done, &SalvagedTable::saved))
        .arg(to);
}

QStringList salvageReport(const Salvaged& done) {
    QStringList said;
    const auto tables = [&](const char* text, std::int64_t SalvagedTable::*count) {
        if (totalOf(done, count) > 0) said << salvageSay(text).arg(byTable(done, count));
    };
    said << salvageSay(QT_TRANSLATE_NOOP("salvage", "Pages that could not be read: %1 of %2."))
                .arg(done.brokenPages)
                .arg(done.pages);
    said << salvageSay(QT_TRANSLATE_NOOP("salvage", "Records saved: %1."))
                .arg(totalOf(done, &SalvagedTable::saved));
    tables(QT_TRANSLATE_NOOP("salvage",
                             "Lost in their table and taken from the history, as it last told "
                             "them: %1."),
           &SalvagedTable::madeAgain);
    tables(QT_TRANSLATE_NOOP("salvage",
                             "Said other than the history, which is whole, and put right by it: "
                             "%1."),
           &SalvagedTable::mended);
    tables(QT_TRANSLATE_NOOP("salvage",
                             "Numbers once given of which nothing is left, lost or removed by a "
                             "step that is lost: %1."),
           &SalvagedTable::unknown);
    if (done.referencesCleared > 0)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "Values that named a lost record and are unknown "
                                             "now: %1."))
                    .arg(done.referencesCleared);
    if (done.movedUp > 0)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "Moved up in the walk of their yard or on their hive, "
                                             "because one before them is lost: %1."))
                    .arg(done.movedUp);
    if (done.disagreeing > 0)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "Do not agree with each other any more, because "
                                             "something between them is lost: %1. The command "
                                             "“check” names them."))
                    .arg(done.disagreeing);
    if (done.leftOutFile)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "Belong to something lost and are written down in "
                                             "%1: %2."))
                    .arg(fromUtf8(*done.leftOutFile), byTable(done, &SalvagedTable::leftOut));
    if (done.historyKept)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "The history is whole. Steps in it, each to be taken "
                                             "back as before: %1."))
                    .arg(done.steps);
    else
        said << salvageSay(QT_TRANSLATE_NOOP("salvage",
                                             "The history is broken and begins anew with what was "
                                             "saved. Steps that could be read: %1; lost or "
                                             "altered: %2."))
                    .arg(done.steps)
                    .arg(done.stepsMissing);
    if (done.pictures + done.picturesLost > 0)
        said << salvageSay(QT_TRANSLATE_NOOP("salvage", "Pictures saved: %1, lost: %2."))
                    .arg(done.pictures)
                    .arg(done.picturesLost);
    return said;
}

}  // namespace combwright
