// The season's yields as a table: a yard, then its hives, with bars to one scale and a stroke for
// the year before. The same rows are what the printed summary shows.
#pragma once

#include <QAbstractTableModel>
#include <QStyledItemDelegate>
#include <vector>

#include "core/places/run_balance.h"
#include "ui/shell/session.h"

namespace combwright {

class YieldModel : public QAbstractTableModel {
    Q_OBJECT

  public:
    enum Column { HiveColumn, NowColumn, BeforeColumn, BarColumn, HowColumn, ColumnCount };

    struct Line {
        QString name;
        bool yard = false;
        std::optional<Mass> mass;
        How how = How::Unknown;
        std::optional<Mass> before;
        QString averages;
        bool noHive = false;
        QString howWords;
    };

    explicit YieldModel(Session& session, QObject* parent = nullptr);
    void show(const SeasonYield& season);
    const Line& line(int row) const { return m_lines[static_cast<std::size_t>(row)]; }
    double scaleGrams() const { return m_scale; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    Session& m_session;
    int m_year = 0;
    std::vector<Line> m_lines;
    double m_scale = 1000;
};

/// Draws the bar of a row; solid where weighed, hatched by difference or by eye, dashed without a
/// hive.
class YieldBarDelegate : public QStyledItemDelegate {
  public:
    YieldBarDelegate(const YieldModel& model, Session& session, QObject* parent)
        : QStyledItemDelegate(parent), m_model(model), m_session(session) {}
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override;

  private:
    const YieldModel& m_model;
    Session& m_session;
};

}  // namespace combwright
