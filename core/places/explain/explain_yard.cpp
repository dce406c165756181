#include "core/places/explain/explain_yard.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>

#include "core/places/yard/queens.h"
#include "core/storage/queries/constants.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString yardWhy(const char* text) { return QCoreApplication::translate("explain_yard", text); }

QString withHow(const QString& figure, How how) {
    return figure + QStringLiteral(", ") + howWord(how);
}

/// A rate or limit as it is in force, with whose it is.
void noteConstant(Working* working, const Read& file, const char* key, Id<Yard> yard, Day on,
                  const char* unit) {
    const auto found = constantInForce(file, key, yard, on);
    if (!found) return;
    working->steps.push_back(
        {key, found->value, unit, found->own ? "the keeper's own" : "", found->source});
}

Explained queenFigure(const Read& file, const YardSheet& sheet, const YardSheetRow& row,
                      const Mind& mind) {
    Explained why;
    why.what = yardWhy("Young queen in %1").arg(fromUtf8(row.hive.mark.text()));
    const auto waiting = waitingFor(file, row.hive, sheet.on);
    if (!waiting) return why;
    const QueenPatience patience = patienceOn(file, sheet.yard.id, mind.since);
    Working* working = &why.working;
    const auto dates =
        queenDates(eventOf(waiting->step), mind.since, waiting->notSeenOn, patience, working);
    if (!dates) return why;
    why.answer = yardWhy("waited for since %1: look from %2, give eggs from %3, act by %4")
                     .arg(dayText(mind.since), dayAndMonth(dates->lookFrom),
                          dayAndMonth(dates->testFrameFrom), dayAndMonth(dates->actBy));
    for (const char* key : {"look_after_days", "test_frame_after_days", "act_after_days"})
        noteConstant(working, file, key, sheet.yard.id, mind.since, "d");
    const auto after = [&](Day day) { return static_cast<double>((day - mind.since).count()); };
    note(working, "days_to_look", after(dates->lookFrom), "d", "emerges_to + look_after_days");
    note(working, "days_to_test_frame", after(dates->testFrameFrom), "d",
         "emerges_to + test_frame_after_days");
    note(working, "days_to_act", after(dates->actBy), "d", "emerges_to + act_after_days");
    return why;
}

Explained washFigure(const Read& file, const YardSheet& sheet, const YardSheetRow& row,
                     const Mind& mind) {
    Explained why;
    why.what = yardWhy("Mites in %1").arg(fromUtf8(row.hive.mark.text()));
    why.answer = yardWhy("%1 in 100 bees, washed %2")
                     .arg(QLocale().toString(*mind.mitesPer100, 'f', 2), dayText(mind.since));
    Working* working = &why.working;
    note(working, "mites", *mind.mites->middle(), "", std::string(word(mind.mites->how)));
    note(working, "bees", *mind.bees->middle(), "", std::string(word(mind.bees->how)));
    noteConstant(working, file, "mite_line_per_100", sheet.yard.id, mind.since, "");
    note(working, "mites_per_100", *mind.mitesPer100, "", "100 · mites ÷ bees");
    return why;
}

void explainHive(const Read& file, const YardSheet& sheet, const YardSheetRow& row,
                 std::vector<Explained>& figures) {
    for (const Mind& mind : row.minds) {
        if (mind.queen) figures.push_back(queenFigure(file, sheet, row, mind));
        if (mind.mitesPer100) figures.push_back(washFigure(file, sheet, row, mind));
    }
}

void explainMean(const YardSheet& sheet, const QString& what, const char* key,
                 std::optional<Known<Frames>> Seen::*reading, const std::optional<MeanOf>& mean,
                 std::vector<Explained>& figures) {
    if (!mean) return;
    Explained why;
    why.what = what;
    why.answer = withHow(yardWhy("%1 frames in the mean of %2 of %3 hives")
                             .arg(QLocale().toString(mean->value, 'f', 1))
                             .arg(mean->n)
                             .arg(sheet.rows.size()),
                         mean->how);
    Working* working = &why.working;
    double sum = 0;
    int n = 0;
    for (const YardSheetRow& row : sheet.rows) {
        if (!row.today || row.today->seen.looked != Looked::Opened) continue;
        const auto& known = row.today->seen.*reading;
        const auto middle = known ? known->middle() : std::nullopt;
        // A blank is never counted into a mean.
        if (!middle) continue;
        working->steps.push_back({key, *middle / 10.0, "",
                                  row.hive.mark.text() + ", " + std::string(word(known->how)), ""});
        sum += *middle / 10.0;
        ++n;
    }
    note(working, "hives_with_a_figure", n, "");
    note(working, "mean", n > 0 ? sum / n : 0, "", "sum ÷ hives with a figure");
    figures.push_back(std::move(why));
}

void explainSupers(const Read& file, const YardSheet& sheet, std::vector<Explained>& figures) {
    Explained standing;
    standing.what = yardWhy("Supers on");
    standing.answer = withHow(yardWhy("%1, %2 of them put on that day")
                                  .arg(static_cast<qlonglong>(sheet.supersStanding))
                                  .arg(static_cast<qlonglong>(sheet.supersPutOn)),
                              How::Counted);
    std::int64_t sum = 0;
    for (const YardSheetRow& row : sheet.rows) {
        const auto supers = static_cast<std::int64_t>(supersOn(row.hive, row.boxes).size());
        note(&standing.working, "supers", static_cast<double>(supers), "", row.hive.mark.text());
        sum += supers;
    }
    note(&standing.working, "supers_standing", static_cast<double>(sum), "",
         "sum; supers are the boxes above the excluder, without one those above the first");
    figures.push_back(std::move(standing));
    if (!sheet.supersInStore || !sheet.yard.usualSuper) return;
    Explained store;
    store.what = yardWhy("In the storeroom");
    store.answer = withHow(yardWhy("%1 of %2")
                               .arg(static_cast<qlonglong>(*sheet.supersInStore))
                               .arg(kindText(sheet.superName)),
                           How::Counted);
    const auto ready = boxesReadyOn(file, *sheet.yard.usualSuper, sheet.on);
    note(&store.working, "in_store", static_cast<double>(ready.size()), "",
         "boxes of the yard's usual super, sound, in the storeroom that day");
    figures.push_back(std::move(store));
}

void explainColonies(const YardSheet& sheet, std::vector<Explained>& figures) {
    Explained colonies;
    colonies.what = yardWhy("Colonies");
    colonies.answer = withHow(yardWhy("%1; %2 queenless, %3 wait for a young queen")
                                  .arg(sheet.colonies)
                                  .arg(sheet.queenless)
                                  .arg(sheet.waiting),
                              How::Counted);
    Working* working = &colonies.working;
    note(working, "colonies_queenless", sheet.queenless, "",
         "their queen is written down as gone, and none is waited for");
    note(working, "colonies_waiting", sheet.waiting, "", "no eggs of a young queen were seen yet");
    note(working, "colonies", sheet.colonies, "", "that lived in a hive of the yard that day");
    figures.push_back(std::move(colonies));
}

}  // namespace

std::vector<Explained> explainYard(const Read& file, const YardSheet& sheet,
                                   std::optional<Id<Hive>> first) {
    std::vector<Explained> figures;
    for (const YardSheetRow& row : sheet.rows)
        if (row.hive.id == first) explainHive(file, sheet, row, figures);
    explainMean(sheet, yardWhy("Brood, mean"), "brood", &Seen::brood, sheet.brood, figures);
    explainMean(sheet, yardWhy("Stores, mean"), "stores", &Seen::stores, sheet.stores, figures);
    if (!sheet.rows.empty()) explainSupers(file, sheet, figures);
    if (sheet.colonies > 0) explainColonies(sheet, figures);
    for (const YardSheetRow& row : sheet.rows)
        if (row.hive.id != first) explainHive(file, sheet, row, figures);
    return figures;
}

}  // namespace combwright
