// Season book: what did the year bring. A page, not a dashboard: the year in a sentence, the
// timeline, who gave what, what was reckoned and got; each prints, leaves as a file, and opens the
// records it is made of.
#pragma once

#include <QBoxLayout>
#include <QComboBox>
#include <QLabel>
#include <QPointer>
#include <QScrollArea>
#include <QStackedWidget>

#include "core/places/season_book/colonies_of_year.h"
#include "ui/season_book/account_page.h"
#include "ui/season_book/book_window.h"
#include "ui/season_book/reckoned_view.h"
#include "ui/season_book/records_view.h"
#include "ui/season_book/timeline.h"
#include "ui/season_book/year_charts.h"
#include "ui/season_book/yield_table.h"
#include "ui/shell/page_words.h"
#include "ui/shell/place.h"

namespace combwright {

class SeasonBookPlace : public Place {
    Q_OBJECT

  public:
    /// To compare: in a window of its own, nothing is taken for the next season.
    enum class Use { Whole, ToCompare };
    explicit SeasonBookPlace(Session& session, QWidget* parent = nullptr, Use use = Use::Whole);

    static QString wordInRail() { return tr("Season book"); }
    QString railWord() const override { return wordInRail(); }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override { Q_EMIT printAsked(); }
    QWidget* headControls() override { return m_controls; }
    QWidget* pageWords() override { return m_words; }

    enum class BookPage { Harvest, Colonies, Goods, Years };
    BookPage page() const { return m_page; }
    void openPage(BookPage page);
    /// One of the pages beside the harvest.
    AccountPage& account(BookPage page) const {
        return *m_accounts[static_cast<std::size_t>(page) - 1];
    }
    /// What the yields are told by.
    QComboBox& by() { return *m_byBox; }
    /// Shows a year, whatever was shown before.
    void openYear(int year);
    /// The year beside in a window of its own; the one that is open already comes forward.
    void openBeside();
    BookWindow* besideWindow() const { return m_besideWindow; }

    Timeline& timeline() { return *m_timeline; }
    YearCharts& yearCharts() { return *m_yearCharts; }
    YieldTable& yields() { return *m_table; }
    ReckonedView& reckoned() { return *m_reckonedView; }
    RecordsView& records() { return *m_recordsView; }
    QComboBox& years() { return *m_years; }
    QComboBox& besides() { return *m_besides; }
    int year() const { return m_year; }
    QString sentence() const { return m_sentence->text(); }

    /// What the person is at: each prints and leaves as a file by itself.
    enum class BookBlock { Timeline, Year, Yields, Reckoned, Records, Account };
    BookBlock currentBlock() const;
    Page blockPage() const;
    /// As CSV, SVG or PNG by the ending of the path; says whether it is there.
    bool exportTo(const QString& path);

  Q_SIGNALS:
    void leaveAsked();  ///< Esc where there is nothing left to close

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    void addKeys();
    void buildPages();
    void turnBy(int step);
    void showPage();
    void showYields();
    AccountPage* accountShown() const;
    void leave();
    void fillYears();
    void arrange();
    void showNotes();
    void openRecords(const RecordsOf& of, QWidget* from);
    void closeRecords();
    void askWhereTo();
    QString yieldsName() const;
    void printBlock();
    HarvestTable blockTable() const;
    const SeasonYield& seasonOfRun(Id<Extraction> run) const;
    bool recordsShown() const { return m_leftStack->currentWidget() == m_recordsView; }
    bool anyHoney() const;
    /// Whether what the person is at has anything to print or export.
    bool canLeave() const;
    /// The timeline, or why there is none.
    void showTimeline(bool any);

    QWidget* m_controls;
    QComboBox* m_years;
    QComboBox* m_besides;
    QLabel* m_besideWord;
    Use m_use = Use::Whole;
    PageWords* m_words;
    BookPage m_page = BookPage::Harvest;
    QScrollArea* m_scroll;
    QLabel* m_sentence;
    QLabel* m_first;  ///< what to do in a year without honey
    QWidget* m_blocks;
    QBoxLayout* m_across;
    QStackedWidget* m_leftStack;
    QLabel* m_noTimeline;  ///< what goes there, where there is no …
    QLabel* m_noReckoned;
    Timeline* m_timeline;
    YearCharts* m_yearCharts;
    ReckonedView* m_reckonedView;
    RecordsView* m_recordsView;
    YieldModel m_model;
    YieldTable* m_table;
    QLabel* m_notes;
    QWidget* m_byRow;
    QLabel* m_byWord;
    QComboBox* m_byBox;
    YieldBy m_by = YieldBy::Hive;
    std::vector<AccountPage*> m_accounts;  ///< the pages after the first
    QPointer<BookWindow> m_besideWindow;
    QWidget* m_cameFrom = nullptr;
    bool m_wide = true;
    int m_year = 0;
    int m_beside = 0;
    SeasonYield m_season;
    std::vector<SeasonYield> m_before;
    YieldsBy m_yieldsBy;  ///< of colonies or queens, where that is what one asks by
    ColoniesOfYear m_colonies;
};

}  // namespace combwright
