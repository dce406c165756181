#include "ui/storeroom/dead_out_form.h"

#include <QDialogButtonBox>
#include <QFormLayout>
#include <QKeyEvent>
#include <QScrollArea>
#include <QVBoxLayout>

#include "core/actions/storeroom/dead_outs.h"
#include "core/places/pages/health/dead_out_pages.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"
#include "ui/print/print_dialog.h"

namespace combwright {
namespace {

template <class Choice>
QStringList choiceWords() {
    QStringList words;
    for (const std::string_view each : Choices<Choice>::words) words << fromUtf8(each);
    return words;
}

/// The first entry of every question is the blank one.
template <class Choice>
std::optional<Choice> chosenIn(const QComboBox* box) {
    return box->currentIndex() > 0 ? std::optional(static_cast<Choice>(box->currentIndex() - 1))
                                   : std::nullopt;
}

std::optional<bool> saidIn(const QComboBox* box) {
    return box->currentIndex() > 0 ? std::optional(box->currentIndex() == 1) : std::nullopt;
}

int indexOf(const std::optional<bool>& said) { return !said ? 0 : *said ? 1 : 2; }
template <class Choice>
int indexOf(const std::optional<Choice>& said) {
    return said ? static_cast<int>(*said) + 1 : 0;
}

}  // namespace

DeadOutForm::DeadOutForm(Session& session, Day on, QWidget* parent)
    : QDialog(parent),
      m_session(session),
      m_on(on),
      m_colony(new QComboBox(this)),
      m_questions(new QWidget(this)),
      m_cause(new QLineEdit(m_questions)),
      m_by(new QLineEdit(m_questions)),
      m_reading(new QLabel(this)),
      m_drafts(new FormDrafts(session, this)),
      m_reason(new QLabel(this)) {
    setObjectName(QStringLiteral("dead_out_form"));
    setWindowTitle(tr("A colony found dead"));
    const Look& look = session.look();
    auto* column = new QVBoxLayout(this);
    m_colony->setObjectName(QStringLiteral("colony"));
    m_colony->setAccessibleName(tr("Which colony"));
    column->addWidget(m_colony);
    auto* form = new QFormLayout(m_questions);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    const QStringList yesNo{tr("yes"), tr("no")};
    ask("cluster", choiceWords<DeadCluster>());
    ask("stores_near", choiceWords<StoresNear>());
    ask("brood_seen", choiceWords<BroodSeen>());
    for (const char* each :
         {"frass", "wet", "queen", "droppings", "mouse", "ropy", "scale", "sample_kept"})
        ask(each, yesNo);
    const auto line = [&](QLineEdit* edit, const char* name, const QString& label) {
        edit->setObjectName(QLatin1String(name));
        edit->setAccessibleName(label);
        form->addRow(label, edit);
    };
    line(m_cause, "cause", tr("Cause, as you put it"));
    line(m_by, "by", tr("Who looked"));
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setFocusPolicy(Qt::NoFocus);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(scroll);
    auto* down = new QVBoxLayout(inside);
    down->setContentsMargins(0, 0, 0, 0);
    down->addWidget(m_questions);
    m_reading->setObjectName(QStringLiteral("reading"));
    m_reading->setWordWrap(true);
    down->addWidget(m_reading);
    down->addStretch(1);
    scroll->setWidget(inside);
    column->addWidget(scroll, 1);
    column->addWidget(m_drafts);
    m_reason->setObjectName(QStringLiteral("reason"));
    m_reason->setWordWrap(true);
    m_reason->hide();
    column->addWidget(m_reason);
    auto* buttons = new QDialogButtonBox(this);
    auto* keepButton = buttons->addButton(tr("Keep"), QDialogButtonBox::ApplyRole);
    keepButton->setObjectName(QStringLiteral("keep"));
    keepButton->setProperty("primary", true);
    keepButton->setDefault(true);
    auto* printButton = buttons->addButton(tr("Print the card…"), QDialogButtonBox::ActionRole);
    printButton->setObjectName(QStringLiteral("print_card"));
    printButton->setAutoDefault(false);
    buttons->addButton(QDialogButtonBox::Close);
    column->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(keepButton, &QPushButton::clicked, this, &DeadOutForm::keep);
    connect(printButton, &QPushButton::clicked, this,
            [this] { Q_EMIT printAsked(m_colony->currentData().toLongLong()); });
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        m_reason->setText(text);
        m_reason->setVisible(bad);
    });
    connect(m_colony, &QComboBox::currentIndexChanged, this, &DeadOutForm::fill);
    // As one reads it; the fields were made in another order and moved into the scrolled page.
    QWidget* last = m_colony;
    std::vector<QWidget*> order(m_asked.begin(), m_asked.end());
    for (QWidget* each :
         std::initializer_list<QWidget*>{m_cause, m_by, &m_drafts->afresh(), keepButton,
                                         printButton, buttons->button(QDialogButtonBox::Close)})
        order.push_back(each);
    for (QComboBox* each : m_asked) m_drafts->watch(each, each->objectName());
    for (QLineEdit* each : {m_cause, m_by}) m_drafts->watch(each, each->objectName());
    connect(m_drafts, &FormDrafts::begunAfresh, this, [this] { m_asked.front()->setFocus(); });
    for (QWidget* each : order) {
        setTabOrder(last, each);
        last = each;
    }
    resize(look.space(560), look.space(620));
    fillColonies();
    m_colony->setFocus();
}

void DeadOutForm::keyPressEvent(QKeyEvent* event) {
    const bool enter = event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter;
    if (!enter || qobject_cast<QPushButton*>(focusWidget())) return QDialog::keyPressEvent(event);
    keep();
}

QComboBox* DeadOutForm::ask(const char* field, const QStringList& answers) {
    auto* box = new QComboBox(m_questions);
    box->setObjectName(QLatin1String(field));
    const QString question = deadOutQuestion(field);
    box->setAccessibleName(question);
    box->addItem(tr("left blank: not looked for"));
    box->addItems(answers);
    qobject_cast<QFormLayout*>(m_questions->layout())->addRow(question, box);
    m_answers[field] = box;
    m_asked.push_back(box);
    connect(box, &QComboBox::currentIndexChanged, this, &DeadOutForm::showTyped);
    return box;
}

void DeadOutForm::fillColonies() {
    m_cards = deadOuts(m_session.read(), m_on);
    const QVariant chosen = m_colony->currentData();
    const QSignalBlocker quiet(m_colony);
    m_colony->clear();
    for (const DeadOutCard& card : m_cards)
        m_colony->addItem(tr("%1, %2: %3")
                              .arg(fromUtf8(card.hive.mark.text()), fromUtf8(card.yard.name.text()),
                                   holdStateText(card)),
                          static_cast<qlonglong>(card.colony.id.number));
    if (const int at = m_colony->findData(chosen); at >= 0) m_colony->setCurrentIndex(at);
    fill();
}

void DeadOutForm::fill() {
    const int at = m_colony->currentIndex();
    if (at < 0 || at >= static_cast<int>(m_cards.size())) return;
    const DeadOutCard& card = m_cards[static_cast<std::size_t>(at)];
    const DeadOut& said = card.answers;
    m_filling = true;
    m_drafts->leave();
    m_answers["cluster"]->setCurrentIndex(indexOf(said.cluster));
    m_answers["stores_near"]->setCurrentIndex(indexOf(said.stores));
    m_answers["brood_seen"]->setCurrentIndex(indexOf(said.brood));
    m_answers["frass"]->setCurrentIndex(indexOf(said.frass));
    m_answers["wet"]->setCurrentIndex(indexOf(said.wet));
    m_answers["queen"]->setCurrentIndex(indexOf(said.queen));
    m_answers["droppings"]->setCurrentIndex(indexOf(said.droppings));
    m_answers["mouse"]->setCurrentIndex(indexOf(said.mouse));
    m_answers["ropy"]->setCurrentIndex(indexOf(said.ropy));
    m_answers["scale"]->setCurrentIndex(indexOf(said.scale));
    m_answers["sample_kept"]->setCurrentIndex(indexOf(said.sampleKept));
    m_cause->setText(fromUtf8(said.cause));
    m_by->setText(fromUtf8(said.by));
    m_filling = false;
    // A card half answered is that colony's, and what follows is of the answers as they stand.
    if (m_drafts->begin(QStringLiteral("dead-out %1").arg(card.colony.id.number)))
        showTyped();
    else
        showReading(card);
}

DeadOut DeadOutForm::typed() const {
    DeadOut said;
    const auto box = [&](const char* field) { return m_answers.at(field); };
    said.cluster = chosenIn<DeadCluster>(box("cluster"));
    said.stores = chosenIn<StoresNear>(box("stores_near"));
    said.brood = chosenIn<BroodSeen>(box("brood_seen"));
    said.frass = saidIn(box("frass"));
    said.wet = saidIn(box("wet"));
    said.queen = saidIn(box("queen"));
    said.droppings = saidIn(box("droppings"));
    said.mouse = saidIn(box("mouse"));
    said.ropy = saidIn(box("ropy"));
    said.scale = saidIn(box("scale"));
    said.sampleKept = saidIn(box("sample_kept"));
    said.cause = m_cause->text().simplified().toStdString();
    said.by = m_by->text().simplified().toStdString();
    return said;
}

/// What would follow from the answers as they stand, before they are kept.
void DeadOutForm::showTyped() {
    const int at = m_colony->currentIndex();
    if (m_filling || at < 0 || at >= static_cast<int>(m_cards.size())) return;
    DeadOutCard card = m_cards[static_cast<std::size_t>(at)];
    card.answers = typed();
    card.reading = readingOf(card.answers);
    showReading(card);
}

void DeadOutForm::showReading(const DeadOutCard& card) {
    const QString warn = m_session.look().tone(Tone::Warn).name();
    QStringList lines;
    lines << tr("<b>Held for it:</b> %1.").arg(heldText(card).toHtmlEscaped());
    if (looksLikeDisease(card.answers) || card.everSuspected)
        lines << QStringLiteral("<span style=\"color:%1\"><b>%2</b></span>")
                     .arg(warn, quarantineCaution().toHtmlEscaped());
    lines << tr("<b>It:</b> %1.").arg(looksLikeList(card).toHtmlEscaped());
    lines << tr("<b>Its combs:</b> %1.").arg(combUseText(key(card.reading.combs)).toHtmlEscaped());
    for (const DoToday each : card.reading.today)
        lines << QStringLiteral("• %1").arg(doTodayText(key(each)).toHtmlEscaped());
    if (!card.stillToAnswer.empty()) {
        QStringList open;
        for (const std::string_view field : card.stillToAnswer) open << word(field);
        lines << tr("Until these are answered everything stays held: %1.")
                     .arg(open.join(QStringLiteral(", ")).toHtmlEscaped());
    }
    lines << noDiagnosis().toHtmlEscaped();
    m_reading->setText(lines.join(QStringLiteral("<br>")));
}

void DeadOutForm::keep() {
    const DeadOut said = typed();
    RecordDeadOut record;
    record.on = m_on;
    record.colony = Id<Colony>{m_colony->currentData().toLongLong()};
    record.cluster = said.cluster;
    record.stores = said.stores;
    record.brood = said.brood;
    record.frass = said.frass;
    record.wet = said.wet;
    record.queen = said.queen;
    record.droppings = said.droppings;
    record.mouse = said.mouse;
    record.ropy = said.ropy;
    record.scale = said.scale;
    record.sampleKept = said.sampleKept;
    record.cause = said.cause;
    record.by = said.by;
    if (!m_session.run(record)) return;
    m_kept = true;
    m_drafts->kept();
    fillColonies();
    m_reason->setText(tr("Kept. %1").arg(m_session.lastAsked()));
    m_reason->show();
}

bool askAboutDeadOuts(QWidget* parent, Session& session, Day on) {
    if (deadOuts(session.read(), on).empty()) {
        session.tell(DeadOutForm::tr(
            "No colony is written down as dead. In Yard, X on a hive says how a colony ended."));
        return false;
    }
    DeadOutForm form(session, on, parent);
    QObject::connect(&form, &DeadOutForm::printAsked, &form, [&](qlonglong colony) {
        if (const auto card = deadOutCard(session.read(), Id<Colony>{colony}, on))
            printWithPreview(&form, deadOutPage(session.read(), *card, on), session.look());
    });
    form.exec();
    return form.kept();
}

}  // namespace combwright
