// Where the rows of the board stand, without laying out any of them: boxes of a kind that stand
// together are all as high, so that a stretch of them is one sum however long it is. A hundred
// thousand frames on two hundred shelves are laid out as fast as two hundred boxes.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "core/places/storeroom/frame_board.h"

namespace combwright {

/// A row of the board where it stands; px from the top of all rows.
struct RowPlace {
    std::uint32_t shelf = 0;
    std::uint32_t row = 0;
    double top = 0;
    double height = 0;
};

/// The rows in the order the arrows walk them: down a column, then down the next.
class RowPlaces {
  public:
    /// The name over a shelf. A long shelf goes over all columns under one name.
    struct Head {
        std::size_t shelf = 0;
        double top = 0;
        std::size_t column = 0;
        bool acrossAll = false;
    };
    /// Px.
    struct Sizes {
        std::size_t columns = 1;
        double head = 0;      ///< a shelf's name with what parts it from its rows
        double shelfGap = 0;  ///< below a shelf
    };

    void clear();
    /// Takes the next row of the board; shelf by shelf, none left out.
    void add(std::uint32_t shelf, std::uint32_t row, const BoardRow& as) {
        if (m_alike.empty() || m_alike.back().shelf != shelf ||
            m_alike.back().frames != as.frames.size() || m_alike.back().kind != as.frameKind)
            m_alike.push_back({shelf, row, row, as.frames.size(), as.frameKind});
        m_alike.back().end = row + 1;
    }
    /// Stands them in their columns. `height` is asked once for rows alike that follow each other.
    template <class Height>
    void layOut(const FrameBoard& board, const Sizes& sizes, Height height) {
        const Alike* before = nullptr;
        for (Alike& each : m_alike) {
            each.high = before && before->frames == each.frames && before->kind == each.kind
                            ? before->high
                            : height(board.shelves[each.shelf].rows[each.first]);
            before = &each;
        }
        stand(board, sizes);
    }

    std::size_t size() const { return m_columnEnds.empty() ? 0 : m_columnEnds.back(); }
    bool empty() const { return size() == 0; }
    RowPlace operator[](std::size_t line) const;
    /// Where a row of a shelf has come to stand.
    std::optional<std::size_t> find(std::uint32_t shelf, std::uint32_t row) const;

    std::size_t columns() const { return m_columnEnds.size(); }
    std::size_t columnOf(std::size_t line) const;
    /// The first line of a column, and the one behind its last.
    std::size_t begin(std::size_t column) const {
        return column == 0 ? 0 : m_columnEnds[column - 1];
    }
    std::size_t end(std::size_t column) const { return m_columnEnds[column]; }
    /// The last line of a column that begins at that height or above it; else the column's first.
    std::size_t lineAt(std::size_t column, double y) const;

    const std::vector<Head>& heads() const { return m_heads; }
    double height() const { return m_height; }
    /// So many stretches stand for all rows.
    std::size_t stretches() const { return m_runs.size(); }

  private:
    /// Rows on end of one shelf that are equally high.
    struct Alike {
        std::uint32_t shelf = 0;
        std::uint32_t first = 0, end = 0;
        std::size_t frames = 0;
        std::optional<Id<FrameKind>> kind;
        double high = 0;
    };
    /// Such a stretch, or a part of it, where it stands.
    struct Run {
        std::uint32_t shelf = 0;
        std::uint32_t first = 0, end = 0;
        double top = 0, high = 0;
        std::size_t line = 0;  ///< of its first row
    };
    void stand(const FrameBoard& board, const Sizes& sizes);
    const Run& runOf(std::size_t line) const;

    std::vector<Alike> m_alike;
    std::vector<Run> m_runs;
    std::vector<std::size_t> m_runEnds;     ///< index behind the last run of each column
    std::vector<std::size_t> m_columnEnds;  ///< and behind its last line
    std::vector<Head> m_heads;
    double m_height = 0;
};

}  // namespace combwright
