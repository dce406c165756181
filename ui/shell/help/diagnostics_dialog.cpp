#include "ui/shell/help/diagnostics_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QJsonDocument>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QVBoxLayout>

#include "core/exchange/diagnostics.h"
#include "ui/print/keep_bytes.h"

namespace combwright {

DiagnosticsDialog::DiagnosticsDialog(Session& session, QWidget* parent)
    : QDialog(parent), m_session(session), m_text(new QPlainTextEdit(this)) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("diagnostics"));
    setWindowTitle(tr("For whoever helps you"));
    auto* says = new QLabel(
        tr("Versions and counts, and nothing else: no word you wrote, no name, no day, no path. "
           "Look through it, save it, and send it where you ask for help, if you like."),
        this);
    says->setWordWrap(true);
    std::optional<FileFacts> facts;
    if (session.hasSeason()) session.reading([&] { facts = factsOf(session.read()); });
    m_text->setObjectName(QStringLiteral("diagnostics_text"));
    m_text->setAccessibleName(tr("What would be saved"));
    m_text->setReadOnly(true);
    m_text->setTabChangesFocus(true);
    m_text->setPlainText(QString::fromUtf8(QJsonDocument(diagnostics(facts)).toJson()));
    auto* buttons = new QDialogButtonBox(this);
    auto* saving = new QPushButton(tr("Save…"), this);
    saving->setObjectName(QStringLiteral("diagnostics_save"));
    saving->setProperty("primary", true);
    buttons->addButton(saving, QDialogButtonBox::ActionRole);
    buttons->addButton(QDialogButtonBox::Close);
    auto* down = new QVBoxLayout(this);
    down->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    down->setSpacing(look.space(8));
    down->addWidget(says);
    down->addWidget(m_text, 1);
    down->addWidget(buttons);
    connect(saving, &QPushButton::clicked, this, &DiagnosticsDialog::save);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    resize(look.space(560), look.space(480));
    saving->setFocus();
}

void DiagnosticsDialog::save() {
    const QString to = QFileDialog::getSaveFileName(this, tr("Where shall it be saved?"),
                                                    QStringLiteral("combwright-diagnostics.json"),
                                                    tr("Text (*.json *.txt)"));
    if (to.isEmpty()) return;
    const QString wrong = keepBytes(to, m_text->toPlainText().toUtf8());
    if (wrong.isEmpty()) {
        m_session.tell(tr("Saved as %1.").arg(to));
        accept();
        return;
    }
    m_session.tell(tr("%1 cannot be written: %2. Nothing was saved.").arg(to, wrong), true);
}

}  // namespace combwright
