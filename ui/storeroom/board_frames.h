// Small frames of the board, each painted once and kept: of a hundred thousand frames most look
// alike at this size, so that scrolling lays pictures down instead of drawing comb anew.
#pragma once

#include <QHash>
#include <QPainter>
#include <QPixmap>

#include "core/places/storeroom/frame_board.h"
#include "ui/drawing/frame.h"
#include "ui/look/tokens.h"

namespace combwright {

class BoardFrames {
  public:
    /// Measures of the kinds there are; pictures stay where those are as before.
    void setKinds(const std::vector<FrameKind>& kinds);
    /// What was painted with another look is forgotten.
    void setLook(const Look& look);

    /// How high a frame of that kind is at a length of its top bar, px.
    double height(std::optional<Id<FrameKind>> kind, double width) const;
    /// Draws the frame with its upper left corner there.
    void paint(QPainter& painter, QPointF at, const BoardFrame& frame,
               std::optional<Id<FrameKind>> kind, double width);
    /// As it is drawn; for the spoken sentence too.
    FrameView view(const BoardFrame& frame, std::optional<Id<FrameKind>> kind) const;

    int kept() const { return static_cast<int>(m_pictures.size()); }

  private:
    struct Key {
        std::int64_t kind = 0;
        std::uint64_t looks = 0;  ///< comb, fill, flags
        int widthPx = 0;          ///< in sixty-fourths
        bool operator==(const Key&) const = default;
        friend std::size_t qHash(const Key& key, std::size_t seed) {
            return qHashMulti(seed, key.kind, key.looks, key.widthPx);
        }
    };
    const FrameShape& shape(std::optional<Id<FrameKind>> kind) const;

    Look m_look;
    QHash<std::int64_t, FrameShape> m_shapes;
    FrameShape m_usual;
    QHash<Key, QPixmap> m_pictures;
    double m_ratio = 0;
};

}  // namespace combwright
