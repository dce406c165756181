#include "core/exchange/import/packed_lines.h"

namespace combwright {
namespace {

constexpr std::size_t linesOfBlock = 256;
/// Quick before small: the lines are so much alike that it packs them ten to one.
constexpr int packingLevel = 1;

}  // namespace

std::size_t PackedLines::add(std::string_view line) {
    m_loose.append(line).push_back('\n');
    if (++m_size % linesOfBlock == 0) {
        QByteArray packed = qCompress(reinterpret_cast<const uchar*>(m_loose.data()),
                                      static_cast<qsizetype>(m_loose.size()), packingLevel);
        // It was made as large as it might have become.
        packed.squeeze();
        m_blocks.push_back(std::move(packed));
        m_loose.clear();
    }
    return m_size - 1;
}

void PackedLines::Reader::open(std::size_t block) {
    m_block = block;
    m_text = block < m_lines->m_blocks.size() ? qUncompress(m_lines->m_blocks[block])
                                              : QByteArray::fromStdString(m_lines->m_loose);
    m_open.clear();
    const std::string_view text(m_text.constData(), static_cast<std::size_t>(m_text.size()));
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = text.find('\n', at);
        m_open.push_back(text.substr(at, end - at));
        at = end + 1;
    }
}

std::string_view PackedLines::Reader::at(std::size_t number) {
    if (number / linesOfBlock != m_block) open(number / linesOfBlock);
    return m_open[number % linesOfBlock];
}

}  // namespace combwright
