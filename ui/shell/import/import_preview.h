// The rows of a table as an import would take them: the verdict and its reason beside each, before
// anything is kept.
#pragma once

#include <QAbstractTableModel>

#include "core/exchange/import/import_plan.h"
#include "ui/look/tokens.h"

namespace combwright {

class ImportPreview : public QAbstractTableModel {
    Q_OBJECT

  public:
    ImportPreview(const Look& look, QObject* parent);
    void show(ImportPlan plan);
    const ImportPlan& plan() const { return m_plan; }

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant data(const QModelIndex& index, int role) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

  private:
    QString told(const PlannedRow& row) const;

    const Look& m_look;
    ImportPlan m_plan;
};

}  // namespace combwright
