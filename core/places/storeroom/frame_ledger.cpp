#include "core/places/storeroom/frame_ledger.h"

#include <algorithm>
#include <map>
#include <set>

#include "core/places/storeroom/frame_use.h"
#include "core/storage/queries/holds.h"

namespace combwright {
namespace {

/// Boxes that are gone, scrapped or burnt: what hangs in them went with them.
std::set<std::int64_t> boxesGone(const Read& file) {
    std::set<std::int64_t> gone;
    for (const Box& box : file.all<Box>())
        if (!inUse(box)) gone.insert(box.id.number);
    return gone;
}

bool wentWithBox(const std::set<std::int64_t>& gone, const Frame& frame) {
    return frame.box && gone.contains(frame.box->number);
}

void enter(FrameLedgerRow& row, const Frame& frame, bool gone) {
    ++row.in;
    if (!frame.retired) {
        ++(gone ? row.gone : row.kept);
        return;
    }
    switch (*frame.retired) {
        case Retired::Melted:
            ++row.melted;
            return;
        case Retired::Burnt:
            ++row.burnt;
            return;
        case Retired::Sold:
            ++row.sold;
            return;
        case Retired::Missing:
            ++row.missing;
            return;
    }
}

void enter(FrameClasses& row, FrameUse use) {
    switch (use) {
        case FrameUse::Drawn:
            ++row.drawn;
            return;
        case FrameUse::Foundation:
            ++row.foundation;
            return;
        case FrameUse::Bare:
            ++row.bare;
            return;
        case FrameUse::Repairable:
            ++row.repairable;
            return;
        case FrameUse::Held:
            ++row.held;
            return;
        case FrameUse::Lost:
            ++row.lost;
            return;
        case FrameUse::Unknown:
            ++row.unknown;
            return;
    }
}

/// The rows of a map by kind, in the order of the catalogue.
template <class RowOfKind>
std::vector<RowOfKind> inOrder(const Read& file, std::map<std::int64_t, RowOfKind>& byKind) {
    std::vector<RowOfKind> rows;
    for (auto& [number, row] : byKind) {
        row.kind = file.find(Id<FrameKind>{number}).value_or(FrameKind{});
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace

bool FrameLedger::conserved() const {
    return total.conserved() &&
           std::all_of(rows.begin(), rows.end(),
                       [](const FrameLedgerRow& row) { return row.conserved(); });
}

FrameLedger frameLedger(const Read& file) {
    FrameLedger ledger;
    std::map<std::int64_t, FrameLedgerRow> byKind;
    const auto gone = boxesGone(file);
    for (const Frame& frame : file.all<Frame>()) {
        enter(byKind[frame.kind.number], frame, wentWithBox(gone, frame));
        enter(ledger.total, frame, wentWithBox(gone, frame));
    }
    ledger.rows = inOrder(file, byKind);
    return ledger;
}

std::vector<FrameClasses> frameClasses(const Read& file, Day on) {
    const HeldThings held = heldThings(file, on);
    std::map<std::int64_t, FrameClasses> byKind;
    const auto gone = boxesGone(file);
    for (const Frame& frame : file.where<Frame>({isUnknown("retired")}))
        if (!wentWithBox(gone, frame))
            enter(byKind[frame.kind.number], useOf(frame, held.holds(frame)));
    return inOrder(file, byKind);
}

}  // namespace combwright
