// How a run would close as it stands: by weight, with one box by difference, by eye, or not yet and
// what to do; and the short ways of saying a whole day: buckets in one line, a tub by its level,
// what became of the frames set aside. Asked before the run is closed, so that what is missing is
// asked for kindly and not refused at the end of a long day.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/honey/room.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/storage/rows.h"
#include "core/trade/honey/share_yield.h"
#include "core/units/known.h"
#include "core/words/bucket_line.h"

namespace combwright {

/// What is typed or kept of a run, box by box.
struct DayTyped {
    std::vector<YieldBox> boxes;
    std::optional<double> bucketsG;  ///< none: no bucket holds honey yet
    How how = How::Weighed;          ///< the weakest of all that was typed
    std::optional<double> cappingsG;
    std::int64_t onPile = 0;  ///< frames set aside of which nobody said yet what became of them
};

struct ClosingOutlook {
    bool closes = false;
    QString text;                        ///< one sentence: how, or what to do first
    std::optional<std::size_t> lacking;  ///< the box a weight is asked of
};

ClosingOutlook closingOutlook(const DayTyped& day);

/// A bucket as it is filled, with the number that is its lot's next.
struct BucketToFill {
    std::string mark;
    Known<Mass> net;
};

/// The buckets of one line, numbered on by themselves: "B9", "B10" …, as the lot's labels are, past
/// those marked beside the line; without a run those of a new lot. What is known by level is by
/// eye.
std::vector<BucketToFill> bucketsToFill(const Read& file, const TypedBuckets& typed, Day on,
                                        const std::vector<std::string>& besides = {},
                                        std::optional<Id<Extraction>> run = {});
/// What is filled, read back: "B1 to B6 13.6 kg each, B7 6.8 kg: 88.4 kg together". Empty for none.
QString filledText(const std::vector<BucketToFill>& buckets);

/// Wet cappings by weight or by how full their tub is ("tub half"); the latter by eye, by the
/// keeper's own `cappings_tub_g` or the planning assumption. Nothing for what is neither.
std::optional<Known<Mass>> cappingsTyped(const Read& file, const QString& text, Day on);

/// The yard whose honey is in a box; nothing where its hive is not known.
std::optional<Id<Yard>> yardOfBox(const Read& file, const RoomBox& box, Day on);

/// How full a box was judged: in its run, else when it was looked into last, as far as that speaks
/// for the day.
std::optional<Known<Share>> fillOfBox(const Read& file, const RoomBox& box, Day on);

/// Frames of a run set aside, and nothing became of them yet.
struct AsidePile {
    SetAside aside;
    QString text;  ///< "2 frames of M07, not empty"
};
std::vector<AsidePile> pileOf(const Read& file, Id<Extraction> run);

}  // namespace combwright
