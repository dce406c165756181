// What stands in the window while no season is open: what to do first, with the buttons that do
// it, the seasons opened lately, and why the last one asked for could not be opened.
#pragma once

#include <QBoxLayout>
#include <QLabel>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>
#include <vector>

#include "ui/shell/session.h"

namespace combwright {

class FileWays;

/// The seasons opened lately. Enter opens, Delete takes one out of the list.
class RecentList : public QListWidget {
    Q_OBJECT

  public:
    using QListWidget::QListWidget;
    QString currentPath() const;
    QSize sizeHint() const override;

  Q_SIGNALS:
    void removeAsked(const QString& path);

  protected:
    void keyPressEvent(QKeyEvent* event) override;
};

class StartPage : public QWidget {
    Q_OBJECT

  public:
    StartPage(Session& session, FileWays& ways, QWidget* parent = nullptr);
    /// What a season file is, how one begins and how a copy is taken up again.
    static QString help();
    /// Puts the cursor where one begins.
    void begin();

  Q_SIGNALS:
    void walkAsked();  ///< through the sample season

  protected:
    void resizeEvent(QResizeEvent* event) override;

  private:
    QWidget* makeDoors();
    QWidget* makeLately();
    QWidget* makeTrouble();
    QLabel* label(QWidget* parent, const QString& text, TextSize size, bool bold, Tone tone);
    void applyLook();
    void fill();
    void arrange();

    struct Styled {
        QLabel* label;
        TextSize size;
        bool bold;
        Tone tone;
    };

    Session& m_session;
    FileWays& m_ways;
    std::vector<Styled> m_labels;
    QScrollArea* m_scroll;
    QWidget* m_page;
    QWidget* m_trouble;
    QLabel* m_troubleText;
    QPushButton* m_troubleCopies;
    QPushButton* m_troubleSalvage;
    QBoxLayout* m_columns;
    QLabel* m_picture;
    QPushButton* m_make;
    QWidget* m_lately;
    QWidget* m_howItGoes;
    RecentList* m_list;
};

}  // namespace combwright
