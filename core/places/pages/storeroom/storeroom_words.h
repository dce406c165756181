// Words several pages and lists of the storeroom share.
#pragma once

#include "core/model/storeroom/equipment.h"
#include "core/places/pages/page.h"
#include "core/places/storeroom/needs.h"

namespace combwright {

/// "floor", "clearer board".
QString itemText(EquipmentItem item);
/// "extractor, tangential, Langstroth deep frame": the item with its name and its frame.
QString itemText(EquipmentItem item, const std::string& name,
                 const std::optional<FrameKind>& frame);
/// The name of a frame as it fits a column: without what a catalogue adds in brackets.
QString frameText(const FrameKind& frame);
/// Kinds by the trade's short word, as far as nothing else in the season could be meant: "medium
/// frames" where every box is of one family, "medium" where every box takes as many frames.
class KindNames {
  public:
    explicit KindNames(const Read& file);
    QString frames(const FrameKind& kind, std::int64_t many = 2) const;
    /// By the kind's full name: "medium" of "10-frame medium".
    QString box(const QString& name) const;
    /// "extractor, tangential, medium frames".
    QString item(EquipmentItem item, const std::string& name,
                 const std::optional<FrameKind>& frame) const;

  private:
    std::optional<std::string> m_family;
    QString m_boxBegin;  ///< "10-frame ", where it is that of all
};

/// "12", or "at most 12" where something of it was not counted.
QString shortText(const Shortage& line, bool afterRepairs);
/// "not counted" where nobody did.
QString countText(const std::optional<std::int64_t>& count);
/// "drawn", "foundation" …
QString useText(FrameUse use);
/// "7 drawn, 1 bare"; what is 0 is left out.
QString usesText(const UseCounts& uses);
/// The same for a narrow column on paper: a line breaks behind a comma, not within "1 bare".
QString usesOnPaper(const UseCounts& uses);
/// What to enter before more can be said, as a sentence.
QString gapText(PlanGap gap, int year);

/// A page with the season's name on it.
Page storeroomPage(const Read& file, const QString& title, Day on);

}  // namespace combwright
