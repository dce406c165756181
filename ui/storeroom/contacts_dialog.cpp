#include "ui/storeroom/contacts_dialog.h"

#include <QHBoxLayout>
#include <QHeaderView>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>

#include "core/actions/storeroom/dead_outs.h"
#include "core/places/pages/health/dead_out_pages.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {
namespace {

QTableWidgetItem* movedItem(const QString& text) {
    auto* item = new QTableWidgetItem(text);
    item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable);
    item->setToolTip(text);
    return item;
}

}  // namespace

ContactsDialog::ContactsDialog(Session& session, Day on, std::optional<Id<Hive>> hive,
                               QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_hive(new QComboBox(this)),
      m_caution(new QLabel(this)),
      m_since(new QLabel(this)),
      m_moved(new QTableWidget(this)),
      m_reason(new QLabel(this)),
      m_hold(new QPushButton(tr("&Hold all of it back"), this)),
      m_print(new QPushButton(tr("&Print…"), this)),
      m_close(new QPushButton(tr("Close"), this)) {
    setObjectName(QStringLiteral("contacts"));
    setWindowTitle(tr("What moved in or out of a hive"));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    m_hive->setObjectName(QStringLiteral("hive"));
    m_hive->setAccessibleName(tr("Which hive"));
    column->addWidget(m_hive);
    m_caution->setObjectName(QStringLiteral("caution"));
    m_caution->setText(quarantineCaution());
    QPalette palette = m_caution->palette();
    palette.setColor(QPalette::WindowText, look.tone(Tone::Warn));
    m_caution->setPalette(palette);
    m_caution->setFont(look.font(TextSize::Body, true));
    m_since->setObjectName(QStringLiteral("since"));
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->hide();
    auto* shared = new QLabel(contactsNotWritten(), this);
    shared->setFont(look.font(TextSize::Note));
    for (QLabel* each : {m_caution, m_since, shared, m_reason}) each->setWordWrap(true);
    m_moved->setObjectName(QStringLiteral("moved"));
    m_moved->setAccessibleName(tr("What moved in or out"));
    m_moved->setColumnCount(5);
    m_moved->setHorizontalHeaderLabels({tr("day"), tr("way"), tr("what"), tr("now"), tr("held")});
    m_moved->verticalHeader()->hide();
    m_moved->setShowGrid(false);
    m_moved->setTabKeyNavigation(false);
    m_moved->setWordWrap(true);
    m_moved->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_moved->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_moved->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_moved->horizontalHeader()->setSectionResizeMode(2, QHeaderView::Stretch);
    for (int n = 0; n < m_moved->columnCount(); ++n)
        m_moved->horizontalHeaderItem(n)->setTextAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    column->addWidget(m_caution);
    column->addWidget(m_since);
    column->addWidget(m_moved, 1);
    column->addWidget(shared);
    column->addWidget(m_reason);
    auto* buttons = new QHBoxLayout;
    m_hold->setObjectName(QStringLiteral("hold_all"));
    m_print->setObjectName(QStringLiteral("print"));
    m_print->setProperty("primary", true);
    buttons->addWidget(m_close);
    buttons->addStretch(1);
    buttons->addWidget(m_hold);
    buttons->addWidget(m_print);
    column->addLayout(buttons);
    for (QPushButton* each : {m_hold, m_close}) each->setAutoDefault(false);
    m_print->setDefault(true);
    connect(m_print, &QPushButton::clicked, this, &ContactsDialog::printAsked);
    connect(m_hold, &QPushButton::clicked, this, &ContactsDialog::holdAll);
    connect(m_close, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_hive, &QComboBox::currentIndexChanged, this, &ContactsDialog::fill);
    connect(&session, &Session::told, this, [this](const QString& text, bool) {
        m_reason->setText(text);
        m_reason->setVisible(!text.isEmpty());
    });
    const auto add = [this](const Hive& each, bool suspected) {
        const auto yard = m_session.read().find(each.yard);
        const QString where = yard ? fromUtf8(yard->name.text()) : QString();
        m_hive->addItem((suspected ? tr("%1, %2: disease suspected") : tr("%1, %2"))
                            .arg(fromUtf8(each.mark.text()), where),
                        static_cast<qlonglong>(each.id.number));
    };
    const QSignalBlocker quiet(m_hive);
    for (const Hive& each : suspectedHives(session.read(), on)) add(each, true);
    if (hive && m_hive->findData(static_cast<qlonglong>(hive->number)) < 0)
        if (const auto asked = session.read().find(*hive)) add(*asked, false);
    if (hive)
        m_hive->setCurrentIndex(
            std::max(0, m_hive->findData(static_cast<qlonglong>(hive->number))));
    const QSize room = parent ? parent->window()->size() : QSize(1000, 780);
    resize(std::min(look.space(720), room.width() - 20),
           std::min(look.space(560), room.height() - 20));
    fill();
    m_hive->setFocus();
}

void ContactsDialog::fill() {
    m_trace.reset();
    m_session.reading([this] {
        m_trace =
            contactTrace(m_session.read(), Id<Hive>{m_hive->currentData().toLongLong()}, m_on);
    });
    m_moved->setRowCount(0);
    const bool suspected = m_trace && m_trace->suspicion;
    m_caution->setVisible(suspected);
    m_hold->setVisible(suspected);
    m_hold->setEnabled(suspected && !m_trace->allHeld());
    m_print->setEnabled(m_trace.has_value());
    if (!m_trace) {
        m_since->setText(tr("No colony ever lived there."));
        return;
    }
    QString since = contactTraceText(*m_trace);
    if (m_trace->contacts.empty())
        since += QLatin1Char('\n') + tr("Nothing is written down as moved in or out.");
    m_since->setText(since);
    for (const Contact& each : m_trace->contacts) {
        const int at = m_moved->rowCount();
        m_moved->insertRow(at);
        m_moved->setItem(at, 0, movedItem(shortDayText(each.on)));
        m_moved->setItem(at, 1, movedItem(each.in ? tr("in") : tr("out")));
        m_moved->setItem(at, 2, movedItem(contactText(m_session.read(), each)));
        m_moved->setItem(at, 3, movedItem(each.place ? choiceText(word(*each.place)) : QString()));
        m_moved->setItem(at, 4, movedItem(each.held ? tr("held") : tr("not held")));
        if (each.held) continue;
        QFont bold = m_moved->font();
        bold.setBold(true);
        m_moved->item(at, 4)->setFont(bold);
    }
    m_moved->resizeRowsToContents();
}

void ContactsDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    QTimer::singleShot(0, m_moved, &QTableWidget::resizeRowsToContents);
}

void ContactsDialog::holdAll() {
    if (!m_trace) return;
    HoldContacts hold;
    hold.on = m_on;
    hold.hive = m_trace->hive.id;
    const auto held = m_session.run(hold);
    if (!held) return;
    fill();
    m_session.tell(held->size() == 1 ? tr("1 more is held back.")
                                     : tr("%1 more are held back.").arg(held->size()));
    m_print->setFocus();
}

void showContacts(QWidget* parent, Session& session, Day on, std::optional<Id<Hive>> hive) {
    if (!hive && suspectedHives(session.read(), on).empty()) {
        session.tell(ContactsDialog::tr(
            "No hive is under suspicion. On a box that came off a hive this lists what moved in "
            "or out of that one."));
        return;
    }
    ContactsDialog dialog(session, on, hive, parent);
    QObject::connect(&dialog, &ContactsDialog::printAsked, &dialog, [&] {
        if (dialog.trace())
            printWithPreview(&dialog, contactTracePage(session.read(), *dialog.trace()),
                             session.look());
    });
    dialog.exec();
}

}  // namespace combwright
