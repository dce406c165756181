// The pages of the honey room as a row of words beside each other: the one that is open in ink over
// the accent, the others muted. A word is reached by Alt and its first letter from anywhere in the
// room, so that the line of the number pad keeps its keys.
#pragma once

#include <QAbstractButton>
#include <QHBoxLayout>
#include <vector>

#include "ui/shell/session.h"

namespace combwright {

class PageWord : public QAbstractButton {
    Q_OBJECT

  public:
    PageWord(Session& session, const QString& word, QWidget* parent);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
};

class PageWords : public QWidget {
    Q_OBJECT

  public:
    PageWords(Session& session, QWidget* parent);
    void add(const QString& word);
    void choose(int index);
    int count() const { return static_cast<int>(m_words.size()); }

  Q_SIGNALS:
    void chosen(int index);  ///< by the person

  private:
    Session& m_session;
    QHBoxLayout* m_row;
    std::vector<PageWord*> m_words;
};

}  // namespace combwright
