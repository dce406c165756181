// What of the board is shown: one compact row of choices over it, how much that leaves, one key
// that comes to them and one that shows everything again.
#pragma once

#include <QWidget>

#include "core/places/storeroom/frame_board.h"
#include "ui/look/tokens.h"

class QAction;
class QCheckBox;
class QComboBox;
class QLabel;
class QPushButton;

namespace combwright {

class BoardFilterRow : public QWidget {
    Q_OBJECT

  public:
    explicit BoardFilterRow(const Look& look, QWidget* parent = nullptr);

    void setLook(const Look& look);
    /// The choices of a board, set as its filter is.
    void setBoard(const FrameBoard& board);
    const BoardFilter& filter() const { return m_filter; }
    /// Shows everything again; the group stays.
    void clear();
    QString shownLine() const;
    /// The key that comes here from the board, as it is written on keys.
    QString enterKey() const;

  Q_SIGNALS:
    void filterAsked(const combwright::BoardFilter& filter);

  private:
    QAction* addKey(const QString& name, const QKeySequence& key);
    void enter();
    QComboBox* addChoice(const char* name, const QString& label);
    void fill(QComboBox* combo, const QString& all, const QStringList& choices, int chosen);
    void ask();

    Look m_look;
    BoardFilter m_filter;
    std::vector<FrameKind> m_kinds;
    std::vector<FrameState> m_states;
    std::vector<Verdict> m_verdicts;
    std::vector<std::int64_t> m_years;
    std::vector<BoardPlace> m_places;
    std::vector<CameOff> m_hives;
    QComboBox* m_kind;
    QComboBox* m_state;
    QComboBox* m_verdict;
    QComboBox* m_year;
    QComboBox* m_place;
    QComboBox* m_hive;
    QCheckBox* m_notFrozen;
    QCheckBox* m_notReviewed;
    QCheckBox* m_onHives;
    QComboBox* m_group;
    QLabel* m_showKey;
    QLabel* m_shown;
    QAction* m_enter;
    QAction* m_enterGroup;
    QAction* m_clear;
    QPushButton* m_clearButton;
    bool m_filling = false;
};

}  // namespace combwright
