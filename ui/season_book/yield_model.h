// The season's yields as a table: a yard, then its hives, all to one scale. The same rows are what
// the printed summary shows.
#pragma once

#include <QAbstractTableModel>
#include <vector>

#include "core/places/pages/season_book/harvest_blocks.h"
#include "core/places/pages/season_book/yield_by_blocks.h"
#include "ui/shell/session.h"

namespace combwright {

class YieldModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { HiveColumn, NowColumn, BeforeColumn, BarColumn, ColumnCount };
    enum class Row { Yard, Hive, NoHive, All };

    struct Line {
        Row row = Row::Hive;
        QString name;
        QString mark;  ///< of the footnotes that speak of it, "¹"
        std::optional<Mass> mass;
        How how = How::Unknown;
        bool noted = false;
        QString nothing;  ///< instead of a mass: "none", or "?" where nobody knows
        std::optional<Mass> before;
        How beforeHow = How::Unknown;
        bool beforeNoted = false;
        QString averages;
        QString brief;  ///< the same where there is less room
        QString words;  ///< how it is known, for readers
        RecordsOf of;
        QString named() const { return mark.isEmpty() ? name : name + QLatin1Char(' ') + mark; }
        bool strong() const { return row == Row::Yard || row == Row::All; }
    };

    explicit YieldModel(Session& session, QObject* parent = nullptr);
    /// By hive, or by yard alone.
    void show(const SeasonYield& season, bool hives = true);
    /// By colony or by queen, those that gave most first.
    void show(const YieldsBy& yields);
    const Line& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }
    /// Whether the year beside has any figure; a first season has none.
    bool hasBefore() const { return m_hasBefore; }
    const BarScale& scale() const { return m_scale; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    void begin(int year, int before);
    void addAll(Mass total, How how, const std::optional<Mass>& before, How beforeHow,
                const QString& averages, const QString& brief);

    Session& m_session;
    QString m_head;  ///< over the names
    int m_year = 0;
    int m_before = 0;
    bool m_anyWeighed = false;
    bool m_hasBefore = false;
    std::vector<Line> m_lines;
    BarScale m_scale;
};

}  // namespace combwright
