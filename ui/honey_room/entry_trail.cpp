#include "ui/honey_room/entry_trail.h"

#include <QCoreApplication>
#include <algorithm>
#include <set>

namespace combwright {
namespace {

QString trailTr(const char* text) { return QCoreApplication::translate("entry_trail", text); }

/// What is done in this room; anything else is taken back where it was done.
bool isOfTheRoom(const std::string& action) {
    static const std::set<std::string> actions{
        "open-run",    "weigh-box",      "name-lost-box", "take-box-out", "spin-load",
        "fill-bucket", "weigh-cappings", "close-run",     "clip-peg",     "take-peg-off",
        "set-aside",   "settle-aside",   "open-gate",     "log-room-day", "amend"};
    return actions.contains(action);
}

}  // namespace

std::int64_t EntryTrail::newest() const {
    const auto last = m_session.season().history(1);
    return last.empty() ? 0 : last.front().seq;
}

std::vector<std::int64_t> EntryTrail::stepsSince(std::int64_t step) const {
    std::vector<std::int64_t> steps;
    const std::int64_t now = newest();
    if (now <= step) return steps;
    for (const JournalEntry& each :
         m_session.season().history(static_cast<std::size_t>(now - step)))
        if (each.seq > step && each.kind == StepKind::Do && each.stands) steps.push_back(each.seq);
    std::reverse(steps.begin(), steps.end());
    return steps;
}

bool EntryTrail::during(const QString& name, const std::function<bool()>& deed) {
    const std::int64_t before = newest();
    m_said.clear();
    const bool done = deed();
    if (auto steps = stepsSince(before); !steps.empty())
        m_entries.push_back({name, m_said, std::move(steps)});
    return done;
}

bool EntryTrail::alsoDuring(const QString& name, const std::function<bool()>& deed) {
    const std::size_t entries = m_entries.size();
    const bool done = during(name, deed);
    if (m_entries.size() <= entries || entries == 0 || m_entries[entries - 1].name != name)
        return done;
    Entry last = std::move(m_entries.back());
    m_entries.pop_back();
    auto& before = m_entries.back();
    before.steps.insert(before.steps.end(), last.steps.begin(), last.steps.end());
    before.said = last.said;
    return done;
}

QString EntryTrail::takeBack() {
    if (!m_session.hasSeason()) return {};
    const auto last = m_session.season().nextUndo();
    if (!last) {
        m_session.tell(trailTr("Nothing was entered yet."), true);
        return {};
    }
    // Something came between: taken back by Ctrl+Z, or done elsewhere.
    if (!m_entries.empty() && m_entries.back().steps.back() != last->seq) m_entries.clear();
    if (m_entries.empty() && !isOfTheRoom(last->info.action)) {
        m_session.tell(trailTr("The last thing kept was not entered here, so it stays. Ctrl+Z "
                               "takes it back: %1")
                           .arg(m_session.undoText()),
                       true);
        return {};
    }
    QString said = m_session.undoText();
    std::size_t steps = 1;
    if (!m_entries.empty()) {
        if (!m_entries.back().said.isEmpty()) said = m_entries.back().said;
        steps = m_entries.back().steps.size();
        m_entries.pop_back();
    }
    for (std::size_t n = 0; n < steps; ++n) {
        const auto next = m_session.season().nextUndo();
        m_session.undo();
        const auto after = m_session.season().nextUndo();
        // Refused, and told why.
        if (next && after && after->seq == next->seq) return {};
    }
    m_session.tell(trailTr("Taken back: %1").arg(said));
    return said;
}

}  // namespace combwright
