// A day behind the table: the fairs, the box of the chosen one, packed in the evening and counted
// at night, and below what a year brought by kind, place and month.
#pragma once

#include "core/places/goods/fair.h"
#include "core/places/goods/sales.h"
#include "ui/honey_room/desk_page.h"

namespace combwright {

class FairPage : public DeskPage {
    Q_OBJECT

  public:
    explicit FairPage(Session& session, QWidget* parent = nullptr);

    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    void readAnew() override;

    WordsTable& fairsTable() { return *m_fairs; }
    WordsTable& box() { return *m_box; }
    WordsTable& year() { return *m_year; }
    const std::optional<FairSheet>& sheet() const { return m_sheet; }

  protected:
    void fillCard() override;

  private:
    Day today() const { return session().clock().today(); }
    std::optional<Id<Fair>> chosen() const;
    void showFair();
    void fillFairs();
    void fillBox();
    void fillYear();
    QString muted(const QString& text) const { return said(text, Tone::Muted); }
    void pack();
    void countHome();
    void otherYear();
    void printSheetNamed(const QString& id);

    std::vector<FairSheet> m_all;  ///< the newest first
    std::optional<FairSheet> m_sheet;
    Sales m_sales;
    int m_shownYear = 0;  ///< 0: the day's own
    std::optional<Id<Fair>> m_meant;
    WordsTable* m_fairs;
    WordsTable* m_box;
    WordsTable* m_year;
};

}  // namespace combwright
