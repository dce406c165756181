#include "ui/shell/copies/moved_dialog.h"

#include <QDialogButtonBox>
#include <QPushButton>
#include <QVBoxLayout>

#include "ui/shell/file_ways.h"

namespace combwright {

QString MovedDialog::whatHappened(Season::Standing standing, const QString& path) {
    return standing == Season::Standing::Gone
               ? tr("The file that was opened is no longer at its place: %1. It was moved, renamed "
                    "or deleted.")
                     .arg(path)
               : tr("Another file stands now where the one that was opened was: %1. A program that "
                    "keeps folders alike may have put it there.")
                     .arg(path);
}

MovedDialog::MovedDialog(Session& session, FileWays& ways, QWidget* parent)
    : QDialog(parent), m_session(session), m_ways(ways) {
    setObjectName(QStringLiteral("moved"));
    setWindowTitle(tr("The season file is no longer where it was"));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    const auto part = [&](const QString& text, TextSize size, bool bold) {
        auto* label = new QLabel(text, this);
        label->setWordWrap(true);
        label->setFont(look.font(size, bold));
        label->setTextFormat(Qt::PlainText);
        column->addWidget(label);
        return label;
    };
    part(windowTitle(), TextSize::Head, true);
    part(whatHappened(session.standing(), session.path()), TextSize::Body, false)
        ->setObjectName(QStringLiteral("what_happened"));
    const QString last = session.undoText();
    const QString other = session.standing() == Season::Standing::Replaced
                              ? tr("Nothing was written to the other file. ")
                              : QString();
    part(other + (last.isEmpty()
                      ? tr("What is open here is whole.")
                      : tr("What is open here is whole, up to the last step: %1.").arg(last)),
         TextSize::Body, false)
        ->setObjectName(QStringLiteral("what_was_kept"));
    part(tr("Kept as a new file it is copied and proven, and you go on in that. A line still being "
            "typed goes along. Left as it is, you may look but nothing more is written; with the "
            "window what is open here may be gone."),
         TextSize::Body, false);
    m_trouble = part(QString(), TextSize::Body, true);
    m_trouble->setObjectName(QStringLiteral("moved_trouble"));
    QPalette bad = m_trouble->palette();
    bad.setColor(QPalette::WindowText, look.tone(Tone::Bad));
    m_trouble->setPalette(bad);
    m_trouble->hide();
    column->addSpacing(look.space(8));

    auto* buttons = new QDialogButtonBox(this);
    auto* keepButton = new QPushButton(tr("Keep ours as a new file…"), this);
    keepButton->setObjectName(QStringLiteral("keep_ours"));
    keepButton->setProperty("primary", true);
    buttons->addButton(keepButton, QDialogButtonBox::ActionRole);
    keepButton->setDefault(true);
    auto* leave = buttons->addButton(tr("Leave it"), QDialogButtonBox::RejectRole);
    leave->setObjectName(QStringLiteral("leave_it"));
    leave->setAutoDefault(false);
    column->addWidget(buttons);
    connect(keepButton, &QPushButton::clicked, this, &MovedDialog::keep);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    setMinimumWidth(look.space(520));
    resize(look.space(520), column->heightForWidth(look.space(520)));
    keepButton->setFocus();
}

void MovedDialog::keep() {
    if (m_ways.keepOurs(this)) return accept();
    if (m_session.standing() == Season::Standing::Ours) return accept();
    // A name that is taken, a folder that cannot be written: said here, and asked again.
    m_trouble->setText(m_session.lastTold());
    m_trouble->setVisible(!m_session.lastTold().isEmpty());
}

}  // namespace combwright
