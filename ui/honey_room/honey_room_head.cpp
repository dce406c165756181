// What the day's extracting tells the window: its head and what it offers, the keys, how much
// waits, what it prints and which figures it explains.
#include <algorithm>
#include <cmath>

#include "core/places/explain/explain_honey_room.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/storage/queries/names.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/honey_room/room_sheets.h"

namespace combwright {

/// "Sun 8 Aug 2027 · 27.0 °C, 54 % damp"; what nobody measured is left out.
QString HoneyRoomPlace::dayAndRoom(const Extraction& run) const {
    const Day today = session().clock().today();
    QStringList parts{m_spin->load() ? shortDayText(today) : dayText(today)};
    if (run.closed)
        parts << tr("closed on %1").arg(shortDayText(*run.closed));
    else if (run.on != today)
        parts << tr("open since %1").arg(shortDayText(run.on));
    QStringList room;
    if (run.room) room << shownTemperature(run.room->celsius()).text();
    if (run.damp) room << tr("%1 % damp").arg(std::lround(run.damp->value() * 100));
    if (!room.isEmpty()) parts << room.join(QStringLiteral(", "));
    return parts.join(QStringLiteral(" · "));
}

PlaceHead HoneyRoomPlace::headOfExtracting() const {
    PlaceHead head;
    head.title = tr("Honey room");
    const auto run = m_run ? session().read().find(*m_run) : std::nullopt;
    if (!run) {
        head.under = tr("no run yet");
        head.action = tr("Enter a day");
        return head;
    }
    head.under = dayAndRoom(*run);
    if (m_spin->load()) return headOfSpin(head);
    if (m_balance && m_balance->buckets > Mass()) {
        head.big = {
            massFigure(static_cast<double>(m_balance->buckets.grams()), m_balance->bucketsHow),
            massUnit(), letter(m_balance->bucketsHow)};
        head.bigNote = tr("in the buckets");
        if (m_balance->unaccountedG && *m_balance->unaccountedG >= 0)
            head.bigNote += tr(",\n%1 missing")
                                .arg(massText(*m_balance->unaccountedG, m_balance->missingHow()));
    }
    if (m_load->view().hasLoad()) {
        head.action = tr("%1 spun").arg(m_load->loadName());
        head.actionKey = QStringLiteral("+");
    } else {
        head.action = m_open ? tr("Close the day") : tr("Enter a day");
    }
    return head;
}

void HoneyRoomPlace::actOfExtracting() {
    if (m_load->view().hasLoad())
        m_entry->pad().press(QLatin1Char('+'));
    else
        closeDay();
}

std::vector<KeyHint> HoneyRoomPlace::hintsOfExtracting() const {
    return {
        {QStringLiteral("↵"), tr("spin clock")},      {QStringLiteral("/ ↵"), tr("gate is open")},
        {QStringLiteral("//"), tr("frames by feel")}, {QStringLiteral("."), tr("take back")},
        {tr("Ctrl+↵"), tr("close the day")},          {tr("Ctrl+L"), tr("log of the day")}};
}

/// Boxes brought in and not spun out yet; those still on their hives do not wait here.
int HoneyRoomPlace::waiting() const {
    const Day today = session().clock().today();
    int boxes = 0;
    for (const Extraction& run : openRuns(session().read()))
        for (const RoomBox& each : roomBoxes(session().read(), run.id, today).waiting)
            boxes += each.entry.has_value();
    return boxes;
}

/// What is shown, as the person laid it out, and behind it the loads of the other open runs: who
/// pins a sheet up in the room spins from it all day.
std::vector<LoadSheet> HoneyRoomPlace::loadsToPrint() const {
    std::vector<LoadSheet> sheets{m_load->sheet()};
    const LoadRules alone{false, m_load->rules().mixKinds};
    for (const Extraction& run : openRuns(session().read())) {
        const auto& shown = sheets.front().runs;
        if (std::find(shown.begin(), shown.end(), run.name.text()) != shown.end()) continue;
        auto other = loadSheet(session().read(), {run.id}, session().clock().today(), alone);
        if (other) sheets.push_back(*std::move(other));
    }
    return sheets;
}

std::vector<PrintSheet> HoneyRoomPlace::sheetsOfExtracting() const {
    std::vector<PrintSheet> sheets{
        {QStringLiteral("loads"), tr("Extractor loads"),
         [this] { return loadsPage(session().read(), loadsToPrint(), session().clock().today()); }},
        {QStringLiteral("run-balance"), tr("Balance of the run"), [this] {
             const RunBalance& balance = m_balance ? *m_balance : *m_shown;
             return runBalancePage(session().read(), balance, session().clock().today());
         }}};
    if (!m_balance && !m_shown) sheets.pop_back();
    // A closed run has no loads to pin up: its balance comes first.
    else if (!m_open)
        std::swap(sheets.front(), sheets.back());
    for (PrintSheet& each : roomSheets(
             session(), [this] { return loadsToPrint(); }, [this] { return m_run; }))
        sheets.push_back(std::move(each));
    return sheets;
}

std::vector<Explained> HoneyRoomPlace::explainedOfExtracting() const {
    const Read& file = session().read();
    const Day today = session().clock().today();
    std::vector<Explained> figures;
    const auto add = [&](std::vector<Explained> more) {
        for (Explained& each : more) figures.push_back(std::move(each));
    };
    const bool atBalance = m_balanceView->hasFocus();
    if (atBalance && m_shown) add(explainRun(file, *m_shown));
    if (m_load->view().hasLoad())
        add(explainLoad(file, m_load->sheet(), m_load->view().load(), today));
    if (!atBalance && m_shown) add(explainRun(file, *m_shown));
    if (m_run) add(explainBuckets(file, *m_run, today));
    add(explainWaiting(roomBoxes(file, m_run, today), today));
    return figures;
}

}  // namespace combwright
