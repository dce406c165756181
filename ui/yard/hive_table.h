// The hives of a yard as a table to tick in: a row a hive in walking order, words that wrap and are
// never cut off, a muted line below them. One treats and feeds many hives at once, so rows are
// ticked by Space; where the window is narrow or the type large a hive's cells follow each other in
// one running line.
#pragma once

#include <QStyledItemDelegate>
#include <QTableWidget>
#include <functional>
#include <set>
#include <vector>

#include "core/model/yard/yard.h"
#include "ui/common/flowing_words.h"
#include "ui/shell/session.h"

namespace combwright {

struct HiveCell {
    QString text;
    QString note = {};  ///< muted, below
    Tone tone = Tone::Ink;
    bool strong = false;
    char how = 0;  ///< raised behind the text: how its figure is known
};

struct HiveTableRow {
    Id<Hive> hive;
    QString mark;
    std::vector<HiveCell> cells;
};

struct HiveColumn {
    QString head;
    double share = 1;  ///< of what the mark leaves
};

class HiveTable : public QTableWidget {
    Q_OBJECT

  public:
    HiveTable(Session& session, std::vector<HiveColumn> columns, QWidget* parent);

    /// Ticks and the current row stay with their hives.
    void show(std::vector<HiveTableRow> rows);
    const std::vector<HiveTableRow>& rows() const { return m_rows; }
    /// Ticked, in walking order.
    std::vector<const HiveTableRow*> ticked() const;
    void tick(Id<Hive> hive, bool on);
    /// All, or none where all are.
    void tickAll();
    const HiveTableRow* current() const;
    void choose(Id<Hive> hive);
    /// So narrow that cells follow each other in one.
    bool isNarrow() const { return m_narrow; }
    /// Height of all rows and the head, px.
    int fullHeight() const;

  Q_SIGNALS:
    void hiveActivated();
    void fitted();

  protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;

  private:
    void fill();
    void fit();
    void sizes();
    FlowingWords wordsOf(int row, int column) const;
    FlowingWords wordsInOne(const HiveTableRow& row) const;
    QString spokenRow(const HiveTableRow& row) const;

    Session& m_session;
    std::vector<HiveColumn> m_columns;
    std::vector<HiveTableRow> m_rows;
    std::set<std::int64_t> m_ticked;
    bool m_narrow = false;  ///< cells stand below each other
    bool m_filling = false;
};

/// Words that wrap, a raised letter behind a figure, muted words in smaller type below or behind.
class HiveCellDelegate : public QStyledItemDelegate {
  public:
    HiveCellDelegate(Session& session, QObject* parent)
        : QStyledItemDelegate(parent), m_session(session) {}
    /// As they are painted in that cell; set by the table.
    using WordsOf = std::function<FlowingWords(int row, int column)>;
    void setWords(WordsOf words) { m_words = std::move(words); }
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;
    int heightFor(const FlowingWords& words, int width) const;

  private:
    Session& m_session;
    WordsOf m_words;
};

}  // namespace combwright
