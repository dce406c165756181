#include "ui/shell/help/help_window.h"

#include <QAbstractTextDocumentLayout>
#include <QApplication>
#include <QDialogButtonBox>
#include <QKeyEvent>
#include <QPointer>
#include <QScreen>
#include <QScrollBar>
#include <QShortcut>
#include <QTextBlock>
#include <QTextCursor>
#include <QTextLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "ui/print/print_dialog.h"
#include "ui/shell/help/keys_sheet.h"
#include "ui/shell/help/release_list.h"
#include "ui/shell/help/sample_pictures.h"
#include "ui/shell/start/start_page.h"
#include "ui/shell/walk/sample_walk.h"

namespace combwright {
namespace {

/// Help without marks of its own is parted at its blank lines.
QString asRichText(const QString& help) {
    if (Qt::mightBeRichText(help)) return help;
    QString rich;
    for (const QString& section : help.split(QStringLiteral("\n\n"), Qt::SkipEmptyParts))
        rich +=
            QStringLiteral("<p>%1</p>")
                .arg(section.toHtmlEscaped().replace(QLatin1Char('\n'), QStringLiteral("<br>")));
    return rich;
}

}  // namespace

HelpWindow::HelpWindow(MainWindow& window, Session& session)
    : QDialog(&window), m_window(window), m_session(session) {
    setObjectName(QStringLiteral("help"));
    gather();
    build();
    const std::vector<Place*>& places = window.places();
    const auto at = std::find(places.begin(), places.end(), window.current());
    // The first page is about seasons, the places follow in their order.
    m_list->setCurrentRow(at == places.end() ? 0 : static_cast<int>(at - places.begin()) + 1);
    m_scroll->setFocus();
}

HelpWindow::~HelpWindow() { m_window.samplePictures().letBe(); }

void HelpWindow::gather() {
    m_pages.push_back({tr("Your seasons"), asRichText(StartPage::help())});
    const QString everywhere = helpOf({keysEverywhere(m_window)});
    for (const Place* place : m_window.places()) {
        HelpGroup keys{tr("Keys here"), {}};
        for (const KeyHint& hint : place->hints()) keys.lines.push_back({hint.key, hint.what});
        const QString above = keys.lines.empty() ? QString() : helpOf({keys});
        m_pages.push_back(
            {place->railWord(), above + asRichText(place->help()) + everywhere, false, place});
    }
    m_pages.push_back({tr("Keys"), helpOf(keysOf(m_window, m_window.places())), true});
    m_pages.push_back({tr("What's new"), releasesText()});
}

void HelpWindow::build() {
    const Look& look = m_session.look();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("help_pages"));
    m_list->setAccessibleName(tr("Pages of the help"));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    for (const HelpPage& page : m_pages) {
        auto* item = new QListWidgetItem(page.word, m_list);
        item->setSizeHint(QSize(0, look.space(28)));
    }
    int widest = 0;
    for (const HelpPage& page : m_pages)
        widest = std::max(widest, m_list->fontMetrics().horizontalAdvance(page.word));
    m_list->setFixedWidth(widest + look.space(40));

    auto* right = new QVBoxLayout;
    m_find = new QLineEdit(this);
    m_find->setObjectName(QStringLiteral("help_find"));
    m_find->setAccessibleName(tr("Find in this page"));
    m_find->setPlaceholderText(tr("Find in this page: Ctrl+F, then Enter for the next"));
    m_told = new QLabel(this);
    m_told->setObjectName(QStringLiteral("help_told"));
    m_told->setWordWrap(true);
    m_told->hide();
    m_text = new QLabel(this);
    m_text->setObjectName(QStringLiteral("help_text"));
    m_text->setTextFormat(Qt::RichText);
    m_text->setWordWrap(true);
    m_text->setTextInteractionFlags(Qt::TextSelectableByMouse);
    m_text->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    // A page is longer than a small screen: it scrolls by the arrows, Page Up and Page Down.
    m_scroll = new QScrollArea(this);
    m_scroll->setObjectName(QStringLiteral("help_scroll"));
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::StrongFocus);
    auto* paper = new QWidget(m_scroll);
    auto* down = new QVBoxLayout(paper);
    down->setContentsMargins(0, 0, 0, 0);
    down->setSpacing(look.space(8));
    m_picture = new HelpPicture(look, paper);
    down->addWidget(m_picture);
    down->addWidget(m_text, 1);
    m_scroll->setWidget(paper);
    right->addWidget(m_find);
    right->addWidget(m_told);
    right->addWidget(m_scroll, 1);
    across->addWidget(m_list);
    across->addLayout(right, 1);
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Close, this);
    m_print = buttons->addButton(tr("&Print the keys"), QDialogButtonBox::ActionRole);
    m_print->setObjectName(QStringLiteral("help_print"));
    m_print->setShortcut(QKeySequence::Print);
    m_print->setAutoDefault(false);
    auto* walk = buttons->addButton(tr("&Walk through a first year"), QDialogButtonBox::ActionRole);
    walk->setObjectName(QStringLiteral("help_walk"));
    walk->setAutoDefault(false);
    connect(walk, &QPushButton::clicked, this, [this] {
        m_walkIsAsked = true;
        accept();
    });
    column->addLayout(across, 1);
    column->addWidget(buttons);

    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(m_print, &QPushButton::clicked, this, &HelpWindow::print);
    connect(m_list, &QListWidget::currentRowChanged, this, &HelpWindow::showPage);
    connect(m_find, &QLineEdit::textChanged, this, [this] { find(true); });
    auto* toFind = new QShortcut(QKeySequence::Find, this);
    connect(toFind, &QShortcut::activated, this, [this] {
        m_find->setFocus(Qt::ShortcutFocusReason);
        m_find->selectAll();
    });
    connect(&m_window.samplePictures(), &SamplePictures::painted, this, &HelpWindow::showPicture);
    m_list->installEventFilter(this);
    m_find->installEventFilter(this);
    m_picture->installEventFilter(this);
    const QSize room = screen()->availableSize() * 9 / 10;
    resize(std::min(look.space(880), room.width()), std::min(look.space(700), room.height()));
}

void HelpWindow::showPage(int row) {
    if (row < 0) return;
    const HelpPage& page = m_pages[static_cast<std::size_t>(row)];
    setWindowTitle(page.word);
    m_document.setDocumentMargin(0);
    m_document.setDefaultFont(m_text->font());
    m_document.setHtml(page.text);
    m_text->setText(page.text);
    m_scroll->setAccessibleName(page.word);
    m_scroll->setAccessibleDescription(m_document.toPlainText());
    m_scroll->verticalScrollBar()->setValue(0);
    m_print->setVisible(page.keys);
    showPicture();
    find(true);
}

void HelpWindow::showPicture() {
    const int row = m_list->currentRow();
    const Place* place = row < 0 ? nullptr : m_pages[static_cast<std::size_t>(row)].place;
    m_picture->setVisible(place != nullptr);
    if (!place) return;
    m_picture->show(m_window.samplePictures().of(*place), SamplePictures::saidOf(*place),
                    SamplePictures::captionOf(*place));
}

void HelpWindow::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    // It may be as high as half of what is seen.
    m_picture->updateGeometry();
}

void HelpWindow::tellFound(const QString& text) {
    m_told->setText(text);
    m_told->setVisible(!text.isEmpty());
}

void HelpWindow::find(bool anew, bool back) {
    const QString what = m_find->text().trimmed();
    if (anew || m_from < 0) {
        m_from = -1;
        m_to = 0;
    }
    if (what.isEmpty()) {
        // Of no length at the top: nothing stands out any more.
        m_text->setSelection(0, 0);
        return tellFound({});
    }
    const auto flags = back ? QTextDocument::FindBackward : QTextDocument::FindFlags();
    QTextCursor found = m_document.find(what, back ? std::max(m_from, 0) : m_to, flags);
    if (found.isNull()) {
        // Round the end, as from its other side.
        QTextCursor from(&m_document);
        from.movePosition(back ? QTextCursor::End : QTextCursor::Start);
        found = m_document.find(what, from, flags);
    }
    if (found.isNull()) {
        m_from = -1;
        m_text->setSelection(0, 0);
        QStringList others;
        for (const HelpPage& page : m_pages) {
            QTextDocument other;
            other.setHtml(page.text);
            if (!other.find(what).isNull()) others << page.word;
        }
        return tellFound(
            others.isEmpty()
                ? tr("Nothing of that in the whole help.")
                : tr("Not on this page. It stands in: %1").arg(others.join(QStringLiteral(", "))));
    }
    tellFound({});
    m_from = found.selectionStart();
    m_to = found.selectionEnd();
    m_text->setSelection(m_from, m_to - m_from);
    m_document.setTextWidth(m_text->width());
    const QTextBlock block = m_document.findBlock(m_from);
    const QTextLine line = block.layout()->lineForTextPosition(m_from - block.position());
    const double top = m_document.documentLayout()->blockBoundingRect(block).top() +
                       (line.isValid() ? line.y() : 0);
    const int high = m_text->fontMetrics().lineSpacing();
    m_scroll->ensureVisible(0, m_text->y() + static_cast<int>(top) + high / 2, 0, 2 * high);
}

void HelpWindow::print() {
    printWithPreview(this, keysPage(keysOf(m_window, m_window.places())), m_session.look());
}

bool HelpWindow::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() != QEvent::KeyPress) return QDialog::eventFilter(watched, event);
    const auto* key = static_cast<QKeyEvent*>(event);
    switch (key->key()) {
        case Qt::Key_PageDown:
            m_scroll->verticalScrollBar()->triggerAction(QAbstractSlider::SliderPageStepAdd);
            return true;
        case Qt::Key_PageUp:
            m_scroll->verticalScrollBar()->triggerAction(QAbstractSlider::SliderPageStepSub);
            return true;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            // Else the dialog would take it for its Close.
            if (watched == m_find)
                find(false, key->modifiers().testFlag(Qt::ShiftModifier));
            else
                m_scroll->setFocus(Qt::OtherFocusReason);
            return true;
        default:
            return QDialog::eventFilter(watched, event);
    }
}

void showHelp(MainWindow& window, Session& session) {
    const QPointer<QWidget> before = QApplication::focusWidget();
    HelpWindow help(window, session);
    help.exec();
    if (help.walkIsAsked()) return window.walk().begin();
    if (before) before->setFocus(Qt::OtherFocusReason);
}

}  // namespace combwright
