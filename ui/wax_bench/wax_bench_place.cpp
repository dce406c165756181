#include "ui/wax_bench/wax_bench_place.h"

#include <QHeaderView>
#include <QLocale>
#include <QPointer>
#include <QPushButton>
#include <QShortcut>
#include <QTimer>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "core/places/wax_bench/wax_outlook.h"
#include "core/places/wax_bench/wax_waits.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/flow_row.h"
#include "ui/wax_bench/candle_forms.h"
#include "ui/wax_bench/hive_goods_forms.h"
#include "ui/wax_bench/mould_forms.h"
#include "ui/wax_bench/wax_forms.h"
#include "ui/wax_bench/wax_records_dialog.h"

namespace combwright {
namespace {

/// Lower than that, at the base font, the flow is one line and the evenings have the room.
constexpr int flowFrom = 560;

QString benchKilos(double grams) { return massRateFigure(grams) + QLatin1Char(' ') + massUnit(); }

QString dateText(const CandleDate& date) {
    QString what = fromUtf8(date.whatFor);
    if (what.isEmpty()) return dayText(date.by);
    what.front() = what.front().toUpper();
    return what + QStringLiteral(", ") + dayText(date.by);
}

}  // namespace

WaxBenchPlace::WaxBenchPlace(Session& session, QWidget* parent)
    : Place(session, parent),
      m_controls(new QWidget),
      m_dates(new QComboBox(m_controls)),
      m_whole(new QScrollArea(this)),
      m_body(new QWidget(m_whole)),
      m_flow(new FlowBoard(session, m_body)),
      m_heat(new HeatLine(session, false, m_body)),
      m_evenings(new EveningsGrid(session, m_body)),
      m_whatIf(new QLabel(m_body)),
      m_bites(new BitesCard(session, m_body)),
      m_empty(new QLabel(m_body)),
      m_table(new QTableWidget(m_body)),
      m_stock(new QLabel(m_body)),
      m_deeds(new QWidget(m_body)) {
    setFocusPolicy(Qt::ClickFocus);
    auto* controls = new QHBoxLayout(m_controls);
    controls->setContentsMargins(0, 0, 0, 0);
    controls->addWidget(m_dates);
    m_dates->setObjectName(QStringLiteral("candle_date"));
    m_dates->setAccessibleName(tr("Candles wanted by"));
    m_dates->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(0, 0, 0, 0);
    m_whole->setObjectName(QStringLiteral("wax_whole"));
    m_whole->setFrameShape(QFrame::NoFrame);
    m_whole->setWidgetResizable(true);
    m_whole->setFocusPolicy(Qt::NoFocus);
    m_whole->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_whole->setWidget(m_body);
    all->addWidget(m_whole);
    for (QLabel* each : {m_empty, m_whatIf, m_stock}) each->setWordWrap(true);
    m_empty->setObjectName(QStringLiteral("wax_empty"));
    m_whatIf->setObjectName(QStringLiteral("what_if"));
    m_stock->setObjectName(QStringLiteral("wax_stock"));
    m_table->setObjectName(QStringLiteral("wax_table"));
    m_table->setAccessibleName(tr("Wax bench as a table"));
    m_table->setTabKeyNavigation(false);
    m_table->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_table->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_table->verticalHeader()->hide();
    m_table->setWordWrap(true);
    m_table->hide();
    auto* column = new QVBoxLayout(m_body);
    column->addWidget(m_flow);
    column->addWidget(m_heat);
    column->addWidget(m_table, 1);
    column->addWidget(m_empty);
    column->addWidget(m_evenings);
    column->addWidget(m_whatIf);
    column->addWidget(m_bites);
    column->addWidget(m_stock);
    column->addWidget(m_deeds);
    column->addStretch();
    m_whatIf->hide();
    addDeeds();
    listen();
    arrange();
}

void WaxBenchPlace::addKey(Qt::Key key, const QString& what, const std::function<void()>& deed) {
    auto* shortcut = new QShortcut(QKeySequence(key), this);
    shortcut->setWhatsThis(what);
    shortcut->setContext(Qt::WidgetWithChildrenShortcut);
    connect(shortcut, &QShortcut::activated, this, deed);
}

void WaxBenchPlace::addDeed(QLayout* row, Qt::Key key, const QString& text, const char* name,
                            Deed deed) {
    auto* button =
        new QPushButton(text + QStringLiteral("  ") + QKeySequence(key).toString(), m_deeds);
    button->setObjectName(QLatin1String(name));
    button->setProperty("small", true);
    button->setAccessibleName(text);
    row->addWidget(button);
    const auto doIt = [this, deed = std::move(deed)] {
        // Another kind of candle makes the fields anew while the form is open.
        const QPointer<QWidget> before = focusWidget();
        deed(this, session(), session().clock().today());
        if (before && before->isVisible())
            before->setFocus();
        else
            setFocus();
    };
    connect(button, &QPushButton::clicked, this, doIt);
    addKey(key, text, doIt);
}

void WaxBenchPlace::addDeeds() {
    auto* rows = new QVBoxLayout(m_deeds);
    rows->setContentsMargins(0, 0, 0, 0);
    rows->setSpacing(4);
    const auto group = [&](const QString& words) {
        auto* line = new QWidget(m_deeds);
        auto* row = new FlowRow(line, 6);
        auto* label = new QLabel(words, line);
        row->addWidget(label);
        m_groupWords.push_back(label);
        rows->addWidget(line);
        return row;
    };
    auto* wax = group(tr("Wax"));
    addDeed(wax, Qt::Key_G, tr("Gather"), "do_gather", askToGatherWax);
    addDeed(wax, Qt::Key_S, tr("Step of a batch"), "do_step", askToWorkWax);
    addDeed(wax, Qt::Key_H, tr("On heat"), "do_heat", askToHeatWax);
    addDeed(wax, Qt::Key_C, tr("Cast a block"), "do_block", askToCastBlock);
    addDeed(wax, Qt::Key_U, tr("Wax leaves"), "do_use", askToUseWax);
    addDeed(wax, Qt::Key_K, tr("Keep raw wax"), "do_keep", askToKeepWax);
    addDeed(wax, Qt::Key_R, tr("Propolis"), "do_propolis", askAboutPropolis);
    auto* candles = group(tr("Candles"));
    addDeed(candles, Qt::Key_P, tr("Pour"), "do_pour", askToPour);
    addDeed(candles, Qt::Key_F, tr("Finish"), "do_finish", askToFinish);
    addDeed(candles, Qt::Key_W, tr("Wanted"), "do_wish", askToWish);
    addDeed(candles, Qt::Key_V, tr("No longer wanted"), "do_drop", askToDropWish);
    addDeed(candles, Qt::Key_E, tr("Evenings"), "do_evenings", askForEvenings);
    addDeed(candles, Qt::Key_A, tr("One evening"), "do_evening", askForEvening);
    addDeed(candles, Qt::Key_M, tr("Add moulds"), "do_mould", askToAddMould);
    addDeed(candles, Qt::Key_X, tr("Moulds gone"), "do_retire", askToRetireMould);
    addDeed(candles, Qt::Key_B, tr("Burn test"), "do_burn", askToTestBurn);
    addDeed(candles, Qt::Key_N, tr("Wick"), "do_wick", askAboutWick);
    auto* jars = group(tr("On a hive"));
    addDeed(jars, Qt::Key_J, tr("Small project"), "do_project", askToStartProject);
    addDeed(jars, Qt::Key_I, tr("Its next step"), "do_project_step", askToWorkProject);
    addDeed(jars, Qt::Key_L, tr("Look at it"), "do_project_look", askToLookAtProject);
    addKey(Qt::Key_O, tr("the pot is off"), [this] {
        if (m_heat->shown().empty()) return session().tell(tr("No pot is on heat."));
        m_heat->tickOff();
    });
    addKey(Qt::Key_Q, tr("I am here: the clock is quiet for a quarter of an hour"),
           [this] { m_heat->quiet(); });
    addKey(Qt::Key_T, tr("all of it as a table, and back"), [this] { toggleTable(); });
    addKey(Qt::Key_D, tr("the day candles are wanted by"),
           [this] { m_dates->setFocus(Qt::ShortcutFocusReason); });
}

void WaxBenchPlace::listen() {
    connect(m_dates, &QComboBox::currentIndexChanged, this, [this](int index) {
        if (m_filling || index < 0 || index >= static_cast<int>(m_known.size())) return;
        m_date = m_known[static_cast<std::size_t>(index)];
        m_evenings->forget();
        reload();
    });
    connect(m_flow, &FlowBoard::opened, this, &WaxBenchPlace::openRecords);
    connect(m_evenings, &EveningsGrid::typedChanged, this, [this] {
        session().reading([this] {
            readPlan();
            showPlan();
        });
        Q_EMIT headChanged();
    });
    connect(m_evenings, &EveningsGrid::entered, this,
            [this](Id<GoodsKind> kind, qlonglong cavities) {
                if (changeMoulds(this, session(), kind, cavities, session().clock().today()))
                    reload();
            });
    connect(&session(), &Session::seasonChanged, this, [this] {
        m_date.reset();
        m_plan.reset();
        m_evenings->forget();
    });
    connect(&session(), &Session::changed, this, [this] {
        if (isVisible()) reload();
    });
    connect(&session(), &Session::lookChanged, this, [this] {
        arrange();
        fillStock();
    });
}

std::optional<DueWhere> WaxBenchPlace::worksAt() const { return DueWhere::WaxBench; }

void WaxBenchPlace::arrange() {
    const int side = look().space(24);
    m_body->layout()->setContentsMargins(side, look().space(8), side, look().space(8));
    m_body->layout()->setSpacing(look().space(8));
    for (QLabel* each : m_groupWords) {
        each->setFont(look().font(TextSize::Note, true));
        each->setMinimumWidth(look().space(64));
        each->setFixedHeight(look().target());
    }
    m_stock->setFont(look().font(TextSize::Note));
    m_whatIf->setFont(look().font(TextSize::Body));
    m_flow->setLow(height() < look().space(flowFrom));
    m_flow->setVisible(!m_tableShown);
    m_table->setVisible(m_tableShown);
    m_table->setMinimumHeight(look().space(320));
    m_evenings->setVisible(!m_tableShown && m_plan);
    m_bites->setVisible(!m_tableShown && m_plan && !m_plan->wants.empty());
    m_empty->setVisible(!m_plan);
}

void WaxBenchPlace::resizeEvent(QResizeEvent* event) {
    Place::resizeEvent(event);
    arrange();
}

void WaxBenchPlace::focusInEvent(QFocusEvent*) {
    if (m_tableShown)
        m_table->setFocus();
    else if (QLineEdit* first = m_evenings->field(0); m_plan && first)
        first->setFocus();
    else
        m_flow->setFocus();
}

int WaxBenchPlace::waiting() const {
    return waxThatWaits(session().read(), session().clock().today());
}

bool WaxBenchPlace::takeBack() {
    if (m_evenings->typed().empty()) return false;
    m_evenings->forget();
    reload();
    return true;
}

void WaxBenchPlace::fillDates() {
    m_known = candleDates(session().read(), session().clock().today());
    const auto same = std::find_if(m_known.begin(), m_known.end(), [this](const CandleDate& each) {
        return m_date && each.by == m_date->by && each.whatFor == m_date->whatFor;
    });
    if (same == m_known.end())
        m_date.reset();
    else
        m_date = *same;
    m_filling = true;
    m_dates->clear();
    for (const CandleDate& each : m_known) m_dates->addItem(dateText(each));
    if (m_date) m_dates->setCurrentIndex(static_cast<int>(same - m_known.begin()));
    m_dates->setVisible(!m_known.empty());
    // What the head measures is what it will be.
    m_dates->setMinimumWidth(m_dates->sizeHint().width());
    m_controls->layout()->activate();
    m_filling = false;
}

void WaxBenchPlace::readPlan() {
    m_plan.reset();
    m_refused.clear();
    const auto plan = candleEvenings(session().read(), session().clock().today(), m_date, {},
                                     m_evenings->typed());
    if (!plan)
        m_refused = sentence(plan.error());
    else if (*plan)
        m_plan = **plan;
}

void WaxBenchPlace::showPlan() {
    if (m_plan) {
        m_evenings->show(*m_plan, eveningBoard(session().read(), *m_plan));
        m_bites->show(*m_plan);
    }
    m_flow->show(waxFlow(m_bench, m_plan ? &*m_plan : nullptr), m_plan ? &*m_plan : nullptr);
    QStringList ifs;
    for (const CavitiesIf& each : m_evenings->typed())
        for (const CandlesWantedShown& kind :
             m_plan ? m_plan->kinds : std::vector<CandlesWantedShown>{})
            if (kind.kind.id == each.kind)
                ifs << tr("%1 with %2 cavities")
                           .arg(fromUtf8(kind.kind.name.text()))
                           .arg(each.cavities);
    m_whatIf->setVisible(!ifs.isEmpty() && !m_tableShown);
    m_whatIf->setText(tr("What if: %1. Nothing is kept; Enter has moulds come or go, Esc lets it "
                         "be.")
                          .arg(ifs.join(QStringLiteral(", "))));
    m_empty->setText(
        !m_refused.isEmpty()
            ? m_refused
            : tr("No candles are wanted from today on. M adds a mould and the candle it makes, W "
                 "says how many are wanted by when, E which evenings are free; then it stands here "
                 "what is short first."));
    if (m_plan && !m_plan->unknown.empty()) {
        QStringList names;
        for (const std::string& each : m_plan->unknown) names << fromUtf8(each);
        m_whatIf->setVisible(!m_tableShown);
        m_whatIf->setText(tr("What one %1 weighs nobody knows: give its mould a volume by water or "
                             "by size.")
                              .arg(names.join(QStringLiteral(", "))));
    }
    fillTable();
}

void WaxBenchPlace::readAnew() {
    if (!session().hasSeason()) return;
    m_bench = waxBench(session().read(), session().clock().today());
    fillDates();
    readPlan();
    showPlan();
    fillStock();
    m_heat->look();
    arrange();
    Q_EMIT headChanged();
}

QString WaxBenchPlace::balanceWords() const {
    const WaxYear& year = m_bench.year;
    if (!year.balance)
        return tr("%1: more wax went out than there was; look at the uses.").arg(year.year);
    if (year.balance->inG <= 0) return tr("No clean wax in %1 yet.").arg(year.year);
    QStringList parts{tr("in %1").arg(benchKilos(year.balance->inG))};
    if (year.balance->outG > 0) parts << tr("out %1").arg(benchKilos(year.balance->outG));
    if (year.moved.lostG > 0) parts << tr("of that lost %1").arg(benchKilos(year.moved.lostG));
    parts << tr("in stock %1").arg(benchKilos(year.balance->inStockG));
    QString said = tr("%1: %2.").arg(year.year).arg(parts.join(QStringLiteral(", ")));
    if (year.per100)
        said += tr(" %1 kg clean on 100 kg of honey; published 1 to 2.")
                    .arg(QLocale().toString(year.per100->per100, 'f', 1));
    return said;
}

std::pair<QStringList, QStringList> WaxBenchPlace::toPourWith() const {
    QStringList moulds;
    for (const MouldShown& each : m_bench.moulds)
        moulds << QStringLiteral("%1 %2").arg(fromUtf8(each.mould.name.text()).toHtmlEscaped(),
                                              QString::number(each.mould.cavities.value()));
    QStringList wick;
    for (const auto& [size, left] : m_bench.wick)
        wick << tr("%1 %2 m").arg(fromUtf8(size).toHtmlEscaped(),
                                  QLocale().toString(left.mm() / 1000.0, 'f', 1));
    return {moulds, wick};
}

void WaxBenchPlace::fillStock() {
    QStringList said;
    for (const BatchShown& batch : m_bench.batches)
        if (batch.washedOn)
            said << QStringLiteral("<span style=\"color:%1\"><b>%2</b></span>")
                        .arg(look().tone(Tone::Warn).name(),
                             tr("%1 was washed %2 and not melted: it ferments.")
                                 .arg(fromUtf8(batch.ledger.batch.name.text()).toHtmlEscaped(),
                                      shortDayText(*batch.washedOn)));
    QStringList raw;
    for (const BatchShown& batch : m_bench.batches)
        if (batch.waits && !batch.washedOn)
            raw << tr("%1 (%2, %3 days)")
                       .arg(fromUtf8(batch.ledger.batch.name.text()).toHtmlEscaped(),
                            batch.ledger.batch.kept ? choiceText(word(*batch.ledger.batch.kept))
                                                    : tr("how it is kept nobody said"))
                       .arg(batch.days);
    if (!raw.isEmpty()) said << tr("Raw wax waits: %1.").arg(raw.join(QStringLiteral(", ")));
    QStringList pours;
    for (const PourShown& pour : m_bench.unfinished)
        pours << tr("%1 %2, %3")
                     .arg(static_cast<qlonglong>(pour.pour.good.value()))
                     .arg(fromUtf8(pour.candle).toHtmlEscaped(),
                          pour.pour.trimmed    ? tr("label")
                          : pour.pour.released ? tr("trim and cut the wick")
                          : pour.setBy && *pour.setBy > m_bench.on
                              ? tr("sets until %1").arg(shortDayText(*pour.setBy))
                              : tr("out of the mould"));
    if (!pours.isEmpty()) said << tr("To finish: %1.").arg(pours.join(QStringLiteral("; ")));
    QStringList projects;
    for (const HiveProject& each : m_bench.projects)
        if (!each.lidded)
            projects << tr("%1, %2 pieces")
                            .arg(fromUtf8(each.name.text()).toHtmlEscaped())
                            .arg(static_cast<qlonglong>(each.pieces.value()));
    if (!projects.isEmpty()) said << tr("On hives: %1.").arg(projects.join(QStringLiteral("; ")));
    if (m_bench.propolis > Mass())
        said << tr("Propolis %1.")
                    .arg(shownPortion(static_cast<double>(m_bench.propolis.grams())).text());
    if (!m_plan) {
        // With a plan they stand in it.
        const auto [moulds, wick] = toPourWith();
        if (!moulds.isEmpty()) said << tr("Moulds: %1.").arg(moulds.join(QStringLiteral(", ")));
        if (!wick.isEmpty()) said << tr("Wick: %1.").arg(wick.join(QStringLiteral(", ")));
    }
    said << balanceWords();
    m_stock->setTextFormat(Qt::RichText);
    m_stock->setText(said.join(QStringLiteral(" &nbsp;·&nbsp; ")));
}

void WaxBenchPlace::fillTable() {
    m_table->clear();
    m_table->setColumnCount(4);
    m_table->setHorizontalHeaderLabels({tr("Part"), tr("What"), tr("How much"), tr("Note")});
    std::vector<QStringList> rows;
    for (const FlowBoard::Band& band : m_flow->bands())
        rows.push_back({band.part, band.name, spoken(band.figure), band.note});
    if (m_plan) {
        for (std::size_t n = 0; n < m_evenings->board().rows.size(); ++n) {
            const EveningsGrid::Ends ends = m_evenings->ends(n);
            const auto& kind = m_plan->kinds[m_evenings->board().rows[n].kind];
            rows.push_back({tr("by the moulds"), fromUtf8(kind.kind.name.text()), ends.byMoulds,
                            m_evenings->rowWords(n)});
        }
        for (const BitesCard::Line& line : m_bites->lines())
            rows.push_back({tr("what bites"), line.name,
                            tr("%1 of %2 %3").arg(line.have, line.need, line.unit),
                            line.verdict + QStringLiteral("; ") + line.note});
    }
    for (const MouldShown& each : m_bench.moulds)
        rows.push_back({tr("mould"), fromUtf8(each.mould.name.text()),
                        tr("%1 cavities").arg(static_cast<qlonglong>(each.mould.cavities.value())),
                        mouldOutlookText(each)});
    for (const auto& [size, left] : m_bench.wick)
        rows.push_back({tr("wick"), fromUtf8(size),
                        tr("%1 m").arg(QLocale().toString(left.mm() / 1000.0, 'f', 1)), QString()});
    m_table->setRowCount(static_cast<int>(rows.size()));
    for (std::size_t n = 0; n < rows.size(); ++n)
        for (int c = 0; c < 4; ++c)
            m_table->setItem(static_cast<int>(n), c, new QTableWidgetItem(rows[n][c]));
    m_table->horizontalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    m_table->horizontalHeader()->setSectionResizeMode(3, QHeaderView::Stretch);
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    if (!rows.empty()) m_table->setCurrentCell(0, 0);
}

void WaxBenchPlace::toggleTable() {
    m_tableShown = !m_tableShown;
    arrange();
    showPlan();
    if (m_tableShown)
        m_table->setFocus();
    else
        m_flow->setFocus();
}

void WaxBenchPlace::goFor(const GoTo& where) {
    setFocus();
    for (const auto& [table, record] : where.records) {
        WaxRecordsOf of;
        if (table == WaxBatch::table) of.batch = Id<WaxBatch>{record};
        if (table == GoodsKind::table) of.kind = Id<GoodsKind>{record};
        if (table == WaxBlock::table)
            session().reading([&, id = Id<WaxBlock>{record}] {
                if (const auto block = session().read().find(id)) of.shade = block->shade;
            });
        if (of == WaxRecordsOf()) continue;
        const int band = m_flow->choose(of);
        // Its bands are the first rows of the table.
        if (band >= 0) {
            m_table->setCurrentCell(band, 0);
            if (!m_tableShown) m_whole->ensureWidgetVisible(m_flow);
            return;
        }
        if (!of.batch) continue;
        // A batch long done with is on no band; its records are still there.
        QTimer::singleShot(0, this, [this, of] { openRecords(of); });
        return;
    }
}

void WaxBenchPlace::openRecords(const WaxRecordsOf& of) {
    std::vector<WaxRecordLine> lines;
    session().reading([&] { lines = waxRecords(session().read(), of, session().clock().today()); });
    showWaxRecords(this, look(), lines);
}

PlaceHead WaxBenchPlace::head() const {
    PlaceHead head;
    head.title = tr("Wax bench");
    if (!session().hasSeason()) return head;
    head.under = dayText(session().clock().today());
    const WaxYear& year = m_bench.year;
    if (year.per100 && year.crop)
        head.under += tr("  ·  %1 is %2 % of %3 honey")
                          .arg(benchKilos(static_cast<double>(year.clean.grams())),
                               QLocale().toString(year.per100->per100, 'f', 1),
                               massText(static_cast<double>(year.crop->grams()), How::Weighed));
    head.action = tr("Print candle plan");
    head.actionKey = printKeyText();
    if (!m_plan) {
        const WaxFlow flow = waxFlow(m_bench, nullptr);
        if (flow.shades.empty()) return head;
        How how = How::Weighed;
        for (const WaxFlowShade& shade : flow.shades) how = weaker(how, shade.how);
        head.big = {massRateFigure(flow.haveG), massUnit(), letter(how)};
        head.bigNote = tr("clean wax\nin blocks");
        return head;
    }
    const WaxFlow flow = waxFlow(m_bench, &*m_plan);
    const bool missing = flow.shortG > 0;
    head.big = {massRateFigure(missing ? flow.shortG : flow.overG), massUnit(),
                letter(How::Assumed)};
    if (missing) head.bigTone = Tone::Ink;
    const QString what = m_plan->date.whatFor.empty() ? dayAndMonth(m_plan->date.by)
                                                      : fromUtf8(m_plan->date.whatFor);
    head.bigNote =
        (missing ? tr("more wax wanted\nfor the %1") : tr("wax over\nafter the %1")).arg(what);
    return head;
}

std::vector<KeyHint> WaxBenchPlace::hints() const {
    if (!m_evenings->typed().empty())
        return {{QStringLiteral("↵"), tr("moulds come or go")},
                {QStringLiteral("Esc"), tr("let it be")}};
    return {{QStringLiteral("↵"), tr("open a band")}, {QStringLiteral("T"), tr("table")}};
}

}  // namespace combwright
