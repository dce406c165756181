#include "core/places/storeroom/storeroom_waits.h"

#include <algorithm>
#include <set>

#include "core/places/storeroom/frame_board.h"
#include "core/places/storeroom/shelf_danger.h"

namespace combwright {

std::int64_t boxesThatWait(const Read& file, Day on) {
    std::set<std::int64_t> waiting;
    for (const BoardShelf& shelf : frameBoard(file, on).shelves)
        for (const BoardRow& row : shelf.rows)
            if (row.box && std::any_of(row.states.begin(), row.states.end(), [](const auto& each) {
                    return each.state == BoxState::NotLookedThrough ||
                           each.state == BoxState::ChangedSince;
                }))
                waiting.insert(row.box->number);
    for (const ShelfDanger& each : shelfDangers(file, on))
        if (each.box.box) waiting.insert(each.box.box->id.number);
    return static_cast<std::int64_t>(waiting.size());
}

}  // namespace combwright
