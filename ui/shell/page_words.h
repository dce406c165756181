// The pages of a place as a row of words beside each other: the one that is open in ink over the
// accent, the others muted. A word is reached by Alt and its first letter from anywhere in the
// place, so that a line one types into keeps its keys.
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
    /// `named` is what a reader calls the row: "Pages of the honey room".
    PageWords(Session& session, const QString& named, QWidget* parent);
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
