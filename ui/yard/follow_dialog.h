// Follow a thing of a hive through the years: its boxes, its marked combs and its queens in a list,
// and beside it the way of the chosen one in sentences with their days.
#pragma once

#include <QDialog>
#include <QListWidget>
#include <QTextBrowser>
#include <vector>

#include "core/places/yard/followed.h"
#include "core/places/yard/yard_sheet.h"
#include "ui/shell/session.h"

namespace combwright {

class FollowDialog : public QDialog {
    Q_OBJECT

  public:
    /// Of the hive in that row, with what stood and lived in it on the day.
    FollowDialog(QWidget* parent, Session& session, const YardSheetRow& row, Day on);

    QListWidget& things() { return *m_list; }
    /// The way of the chosen thing, as it is read.
    QString told() const { return m_way->toPlainText(); }
    /// Puts the cursor on a box, where it is listed.
    void choose(Id<Box> box);

  private:
    void addBoxes(const YardSheetRow& row);
    void addQueens(const YardSheetRow& row);
    void tell(int index);

    Session& m_session;
    Day m_on;
    struct Thing {
        Followed::Thing what;
        std::int64_t id;
    };
    std::vector<Thing> m_things;
    QListWidget* m_list;
    QTextBrowser* m_way;
};

/// Shows it until it is closed.
void showFollowed(QWidget* parent, Session& session, const YardSheetRow& row,
                  const std::optional<Id<Box>>& box, Day on);

}  // namespace combwright
