#include "core/storage/salvage/page_reader.h"

#include <algorithm>
#include <bit>
#include <utility>

namespace combwright {
namespace {

constexpr std::size_t fileHeader = 100;
constexpr std::uint8_t tableLeaf = 0x0d;
constexpr std::uint8_t tableInterior = 0x05;
/// SQLite's own bound on the columns of a table here: far more than any of ours.
constexpr std::size_t mostColumns = 200;
/// The size a file of ours is made with, where its head does not say.
constexpr std::size_t usualPageSize = 4096;

/// A number of one to nine bytes, seven bits in each but the ninth.
struct Varint {
    std::uint64_t value = 0;
    std::size_t size = 0;  ///< 0 where the bytes end before it does
};
Varint varintAt(const std::uint8_t* bytes, std::size_t from, std::size_t end) {
    std::uint64_t value = 0;
    for (std::size_t i = 0; i < 9 && from + i < end; ++i) {
        const std::uint8_t byte = bytes[from + i];
        if (i == 8) return {(value << 8) | byte, 9};
        value = (value << 7) | (byte & 0x7fu);
        if (byte < 0x80) return {value, i + 1};
    }
    return {};
}

std::optional<std::size_t> bytesOfSerial(std::uint64_t serial) {
    constexpr std::size_t fixed[] = {0, 1, 2, 3, 4, 6, 8, 8, 0, 0};
    if (serial < 10) return fixed[serial];
    if (serial < 12) return std::nullopt;  // kept for SQLite's own use
    return static_cast<std::size_t>((serial - (serial % 2 == 0 ? 12 : 13)) / 2);
}

StoredValue valueAt(const std::uint8_t* bytes, std::uint64_t serial, std::size_t size) {
    if (serial == 0) return {};
    if (serial == 8 || serial == 9) return static_cast<std::int64_t>(serial - 8);
    if (serial < 8) {
        std::uint64_t raw = bytes[0] & 0x80 ? ~std::uint64_t{0} : 0;
        for (std::size_t i = 0; i < size; ++i) raw = (raw << 8) | bytes[i];
        if (serial == 7) return std::bit_cast<double>(raw);
        return static_cast<std::int64_t>(raw);
    }
    if (serial % 2 == 0) return Bytes(bytes, bytes + size);
    return std::string(reinterpret_cast<const char*>(bytes), size);
}

std::optional<std::vector<StoredValue>> recordOf(const Bytes& record) {
    const Varint head = varintAt(record.data(), 0, record.size());
    if (head.size == 0 || head.value > record.size() || head.value < head.size) return std::nullopt;
    std::vector<StoredValue> values;
    std::size_t at = head.size;
    std::size_t body = head.value;
    while (at < head.value) {
        const Varint serial = varintAt(record.data(), at, head.value);
        const auto size = serial.size ? bytesOfSerial(serial.value) : std::nullopt;
        if (!size || *size > record.size() - body || values.size() == mostColumns)
            return std::nullopt;
        values.push_back(valueAt(record.data() + body, serial.value, *size));
        at += serial.size;
        body += *size;
    }
    if (body != record.size()) return std::nullopt;
    return values;
}

}  // namespace

/// A page and where its own head begins: the first has the file's head before it.
struct PageReader::Page {
    std::int64_t number = 0;
    const std::uint8_t* bytes = nullptr;
    std::size_t head = 0;

    std::uint8_t kind() const { return bytes[head]; }
    std::size_t number2(std::size_t at) const {
        return static_cast<std::size_t>(bytes[at] << 8 | bytes[at + 1]);
    }
    std::int64_t number4(std::size_t at) const {
        return static_cast<std::int64_t>(std::uint32_t{bytes[at]} << 24 | bytes[at + 1] << 16 |
                                         bytes[at + 2] << 8 | bytes[at + 3]);
    }
    std::size_t cells() const { return number2(head + 3); }
    /// Where the list of its cells begins.
    std::size_t list() const { return head + (kind() == tableInterior ? 12 : 8); }
    /// Whether that list lies on the page.
    bool listFits(std::size_t usable) const { return list() + 2 * cells() <= usable; }
};

PageReader::PageReader(Bytes bytes) : m_bytes(std::move(bytes)) {
    if (m_bytes.size() < fileHeader) return;
    m_pageSize = static_cast<std::size_t>(m_bytes[16] << 8 | m_bytes[17]);
    if (m_pageSize == 1) m_pageSize = 65536;
    const bool isSize = m_pageSize >= 512 && std::has_single_bit(m_pageSize);
    const bool hasHead = std::equal(m_bytes.begin(), m_bytes.begin() + 6, "SQLite");
    if (!isSize || !hasHead) m_pageSize = usualPageSize;
    const std::size_t reserved = hasHead ? m_bytes[20] : 0;
    m_usable = m_pageSize - (reserved <= m_pageSize / 8 ? reserved : 0);
    // A last page that is cut off is looked at as far as it goes.
    const std::size_t over = m_bytes.size() % m_pageSize;
    if (over != 0) m_bytes.resize(m_bytes.size() + m_pageSize - over);
    m_pages = static_cast<std::int64_t>(m_bytes.size() / m_pageSize);
}

std::uint32_t PageReader::number4(std::size_t at) const {
    return std::uint32_t{m_bytes[at]} << 24 | std::uint32_t{m_bytes[at + 1]} << 16 |
           std::uint32_t{m_bytes[at + 2]} << 8 | m_bytes[at + 3];
}

std::optional<PageReader::Page> PageReader::page(std::int64_t number) const {
    if (number < 1 || number > m_pages) return std::nullopt;
    return Page{number, m_bytes.data() + static_cast<std::size_t>(number - 1) * m_pageSize,
                number == 1 ? fileHeader : 0};
}

std::optional<Bytes> PageReader::payload(const Page& page, std::size_t at, std::uint64_t size) {
    if (size > m_bytes.size()) return std::nullopt;
    const std::size_t all = size;
    const std::size_t most = m_usable - 35;
    std::size_t here = all;
    if (all > most) {
        const std::size_t least = (m_usable - 12) * 32 / 255 - 23;
        const std::size_t wanted = least + (all - least) % (m_usable - 4);
        here = wanted <= most ? wanted : least;
    }
    const std::size_t behind = all > here ? 4 : 0;
    if (at + here + behind > m_usable) return std::nullopt;
    Bytes record(page.bytes + at, page.bytes + at + here);
    if (behind == 0) return record;
    std::int64_t next = page.number4(at + here);
    std::set<std::int64_t> chain;
    while (record.size() < all) {
        const auto more = this->page(next);
        if (!more || !chain.insert(next).second) return std::nullopt;
        const std::size_t take = std::min(all - record.size(), m_usable - 4);
        record.insert(record.end(), more->bytes + 4, more->bytes + 4 + take);
        next = more->number4(0);
    }
    if (next != 0) return std::nullopt;
    m_seen.insert(chain.begin(), chain.end());
    return record;
}

std::optional<StoredRow> PageReader::readCell(const Page& page, std::size_t at) {
    const Varint size = varintAt(page.bytes, at, m_usable);
    const Varint id = varintAt(page.bytes, at + size.size, m_usable);
    if (size.size == 0 || id.size == 0) return std::nullopt;
    const auto record = payload(page, at + size.size + id.size, size.value);
    if (!record) return std::nullopt;
    auto values = recordOf(*record);
    if (!values) return std::nullopt;
    return StoredRow{static_cast<std::int64_t>(id.value), *std::move(values)};
}

/// False where a part of the page cannot be read; what can is there all the same.
bool PageReader::readLeaf(const Page& page, std::vector<StoredRow>& rows) {
    if (page.kind() != tableLeaf || !page.listFits(m_usable)) return false;
    bool whole = true;
    for (std::size_t i = 0; i < page.cells(); ++i) {
        const std::size_t at = page.number2(page.list() + 2 * i);
        auto row = at < m_usable ? readCell(page, at) : std::nullopt;
        if (row)
            rows.push_back(*std::move(row));
        else
            whole = false;
    }
    return whole;
}

std::vector<StoredRow> PageReader::rowsOf(std::int64_t root, bool& whole) {
    std::vector<StoredRow> rows;
    whole = true;
    std::vector<std::int64_t> ahead{root};
    std::set<std::int64_t> walked;
    while (!ahead.empty()) {
        const std::int64_t number = ahead.back();
        ahead.pop_back();
        const auto at = page(number);
        bool good = at && walked.insert(number).second;
        if (good && at->kind() == tableInterior) {
            good = at->listFits(m_usable);
            if (good) {
                m_seen.insert(number);
                ahead.push_back(at->number4(at->head + 8));
                for (std::size_t i = at->cells(); i-- > 0;) {
                    const std::size_t cell = at->number2(at->list() + 2 * i);
                    if (cell + 4 <= m_usable)
                        ahead.push_back(at->number4(cell));
                    else
                        good = false;
                }
            }
        } else if (good) {
            good = readLeaf(*at, rows);
            if (at->kind() == tableLeaf) m_seen.insert(number);
        }
        if (!good) {
            whole = false;
            m_broken.insert(number);
        }
    }
    return rows;
}

std::vector<StoredTable> PageReader::tables() {
    std::vector<StoredTable> tables;
    if (m_pages == 0) return tables;
    bool whole = true;
    for (const StoredRow& row : rowsOf(1, whole)) {
        if (row.values.size() < 4) continue;
        const auto* type = std::get_if<std::string>(&row.values[0]);
        const auto* name = std::get_if<std::string>(&row.values[1]);
        const auto* root = std::get_if<std::int64_t>(&row.values[3]);
        if (type && name && root && *type == "table") tables.push_back({*name, *root});
    }
    return tables;
}

void PageReader::markFree() {
    if (m_pages == 0 || m_broken.contains(1)) return;
    std::int64_t trunk = number4(32);
    while (trunk != 0) {
        const auto at = page(trunk);
        if (!at || !m_seen.insert(trunk).second) return;
        const auto count = static_cast<std::size_t>(at->number4(4));
        for (std::size_t i = 0; i < count && 8 + 4 * i + 4 <= m_usable; ++i)
            m_seen.insert(at->number4(8 + 4 * i));
        trunk = at->number4(0);
    }
}

std::vector<LooseLeaf> PageReader::looseLeaves() {
    markFree();
    std::vector<LooseLeaf> leaves;
    for (std::int64_t number = 1; number <= m_pages; ++number) {
        const auto at = page(number);
        if (m_seen.contains(number) || at->kind() != tableLeaf) continue;
        LooseLeaf leaf{number, {}};
        (void)readLeaf(*at, leaf.rows);
        if (!leaf.rows.empty()) leaves.push_back(std::move(leaf));
    }
    return leaves;
}

}  // namespace combwright
