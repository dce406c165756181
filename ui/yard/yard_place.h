// Yard: how do my hives stand, and let me put in this afternoon. The board of stacks with the
// chosen hive's story beside it; S turns the same row of hives into the yard sheet, V and F into
// their health and their stores.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QStackedWidget>

#include "ui/shell/place.h"
#include "ui/yard/board_page.h"
#include "ui/yard/health_page.h"
#include "ui/yard/sheet_view.h"
#include "ui/yard/stores_page.h"
#include "ui/yard/yard_choice.h"

namespace combwright {

class YardPlace : public Place {
    Q_OBJECT

  public:
    explicit YardPlace(Session& session, QWidget* parent = nullptr);

    static QString wordInRail() { return tr("Yard"); }
    QString railWord() const override { return wordInRail(); }
    std::optional<DueWhere> worksAt() const override { return DueWhere::Yard; }
    std::vector<PlacePage> pagesToGo() const;
    GoTo at() const override;
    void goFor(const GoTo& where) override;
    bool resumes(const QString& sheet, const QString& row) const override;
    void resume(const QString& sheet, const QString& row) override;
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    void keepTyped() override;
    void settle() override { m_sheet->settle(); }
    QWidget* headControls() override { return m_controls; }

    /// Chooses yard and day, as the two fields of the head do.
    void choose(Id<Yard> yard, Day on);
    void openSheet();
    void closeSheet();
    bool sheetIsOpen() const;
    /// Health, stores or the board, by its key: V, F, Esc.
    void openPage(int key);
    HealthPage& health() { return *m_health; }
    StoresPage& storesPage() { return *m_stores; }
    SheetView& sheetView() { return *m_sheet; }
    YardBoard& board() { return m_board->board(); }
    BoardPage& boardPage() { return *m_board; }
    Day day() const { return m_on; }
    std::optional<Id<Yard>> yard() const { return m_yard; }

  protected:
    void readAnew() override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent*) override;

  private:
    void fillYards();
    void fitDay();
    void takeDay();
    void leaveDay();
    /// Into the first line of the sheet that was typed and not kept; whether there is one.
    bool editTyped();
    bool isPast() const;
    void backToToday();
    void addYard();
    void addHive();
    Day nextVisitDay() const;
    /// Every hive has its line of the chosen day.
    bool visitIsWritten() const;
    /// Health or stores where one of them is open, else none.
    WorkPage* workPage() const;
    std::vector<KeyHint> pageHints() const;
    PlaceHead workHead(PlaceHead head) const;
    std::vector<PrintSheet> yardSheets() const;
    std::vector<PrintSheet> healthSheets() const;
    void showPage();

    QWidget* m_controls;
    YardChoice* m_yards;
    QLineEdit* m_day;
    QPushButton* m_today;
    QStackedWidget* m_pages;
    QWidget* m_empty;
    QLabel* m_emptyText;
    BoardPage* m_board;
    SheetView* m_sheet;
    HealthPage* m_health;
    StoresPage* m_stores;
    std::optional<Id<Yard>> m_yard;
    Day m_on;
    YardSheet m_state;
};

}  // namespace combwright
