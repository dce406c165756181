// Wet boxes on their way home: which hive is proposed for which box, to be changed row by row and
// given back in one step; which boxes are out and come off again; and stores left in comb.
#pragma once

#include <QCheckBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QTableWidget>
#include <vector>

#include "core/places/pull/wets_home.h"
#include "ui/shell/session.h"

namespace combwright {

class WetsDialog : public QDialog {
    Q_OBJECT

  public:
    WetsDialog(Session& session, Day on, QWidget* parent = nullptr);

  Q_SIGNALS:
    void printAsked();

  protected:
    bool eventFilter(QObject* watched, QEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;

  private:
    struct Way {
        Id<Box> box;
        QString name;  ///< as it is typed: its mark or "#12"
        QCheckBox* tick;
        QLineEdit* hive;
    };
    struct Out {
        QString name;
        QCheckBox* tick;
    };
    QTableWidget* table(const char* name, const QString& says, const QStringList& heads);
    QCheckBox* tickIn(QTableWidget* table, int line, const QString& text, const char* name);
    void fill();
    void addWay(const WetBox& box, bool goes);
    void fillOut(const WetsHome& home);
    void fillLeftOver(const WetsHome& home);
    void orderTabs();
    /// Each table as high as its rows: the page scrolls, not the tables in it.
    void fitTables();
    void beginAnew();
    void giveBack();
    void takeOff();
    void say(const QString& text, bool bad);

    Session& m_session;
    Day m_on;
    QScrollArea* m_page;
    QLabel* m_sum;
    QTableWidget* m_ways;
    QTableWidget* m_outs;
    QLabel* m_outHead;
    QTableWidget* m_left;
    QLabel* m_leftHead;
    QLineEdit* m_stack;
    QLabel* m_stackLabel;
    QLabel* m_reason;
    QPushButton* m_give;
    QPushButton* m_off;
    QPushButton* m_print;
    QPushButton* m_close;
    std::vector<Way> m_wayRows;
    std::vector<Out> m_outRows;
};

}  // namespace combwright
