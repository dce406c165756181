#include "ui/honey_room/blend_form.h"

#include <QApplication>
#include <QHBoxLayout>
#include <QLocale>
#include <QScrollBar>
#include <algorithm>

#include "core/actions/honey/lots.h"
#include "core/model/storeroom/equipment.h"
#include "core/places/pages/honey/honey_store_page.h"
#include "core/places/pages/honey/vessel_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"
#include "ui/common/raised_letters.h"
#include "ui/honey_room/honey_forms.h"
#include "ui/print/print_dialog.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

enum class PourWish { Free, AllOfIt, StaysOut };

QLabel* aimLabel(const QString& text, QWidget* field, QWidget* parent) {
    auto* label = new QLabel(text, parent);
    label->setBuddy(field);
    return label;
}

/// A label and its field stay together where the row is broken.
QWidget* pairOf(const QString& text, QWidget* field, QWidget* parent) {
    auto* pair = new QWidget(parent);
    auto* row = new QHBoxLayout(pair);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(6);
    row->addWidget(aimLabel(text, field, pair));
    row->addWidget(field);
    return pair;
}

void setTone(QLabel* label, Tone tone, const Look& look) {
    QPalette palette = label->palette();
    palette.setColor(QPalette::WindowText, look.tone(tone));
    label->setPalette(palette);
}

QString lineNote(const BlendLine& line) {
    QStringList parts;
    for (const Hold& hold : line.held)
        parts << BlendForm::tr("held since %1: %2")
                     .arg(dayAndMonth(hold.since), choiceText(word(hold.why)));
    if (line.water && line.water->from != WaterFrom::AtTheGate)
        parts << waterKnownText(*line.water);
    if (line.leftOut == BlendLeftOut::NotWrittenOf) parts << word(key(line.leftOut));
    return parts.join(QStringLiteral("; "));
}

}  // namespace

BlendForm::BlendForm(Session& session, Day on, QWidget* parent)
    : QDialog(parent), m_session(session), m_on(on), m_scroll(new QScrollArea(this)) {
    setObjectName(QStringLiteral("blend"));
    setWindowTitle(tr("Pour together"));
    const Look& look = session.look();
    m_session.reading([this] {
        m_ownLine = waterLine(m_session.read(), m_on);
        if (auto all = blendPlan(m_session.read(), m_on, {m_ownLine, {}, {}, {}}))
            for (BlendLine& each : all->lines) m_lines.push_back({std::move(each), {}, {}, {}, {}});
    });
    m_drafts = new FormDrafts(session, this);
    auto* column = new QVBoxLayout(this);
    column->setSpacing(look.space(8));
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(m_scroll);
    auto* down = new QVBoxLayout(inside);
    down->setContentsMargins(0, 0, 0, 0);
    down->setSpacing(look.space(12));
    down->addWidget(buildAims());
    down->addWidget(buildLines());
    down->addWidget(buildFields());
    down->addStretch(1);
    m_scroll->setWidget(inside);
    column->addWidget(m_drafts);
    column->addWidget(m_scroll, 1);
    m_says = new QLabel(this);
    m_says->setObjectName(QStringLiteral("says"));
    m_warns = new QLabel(this);
    m_warns->setObjectName(QStringLiteral("warns"));
    m_refused = new QLabel(this);
    m_refused->setObjectName(QStringLiteral("reason"));
    for (QLabel* each : {m_says, m_warns, m_refused}) {
        each->setWordWrap(true);
        each->setTextFormat(each == m_says ? Qt::RichText : Qt::PlainText);
        column->addWidget(each);
    }
    setTone(m_warns, Tone::Warn, look);
    setTone(m_refused, Tone::Bad, look);
    auto* buttons = new QHBoxLayout;
    auto* cancel = new QPushButton(tr("Cancel"), this);
    auto* print = new QPushButton(tr("&Print what was proposed…"), this);
    print->setObjectName(QStringLiteral("print"));
    m_keep = new QPushButton(tr("&Keep the blend"), this);
    m_keep->setObjectName(QStringLiteral("keep"));
    m_keep->setProperty("primary", true);
    buttons->addWidget(cancel);
    buttons->addStretch(1);
    buttons->addWidget(print);
    buttons->addWidget(m_keep);
    column->addLayout(buttons);
    for (QPushButton* each : {cancel, print, m_keep, m_best}) each->setAutoDefault(false);
    connect(cancel, &QPushButton::clicked, this, &QDialog::reject);
    connect(m_keep, &QPushButton::clicked, this, &BlendForm::keep);
    connect(m_best, &QPushButton::clicked, this, &BlendForm::propose);
    connect(print, &QPushButton::clicked, this, [this] {
        if (!m_plan) propose();
        if (m_plan) printWithPreview(this, blendPage(m_session.read(), *m_plan), m_session.look());
    });
    connect(&session, &Session::told, this, [this](const QString& text, bool bad) {
        if (bad) refuse(text);
    });
    connect(qApp, &QApplication::focusChanged, this, [this, inside](QWidget*, QWidget* now) {
        if (now && inside->isAncestorOf(now)) m_scroll->ensureWidgetVisible(now);
    });
    m_drafts->begin(QStringLiteral("blend-honey"));
    connect(m_drafts, &FormDrafts::begunAfresh, this, [this] { m_target->setFocus(); });
    const QSize room = parent ? parent->window()->size() : QSize(1000, 780);
    resize(std::min(look.space(840), room.width() - 20),
           std::min(look.space(700), room.height() - 20));
    this->look();
    m_target->setFocus();
    m_target->selectAll();
}

void BlendForm::enter(QWidget* field, const char* name) {
    field->setObjectName(QLatin1String(name));
    if (auto* edit = qobject_cast<QLineEdit*>(field)) {
        m_drafts->watch(edit, edit->objectName());
        connect(edit, &QLineEdit::textChanged, this, &BlendForm::look);
    } else if (auto* box = qobject_cast<QComboBox*>(field)) {
        m_drafts->watch(box, box->objectName());
        connect(box, &QComboBox::currentIndexChanged, this, &BlendForm::look);
    }
}

QWidget* BlendForm::buildAims() {
    auto* part = new QWidget(m_scroll);
    auto* row = new FlowRow(part, m_session.look().space(12));
    m_target = new QLineEdit(QLocale().toString(m_ownLine, 'g', 4), part);
    m_target->setAccessibleName(tr("At most so much water, %"));
    m_target->setFixedWidth(m_session.look().space(64));
    enter(m_target, "target");
    m_container = new QComboBox(part);
    m_container->setAccessibleName(tr("Into"));
    m_container->addItem(tr("not said"), 0);
    for (const Equipment& each : m_session.read().all<Equipment>())
        if (each.item == EquipmentItem::Bucket && each.capacity)
            m_container->addItem(
                tr("%1, holds %2")
                    .arg(
                        each.name.empty() ? word(combwright::word(each.item)) : fromUtf8(each.name),
                        massText(static_cast<double>(each.capacity->grams()), How::Weighed)),
                static_cast<qlonglong>(each.capacity->grams()));
    enter(m_container, "container");
    m_holds = new QLineEdit(part);
    m_holds->setAccessibleName(tr("It holds to the brim, %1").arg(massUnit()));
    m_holds->setPlaceholderText(tr("50"));
    m_holds->setFixedWidth(m_session.look().space(84));
    enter(m_holds, "tank_holds");
    connect(m_container, &QComboBox::currentIndexChanged, this, [this] {
        const auto grams = m_container->currentData().toLongLong();
        if (grams > 0) m_holds->setText(massTyped(Mass::grams(grams)));
    });
    m_best = new QPushButton(tr("&Most honey at that"), part);
    m_best->setObjectName(QStringLiteral("most"));
    row->addWidget(pairOf(tr("At most, % water"), m_target, part));
    row->addWidget(pairOf(tr("Into"), m_container, part));
    row->addWidget(pairOf(tr("holds, %1").arg(massUnit()), m_holds, part));
    row->addWidget(m_best);
    connect(m_target, &QLineEdit::returnPressed, this, &BlendForm::propose);
    connect(m_holds, &QLineEdit::returnPressed, this, &BlendForm::propose);
    return part;
}

QWidget* BlendForm::buildLines() {
    const Look& look = m_session.look();
    auto* part = new QWidget(m_scroll);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(look.space(12));
    grid->setVerticalSpacing(look.space(2));
    int row = 0;
    const auto head = [&](int column, const QString& text) {
        auto* label = new QLabel(text, part);
        label->setFont(look.font(TextSize::Note));
        setTone(label, Tone::Muted, look);
        grid->addWidget(label, row, column);
    };
    head(0, tr("bucket or lot"));
    head(1, tr("there"));
    head(2, tr("water"));
    head(3, tr("in the proposal"));
    head(4, tr("pour, %1").arg(massUnit()));
    for (PourLine& each : m_lines) {
        ++row;
        const BlendLine& line = each.line;
        const QString name = fromUtf8(line.name);
        auto* called = new QLabel(name, part);
        called->setFont(look.font(TextSize::Body, true));
        called->setWordWrap(true);
        grid->addWidget(called, row, 0);
        grid->addWidget(
            new QLabel(line.there ? withRaisedLetters(massKnown(
                                        static_cast<double>(line.there->grams()), line.thereHow))
                                  : tr("not weighed"),
                       part),
            row, 1);
        auto* water = new QLabel(waterText(line.water), part);
        if (line.water && line.water->wettestPercent() > line.water->percent)
            setTone(water, Tone::Warn, look);
        grid->addWidget(water, row, 2);
        const QString tail = QString::number(line.vessel.bucket ? line.vessel.bucket->number * 2
                                                                : line.vessel.lot->number * 2 + 1);
        each.wish = new QComboBox(part);
        each.wish->setAccessibleName(tr("%1 in the proposal").arg(name));
        each.wish->addItems({tr("if it helps"), tr("all of it"), tr("stays out")});
        if (line.leftOut != BlendLeftOut::Not)
            each.wish->setItemText(0, tr("out: %1").arg(word(key(line.leftOut))));
        enter(each.wish, (QStringLiteral("wish_") + tail).toLatin1().constData());
        grid->addWidget(each.wish, row, 3);
        each.pour = new QLineEdit(part);
        each.pour->setAccessibleName(tr("Pour of %1, %2, or all").arg(name, massUnit()));
        each.pour->setPlaceholderText(tr("all, or 6.2"));
        each.pour->setMinimumWidth(look.space(84));
        enter(each.pour, (QStringLiteral("pour_") + tail).toLatin1().constData());
        connect(each.pour, &QLineEdit::returnPressed, this, [this] { focusNextChild(); });
        grid->addWidget(each.pour, row, 4);
        if (const QString note = lineNote(line); !note.isEmpty()) {
            auto* said = new QLabel(note, part);
            said->setFont(look.font(TextSize::Note));
            said->setWordWrap(true);
            setTone(said, line.held.empty() ? Tone::Muted : Tone::Bad, look);
            grid->addWidget(said, ++row, 0, 1, 5);
        }
    }
    if (m_lines.empty())
        grid->addWidget(new QLabel(tr("No honey stands in buckets or lots."), part), ++row, 0, 1,
                        5);
    grid->setColumnStretch(0, 3);
    grid->setColumnStretch(4, 1);
    return part;
}

QWidget* BlendForm::buildFields() {
    auto* part = new QWidget(m_scroll);
    auto* grid = new QGridLayout(part);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(m_session.look().space(12));
    int row = 0;
    const auto field = [&](QWidget* made, const QString& text, const char* name) {
        made->setAccessibleName(text);
        auto* label = aimLabel(text, made, part);
        grid->addWidget(label, row, 0);
        grid->addWidget(made, row++, 1);
        enter(made, name);
        if (auto* edit = qobject_cast<QLineEdit*>(made))
            connect(edit, &QLineEdit::returnPressed, this, &BlendForm::keep);
        return label;
    };
    m_name = new QLineEdit(part);
    m_name->setPlaceholderText(tr("Hill summer"));
    field(m_name, tr("Name of the lot"), "lot");
    m_place = new QLineEdit(part);
    m_place->setPlaceholderText(tr("may stay empty"));
    field(m_place, tr("Stands in"), "place");
    m_lid = new QComboBox(part);
    m_lid->addItem(tr("not said"), -1);
    m_lid->addItem(tr("on"), 1);
    m_lid->addItem(tr("off"), 0);
    field(m_lid, tr("Lid"), "lidded");
    m_net = new QLineEdit(part);
    m_net->setPlaceholderText(tr("may stay empty: then it is what went in"));
    field(m_net, tr("Weighed after, %1").arg(massUnit()), "net");
    m_reason = new QLineEdit(part);
    m_reason->setPlaceholderText(tr("why although a part is held back"));
    m_reasonLabel = field(m_reason, tr("Reason"), "reason_for_held");
    m_note = new QLineEdit(part);
    m_note->setPlaceholderText(tr("may stay empty"));
    field(m_note, tr("Note"), "note");
    grid->setColumnStretch(1, 1);
    return part;
}

double BlendForm::target() const {
    const auto typedTarget = typedNumber(m_target->text().trimmed());
    return typedTarget.value_or(m_ownLine);
}

std::optional<Mass> BlendForm::tankTyped() const {
    std::optional<Mass> holds;
    readsAs(m_holds->text(), holds);
    return holds;
}

BlendForm::TypedBlend BlendForm::typed() const {
    TypedBlend blend;
    std::vector<PartMeant> parts;
    for (const PourLine& each : m_lines) {
        const QString text = each.pour->text().simplified();
        if (text.isEmpty()) continue;
        PartMeant part{each.line.vessel, std::nullopt};
        const bool all = text.compare(QLatin1String("all"), Qt::CaseInsensitive) == 0;
        if (!all) {
            part.mass = text == each.proposedText && each.proposed > Mass()
                            ? std::optional(each.proposed)
                            : typedMass(text);
            if (!part.mass) {
                blend.wrong = tr("%1: “%2” is no weight in %3. Write 6.2, 6200 g or all.")
                                  .arg(fromUtf8(each.line.name), text, massUnit());
                return blend;
            }
        }
        parts.push_back(part);
    }
    blend.any = !parts.empty();
    blend.parts = blendLine(m_session.read(), parts);
    return blend;
}

void BlendForm::refuse(const QString& text) {
    m_refused->setText(text);
    m_refused->setVisible(!text.isEmpty());
}

void BlendForm::look() {
    if (!m_says) return;
    m_outcome.reset();
    QString refused;
    m_session.reading([&] {
        const TypedBlend blend = typed();
        refused = blend.wrong;
        if (!refused.isEmpty()) return;
        if (!blend.any) {
            m_outcome = BlendOutcome{};
            return;
        }
        const auto outcome = blendByHand(m_session.read(), m_on, blend.parts, tankTyped());
        if (outcome)
            m_outcome = *outcome;
        else
            refused = sentence(outcome.error());
    });
    refuse(refused);
    m_says->setText(m_outcome
                        ? withRaisedLetters(blendTexts(*m_outcome, target()).join(QLatin1Char(' ')))
                        : QString());
    const QStringList warnings = m_outcome ? blendWarnings(*m_outcome) : QStringList();
    m_warns->setText(warnings.join(QLatin1Char('\n')));
    m_says->setVisible(!m_says->text().isEmpty());
    m_warns->setVisible(!warnings.isEmpty());
    const bool held = m_outcome && !m_outcome->held.empty();
    m_reason->setVisible(held);
    m_reasonLabel->setVisible(held);
}

void BlendForm::propose() {
    BlendWanted wanted;
    wanted.targetPercent = target();
    wanted.tankHolds = tankTyped();
    for (const PourLine& each : m_lines) {
        const auto wish = static_cast<PourWish>(each.wish->currentIndex());
        if (wish == PourWish::AllOfIt) wanted.mustGoIn.push_back(each.line.vessel);
        if (wish == PourWish::StaysOut) wanted.stayOut.push_back(each.line.vessel);
    }
    Result<BlendPlan> plan = Refusal{Code::Missing, "parts", {}};
    if (!m_session.reading([&] { plan = blendPlan(m_session.read(), m_on, wanted); })) return;
    if (!plan) return refuse(sentence(plan.error()));
    m_plan = *plan;
    for (PourLine& each : m_lines) {
        const auto found =
            std::find_if(plan->lines.begin(), plan->lines.end(),
                         [&](const BlendLine& line) { return line.vessel == each.line.vessel; });
        each.proposed = found == plan->lines.end() ? Mass() : found->use;
        const bool all = found != plan->lines.end() && found->there && each.proposed > Mass() &&
                         each.proposed == *found->there;
        each.proposedText = all                      ? QStringLiteral("all")
                            : each.proposed > Mass() ? massTyped(each.proposed)
                                                     : QString();
        each.pour->setText(each.proposedText);
    }
    look();
    if (plan->outcome.mass <= Mass())
        refuse(tr("No honey whose weight and water are known comes to %1.")
                   .arg(waterPercentText(target())));
}

void BlendForm::keep() {
    const TypedBlend blend = typed();
    if (!blend.wrong.isEmpty()) return refuse(blend.wrong);
    if (!blend.any) return refuse(tr("Nothing is poured, so nothing was kept."));
    BlendHoney deed;
    deed.on = m_on;
    deed.parts = blend.parts;
    const auto called = lotNameTyped(m_session, m_name);
    if (!called) return;
    deed.lot = *called;
    if (!readField(m_session, m_net, deed.net) || !readField(m_session, m_holds, deed.tankHolds))
        return;
    const int lid = m_lid->currentData().toInt();
    if (lid >= 0) deed.lidded = lid == 1;
    deed.traits.place = typedWords(m_place);
    deed.reason = typedWords(m_reason);
    deed.note = typedWords(m_note);
    m_made = m_session.run(deed);
    if (!m_made) return;
    m_drafts->kept();
    accept();
}

std::optional<Id<Lot>> askToBlend(QWidget* parent, Session& session, Day on) {
    BlendForm form(session, on, parent);
    form.exec();
    return form.made();
}

}  // namespace combwright
