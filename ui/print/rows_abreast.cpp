#include "ui/print/rows_abreast.h"

#include <utility>

namespace combwright {
namespace {

double gapShare(const TableBlock& table) {
    double shares = 0;
    for (const TableColumn& column : table.columns) shares += column.share;
    return shares * 0.04;
}

}  // namespace

TableBlock rowsAbreast(const TableBlock& table) {
    const auto times = static_cast<std::size_t>(table.abreast);
    TableBlock wide = table;
    wide.rows.clear();
    wide.columns.clear();
    const TableColumn gap{{}, gapShare(table), false};
    for (std::size_t i = 0; i < times; ++i) {
        if (i > 0) wide.columns.push_back(gap);
        wide.columns.insert(wide.columns.end(), table.columns.begin(), table.columns.end());
    }
    for (std::size_t from = 0; from < table.rows.size();) {
        if (table.rows[from].group) {
            wide.rows.push_back(table.rows[from++]);
            continue;
        }
        std::size_t to = from;
        while (to < table.rows.size() && !table.rows[to].group) ++to;
        const std::size_t deep = (to - from + times - 1) / times;
        for (std::size_t i = 0; i < deep; ++i) {
            TableRow row;
            for (std::size_t at = from + i; at < to; at += deep) {
                if (!row.cells.empty()) row.cells.emplace_back();
                std::vector<Cell> cells = table.rows[at].cells;
                cells.resize(table.columns.size());
                row.cells.insert(row.cells.end(), cells.begin(), cells.end());
                if (i + 1 == deep) row.below = Rule::Ink;
            }
            wide.rows.push_back(std::move(row));
        }
        from = to;
    }
    return wide;
}

}  // namespace combwright
