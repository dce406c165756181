// Lines of `play` by the hundred thousand, packed: a line is five times as long as the row of the
// table it came from, and nearly the same as the one before it.
#pragma once

#include <QByteArray>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace combwright {

class PackedLines {
  public:
    /// Its number, from 0. A line holds no line end.
    std::size_t add(std::string_view line);
    std::size_t size() const { return m_size; }

    /// Reads lines in any order, and quickly in theirs. The lines must stay and not be added to.
    class Reader {
      public:
        explicit Reader(const PackedLines& lines) : m_lines(&lines) {}
        /// Good until the next is asked for.
        std::string_view at(std::size_t number);

      private:
        void open(std::size_t block);

        const PackedLines* m_lines;
        std::size_t m_block = static_cast<std::size_t>(-1);
        QByteArray m_text;
        std::vector<std::string_view> m_open;
    };

  private:
    std::vector<QByteArray> m_blocks;
    std::string m_loose;  ///< behind the blocks, not packed yet
    std::size_t m_size = 0;
};

}  // namespace combwright
