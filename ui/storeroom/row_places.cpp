#include "ui/storeroom/row_places.h"

#include <algorithm>

namespace combwright {
namespace {

/// A shelf of more boxes than this goes over all columns.
constexpr std::size_t tallShelf = 40;

}  // namespace

void RowPlaces::clear() {
    m_alike.clear();
    m_runs.clear();
    m_runEnds.clear();
    m_columnEnds.clear();
    m_heads.clear();
    m_height = 0;
}

void RowPlaces::stand(const FrameBoard& board, const Sizes& sizes) {
    std::vector<std::vector<Run>> columns(sizes.columns);
    std::vector<double> heights(sizes.columns, 0.0);
    m_heads.clear();
    auto alike = m_alike.cbegin();
    for (std::size_t shelf = 0; shelf < board.shelves.size(); ++shelf) {
        const auto begun = alike;
        while (alike != m_alike.cend() && alike->shelf == shelf) ++alike;
        const auto put = [&](std::size_t column, std::size_t first, std::size_t end) {
            double& y = heights[column];
            for (auto each = begun; each != alike; ++each) {
                const auto from = std::max<std::size_t>(each->first, first);
                const auto to = std::min<std::size_t>(each->end, end);
                if (from >= to) continue;
                columns[column].push_back({static_cast<std::uint32_t>(shelf),
                                           static_cast<std::uint32_t>(from),
                                           static_cast<std::uint32_t>(to), y, each->high, 0});
                y += each->high * static_cast<double>(to - from);
            }
            y += sizes.shelfGap;
        };
        const std::size_t rows = board.shelves[shelf].rows.size();
        if (rows > tallShelf && sizes.columns > 1) {
            const double top = *std::max_element(heights.begin(), heights.end());
            m_heads.push_back({shelf, top, 0, true});
            std::fill(heights.begin(), heights.end(), top + sizes.head);
            const std::size_t share = (rows + sizes.columns - 1) / sizes.columns;
            for (std::size_t i = 0; i < sizes.columns; ++i)
                put(i, std::min(rows, i * share), std::min(rows, (i + 1) * share));
            continue;
        }
        const auto shortest = static_cast<std::size_t>(
            std::min_element(heights.begin(), heights.end()) - heights.begin());
        m_heads.push_back({shelf, heights[shortest], shortest, false});
        heights[shortest] += sizes.head;
        put(shortest, 0, rows);
    }
    m_runs.clear();
    m_runEnds.clear();
    m_columnEnds.clear();
    std::size_t line = 0;
    for (const auto& column : columns) {
        for (Run run : column) {
            run.line = line;
            line += run.end - run.first;
            m_runs.push_back(run);
        }
        m_runEnds.push_back(m_runs.size());
        m_columnEnds.push_back(line);
    }
    m_height = *std::max_element(heights.begin(), heights.end());
}

const RowPlaces::Run& RowPlaces::runOf(std::size_t line) const {
    const auto next =
        std::upper_bound(m_runs.begin(), m_runs.end(), line,
                         [](std::size_t at, const Run& run) { return at < run.line; });
    return *(next - 1);
}

RowPlace RowPlaces::operator[](std::size_t line) const {
    const Run& run = runOf(line);
    const std::size_t in = line - run.line;
    return {run.shelf, run.first + static_cast<std::uint32_t>(in),
            run.top + static_cast<double>(in) * run.high, run.high};
}

std::optional<std::size_t> RowPlaces::find(std::uint32_t shelf, std::uint32_t row) const {
    for (const Run& run : m_runs)
        if (run.shelf == shelf && run.first <= row && row < run.end)
            return run.line + (row - run.first);
    return std::nullopt;
}

std::size_t RowPlaces::columnOf(std::size_t line) const {
    std::size_t column = 0;
    while (column + 1 < m_columnEnds.size() && line >= m_columnEnds[column]) ++column;
    return column;
}

std::size_t RowPlaces::lineAt(std::size_t column, double y) const {
    const auto runs = [&](std::size_t at) {
        return m_runs.begin() + static_cast<std::ptrdiff_t>(at);
    };
    const auto first = runs(column == 0 ? 0 : m_runEnds[column - 1]),
               last = runs(m_runEnds[column]);
    const auto next =
        std::upper_bound(first, last, y, [](double at, const Run& run) { return at < run.top; });
    if (next == first) return begin(column);
    const Run& run = *(next - 1);
    const auto in = static_cast<std::size_t>((y - run.top) / run.high);
    return run.line + std::min<std::size_t>(in, run.end - run.first - 1);
}

}  // namespace combwright
