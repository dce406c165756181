#include "ui/season_book/book_window.h"

#include <QAbstractButton>
#include <QApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

#include "ui/season_book/season_book_place.h"

namespace combwright {

BookWindow::BookWindow(Session& session, int year, QWidget* parent)
    : QWidget(parent, Qt::Window), m_session(session) {
    setObjectName(QStringLiteral("book_window"));
    setAttribute(Qt::WA_DeleteOnClose);
    setAutoFillBackground(true);
    m_book = new SeasonBookPlace(session, this, SeasonBookPlace::Use::ToCompare);
    m_title = new QLabel(this);
    m_foot = new QLabel(this);
    m_foot->setObjectName(QStringLiteral("book_foot"));
    m_foot->setWordWrap(true);
    auto* head = new QHBoxLayout;
    head->addWidget(m_title);
    head->addWidget(m_book->pageWords());
    head->addStretch(1);
    head->addWidget(m_book->headControls());
    auto* down = new QVBoxLayout(this);
    down->addLayout(head);
    down->addWidget(m_book, 1);
    down->addWidget(m_foot);
    connect(m_book, &Place::headChanged, this, &BookWindow::showWords);
    connect(m_book, &SeasonBookPlace::leaveAsked, this, &QWidget::close);
    connect(&session, &Session::seasonChanged, this, &QWidget::close);
    connect(&session, &Session::unitsChanged, m_book, [this] { m_book->reload(); });
    connect(&session, &Session::lookChanged, this, &BookWindow::sizes);
    connect(&session, &Session::told, this, [this](const QString& text) {
        if (isActiveWindow()) m_foot->setText(text);
    });
    sizes();
    resize(parent->window()->size() * 0.9);
    m_book->openYear(year);
    showWords();
}

void BookWindow::sizes() {
    const Look& look = m_session.look();
    setPalette(QApplication::palette());
    m_title->setFont(look.font(TextSize::Title, true));
    m_foot->setFont(look.font(TextSize::Note));
    m_foot->setContentsMargins(look.space(24), 0, look.space(24), 0);
    layout()->setContentsMargins(0, look.space(8), 0, look.space(8));
    auto* head = static_cast<QHBoxLayout*>(layout()->itemAt(0)->layout());
    head->setContentsMargins(look.space(24), 0, look.space(24), 0);
    head->setSpacing(look.space(16));
}

void BookWindow::showWords() {
    m_title->setText(QString::number(m_book->year()));
    setWindowTitle(tr("Season book %1 · to compare").arg(m_book->year()));
    QStringList keys;
    for (const KeyHint& hint : m_book->hints())
        keys << QStringLiteral("%1 %2").arg(hint.key, hint.what);
    m_foot->setText(keys.join(QStringLiteral("   ")));
}

void BookWindow::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (event->key() == Qt::Key_Escape) {
        close();
    } else if (auto* button = qobject_cast<QAbstractButton*>(focusWidget()); enter && button) {
        button->click();
    } else {
        QWidget::keyPressEvent(event);
    }
}

}  // namespace combwright
