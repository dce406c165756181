// The rows of a table as an import would take them: the verdict and its reason beside each, before
// anything is kept.
#pragma once

#include <QAbstractTableModel>
#include <memory>

#include "core/exchange/import/import_plan.h"
#include "ui/look/tokens.h"

namespace combwright {

class ImportPreview : public QAbstractTableModel {
    Q_OBJECT

  public:
    ImportPreview(const Look& look, QObject* parent);
    void show(std::shared_ptr<const ImportPlan> plan);
    const ImportPlan& plan() const { return *m_plan; }
    /// The very plan that is shown, for who carries it out.
    const std::shared_ptr<const ImportPlan>& shownPlan() const { return m_plan; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    static QString told(const PlannedRow& row);
    const PlannedRow& rowAt(int row) const;

    const Look& m_look;
    std::shared_ptr<const ImportPlan> m_plan;
    mutable int m_rowRead = -1;  ///< a view asks for all cells of a row, one after the other
    mutable PlannedRow m_row;
};

}  // namespace combwright
