#include "ui/wax_bench/wax_records_dialog.h"

#include <QCoreApplication>
#include <QDialog>
#include <QDialogButtonBox>
#include <QHeaderView>
#include <QLabel>
#include <QTableWidget>
#include <QVBoxLayout>

#include "core/words/words.h"

namespace combwright {
namespace {

QString recordsWord(const char* text) {
    return QCoreApplication::translate("wax_records_dialog", text);
}

}  // namespace

void showWaxRecords(QWidget* parent, const Look& look, const std::vector<WaxRecordLine>& lines) {
    QDialog dialog(parent);
    dialog.setObjectName(QStringLiteral("wax_records"));
    dialog.setWindowTitle(recordsWord("Records"));
    auto* column = new QVBoxLayout(&dialog);
    auto* table = new QTableWidget(static_cast<int>(lines.size()), 4, &dialog);
    table->setObjectName(QStringLiteral("wax_records_table"));
    table->setAccessibleName(recordsWord("Records behind it"));
    table->setHorizontalHeaderLabels(
        {recordsWord("Day"), recordsWord("What"), recordsWord("Mass"), recordsWord("Note")});
    table->setTabKeyNavigation(false);
    table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    table->setSelectionBehavior(QAbstractItemView::SelectRows);
    table->verticalHeader()->hide();
    for (int n = 0; n < table->rowCount(); ++n) {
        const WaxRecordLine& line = lines[static_cast<std::size_t>(n)];
        const QString cells[] = {dayText(line.on), line.what, line.mass, line.note};
        for (int c = 0; c < 4; ++c) table->setItem(n, c, new QTableWidgetItem(cells[c]));
    }
    table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    table->horizontalHeader()->setSectionResizeMode(1, QHeaderView::Stretch);
    if (!lines.empty()) table->setCurrentCell(0, 0);
    column->addWidget(table, 1);
    if (lines.empty())
        column->insertWidget(0,
                             new QLabel(recordsWord("No record stands behind it yet."), &dialog));
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, &dialog);
    QObject::connect(buttons, &QDialogButtonBox::rejected, &dialog, &QDialog::reject);
    column->addWidget(buttons);
    dialog.resize(look.space(720), look.space(360));
    table->setFocus();
    dialog.exec();
}

}  // namespace combwright
