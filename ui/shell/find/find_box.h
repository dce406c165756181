// The box itself: a field to type in and what was found below it, in groups. The keyboard stays in
// the field while the arrows go through the lines; Enter goes there, Escape back to where one was.
#pragma once

#include <QFrame>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>

#include "ui/look/tokens.h"
#include "ui/shell/find/find_line.h"

namespace combwright {

class FindBox : public QFrame {
    Q_OBJECT

  public:
    FindBox(const Look& look, QWidget* from);

    /// Where it may lie on the screen; it is as high as what it shows, at most so high.
    void setRoom(const QRect& room);
    void setLines(const FindLines& lines, const QString& note);
    QString text() const { return m_typed->text(); }
    /// Into the field, with all of it chosen.
    void begin();
    /// The line Enter would go to; nothing where none was found.
    const FindLine* current() const;
    const FindLines& lines() const { return m_lines; }

  Q_SIGNALS:
    void typed();
    void chosen(const combwright::FindLine& line);

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void paintEvent(QPaintEvent*) override;

  private:
    void step(int by, bool group);
    void choose(int row);
    void fit();
    /// What a reader of the screen says of the line one is at.
    void sayCurrent();

    Look m_look;
    QRect m_room;
    FindLines m_lines;
    QLineEdit* m_typed;
    QListWidget* m_list;
    QLabel* m_note;
    QLabel* m_keys;
};

}  // namespace combwright
