#include "core/places/questions/move_questions.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askMove(const char* text) { return QCoreApplication::translate("questions", text); }

/// On a hive that was closed since, by a line written late.
std::optional<Question> closedSince(const Read& file, const BoxMove& move) {
    if (move.toPlace != BoxPlace::Storeroom) return std::nullopt;
    const auto closed = file.find(move.fromHive);
    if (!closed || closed->closed != move.on) return std::nullopt;
    return Question{
        Asked::ClosedSince,
        askMove("%1 stood on %2 until that was closed on %3, and is written down in the "
                "storeroom since. If it went elsewhere, move it there.")
            .arg(fromUtf8(nameOf(file, Box::table, move.box.number)), fromUtf8(closed->mark.text()),
                 dayText(move.on))};
}

/// Only a line of the sheet brings a box into the world without being told of it.
std::optional<Question> fromNowhere(const Read& file, const BoxMove& move) {
    const auto hive = move.fromPlace ? std::nullopt : file.find(move.toHive);
    const auto box = file.find(move.box);
    if (!hive || !box) return std::nullopt;
    const QString mark = fromUtf8(hive->mark.text());
    if (!boxesReadyOn(file, box->kind, move.on).empty())
        return Question{Asked::BoxFromNowhere,
                        askMove("%1: what stood in the storeroom on %2 is held back or went "
                                "elsewhere since, so nobody knows which box went on; it is written "
                                "down as one without a mark.")
                            .arg(mark, dayText(move.on))};
    const auto supers = supersOn(*hive, boxesOn(file, hive->id));
    const bool super = std::any_of(supers.begin(), supers.end(),
                                   [&](const Box& each) { return each.id == move.box; });
    return Question{
        Asked::BoxFromNowhere,
        (super ? askMove("%1: no super was left in the storeroom; it is written down as one "
                         "without a mark.")
               : askMove("%1: no such box was left in the storeroom; it is written down as one "
                         "without a mark."))
            .arg(mark)};
}

}  // namespace

std::vector<Question> moveQuestions(const Read& file, const RowChange& row) {
    if (row.kind == ChangeKind::Removed || row.table != BoxMove::table) return {};
    const auto move = file.find(Id<BoxMove>{row.id});
    if (!move || !move->inspection) return {};
    std::vector<Question> list;
    for (auto& each : {closedSince(file, *move), fromNowhere(file, *move)})
        if (each) list.push_back(*each);
    return list;
}

}  // namespace combwright
