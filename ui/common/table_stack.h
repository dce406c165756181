// Several tables of words below each other, each under its head, that scroll as one: by themselves
// where there is room, with the page where there is not.
#pragma once

#include <QLabel>
#include <QScrollArea>
#include <QVBoxLayout>
#include <vector>

#include "ui/common/words_table.h"

namespace combwright {

class TableStack : public QScrollArea {
    Q_OBJECT

  public:
    TableStack(const Look& look, QWidget* parent);

    /// Below those that are there; Tab comes to it after them. Owned by the column from then on.
    void add(WordsTable* table);
    /// What stands over a table; a table without rows is not shown, its head says why.
    void setHead(const WordsTable* table, const QString& text);
    void setLook(const Look& look);
    WordsTable* first() const { return m_parts.empty() ? nullptr : m_parts.front().table; }
    WordsTable* last() const { return m_parts.empty() ? nullptr : m_parts.back().table; }
    /// Height of all heads and tables, px.
    int fullHeight() const;

  Q_SIGNALS:
    void fitted();
    /// The keyboard went to a row; where that is within the column.
    void followed(const QRect& row);

  private:
    struct Part {
        QLabel* head;
        WordsTable* table;
    };
    void fit();
    void follow(WordsTable* table);

    Look m_look;
    QVBoxLayout* m_column;
    std::vector<Part> m_parts;
};

}  // namespace combwright
