#include "ui/shell/copies/salvage_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/print/keep_bytes.h"

namespace combwright {

SalvageDialog::SalvageDialog(const Look& look, const QStringList& report, const QString& saved,
                             QWidget* parent)
    : QDialog(parent),
      m_saved(saved),
      m_text(new QPlainTextEdit(report.join(QStringLiteral("\n\n")), this)),
      m_kept(new QLabel(this)) {
    setObjectName(QStringLiteral("salvaged"));
    setWindowTitle(tr("What was saved"));
    auto* head = new QLabel(
        tr("What was saved into %1 is open now.").arg(QFileInfo(saved).fileName()), this);
    head->setFont(look.font(TextSize::Head, true));
    head->setWordWrap(true);
    m_text->setObjectName(QStringLiteral("salvaged_report"));
    m_text->setAccessibleName(tr("What was saved and what is missing"));
    m_text->setReadOnly(true);
    m_text->setTabChangesFocus(true);
    m_text->setFont(look.font(TextSize::Body));
    m_kept->setObjectName(QStringLiteral("salvaged_kept"));
    m_kept->setFont(look.font(TextSize::Note));
    m_kept->setWordWrap(true);
    m_kept->hide();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    auto* saving = buttons->addButton(tr("Keep this report…"), QDialogButtonBox::ActionRole);
    saving->setObjectName(QStringLiteral("salvaged_keep"));
    saving->setAutoDefault(false);
    auto* down = new QVBoxLayout(this);
    down->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    down->setSpacing(look.space(8));
    down->addWidget(head);
    down->addWidget(m_text, 1);
    down->addWidget(m_kept);
    down->addWidget(buttons);
    connect(saving, &QPushButton::clicked, this, &SalvageDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    const QSize room = parent ? parent->size() : QSize(1280, 800);
    resize(std::min(look.space(640), room.width() - look.space(32)),
           std::min(look.space(480), room.height() - look.space(32)));
    m_text->setFocus();
}

void SalvageDialog::save() {
    const QFileInfo saved(m_saved);
    const QString to =
        QFileDialog::getSaveFileName(this, tr("Where shall the report be kept?"),
                                     saved.absolutePath() + QLatin1Char('/') +
                                         saved.completeBaseName() + QStringLiteral("-report.txt"),
                                     tr("Text (*.txt)"));
    if (to.isEmpty()) return;
    const QString wrong = keepBytes(to, m_text->toPlainText().toUtf8() + '\n');
    m_kept->setText(wrong.isEmpty()
                        ? tr("Kept as %1.").arg(to)
                        : tr("%1 cannot be written: %2. Nothing was kept.").arg(to, wrong));
    m_kept->show();
}

}  // namespace combwright
