#include "core/catalogue/resource_table.h"

#include <QFile>
#include <QString>
#include <charconv>
#include <stdexcept>
#include <utility>

namespace combwright {
namespace {

[[noreturn]] void failTable(const std::string& name, const std::string& what) {
    throw std::logic_error("trade table " + name + ": " + what);
}

}  // namespace

ResourceTable::ResourceTable(std::string_view name) : m_name(name) {
    QFile file(":/combwright/trade/" + QString::fromStdString(m_name) + ".csv");
    if (!file.open(QIODevice::ReadOnly)) failTable(m_name, "not compiled in");
    auto table = readCsv(file.readAll().toStdString());
    if (!table) failTable(m_name, "cannot be read at " + table.error().field);
    m_table = std::move(table).value();
}

std::vector<ResourceRow> ResourceTable::rows() const {
    std::vector<ResourceRow> rows;
    rows.reserve(m_table.rows.size());
    for (std::size_t i = 0; i < m_table.rows.size(); ++i) rows.push_back(ResourceRow(*this, i));
    return rows;
}

const std::string& ResourceTable::cell(std::size_t row, std::string_view column) const {
    const auto at = m_table.column(column);
    if (!at) failTable(m_name, "has no column " + std::string(column));
    return m_table.rows[row][*at];
}

std::string ResourceRow::text(std::string_view column) const { return m_table->cell(m_at, column); }

std::optional<double> ResourceRow::number(std::string_view column) const {
    const std::string& cell = m_table->cell(m_at, column);
    if (cell.empty()) return std::nullopt;
    double value = 0;
    const char* end = cell.data() + cell.size();
    const auto read = std::from_chars(cell.data(), end, value);
    if (read.ec != std::errc() || read.ptr != end)
        failTable(m_table->m_name, "\"" + cell + "\" is no number");
    return value;
}

std::optional<Length> ResourceRow::length(std::string_view column) const {
    const auto mm = number(column);
    if (!mm) return std::nullopt;
    return Length::roundedMm(*mm);
}

}  // namespace combwright
