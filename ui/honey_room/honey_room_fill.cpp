// What the honey room shows, read anew: boxes, cautions, buckets and the balance at the foot.
#include <QLocale>
#include <algorithm>

#include "core/places/explain/explain_honey_room.h"
#include "core/places/honey_room/gate_minder.h"
#include "core/places/honey_room/room_day.h"
#include "core/places/pages/honey_room/day_log_page.h"
#include "core/places/pages/honey_room/room_day_words.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/common/raised_letters.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {
namespace {

QString reading(const std::optional<Known<Mass>>& mass) {
    const auto grams = mass ? mass->middle() : std::nullopt;
    return grams ? massKnown(*grams, mass->how) : QString();
}

}  // namespace

QString HoneyRoomPlace::muted(const QString& text) const {
    return QStringLiteral("<span style=\"color:%1\">%2</span>")
        .arg(look().tone(Tone::Muted).name(), text);
}

void HoneyRoomPlace::fillRuns() {
    auto runs = session().read().all<Extraction>();
    std::reverse(runs.begin(), runs.end());
    m_runs->clear();
    bool stillThere = false;
    for (const Extraction& run : runs) {
        QString text = fromUtf8(run.name.text());
        if (run.yard)
            text += QLatin1Char(' ') +
                    fromUtf8(nameOf(session().read(), Yard::table, run.yard->number));
        m_runs->addItem(text, static_cast<qlonglong>(run.id.number));
        stillThere = stillThere || run.id == m_run;
    }
    if (!stillThere) {
        m_run = runs.empty() ? std::nullopt : std::optional(runs.front().id);
        const auto open = openRuns(session().read());
        if (!open.empty()) m_run = open.front().id;
    }
    if (m_run) m_runs->setCurrentIndex(m_runs->findData(static_cast<qlonglong>(m_run->number)));
    m_runs->setVisible(!page() && !runs.empty());
    m_runs->adjustSize();
    const auto run = session().read().find(m_run);
    m_open = run && !run->closed;
}

std::vector<Id<Extraction>> HoneyRoomPlace::runsForLoads() const {
    if (!m_run || !m_open) return {};
    if (!m_load->rules().mixLots) return {*m_run};
    std::vector<Id<Extraction>> runs;
    for (const Extraction& run : openRuns(session().read())) runs.push_back(run.id);
    return runs;
}

void HoneyRoomPlace::readExtracting() {
    fillRuns();
    m_entry->setRun(m_run, m_open);
    m_balance.reset();
    if (m_run)
        if (auto balance = runBalance(session().read(), *m_run)) m_balance = *std::move(balance);
    m_empty->setVisible(!m_open);
    m_empty->setText(
        (m_run ? tr("This run is closed. For the next one type <b>open</b>, the name of its lot "
                    "and its yard, for instance <b>%1</b>, or press Ctrl+Enter for a form.")
               : tr("No run yet. Type <b>open</b>, the name of its lot and its yard, for instance "
                    "<b>%1</b>; Ctrl+Enter opens a form that enters a whole day."))
            .arg(m_entry->openExample().toHtmlEscaped()));
    LoadSheet sheet;
    if (const auto runs = runsForLoads(); !runs.empty())
        if (auto loads =
                loadSheet(session().read(), runs, session().clock().today(), m_load->rules()))
            sheet = *std::move(loads);
    layFelt(sheet, true);
    m_load->show(sheet, m_open && openRuns(session().read()).size() > 1);
    fillWaiting();
    fillCaution();
    fillBuckets();
    fillBalance();
    fillGate();
    fillDay();
    fillStrip();
    fillPile();
    arrange();
    Q_EMIT headChanged();
}

void HoneyRoomPlace::fillStrip() {
    const auto clipped = std::find_if(m_waiting->boxes().begin(), m_waiting->boxes().end(),
                                      [](const RoomBox& box) { return box.peg.has_value(); });
    const auto peg = clipped == m_waiting->boxes().end() ? 14 : *clipped->peg;
    m_pegKeys->setKeys(tr("%1 ↵ %2 ↵").arg(peg).arg(massFigure(21400, How::Weighed)),
                       tr("box on peg %1").arg(peg));
    m_bucketKeys->setKeys(tr("/3 ↵ %1 ↵ 17.2 ↵").arg(massFigure(13000, How::Weighed)),
                          tr("bucket 3, water"));
    const bool load = m_spin->load() || m_load->view().hasLoad();
    m_spun->setKeys(QStringLiteral("+"), tr("load spun"));
    m_walked->setKeys(QStringLiteral("−"), tr("it walked"));
    m_aside->setKeys(QStringLiteral("*"), tr("one frame set aside"));
    for (QPushButton* button : {m_spun, m_walked}) button->setVisible(load);
    m_aside->setVisible(m_open);
    m_bell->setVisible(load);
    m_closeDay->setKeys({}, m_open ? tr("Close the day") : tr("Enter a day"));
}

void HoneyRoomPlace::fillPile() {
    const auto rows = pile();
    m_pile->setVisible(!rows.empty());
    m_settle->setVisible(!rows.empty() && m_open);
    if (rows.empty()) return;
    QStringList parts;
    for (const SetAside& row : rows) parts << pileText(row).toHtmlEscaped();
    m_pile->setText(QStringLiteral("<b style=\"color:%1\">%2</b> %3")
                        .arg(look().tone(Tone::Warn).name(), tr("Set aside"),
                             parts.join(QStringLiteral("; "))));
}

void HoneyRoomPlace::fillGate() {
    m_gatePart->hide();
    if (!m_run || !m_open) return;
    const GateMinder gate =
        gateMinder(session().read(), *m_run, m_load->sheet(), session().clock().today(),
                   m_spin->turns() && m_spin->load());
    const QStringList lines = gateLines(gate);
    if (lines.isEmpty()) return;
    const bool warns = gate.now || gate.beforeNext || gate.bucketNearlyFull ||
                       gate.strainerBehind || !gate.emptyOf.empty() || !gate.emptyFor.empty();
    QStringList shown;
    for (const QString& line : lines) shown << withRaisedLetters(line);
    // What is to be done now stands first and bold.
    if (warns)
        shown.front() = QStringLiteral("<b style=\"color:%1\">%2</b>")
                            .arg(look().tone(Tone::Warn).name(), shown.front());
    m_gate->setText(shown.join(QStringLiteral("<br>")));
    QPalette bar = m_gateBar->palette();
    bar.setColor(QPalette::Window, look().tone(warns ? Tone::Warn : Tone::Line));
    m_gateBar->setPalette(bar);
    m_gateBar->setFixedWidth(look().space(4));
    m_gatePart->show();
}

void HoneyRoomPlace::fillDay() {
    m_day->hide();
    if (!m_run || !m_open) return;
    RoomNow now;
    now.now = session().clock().now();
    if (m_spin->turns()) {
        const SpinShown turning = m_spin->look();
        if (turning.sinceKnown) now.turningMin = static_cast<double>(turning.elapsedS) / 60.0;
    }
    const auto day = roomDay(session().read(), session().clock().today(), now);
    if (!day) return;
    const QStringList lines = roomDayLines(*day);
    if (lines.isEmpty()) return;
    m_day->setText(muted(lines.join(QLatin1Char(' ')).toHtmlEscaped()));
    m_day->show();
}

void HoneyRoomPlace::fillCaution() {
    m_cautionLine->setVisible(!cautionsSeen());
    const RoomBoxes room = roomBoxes(session().read(), m_run, session().clock().today());
    const auto most = room.heaviest ? room.heaviest->gross->middle() : std::nullopt;
    QStringList parts;
    for (const QString& each : roomSafety()) {
        if (each != liftSafety()) {
            parts << each.toHtmlEscaped();
            continue;
        }
        const QString lift = most && *most > liftLimitG
                                 ? QStringLiteral("<b style=\"color:%1\">%2</b>")
                                       .arg(look().tone(Tone::Warn).name(), each)
                                 : each;
        const QString heaviest =
            most ? QLatin1Char(' ') + muted(tr("(heaviest: %1, %2)")
                                                .arg(fromUtf8(room.heaviest->mark).toHtmlEscaped(),
                                                     massText(*most, How::Weighed)))
                 : QString();
        parts << lift + heaviest;
    }
    m_caution->setText(QStringLiteral("<b>%1</b> &nbsp; ").arg(tr("Once a day")) +
                       parts.join(QStringLiteral("&nbsp;· ")));
}

void HoneyRoomPlace::fillTable(const RoomBoxes& room) {
    m_table->clear();
    m_table->setColumnCount(6);
    m_table->setHorizontalHeaderLabels(
        {tr("Box"), tr("Hive"), tr("Full"), tr("Wet"), tr("Left"), tr("By")});
    m_table->setRowCount(static_cast<int>(room.waiting.size() + room.wet.size()));
    int row = 0;
    for (const auto* list : {&room.waiting, &room.wet})
        for (const RoomBox& box : *list) {
            const QStringList texts{
                fromUtf8(box.mark),
                box.hive.empty() ? QStringLiteral("?") : fromUtf8(box.hive),
                reading(box.gross).isEmpty() ? QStringLiteral("?") : reading(box.gross),
                reading(box.wet),
                box.left() && list == &room.waiting ? QString::number(*box.left()) : QString(),
                box.extractBy && list == &room.waiting ? dayAndMonth(*box.extractBy) : QString()};
            for (int column = 0; column < texts.size(); ++column)
                m_table->setItem(row, column, new QTableWidgetItem(texts[column]));
            ++row;
        }
    m_table->resizeColumnsToContents();
}

void HoneyRoomPlace::fillWaiting() {
    const Day today = session().clock().today();
    const RoomBoxes room = roomBoxes(session().read(), m_run, today);
    m_waiting->show(room);
    fillTable(room);
    QString by;
    if (room.extractBy) {
        const bool late = *room.extractBy < today;
        by = QStringLiteral("<b style=\"color:%1\">%2</b>")
                 .arg(look().tone(late ? Tone::Bad : Tone::Ink).name(),
                      (late ? tr("late: extract by %1") : tr("extract by %1"))
                          .arg(shortDayText(*room.extractBy)));
    }
    m_extractBy->setText(by);
    m_extractBy->setVisible(!by.isEmpty());
    QStringList foot;
    const auto loads = m_load->sheet().loads.size();
    if (loads > 0)
        foot << tr("%1 frames left: %2 loads").arg(m_load->sheet().framesLeft).arg(loads);
    const auto planned = std::count_if(room.waiting.begin(), room.waiting.end(),
                                       [](const RoomBox& box) { return !box.entry; });
    if (planned > 0) foot << tr("%1 of the plan, not weighed yet").arg(planned);
    m_waitingFoot->setText(foot.join(QStringLiteral("; ")));
    m_waitingFoot->setVisible(!foot.isEmpty());
}

void HoneyRoomPlace::fillBuckets() {
    m_right->setVisible(m_run.has_value());
    if (!m_run) return;
    const BucketSheet sheet = bucketSheet(session().read(), *m_run, session().clock().today());
    m_buckets->show(sheet);
    const QString count = !m_open ? tr("%1 filled").arg(sheet.filled)
                          : sheet.planned == 0
                              ? tr("%1 filled, how many nobody knows yet").arg(sheet.filled)
                              : tr("%1 of %2 filled").arg(sheet.filled).arg(sheet.planned);
    m_bucketTitle->setText(
        tr("Buckets") + QStringLiteral(" &nbsp; ") +
        QStringLiteral("<span style=\"font-weight:normal\">%1</span>").arg(muted(count)));
    QStringList foot;
    if (sheet.meanWaterPercent)
        foot << QStringLiteral("<b>%1</b> % %2, <span style=\"color:%3\"><b>%4</b></span>")
                    .arg(QLocale().toString(*sheet.meanWaterPercent, 'f', 1), tr("water"),
                         look().tone(Tone::Good).name(), tr("dry enough"));
    if (!sheet.tooWet.empty()) {
        QStringList marks;
        for (const std::string& mark : sheet.tooWet) marks << fromUtf8(mark);
        foot << QStringLiteral("<span style=\"color:%1\"><b>%2</b></span> %3")
                    .arg(look().tone(Tone::Warn).name(),
                         tr("%1: do not bottle.")
                             .arg(marks.join(QStringLiteral(", ")).toHtmlEscaped()),
                         tr("Over your %1 % of water.")
                             .arg(QLocale().toString(sheet.wettestPercent, 'f', 1)));
    }
    if (!sheet.readSince.empty()) {
        QStringList marks;
        for (const std::string& mark : sheet.readSince) marks << fromUtf8(mark);
        foot << muted(tr("Read again since the gate: %1.")
                          .arg(marks.join(QStringLiteral(", ")).toHtmlEscaped()));
    }
    m_bucketFoot->setText(foot.join(QStringLiteral("<br>")));
}

void HoneyRoomPlace::fillBalance() {
    const Read& file = session().read();
    m_shown = m_balance;
    QString beside;
    const bool toDraw = m_balance && (m_balance->run.closed ||
                                      (m_balance->outOfBoxesG && !m_balance->shares.empty() &&
                                       m_balance->bucketsHow != How::Unknown));
    if (!toDraw) {
        // Until this run can be drawn the one closed last stays in sight.
        m_shown.reset();
        for (const Extraction& run : file.all<Extraction>())
            if (run.closed)
                if (auto balance = runBalance(file, run.id)) m_shown = *std::move(balance);
        const auto run = file.find(m_run);
        if (run && !run->closed) {
            const LoadSheet& sheet = m_load->sheet();
            beside = tr("%1: %2 of %3 loads; its balance when boxes are weighed full and wet and "
                        "buckets are in")
                         .arg(fromUtf8(run->name.text()))
                         .arg(sheet.loadsDone)
                         .arg(sheet.loadsDone + static_cast<std::int64_t>(sheet.loads.size()));
        }
    } else if (m_balance->gotPerFrameG) {
        beside = tr("%1 %2 a frame").arg(massRateFigure(*m_balance->gotPerFrameG), massUnit());
    }
    m_balanceView->show(m_shown, beside);
    // Only of a run one has chosen: while the next is spun there is no time for it.
    m_learned->show(toDraw && m_balance->run.closed
                        ? reckonedAndGotOfRun(file, *m_balance, session().clock().today())
                        : ReckonedAndGot{});
}

}  // namespace combwright
