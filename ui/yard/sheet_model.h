// The yard sheet as a table: a row for all, then a row a hive. Left of the rule what was last seen,
// in grey and never stored again; right of it what is typed, read back in words, and what to mind.
#pragma once

#include <QAbstractTableModel>
#include <QTimer>
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include "core/places/yard/yard_sheet.h"
#include "ui/shell/session.h"
#include "ui/shell/sheet_drafts.h"

namespace combwright {

class SheetModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column {
        HiveColumn,
        OpenedColumn,
        EggsColumn,
        BroodColumn,
        StoresColumn,
        SupersBeforeColumn,
        LineColumn,
        ReadBackColumn,
        SupersColumn,
        MindColumn,
        ColumnCount
    };

    /// Of the hive's column: the colour its marked queen wears, by its word; empty for none.
    static constexpr int queenColourRole = Qt::UserRole + 1;

    explicit SheetModel(Session& session, QObject* parent = nullptr);

    void show(Id<Yard> yard, Day on);
    /// Reads the sheet anew; while a row is being kept only that one, and the rest when the hand
    /// rests.
    void reload();
    /// Reads now what was left for later.
    void settle();
    const YardSheet& sheet() const { return m_sheet; }
    /// A row's line is being kept just now.
    bool isKeeping() const { return m_keeping.has_value(); }

    /// What is being typed in a row; read back at once, kept only when the row is left.
    void setTyping(int row, const QString& text);
    /// Keeps what was typed in a row. False when it was refused: the text stays as typed.
    bool keep(int row);
    /// Keeps every row that is still being typed.
    bool keepAll();
    QString lineOf(int row) const;
    /// What was typed in a row before a crash and never kept; empty when nothing.
    QString draftOf(int row) const;
    /// That said in words, with the keys that take and drop it; empty when nothing.
    QString offerOf(int row) const;
    /// Puts that into the row as if it were typed; false where there is none.
    bool takeDraft(int row);
    /// Forgets what was typed or offered in a row; what was kept stands there again.
    void discard(int row);
    /// The row's line said back in words, as it is typed.
    QString saidBack(int row) const;
    /// Why lines written on an earlier day are changed; kept beside the old line. May be empty.
    void setWhy(const QString& why) { m_why = why.trimmed(); }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

  Q_SIGNALS:
    void sheetChanged();

  private:
    /// What a cell shows: its words, their tone, whether they are older than the last look.
    using ShownRow = std::vector<std::tuple<QString, Tone, bool>>;
    std::vector<ShownRow> shownRows() const;
    void rowChanged(int row);
    void reloadAll();
    bool reloadRow(int row);
    /// "7", or "7 · 20 Aug" where the last look did not say.
    QString withOwnDay(const QString& value, Day on, const YardSheetRow& row) const;
    bool isOlder(const QModelIndex& index) const;
    QString textOf(const QModelIndex& index) const;
    QString mindTextOf(const YardSheetRow& row) const;
    QString queenColourOf(int row) const;
    Tone toneOf(const QModelIndex& index) const;
    const YardSheetRow& rowAt(int row) const {
        return m_sheet.rows[static_cast<std::size_t>(row - 1)];
    }
    SheetLine typedLine(int row) const;
    QString keptLineOf(int row) const;
    QString draftKey(int row) const;

    Session& m_session;
    YardSheet m_sheet;
    Id<Yard> m_yard;
    Day m_on;
    QString m_why;
    std::map<int, QString> m_typing;
    SheetDrafts m_drafts;
    int m_reloads = 0;
    std::optional<int> m_keeping;                      ///< the row whose line is being kept
    QTimer m_restLater;                                ///< what a kept line did to other hives
    mutable std::pair<std::string, QString> m_saidOf;  ///< the lines said back last, and how
    mutable QString m_said;
};

}  // namespace combwright
