#include "ui/pull/pull_place.h"

#include <QFrame>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QLocale>
#include <QThreadPool>
#include <QVBoxLayout>
#include <QtConcurrentRun>

#include "core/actions/pull/plan.h"
#include "core/places/pages/pull_list_page.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {

PullPlace::PullPlace(Session& session, QWidget* parent) : Place(session, parent) {
    // Not by Tab: Shift+Tab from the board would come straight back to it.
    setFocusPolicy(Qt::ClickFocus);
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(24, 8, 24, 16);
    across->setSpacing(24);
    auto* left = new QVBoxLayout;
    m_empty =
        new QLabel(tr("No super stands on a hive yet. Put supers on in Yard, then look into them: "
                      "what is seen of a box is what a pull is reckoned from."),
                   this);
    m_empty->setWordWrap(true);
    m_scroll = new QScrollArea(this);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_board = new PullBoard(session, m_scroll);
    m_scroll->setWidget(m_board);
    m_box = new QLabel(this);
    m_box->setObjectName(QStringLiteral("chosen_box"));
    m_box->setWordWrap(true);
    m_box->setTextFormat(Qt::RichText);
    left->addWidget(m_empty);
    left->addWidget(m_scroll, 1);
    left->addWidget(m_box);
    across->addLayout(left, 5);

    auto* card = new QFrame(this);
    card->setProperty("card", true);
    auto* column = new QVBoxLayout(card);
    auto* title = new QLabel(QStringLiteral("<b>%1</b>").arg(tr("Limits")), card);
    column->addWidget(title);
    auto* grid = new QWidget(card);
    new QGridLayout(grid);
    grid->layout()->setContentsMargins(0, 0, 0, 0);
    column->addWidget(grid);
    addLimit(grid, tr("Leave for winter"), "winter_need", tr("kg a hive"));
    addLimit(grid, tr("Feed up to"), "feed_up_to", tr("kg a hive"));
    addLimit(grid, tr("Capped at least"), "min_capped", QStringLiteral("%"));
    addLimit(grid, tr("Water at most"), "max_water", QStringLiteral("%"));
    addLimit(grid, tr("Carry at most"), "carry", tr("kg in all"));
    addLimit(grid, tr("Boxes at most"), "boxes", {});
    addLimit(grid, tr("Clearer boards"), "clearer_boards", tr("owned"));
    m_follows = new QLabel(card);
    m_follows->setObjectName(QStringLiteral("follows"));
    m_follows->setWordWrap(true);
    m_follows->setTextFormat(Qt::RichText);
    m_follows->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    column->addWidget(m_follows, 1);
    // At large type the card is taller than the window; it scrolls rather than push the window out.
    auto* cardScroll = new QScrollArea(this);
    cardScroll->setFrameShape(QFrame::NoFrame);
    cardScroll->setWidgetResizable(true);
    cardScroll->setFocusPolicy(Qt::NoFocus);
    cardScroll->setWidget(card);
    across->addWidget(cardScroll, 2);

    connect(m_board, &PullBoard::currentChanged, this, &PullPlace::fillBox);
    connect(m_board, &PullBoard::decided, this, [this](std::int64_t box, PullVerdict verdict) {
        m_forced[box] = verdict;
        reckon();
    });
    connect(m_board, &PullBoard::decisionTakenBack, this, [this](std::int64_t box) {
        m_forced.erase(box);
        reckon();
    });
    connect(&m_watcher, &QFutureWatcher<PullSheet>::finished, this, [this] {
        if (!m_watcher.isCanceled()) show(m_watcher.result());
    });
    connect(&session, &Session::seasonChanged, this, [this] {
        m_forced.clear();
        m_limitsKnown = false;
    });
    connect(&session, &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    connect(&session, &Session::lookChanged, this, [this] {
        fillFollows();
        fillBox();
    });
}

PullPlace::~PullPlace() { m_watcher.waitForFinished(); }

QLineEdit* PullPlace::addLimit(QWidget* card, const QString& label, const char* key,
                               const QString& unit) {
    auto* grid = static_cast<QGridLayout*>(card->layout());
    const int row = grid->rowCount();
    auto* edit = new QLineEdit(card);
    edit->setObjectName(QLatin1String(key));
    edit->setAccessibleName(unit.isEmpty() ? label : QStringLiteral("%1, %2").arg(label, unit));
    edit->setAlignment(Qt::AlignRight);
    edit->setMaximumWidth(look().space(64));
    auto* text = new QLabel(label, card);
    text->setBuddy(edit);
    grid->addWidget(text, row, 0);
    grid->addWidget(edit, row, 1);
    grid->addWidget(new QLabel(unit, card), row, 2);
    m_limitFields.push_back({key, edit});
    // The answer follows each key; nothing is kept before the plan is.
    connect(edit, &QLineEdit::textEdited, this, &PullPlace::takeLimits);
    return edit;
}

QString PullPlace::limitText(const char* key) const {
    const auto* field = PlanLimits::fields().find(key);
    const Value value = field->valueIn(&m_limits);
    const auto* number = std::get_if<std::int64_t>(&value);
    if (!number) return {};
    switch (field->kind) {
        case Kind::Mass:
            return QLocale().toString(static_cast<double>(*number) / 1000.0, 'g', 6);
        case Kind::Share:
        case Kind::Percent:
            return QLocale().toString(static_cast<double>(*number) / 100.0, 'g', 6);
        default:
            return QString::number(*number);
    }
}

void PullPlace::fillLimits() {
    for (const LimitField& field : m_limitFields)
        if (!field.edit->hasFocus()) field.edit->setText(limitText(field.key));
}

void PullPlace::takeLimits() {
    for (const LimitField& each : m_limitFields) {
        const auto* field = PlanLimits::fields().find(each.key);
        const QString text = each.edit->text().trimmed();
        Value value;
        if (!text.isEmpty()) {
            const auto number = typedNumber(text);
            const double scale = field->kind == Kind::Mass    ? 1000.0
                                 : field->kind == Kind::Count ? 1.0
                                                              : 100.0;
            const double scaled = number.value_or(0) * scale;
            const bool fits = number && std::abs(scaled - std::round(scaled)) < 1e-6;
            if (fits) value = static_cast<std::int64_t>(std::llround(scaled));
            if (!fits || !field->setIn(&m_limits, value)) {
                session().tell(
                    tr("%1 is not a number that can be meant there; the last one holds.").arg(text),
                    true);
                return;
            }
            continue;
        }
        (void)field->setIn(&m_limits, value);
    }
    reckon();
}

void PullPlace::reload() {
    if (!session().hasSeason()) return;
    if (!m_limitsKnown) {
        m_limits = startingLimits(session().read(), session().clock().today());
        m_limitsKnown = true;
        fillLimits();
    }
    reckon();
}

void PullPlace::reckon() {
    // Plain values go to the other thread; a newer question makes an older answer worthless.
    std::vector<Id<Yard>> yards;
    for (const Yard& yard : openYards(session().read())) yards.push_back(yard.id);
    PullInput input =
        pullInput(session().read(), yards, session().clock().today(), m_limits, m_forced);
    m_watcher.setFuture(QtConcurrent::run(
        [input = std::move(input)]() mutable { return reckonPull(std::move(input)); }));
}

void PullPlace::settle() {
    m_watcher.waitForFinished();
    if (m_watcher.future().resultCount() > 0) show(m_watcher.result());
}

void PullPlace::show(PullSheet sheet) {
    m_sheet = std::move(sheet);
    bool anySuper = false;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives) anySuper = anySuper || !hive.boxes.empty();
    m_empty->setVisible(!anySuper);
    m_scroll->setVisible(anySuper);
    m_box->setVisible(anySuper);
    m_board->show(m_sheet);
    fillFollows();
    Q_EMIT headChanged();
}

void PullPlace::fillFollows() {
    const QString muted = look().tone(Tone::Muted).name();
    QString html =
        QStringLiteral("<b>%1</b><table width='100%' cellspacing='4'>").arg(tr("What follows"));
    const auto row = [&](const QString& what, const QString& value, const QString& under = {}) {
        html +=
            QStringLiteral("<tr><td>%1</td><td align='right'><b>%2</b></td></tr>").arg(what, value);
        if (!under.isEmpty())
            html +=
                QStringLiteral("<tr><td colspan='2'><small style='color:%1'>%2</small></td></tr>")
                    .arg(muted, under);
    };
    const double low = std::max(0.0, m_sheet.honey.grams - m_sheet.honey.spreadG);
    row(tr("Honey"), tr("%1 kg").arg(massFigure(m_sheet.honey.grams, How::ByEye)),
        tr("%1 to %2 kg. <b>As of today:</b> what the bees bring or eat until then is not in it.")
            .arg(massFigure(low, How::ByEye),
                 massFigure(m_sheet.honey.grams + m_sheet.honey.spreadG, How::ByEye)));
    row(tr("Boxes"), QString::number(m_sheet.taken),
        m_sheet.proven ? tr("No choice within these limits takes more: proven.")
                       : tr("Not proven the best; at most %1 kg more is possible.")
                             .arg(massFigure(m_sheet.boundG - m_sheet.honey.grams, How::Weighed)));
    if (m_sheet.day && m_sheet.taken > 0) {
        const DayPlan& day = *m_sheet.day;
        row(tr("Loads"), QString::number(day.loads),
            day.loadsIfMixed != day.loads ? tr("%1 if yards are mixed").arg(day.loadsIfMixed)
                                          : QString());
        const auto hours = [](double minutes) {
            return tr("%1 h %2")
                .arg(static_cast<int>(minutes) / 60)
                .arg(static_cast<int>(std::lround(minutes)) % 60, 2, 10, QLatin1Char('0'));
        };
        row(tr("Day"), hours(day.dayMin),
            tr("One uncaps while it spins; one pair of hands alone %1. One more saves %2 min.")
                .arg(hours(day.aloneMin))
                .arg(static_cast<int>(std::lround(day.oneMoreSavesMin))));
        row(tr("Buckets"), QString::number(day.bucketsWithSpare),
            tr("%1 and spare").arg(day.buckets));
        row(tr("Jars of %1 g").arg(m_sheet.jarG), QString::number(m_sheet.jars));
    }
    html += QStringLiteral("</table>");
    int hungry = 0;
    QStringList names;
    for (const PullYardRow& yard : m_sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            if (hive.shortG > 0) {
                ++hungry;
                names << QStringLiteral("%1 %2").arg(fromUtf8(hive.hive.mark.text()),
                                                     massFigure(hive.shortG, How::ByEye));
            }
    if (hungry)
        html += QStringLiteral("<p><b>%1</b> %2</p>")
                    .arg(tr("To feed, kg:"), names.join(QStringLiteral(", ")));
    m_follows->setText(html);
}

void PullPlace::fillBox() {
    const PullBoxRow* box = m_board->current();
    const PullHiveRow* hive = m_board->currentHive();
    if (!box || !hive) {
        m_box->clear();
        return;
    }
    QStringList lines;
    lines << QStringLiteral("<b>%1</b> %2")
                 .arg(tr("%1 on %2").arg(boxName(box->box), fromUtf8(hive->hive.mark.text())),
                      box->look ? boxLookText(*box) : tr("not looked into lately"));
    if (box->hold)
        lines << tr("Held back since %1: %2.")
                     .arg(dayText(box->hold->since), fromUtf8(word(box->hold->why)));
    if (hive->remainingG && box->honey) {
        const double stays = *hive->remainingG;
        const bool taken = box->verdict == PullVerdict::Take;
        const double without = taken ? stays : stays - box->honey->grams;
        const double with = taken ? stays + box->honey->grams : stays;
        lines << tr("Leave it: the hive keeps %1 of the %2 kg it needs. Take it: %3 kg, and %4 to "
                    "feed.")
                     .arg(massFigure(with, How::ByEye), massFigure(hive->needG, How::ByEye),
                          massFigure(without, How::ByEye),
                          massFigure(std::max(0.0, hive->needG - without), How::ByEye));
    } else if (!hive->nest) {
        lines << tr("How much stores the nest holds is not known: look first.");
    }
    m_box->setText(lines.join(QStringLiteral("<br>")));
}

PlaceHead PullPlace::head() const {
    PlaceHead head;
    head.title = tr("Pull");
    QStringList yards;
    for (const PullYardRow& yard : m_sheet.yards) yards << fromUtf8(yard.yard.name.text());
    head.under = tr("%1 · as of %2")
                     .arg(yards.join(QStringLiteral(", ")), dayText(session().clock().today()));
    if (m_sheet.taken > 0) {
        head.big = {massFigure(m_sheet.honey.grams, How::ByEye), tr("kg"),
                    letter(m_sheet.honey.how)};
        head.bigNote = tr("from %1 boxes,\ngive or take %2")
                           .arg(m_sheet.taken)
                           .arg(massFigure(m_sheet.honey.spreadG, How::ByEye));
        head.action = tr("Keep plan and print list");
        head.actionKey = tr("Ctrl+P");
    }
    return head;
}

std::vector<KeyHint> PullPlace::hints() const {
    return {{tr("T"), tr("take")}, {tr("L"), tr("leave")}, {tr("K"), tr("look first")}};
}

std::vector<PrintSheet> PullPlace::sheets() const {
    return {{QStringLiteral("pull-list"), tr("Pull list"), [this] {
                 return pullListPage(session().read(), m_sheet, session().clock().today());
             }}};
}

QString PullPlace::help() const {
    return tr(
        "Every super that could come off stands here with a verdict: take, leave or look first, "
        "and "
        "why. Whole boxes only; each hive keeps what it needs for winter, less what you are "
        "willing "
        "to feed. Boxes that are open, wet, hold brood, are held back or were not looked into "
        "lately "
        "stay.\n\nChange a limit at the right and the answer follows. T, L and K decide a box "
        "against "
        "the reckoning; Delete takes your decision back. What August brings or takes is not in it: "
        "it "
        "speaks as of today.\n\nA full super weighs up to 25 kg: over 23 kg lift with two.");
}

void PullPlace::act() {
    if (m_sheet.taken == 0) return;
    QStringList forced;
    for (const auto& [box, verdict] : m_forced)
        forced << QStringLiteral("#%1 %2").arg(box).arg(fromUtf8(word(verdict)));
    const Day today = session().clock().today();
    KeepPlan keep;
    keep.on = today;
    keep.forDay = today;
    keep.limits = m_limits;
    keep.force = forced.join(QStringLiteral(", ")).toStdString();
    if (!session().run(keep)) return;
    session().tell(tr("The plan is kept."));
    Q_EMIT printAsked();
}

}  // namespace combwright
