// What is taken back in the honey room: the last entry, the clock just started, a load with the
// clock, the letters and the drawing it had before it was written down.
#include <algorithm>

#include "ui/honey_room/honey_room_place.h"

namespace combwright {

/// What would be taken back next; 0 where nothing would.
std::int64_t HoneyRoomPlace::lastStep() const {
    const auto last = session().hasSeason() ? session().season().nextUndo() : std::nullopt;
    return last ? last->seq : 0;
}

/// A load is timed, and nothing was entered since its clock was started.
bool HoneyRoomPlace::clockIsLast() const {
    return m_spin->load() && m_clockMark && lastStep() <= *m_clockMark;
}

bool HoneyRoomPlace::lastIsLoad() const {
    return std::any_of(m_keptLoads.begin(), m_keptLoads.end(),
                       [last = lastStep()](const KeptLoad& each) { return each.step == last; });
}

/// The load written down last is not spun any more; its clock goes on as if nothing had been said.
bool HoneyRoomPlace::takeLoadBack() {
    const std::int64_t last = lastStep();
    const auto kept = std::find_if(m_keptLoads.begin(), m_keptLoads.end(),
                                   [last](const KeptLoad& each) { return each.step == last; });
    const KeptLoad before = *kept;
    if (m_entry->pad().trail().takeBack().isEmpty()) return false;
    // What was kept behind it was taken back before.
    m_keptLoads.erase(kept, m_keptLoads.end());
    if (m_spin->load()) return true;
    if (before.held) {
        m_turningLetters = before.turningLetters;
        m_clockMark = before.clockMark;
        m_load->freezeAgain(before.drawn);
        m_spin->putBack(before.taken);
    } else {
        keepLetters(before.letters);
    }
    reload();
    return true;
}

/// A load taken back turns on; done again with Ctrl+Shift+Z it is written down while it turns. Then
/// its clock stops, as it did the first time, and taken back once more it turns on.
void HoneyRoomPlace::writtenAgain(const Change& change) {
    for (const RowChange& row : change.rows) {
        const auto held = m_spin->load();
        if (!held || !held->begun) return;
        if (row.table != SpinLoad::table || row.kind != ChangeKind::Added) continue;
        const auto load = session().read().find(Id<SpinLoad>{row.id});
        const bool same = load && load->begun == held->begun &&
                          std::any_of(held->parts.begin(), held->parts.end(),
                                      [&load](const HeldLoad::Part& part) {
                                          return part.run == load->extraction;
                                      });
        if (!same) continue;
        KeptLoad kept;
        kept.held = true;
        kept.step = lastStep();
        kept.letters = m_letters;
        kept.turningLetters = m_turningLetters;
        kept.drawn = m_load->frozen();
        kept.clockMark = m_clockMark;
        kept.taken = *m_spin->take();
        m_keptLoads.push_back(kept);
        m_load->loadKept(held->number);
    }
}

void HoneyRoomPlace::takeBackOnce() {
    if (clockIsLast()) {
        const auto number = m_spin->load()->number;
        m_spin->abandon();
        m_clockMark.reset();
        if (!m_turningLetters.isEmpty()) keepLetters(m_turningLetters);
        m_turningLetters.clear();
        reload();
        return session().tell(
            tr("Taken back: the clock of load %1. It is not spun yet.").arg(number));
    }
    if (lastIsLoad())
        takeLoadBack();
    else
        m_entry->pad().trail().takeBack();
}

void HoneyRoomPlace::stoppedAfterAll() {
    if (!lastIsLoad() || m_entry->pad().trail().lastName() != QLatin1String("load"))
        return spun(Ran::Walked);
    const KeptLoad before = m_keptLoads.back();
    if (!takeLoadBack()) return;
    // The minutes are those it was said to have walked at.
    SpinDesk::Taken stands = before.taken;
    stands.watch = SpinWatch();
    m_spin->putBack(stands);
    spun(Ran::Stopped);
    if (!lastIsLoad()) return;
    // Taken back, it is as it was before anybody said how it ran.
    const std::int64_t step = m_keptLoads.back().step;
    m_keptLoads.back() = before;
    m_keptLoads.back().step = step;
}

/// Ctrl+Z: what stands in the line first, then what the pad's point takes back of clock and loads;
/// any other step is taken back as elsewhere.
bool HoneyRoomPlace::takeBackInRoom() {
    if (!m_entry->line()->text().isEmpty()) {
        m_entry->line()->clear();
        return true;
    }
    if (m_entry->pad().ask().what != PadAsk::What::Nothing) m_entry->pad().forget();
    if (!clockIsLast() && !lastIsLoad()) return false;
    takeBackOnce();
    return true;
}

}  // namespace combwright
