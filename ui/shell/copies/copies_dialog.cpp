#include "ui/shell/copies/copies_dialog.h"

#include <QDateTime>
#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QVBoxLayout>

#include "core/storage/backup.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString contentsText(const CopyContents& contents) {
    const QString size = CopiesDialog::tr("It holds yards: %1, hives that stand: %2, steps: %3")
                             .arg(contents.yards)
                             .arg(contents.hives)
                             .arg(contents.steps);
    if (contents.lastAt.empty()) return size + QLatin1Char('.');
    const QDateTime last =
        QDateTime::fromString(fromUtf8(contents.lastAt), Qt::ISODate).toLocalTime();
    const auto day = parseDay(last.toString(QStringLiteral("yyyy-MM-dd")).toStdString());
    if (!day) return size + QLatin1Char('.');
    return size + CopiesDialog::tr(", the last kept on %1 at %2.")
                      .arg(dayText(*day), last.toString(QStringLiteral("HH:mm")));
}

}  // namespace

CopiesDialog::CopiesDialog(const Look& look, const QString& seasonPath, QWidget* parent)
    : QDialog(parent), m_rowHigh(look.space(28)) {
    setObjectName(QStringLiteral("copies"));
    setWindowTitle(tr("Look at a copy"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    column->setSpacing(look.space(8));
    auto* title =
        new QLabel(seasonPath.isEmpty() ? tr("A copy of a season")
                                        : tr("Copies of %1").arg(QFileInfo(seasonPath).fileName()),
                   this);
    title->setFont(look.font(TextSize::Head, true));
    auto* text = new QLabel(tr("A copy stays as it is. Restoring makes a new season file out of "
                               "it, which is proven and "
                               "opened; the season you have is not touched."),
                            this);
    text->setWordWrap(true);
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("copies_list"));
    m_list->setAccessibleName(tr("Copies, newest first"));
    m_contents = new QLabel(this);
    m_contents->setObjectName(QStringLiteral("copy_contents"));
    m_contents->setWordWrap(true);
    m_contents->setMinimumHeight(look.space(40));
    m_contents->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    auto* buttons = new QDialogButtonBox(this);
    m_restore = new QPushButton(tr("Restore to a new file…"), this);
    m_restore->setObjectName(QStringLiteral("restore"));
    m_restore->setProperty("primary", true);
    buttons->addButton(m_restore, QDialogButtonBox::AcceptRole);
    m_restore->setDefault(true);
    auto* elsewhere = buttons->addButton(tr("A copy elsewhere…"), QDialogButtonBox::ActionRole);
    elsewhere->setObjectName(QStringLiteral("copy_elsewhere"));
    elsewhere->setAutoDefault(false);
    buttons->addButton(QDialogButtonBox::Close)->setAutoDefault(false);
    for (QWidget* widget :
         std::initializer_list<QWidget*>{title, text, m_list, m_contents, buttons})
        column->addWidget(widget);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(elsewhere, &QPushButton::clicked, this, &CopiesDialog::chooseElsewhere);
    connect(m_list, &QListWidget::currentRowChanged, this, &CopiesDialog::tellContents);
    connect(m_list, &QListWidget::itemActivated, this, [this] {
        if (m_restore->isEnabled()) accept();
    });

    if (!seasonPath.isEmpty())
        for (const FoundCopy& copy : copiesBeside(seasonPath.toStdString()))
            addCopy(fromUtf8(copy.path),
                    copy.day ? tr("of %1").arg(dayText(*copy.day))
                             : tr("before the upgrade from file version %1").arg(*copy.beforeStep));
    m_list->setVisible(m_list->count() > 0);
    m_list->setCurrentRow(m_list->count() > 0 ? 0 : -1);
    tellContents();
    if (m_list->count() > 0)
        m_list->setFocus();
    else
        elsewhere->setFocus();
    resize(look.space(560), look.space(m_list->count() > 0 ? 380 : 200));
}

void CopiesDialog::addCopy(const QString& path, const QString& text) {
    auto* item = new QListWidgetItem(
        QStringLiteral("%1   %2").arg(text, QFileInfo(path).fileName()), m_list);
    item->setData(Qt::UserRole, path);
    item->setSizeHint(QSize(0, m_rowHigh));
}

QString CopiesDialog::chosen() const {
    const QListWidgetItem* item = m_list->currentItem();
    return item ? item->data(Qt::UserRole).toString() : QString();
}

void CopiesDialog::chooseElsewhere() {
    const QString path =
        QFileDialog::getOpenFileName(this, tr("Which copy?"), QFileInfo(chosen()).absolutePath(),
                                     tr("Season files (*.combwright);;All files (*)"));
    if (path.isEmpty()) return;
    addCopy(path, tr("elsewhere:"));
    m_list->show();
    m_list->setCurrentRow(m_list->count() - 1);
    m_list->setFocus();
}

void CopiesDialog::tellContents() {
    const QString path = chosen();
    m_restore->setEnabled(!path.isEmpty());
    if (path.isEmpty()) {
        m_contents->setText(
            tr("There are no copies beside it. One is made each time a season in "
               "which something was changed is closed."));
        return;
    }
    QString trouble;
    const auto contents = Session::lookInto(path, trouble);
    m_contents->setText(contents ? contentsText(*contents) : trouble);
    m_restore->setEnabled(contents.has_value());
}

}  // namespace combwright
