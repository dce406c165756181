#include "ui/shell/start/start_page.h"

#include <QDir>
#include <QFileInfo>
#include <QKeyEvent>
#include <QPainter>
#include <QStyledItemDelegate>
#include <QVBoxLayout>
#include <algorithm>

#include "core/words/words.h"
#include "ui/shell/file_ways.h"
#include "ui/shell/program_icon.h"

namespace combwright {
namespace {

/// A layout's distances at the base font, where they are not 8.
constexpr const char* gapProperty = "gap";

enum RecentRole { PathRole = Qt::UserRole, NameRole, FolderRole, WhenRole, ThereRole };

/// An ink rule opens a block, a hairline parts rows.
class StartRule : public QWidget {
  public:
    StartRule(Session& session, Tone tone, QWidget* parent)
        : QWidget(parent), m_session(session), m_tone(tone) {
        setFixedHeight(1);
    }

  protected:
    void paintEvent(QPaintEvent*) override {
        QPainter(this).fillRect(rect(), m_session.look().tone(m_tone));
    }

  private:
    Session& m_session;
    Tone m_tone;
};

class RecentDelegate : public QStyledItemDelegate {
  public:
    RecentDelegate(Session& session, QObject* parent)
        : QStyledItemDelegate(parent), m_session(session) {}

    QSize sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const override {
        return {100, m_session.look().space(48)};
    }
    void paint(QPainter* painter, const QStyleOptionViewItem& option,
               const QModelIndex& index) const override {
        const Look& look = m_session.look();
        painter->save();
        const QRect rect = option.rect;
        if (option.state & QStyle::State_Selected)
            painter->fillRect(rect, look.tone(Tone::Selection));
        painter->setPen(look.tone(Tone::Hairline));
        painter->drawLine(rect.bottomLeft(), rect.bottomRight());
        const bool there = index.data(ThereRole).toBool();
        const QRect room = rect.adjusted(look.space(8), look.space(4), -look.space(8), 0);
        const QRect upper(room.left(), room.top(), room.width(), look.space(22));
        const QRect lower(room.left(), upper.bottom(), room.width(), look.space(18));
        // Name and day, and below them where it lies: from its end, for there folders differ.
        painter->setFont(look.font(TextSize::Note, false, !there));
        painter->setPen(look.tone(Tone::Muted));
        const QString when =
            there ? index.data(WhenRole).toString() : StartPage::tr("not there now");
        const int whenWide = painter->fontMetrics().horizontalAdvance(when);
        painter->drawText(upper, Qt::AlignRight | Qt::AlignVCenter, when);
        painter->setFont(look.font(TextSize::Note));
        painter->drawText(lower, Qt::AlignLeft | Qt::AlignVCenter,
                          painter->fontMetrics().elidedText(index.data(FolderRole).toString(),
                                                            Qt::ElideLeft, lower.width()));
        painter->setFont(look.font(TextSize::Body, there));
        painter->setPen(look.tone(there ? Tone::Ink : Tone::Muted));
        painter->drawText(
            upper, Qt::AlignLeft | Qt::AlignVCenter,
            painter->fontMetrics().elidedText(index.data(NameRole).toString(), Qt::ElideRight,
                                              upper.width() - whenWide - look.space(16)));
        if (option.state & QStyle::State_HasFocus) {
            painter->setPen(QPen(look.tone(Tone::Accent), 2));
            painter->drawRect(rect.adjusted(1, 1, -1, -2));
        }
        painter->restore();
    }

  private:
    Session& m_session;
};

/// The home folder as one says it.
QString shortFolder(const QString& path) {
    const QString folder = QFileInfo(path).absolutePath();
    const QString home = QDir::homePath();
    return folder.startsWith(home + QLatin1Char('/')) ? QLatin1Char('~') + folder.mid(home.size())
                                                      : folder;
}

}  // namespace

QString RecentList::currentPath() const {
    return currentItem() ? currentItem()->data(PathRole).toString() : QString();
}

QSize RecentList::sizeHint() const {
    // As high as its rows, so that the page scrolls and not a list within it.
    int high = 4;
    for (int row = 0; row < count(); ++row) high += sizeHintForRow(row);
    return {200, high};
}

void RecentList::keyPressEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Delete && currentItem()) {
        Q_EMIT removeAsked(currentPath());
        return;
    }
    QListWidget::keyPressEvent(event);
}

StartPage::StartPage(Session& session, FileWays& ways, QWidget* parent)
    : QWidget(parent), m_session(session), m_ways(ways) {
    setObjectName(QStringLiteral("start"));
    m_scroll = new QScrollArea(this);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_page = new QWidget(m_scroll);
    auto* down = new QVBoxLayout(m_page);
    m_trouble = makeTrouble();
    down->addWidget(m_trouble);
    m_columns = new QBoxLayout(QBoxLayout::LeftToRight);
    m_columns->addWidget(makeDoors(), 3);
    m_columns->addWidget(makeLately(), 2);
    down->addLayout(m_columns);
    down->addStretch(1);
    m_scroll->setWidget(m_page);
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->addWidget(m_scroll);

    connect(&session, &Session::lookChanged, this, &StartPage::applyLook);
    connect(&session, &Session::openingFailed, this, [this] {
        fill();
        // What can be done about it has the keyboard, not what begins a season in its place.
        if (!m_session.hasSeason()) begin();
    });
    connect(&session, &Session::seasonChanged, this, &StartPage::fill);
    connect(&ways, &FileWays::recentChanged, this, &StartPage::fill);
    applyLook();
    fill();
}

QLabel* StartPage::label(QWidget* parent, const QString& text, TextSize size, bool bold,
                         Tone tone) {
    auto* made = new QLabel(text, parent);
    made->setWordWrap(true);
    made->setTextFormat(Qt::PlainText);
    m_labels.push_back({made, size, bold, tone});
    return made;
}

QWidget* StartPage::makeTrouble() {
    auto* block = new QWidget(m_page);
    block->setObjectName(QStringLiteral("not_opened"));
    auto* down = new QVBoxLayout(block);
    down->addWidget(label(block, tr("This file was not opened"), TextSize::Head, true, Tone::Bad));
    down->addWidget(new StartRule(m_session, Tone::Bad, block));
    m_troubleText = label(block, QString(), TextSize::Body, false, Tone::Ink);
    m_troubleText->setObjectName(QStringLiteral("not_opened_text"));
    down->addWidget(m_troubleText);
    m_troubleCopies = new QPushButton(tr("Look at its copies…"), block);
    m_troubleCopies->setObjectName(QStringLiteral("not_opened_copies"));
    connect(m_troubleCopies, &QPushButton::clicked, this,
            [this] { m_ways.lookAtCopies(m_session.notOpened()->path); });
    down->addWidget(m_troubleCopies, 0, Qt::AlignLeft);
    m_troubleSalvage = new QPushButton(tr("Save what can be read…"), block);
    m_troubleSalvage->setObjectName(QStringLiteral("not_opened_salvage"));
    m_troubleSalvage->setAccessibleDescription(
        tr("Into a new file; the damaged one is left as it is."));
    connect(m_troubleSalvage, &QPushButton::clicked, this,
            [this] { m_ways.salvage(m_session.notOpened()->path); });
    down->addWidget(m_troubleSalvage, 0, Qt::AlignLeft);
    return block;
}

QWidget* StartPage::makeDoors() {
    auto* doors = new QWidget(m_page);
    auto* down = new QVBoxLayout(doors);
    down->setContentsMargins(0, 0, 0, 0);
    down->setProperty(gapProperty, 12);
    auto* top = new QHBoxLayout;
    top->setProperty(gapProperty, 16);
    m_picture = new QLabel(doors);
    m_picture->setAccessibleName(tr("A wooden frame with comb"));
    top->addWidget(m_picture, 0, Qt::AlignTop);
    auto* words = new QVBoxLayout;
    words->addWidget(label(doors, tr("Begin a season"), TextSize::Title, true, Tone::Ink));
    words->addWidget(
        label(doors,
              tr("All your seasons live in one file, and you choose its place. Nothing needs "
                 "saving: what you write is kept at once, and all of it can be taken back."),
              TextSize::Body, false, Tone::Muted));
    top->addLayout(words, 1);
    down->addLayout(top);

    const auto door = [&](const QString& text, const QString& key, const char* name,
                          const QString& note, auto deed) {
        auto* block = new QVBoxLayout;
        block->setProperty(gapProperty, 4);
        down->addWidget(new StartRule(m_session, Tone::Hairline, doors));
        down->addLayout(block);
        auto* button =
            new QPushButton(key.isEmpty() ? text : text + QStringLiteral("   ") + key, doors);
        button->setObjectName(QLatin1String(name));
        button->setAccessibleName(text);
        button->setAccessibleDescription(note);
        connect(button, &QPushButton::clicked, &m_ways, deed);
        block->addWidget(button, 0, Qt::AlignLeft);
        block->addWidget(label(doors, note, TextSize::Note, false, Tone::Muted));
        return button;
    };
    m_make = door(tr("Begin a new season file…"), tr("Ctrl+N"), "new_season",
                  tr("You say where. Then comes the first yard and its hives, a line of typing "
                     "each."),
                  [this] { m_ways.make(); });
    m_make->setProperty("primary", true);
    door(tr("Open a season file…"), tr("Ctrl+O"), "open_season",
         tr("Or drop one on this window. Ctrl+W closes it and brings you back here."),
         [this] { m_ways.open(); });
    door(tr("Explore a sample season"), {}, "sample",
         tr("Invented yards over three years, to try everything on; thrown away when you leave "
            "it."),
         [this] { m_ways.exploreSample(); });
    door(tr("Walk through a first year"), {}, "walk_year",
         tr("Twelve steps in the sample season, from a visit in June to the printed book."),
         [this] { Q_EMIT walkAsked(); });
    door(tr("Look at a copy…"), {}, "look_at_copy",
         tr("Each time a season is closed a proven copy is laid beside it. One can be restored "
            "into a new file."),
         [this] { m_ways.lookAtCopies(m_list->currentPath()); });
    down->addStretch(1);
    return doors;
}

QWidget* StartPage::makeLately() {
    auto* side = new QWidget(m_page);
    auto* column = new QVBoxLayout(side);
    column->setContentsMargins(0, 0, 0, 0);

    m_lately = new QWidget(side);
    auto* down = new QVBoxLayout(m_lately);
    down->setContentsMargins(0, 0, 0, 0);
    down->addWidget(label(m_lately, tr("Opened lately"), TextSize::Head, true, Tone::Ink));
    down->addWidget(new StartRule(m_session, Tone::Ink, m_lately));
    m_list = new RecentList(m_lately);
    m_list->setObjectName(QStringLiteral("recent"));
    m_list->setAccessibleName(tr("Seasons opened lately"));
    m_list->setItemDelegate(new RecentDelegate(m_session, m_list));
    m_list->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    down->addWidget(m_list);
    auto* clear = new QPushButton(tr("Clear the list"), m_lately);
    clear->setObjectName(QStringLiteral("clear_recent"));
    clear->setProperty("small", true);
    down->addWidget(clear, 0, Qt::AlignRight);
    connect(m_list, &QListWidget::itemActivated, this,
            [this] { m_ways.openPath(m_list->currentPath()); });
    connect(m_list, &RecentList::removeAsked, this, [this](const QString& path) {
        m_ways.recent().remove(path);
        fill();
        begin();
    });
    connect(clear, &QPushButton::clicked, this, [this] {
        m_ways.recent().clear();
        fill();
        begin();
    });
    column->addWidget(m_lately);

    m_howItGoes = new QWidget(side);
    auto* steps = new QVBoxLayout(m_howItGoes);
    steps->setContentsMargins(0, 0, 0, 0);
    steps->addWidget(label(m_howItGoes, tr("How it goes"), TextSize::Head, true, Tone::Ink));
    steps->addWidget(new StartRule(m_session, Tone::Ink, m_howItGoes));
    const QString lines[] = {
        tr("A new file, with a name and a place of your own."),
        tr("The first yard, then its hives: a mark and what stands on the floor."),
        tr("After a visit the yard sheet: one line a hive, in the marks you would write on a lid."),
        tr("In summer Pull says which boxes to bring, the honey room what goes into the extractor, "
           "and the season book which hive gave what.")};
    int number = 0;
    for (const QString& line : lines) {
        auto* across = new QHBoxLayout;
        QLabel* figure =
            label(m_howItGoes, QString::number(++number), TextSize::Body, true, Tone::Muted);
        across->addWidget(figure, 0, Qt::AlignTop);
        across->addWidget(label(m_howItGoes, line, TextSize::Body, false, Tone::Ink), 1);
        steps->addLayout(across);
        steps->addWidget(new StartRule(m_session, Tone::Hairline, m_howItGoes));
    }
    column->addWidget(m_howItGoes);
    column->addStretch(1);
    return side;
}

void StartPage::applyLook() {
    const Look& look = m_session.look();
    for (const Styled& each : m_labels) {
        each.label->setFont(look.font(each.size, each.bold));
        QPalette palette = each.label->palette();
        palette.setColor(QPalette::WindowText, look.tone(each.tone));
        each.label->setPalette(palette);
    }
    m_picture->setPixmap(programPicture(look.space(64), devicePixelRatioF()));
    for (QLayout* layout : m_page->findChildren<QLayout*>()) {
        const QVariant gap = layout->property(gapProperty);
        layout->setSpacing(look.space(gap.isValid() ? gap.toInt() : 8));
    }
    m_page->layout()->setContentsMargins(look.space(24), look.space(24), look.space(24),
                                         look.space(24));
    m_trouble->layout()->setContentsMargins(0, 0, 0, look.space(16));
    m_columns->setSpacing(look.space(48));
    m_list->doItemsLayout();
    m_list->updateGeometry();
    arrange();
}

void StartPage::fill() {
    const auto& failed = m_session.notOpened();
    m_trouble->setVisible(failed.has_value());
    if (failed) {
        m_troubleText->setText(failed->says);
        m_troubleCopies->setVisible(m_ways.hasCopies(failed->path));
        m_troubleSalvage->setVisible(failed->damaged);
    }
    const QString before = m_list->currentPath();
    m_list->clear();
    const auto seasons =
        m_session.leavesTrace() ? m_ways.recent().list() : std::vector<RecentSeason>();
    for (const RecentSeason& season : seasons) {
        auto* item = new QListWidgetItem(m_list);
        const QString file = QFileInfo(season.path).completeBaseName();
        const QString name = season.name.isEmpty() || season.name == file
                                 ? file
                                 : QStringLiteral("%1 · %2").arg(file, season.name);
        const QString when = season.opened ? dayText(*season.opened) : QString();
        item->setData(PathRole, season.path);
        item->setData(NameRole, name);
        item->setData(FolderRole, shortFolder(season.path));
        item->setData(WhenRole, when);
        item->setData(ThereRole, season.there);
        item->setData(Qt::AccessibleTextRole, QStringLiteral("%1, %2, %3")
                                                  .arg(name, item->data(FolderRole).toString(),
                                                       season.there ? when : tr("not there now")));
        item->setToolTip(season.path);
        if (season.path == before) m_list->setCurrentItem(item);
    }
    if (!m_list->currentItem() && m_list->count() > 0) m_list->setCurrentRow(0);
    m_lately->setVisible(m_list->count() > 0);
    m_howItGoes->setVisible(m_list->count() == 0);
    m_list->updateGeometry();
}

QString StartPage::help() {
    const QString paragraphs[] = {
        tr("A season file holds all your yards, hives, boxes and honey, year after year. You give "
           "it its name and its place; it is one ordinary file on your own disk. Every "
           "line is kept in it when it is written, so that nothing needs saving, and Ctrl+Z takes "
           "any of it back."),
        tr("Ctrl+N begins a new file: then comes the first yard, and its hives with the boxes that "
           "stand on them. Ctrl+O opens one that is there; so does dropping it on this window, or "
           "Enter on one of those opened lately. Delete takes one out of that list and leaves the "
           "file alone. Ctrl+W closes a season and comes back here. Ctrl+I takes tables in, "
           "keeps photos and writes the whole season out; out of such a season a new file can be "
           "made."),
        tr("The sample season is invented, three years of it, to try everything on. It is thrown "
           "away when you leave it. A walk through a first year leads through it in twelve steps, "
           "each with what to look at and what to try; it begins from the button below, or from "
           "where a season is chosen."),
        tr("Each time a season that was changed is closed, a copy that was read through and proven "
           "is laid in the folder beside it. \"Look at a copy\" shows what each of them holds and "
           "restores one into a new file, which is then opened; the copy stays, and so does the "
           "file it was made of. Keep a copy on another disk too: a folder beside the file goes "
           "down with its disk."),
        tr("A damaged file is left as it is. Open one of its copies; or \"Save what can be read\" "
           "looks through it page by page and makes a new file of all it still holds. Each record "
           "lies in a season twice, once in its table and once in the history, so that most damage "
           "costs nothing; what is missing is said."),
        tr("In an open season Ctrl+H shows its history in words: from there the season as it stood "
           "on a day opens beside today's, what differs is printed, a what-if is planned, and what "
           "a helper wrote into a copy is taken in."),
        tr("Tab goes from button to button, Enter presses one. Ctrl+U changes between kilograms "
           "and pounds, Ctrl and plus makes the text larger. "
           "Ctrl+Shift+L chooses the language.")};
    QStringList text;
    for (const QString& each : paragraphs) text << each;
    return text.join(QStringLiteral("\n\n"));
}

void StartPage::begin() {
    if (m_trouble->isVisibleTo(this) && m_troubleCopies->isVisibleTo(this))
        m_troubleCopies->setFocus();
    else if (m_trouble->isVisibleTo(this) && m_troubleSalvage->isVisibleTo(this))
        m_troubleSalvage->setFocus();
    else if (m_list->count() > 0)
        m_list->setFocus();
    else
        m_make->setFocus();
}

void StartPage::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    arrange();
}

void StartPage::arrange() {
    // Side by side where both can be read, one below the other at large type on a small window.
    const bool wide = width() >= m_session.look().space(760);
    m_columns->setDirection(wide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
    const int most = m_session.look().space(1080);
    const int edge = m_session.look().space(24);
    const int right = wide ? std::max(edge, width() - most) : edge;
    m_page->layout()->setContentsMargins(edge, edge, right, edge);
}

}  // namespace combwright
