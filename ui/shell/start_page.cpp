#include "ui/shell/start_page.h"

#include <QFileDialog>
#include <QLabel>
#include <QPushButton>
#include <QStandardPaths>
#include <QVBoxLayout>

namespace combwright {

StartPage::StartPage(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(48, 48, 48, 48);
    column->setSpacing(12);
    auto* title = new QLabel(tr("Begin a season"), this);
    title->setObjectName(QStringLiteral("start_title"));
    auto* text = new QLabel(
        tr("All your seasons live in one file that you choose a place for. Nothing needs saving: "
           "what you write is kept at once, and everything can be taken back."),
        this);
    text->setWordWrap(true);
    text->setMaximumWidth(560);
    auto* make = new QPushButton(tr("Begin a new season file…"), this);
    make->setProperty("primary", true);
    auto* open = new QPushButton(tr("Open a season file…"), this);
    auto* sample = new QPushButton(tr("Explore a sample season"), this);
    sample->setObjectName(QStringLiteral("sample"));
    column->addStretch(1);
    for (QWidget* widget : std::initializer_list<QWidget*>{title, text, make, open, sample}) {
        column->addWidget(widget, 0, Qt::AlignLeft);
    }
    column->addStretch(2);
    const auto style = [this, title] {
        title->setFont(m_session.look().font(TextSize::Title, true));
    };
    style();
    connect(&session, &Session::lookChanged, this, style);
    connect(make, &QPushButton::clicked, this, &StartPage::makeNew);
    connect(open, &QPushButton::clicked, this, &StartPage::openFile);
    connect(sample, &QPushButton::clicked, this, [this] { m_session.exploreSample(); });
}

void StartPage::makeNew() {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    QString path = QFileDialog::getSaveFileName(this, tr("Where shall the season file be?"),
                                                folder + QStringLiteral("/season.combwright"),
                                                tr("Season files (*.combwright)"));
    if (path.isEmpty()) return;
    if (!path.endsWith(QLatin1String(".combwright"))) path += QStringLiteral(".combwright");
    m_session.make(path);
}

void StartPage::openFile() {
    const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
    const QString path = QFileDialog::getOpenFileName(this, tr("Open a season file"), folder,
                                                      tr("Season files (*.combwright)"));
    if (!path.isEmpty()) m_session.open(path);
}

}  // namespace combwright
