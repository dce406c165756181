#include "core/actions/honey_room/clearers.h"

#include "core/actions/storeroom/quarantine.h"
#include "core/model/yard/yard.h"
#include "core/storage/queries/pegs.h"

namespace combwright {

Result<void> demandBoard(const Read& file, const ClearerBoard& board) {
    const auto hive = file.find(board.hive);
    if (!hive) return Refusal{Code::NotFound, "hive", {}};
    if (board.on < hive->since)
        return Refusal{Code::BeforeItBegan,
                       "on_day",
                       {{"name", hive->mark.text()}, {"since", isoText(hive->since)}}};
    if (board.off && *board.off < board.on)
        return Refusal{Code::Contradiction, "off_day", {{"other", "on_day"}}};
    for (const ClearerBoard& other : file.where<ClearerBoard>({is("hive", board.hive)}))
        if (other.id != board.id && (!other.off || board.on < *other.off) &&
            (!board.off || other.on < *board.off))
            return Refusal{
                Code::Taken,
                "hive",
                {{"name", hive->mark.text()}, {"since", isoText(other.on)}, {"board", "in"}}};
    return {};
}

const Fields& PutClearer::fields() {
    static const Fields all =
        describe(field<&PutClearer::on>("on"), field<&PutClearer::hive>("hive"),
                 field<&PutClearer::note>("note"));
    return all;
}

Result<Id<ClearerBoard>> PutClearer::perform(Write& file) const {
    const auto stand = file.find(hive);
    if (stand && stand->closed && *stand->closed <= on)
        return Refusal{Code::Closed, "hive", {{"name", stand->mark.text()}}};
    // A board goes from hive to hive; into a quarantined one goes nothing that leaves it again.
    if (auto free = demandHiveFree(file, hive, on, "hive"); !free) return free.error();
    ClearerBoard board;
    board.hive = hive;
    board.on = on;
    board.note = note;
    if (auto ok = demandBoard(file, board); !ok) {
        Refusal refusal = ok.error();
        if (refusal.field == "on_day") refusal.field = "on";
        return refusal;
    }
    return file.add(board);
}

const Fields& TakeClearer::fields() {
    static const Fields all =
        describe(field<&TakeClearer::on>("on"), field<&TakeClearer::hive>("hive"));
    return all;
}

Result<Id<ClearerBoard>> TakeClearer::perform(Write& file) const {
    auto board = boardIn(file, hive, on);
    if (!board) {
        const auto stand = file.find(hive);
        return Refusal{Code::NotFound,
                       "hive",
                       {{"name", stand ? stand->mark.text() : std::string()}, {"lacks", "board"}}};
    }
    board->off = on;
    file.change(*board);
    return board->id;
}

}  // namespace combwright
