// A page of the season book beside the harvest: sections of the year's account in two columns, and
// the records behind the line one is at in place of the other column.
#pragma once

#include <QBoxLayout>
#include <QWidget>
#include <array>
#include <vector>

#include "core/places/pages/season_book/account_blocks.h"
#include "ui/season_book/account_view.h"
#include "ui/season_book/records_view.h"

namespace combwright {

class AccountPage : public QWidget {
    Q_OBJECT

  public:
    AccountPage(Session& session, AccountPart part, QWidget* parent);

    /// Reads the year anew; throws StorageError.
    void readAnew(int year);
    /// Side by side, or below each other.
    void arrange(bool wide);

    const std::vector<AccountView*>& sections() const { return m_views; }
    /// The section one is at, else the first that has lines.
    AccountView* current() const;
    RecordsView& records() const { return *m_records; }
    bool recordsShown() const { return m_opened != nullptr; }
    void closeRecords();

    std::vector<Explained> explained() const;
    /// What one is at: the records, or the section.
    Page blockPage() const;
    HarvestTable blockTable() const;
    /// For a file of it: "wax-2027".
    QString blockName() const;

  Q_SIGNALS:
    void headChanged();
    void moved(const QRect& row);  ///< within this page: where the line one went to stands

  protected:
    void focusInEvent(QFocusEvent*) override;

  private:
    void makeViews(std::size_t count);
    void openRecords(AccountView* view);
    void showRecords();
    int columnOf(const AccountView* view) const;

    Session& m_session;
    AccountPart m_part;
    int m_year = 0;
    QBoxLayout* m_across;
    std::array<QWidget*, 2> m_columns{};
    std::vector<AccountView*> m_views;
    RecordsView* m_records;
    AccountView* m_opened = nullptr;  ///< whose records are shown
    AccountView* m_last = nullptr;    ///< the one that had the focus last
};

}  // namespace combwright
