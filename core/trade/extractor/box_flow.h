// How many boxes stand open while a day's frames are spun. A box begun and not finished stands in
// the way, and only a finished one can be weighed wet.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

namespace combwright {

/// The frames of one load, by number; nothing for an empty slot.
using SpinPlaces = std::vector<std::optional<std::size_t>>;

/// How strictly a box counts as open.
enum class OpenBoxCount {
    /// From the load with its first frame to the load with its last, both included: whatever the
    /// order in which the frames of a load are taken.
    WholeLoads,
    /// Frame by frame, when within a load boxes already begun are finished first and then one box
    /// is taken after the other.
    FrameByFrame,
};

/// The boxes that the loads of one group of frames are taken from.
class BoxFlow {
  public:
    /// A box of the group: whether earlier loads outside it have begun it, later ones go on with
    /// it.
    struct Box {
        bool begunBefore = false;
        bool goesOn = false;
    };

    /// `boxOf` names the box of each frame; `standing` boxes without a frame here are open anyway.
    BoxFlow(std::vector<Box> boxes, std::vector<std::size_t> boxOf, std::size_t standing);

    /// The most boxes open at a time.
    std::size_t peak(const std::vector<SpinPlaces>& loads, OpenBoxCount count) const;
    /// For each box the number of loads it is open for, added up: small where the frames of a box
    /// are near each other in time.
    std::size_t spread(const std::vector<SpinPlaces>& loads) const;
    std::size_t boxOf(std::size_t frame) const { return m_boxOf[frame]; }
    const std::vector<Box>& boxes() const { return m_boxes; }

  private:
    /// The loads of a box's first and last frame here, counted from 1.
    struct Stay {
        std::size_t from = 0;
        std::size_t to = 0;
    };
    std::vector<Stay> stays(const std::vector<SpinPlaces>& loads) const;

    std::vector<Box> m_boxes;
    std::vector<std::size_t> m_boxOf;
    std::size_t m_standing;
};

}  // namespace combwright
