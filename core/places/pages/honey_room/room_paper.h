// What the sheets of the honey room share: they work on the wall without the program, in large
// type, with lines to write on, and are typed back afterwards in the order they were written.
#pragma once

#include <QString>
#include <cstdint>
#include <optional>
#include <vector>

#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/page.h"

namespace combwright {

/// A sheet with the keeper's name; `day` as it stands at its right.
Page roomPaper(const Read& file, const QString& title, const QString& day);
/// Who typed it back, and when: in the foot.
Block enteredBy();

CardText cardText(const QString& text, PaperSize size = PaperSize::Body, bool strong = false);
CardText mutedText(const QString& text, PaperSize size = PaperSize::Body);
/// A line with its words before it, and the unit behind.
CardField blank(const QString& label, const QString& unit = {}, double share = 1);
/// A box to tick with its words, and no line.
CardField tick(const QString& label, double share = 1, bool ticked = false);
/// A reading as it stands on the line, with the letter of how it is known: "20.0 w".
QString onLine(const std::optional<Known<Mass>>& mass);

/// A box with the number of its peg: the one clipped to it, else the next free one, as the pull
/// list proposes them.
struct PeggedBox {
    RoomBox box;
    QString mark;  ///< as painted on it, "no mark", or what is known of one whose tag was lost
    bool painted = false;  ///< the mark is on the box
    std::optional<std::int64_t> peg;
};
/// The boxes that wait or are still to come, in the order they are to be extracted.
std::vector<PeggedBox> peggedBoxes(const Read& file, Day on);

/// The yard's name; empty where nobody knows it.
QString yardName(const Read& file, std::optional<Id<Yard>> yard);

}  // namespace combwright
