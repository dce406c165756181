// What a kind of frame or box is called: the catalogue's name in the language spoken, the trade's
// short word where the full name would not fit, and which kind a few words of its name mean.
#pragma once

#include <QString>
#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/frames/box.h"
#include "core/model/frames/frame.h"

namespace combwright {

/// The name of a kind of box or frame: one of the catalogue in the language spoken, a keeper's own
/// as it is.
QString kindText(const std::string& name);

/// Which of the names are meant by a few words of one, in their order: "Zander", "national brood".
/// A word may be cut short to three letters or more; what stands in brackets or behind a comma is
/// left out. All the words of a name before its beginning, that before any words of it; several
/// where nothing tells which, none for a number of frames alone.
std::vector<std::size_t> namesMeant(const std::vector<std::string>& names, std::string_view typed);
/// A name as it may stand in a list of boxes: "Zander box" for "Zander box, 10 frames".
std::string nameInAList(std::string_view name);

/// "medium frames": the name without its maker's family and without what stands in brackets.
QString frameKindText(const FrameKind& kind);
/// "1 medium frame", "2 medium frames".
QString framesText(std::int64_t many, const FrameKind& kind);

/// "web of moth".
QString faultText(const Fault& fault);

}  // namespace combwright
