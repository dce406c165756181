// A table whose cells are words: they wrap and are never cut off, with a muted line below them and
// a raised letter behind a figure. Where the window is narrow or the type large, the cells of a row
// follow each other in one running line. Rows may be ticked by Space.
#pragma once

#include <QTableWidget>
#include <cstdint>
#include <set>
#include <vector>

#include "ui/common/flowing_words.h"

namespace combwright {

struct WordsCell {
    QString text;
    QString note = {};  ///< muted, below
    Tone tone = Tone::Ink;
    bool strong = false;
    char how = 0;  ///< raised behind the text: how its figure is known
};

struct WordsRow {
    std::int64_t key = 0;  ///< what the row is about; each once
    QString mark;          ///< what it is called, in the first column
    std::vector<WordsCell> cells;
    QString note = {};  ///< muted, below the mark
};

struct WordsColumn {
    QString head;
    double share = 1;    ///< of what the mark leaves
    bool right = false;  ///< figures that end on one edge
};

/// What stands over the marks, and over the one column of a narrow table.
struct WordsHeads {
    QString mark;
    QString narrow;
};

enum class WordsTicks { None, BySpace };

class WordsTable : public QTableWidget {
    Q_OBJECT

  public:
    WordsTable(const Look& look, WordsHeads heads, std::vector<WordsColumn> columns,
               WordsTicks ticks, QWidget* parent);

    void setLook(const Look& look);
    const Look& look() const { return m_look; }
    /// Ticks and the current row stay with what they are about.
    void showRows(std::vector<WordsRow> rows);
    const std::vector<WordsRow>& wordsRows() const { return m_rows; }
    const WordsRow* currentWords() const;
    void chooseKey(std::int64_t key);
    bool isTicked(std::int64_t key) const { return m_ticked.contains(key); }
    void tickKey(std::int64_t key, bool on);
    /// So narrow that cells follow each other in one.
    bool isNarrow() const { return m_narrow; }
    /// Height of all rows and the head, px.
    int fullHeight() const;
    /// Figures that end on one edge stand there.
    bool isRight(int column) const;
    /// What is painted in a cell.
    FlowingWords wordsOf(int row, int column) const;

  Q_SIGNALS:
    void rowActivated();  ///< by Enter or a double click
    void fitted();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void fill();
    void fit();
    int markWidth() const;
    void fitColumns(int room);
    bool ticks() const { return m_ticks == WordsTicks::BySpace; }
    FlowingWords wordsInOne(const WordsRow& row) const;
    QString spokenRow(const WordsRow& row) const;

    Look m_look;
    WordsHeads m_heads;
    std::vector<WordsColumn> m_columns;
    WordsTicks m_ticks;
    std::vector<WordsRow> m_rows;
    std::set<std::int64_t> m_ticked;
    bool m_narrow = false;  ///< cells stand below each other
    bool m_filling = false;
};

}  // namespace combwright
