#include "ui/shell/import/import_preview.h"

#include "core/words/import_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

enum PreviewColumn { LineColumn, VerdictColumn, FirstCell };

}  // namespace

ImportPreview::ImportPreview(const Look& look, QObject* parent)
    : QAbstractTableModel(parent), m_look(look), m_plan(std::make_shared<const ImportPlan>()) {}

void ImportPreview::show(std::shared_ptr<const ImportPlan> plan) {
    beginResetModel();
    m_plan = std::move(plan);
    m_rowRead = -1;
    endResetModel();
}

int ImportPreview::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(m_plan->rows.size());
}

int ImportPreview::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : FirstCell + static_cast<int>(m_plan->columns.size());
}

const PlannedRow& ImportPreview::rowAt(int row) const {
    if (row != m_rowRead) m_row = m_plan->rows.shown(static_cast<std::size_t>(row));
    m_rowRead = row;
    return m_row;
}

QString ImportPreview::told(const PlannedRow& row) {
    const QString verdict = verdictText(key(row.verdict));
    if (row.why) return tr("%1: %2").arg(verdict, sentence(*row.why));
    QStringList odd;
    for (const std::string& each : row.odd) odd << fromUtf8(each);
    return odd.isEmpty() ? verdict : tr("%1: %2").arg(verdict, odd.join(QLatin1Char(' ')));
}

QVariant ImportPreview::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const PlannedRow& row = rowAt(index.row());
    if (role == Qt::ForegroundRole && index.column() == VerdictColumn) {
        if (row.verdict == RowVerdict::Refused) return m_look.tone(Tone::Bad);
        if (row.verdict == RowVerdict::Asked || !row.odd.empty()) return m_look.tone(Tone::Warn);
        if (row.verdict != RowVerdict::WillBeAdded) return m_look.tone(Tone::Muted);
    }
    if (role == Qt::ToolTipRole && index.column() == VerdictColumn) return told(row);
    if (role != Qt::DisplayRole) return {};
    if (index.column() == LineColumn) return QString::number(row.line);
    if (index.column() == VerdictColumn) return told(row);
    const auto cell = static_cast<std::size_t>(index.column() - FirstCell);
    return cell < row.cells.size() ? fromUtf8(row.cells[cell]) : QString();
}

QVariant ImportPreview::headerData(int section, Qt::Orientation orientation, int role) const {
    if (role != Qt::DisplayRole || orientation != Qt::Horizontal) return {};
    if (section == LineColumn) return tr("line");
    if (section == VerdictColumn) return tr("what becomes of it");
    const auto column = static_cast<std::size_t>(section - FirstCell);
    return column < m_plan->columns.size() ? fromUtf8(m_plan->columns[column].heading) : QString();
}

}  // namespace combwright
