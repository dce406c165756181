// F1: a page of help for every place, the keys there are and what is new, offline. It opens where
// one is; a word is found in a page, and the pages that have it too are named.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QListWidget>
#include <QPushButton>
#include <QScrollArea>
#include <QTextDocument>
#include <vector>

#include "ui/shell/help/help_picture.h"
#include "ui/shell/main_window.h"

namespace combwright {

class HelpWindow : public QDialog {
    Q_OBJECT

  public:
    /// What the places say now. Opens at the page of the place in front; without a season at what
    /// a season file is.
    HelpWindow(MainWindow& window, Session& session);
    ~HelpWindow() override;
    /// It was closed to walk through the sample season.
    bool walkIsAsked() const { return m_walkIsAsked; }

  protected:
    /// Pages of the text turn from the list and the search line too.
    bool eventFilter(QObject* watched, QEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct HelpPage {
        QString word;
        QString text;  ///< rich
        bool keys = false;
        const Place* place = nullptr;  ///< whose picture stands above it
    };

    void gather();
    void build();
    void showPage(int row);
    void showPicture();
    /// From where the last was found, or anew from the top.
    void find(bool anew, bool back = false);
    void tellFound(const QString& text);
    void print();

    MainWindow& m_window;
    Session& m_session;
    std::vector<HelpPage> m_pages;
    QListWidget* m_list = nullptr;
    QLineEdit* m_find = nullptr;
    QLabel* m_told = nullptr;
    HelpPicture* m_picture = nullptr;
    QLabel* m_text = nullptr;
    QScrollArea* m_scroll = nullptr;
    QPushButton* m_print = nullptr;
    bool m_walkIsAsked = false;
    QTextDocument m_document;  ///< the page again, to find in
    int m_from = -1;           ///< where what was found begins; -1: nothing was
    int m_to = 0;
};

/// Until it is closed; then the keyboard is where it was.
void showHelp(MainWindow& window, Session& session);

}  // namespace combwright
