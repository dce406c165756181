// Reckoned and got: a line a rate, what it was reckoned with and what own runs gave, and the button
// that takes the new value for the next season. Nothing is taken by itself.
#pragma once

#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <vector>

#include "core/places/season_book/reckoned_got.h"
#include "ui/shell/session.h"

namespace combwright {

class ReckonedView : public QWidget {
    Q_OBJECT

  public:
    explicit ReckonedView(Session& session, QWidget* parent = nullptr);
    void show(const ReckonedAndGot& reckoned);
    /// Nothing is taken here: its buttons go.
    void readOnly() { m_readOnly = true; }
    const ReckonedAndGot& reckoned() const { return m_reckoned; }
    /// The line whose button has the focus.
    std::optional<std::size_t> currentLine() const;
    QPushButton* button(std::size_t line) const { return m_lines[line].take; }
    QString note() const { return m_note->text(); }

    /// Takes what a line offers, from the next season on; says so, also where it is taken already.
    void take(std::size_t line);

  private:
    struct LineWidgets {
        QLabel* name;
        QLabel* reckoned;
        QLabel* got;
        QLabel* runs;
        QPushButton* take;
    };
    void resizeEvent(QResizeEvent* event) override;
    /// Beside each other, or name, figures and button below each other where it is narrow.
    void arrange();
    LineWidgets makeLine(std::size_t line);
    void fillLine(const LineWidgets& widgets, const GotLine& line, std::size_t number);
    void sizes();

    Session& m_session;
    ReckonedAndGot m_reckoned;
    QGridLayout* m_grid;
    QLabel* m_title;
    std::vector<QLabel*> m_heads;
    bool m_narrow = false;
    bool m_readOnly = false;
    std::vector<LineWidgets> m_lines;
    QLabel* m_note;
};

}  // namespace combwright
