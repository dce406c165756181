// What a line typed at the board means: which box to put on, where one goes to. Each reads the
// person's words against the file and either gives the one action to do or says kindly what is
// missing.
#pragma once

#include <QString>
#include <variant>

#include "core/actions/boxes/boxes.h"
#include "core/storage/rows.h"

namespace combwright {

/// The move meant, or why none could be understood.
using MeantMove = std::variant<MoveBox, QString>;

/// "M43", "medium", "M43 2": a box put on a hive, on top or at a place counted from the floor.
MeantMove meantPutOn(const Read& file, const QString& typed, const Hive& hive, Day on);
/// "north wall", "waiting", "freezer shelf 2": where a box taken off goes; blank is the storeroom.
MeantMove meantTakeOff(const QString& typed, const Box& box, Day on);
/// "ML4", "ML4 2", "H1, Creek", "2": onto another hive, or to another place of its own.
MeantMove meantMove(const Read& file, const QString& typed, const Box& box, Day on);

/// The move in words, said back while typing: "M43 onto ML3, place 2 from the floor."
QString saidBack(const Read& file, const MeantMove& meant);

/// The mark of the box that would be put on first: the next of the yard's usual super.
QString nextToPutOn(const Read& file, const Yard& yard, Day on);

/// A box as it is called beside its hive: its mark, else what kind it is.
QString calledBox(const Read& file, const Box& box);

}  // namespace combwright
