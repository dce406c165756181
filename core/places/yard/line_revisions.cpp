#include "core/places/yard/line_revisions.h"

#include <QCoreApplication>
#include <algorithm>
#include <set>

#include "core/model/yard/moves.h"
#include "core/model/yard/visit.h"
#include "core/storage/journal.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/revisions.h"
#include "core/words/shorthand.h"
#include "core/words/words.h"

namespace combwright {
namespace {

bool writesLine(const std::string& action) {
    return action == "write-line" || action == "look-into";
}

/// The text behind a key of a play line, as it stands there.
std::string_view saidAt(std::string_view line, std::string_view key) {
    const std::size_t at = line.find(key);
    if (at == std::string_view::npos) return {};
    const std::size_t from = at + key.size();
    return line.substr(from, line.find('"', from) - from);
}

/// Whether nothing was said in a field.
bool leftBlank(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return std::holds_alternative<std::monostate>(value) || (text && text->empty());
}

bool leavesOut(const SheetLine& first, const SheetLine& now) {
    for (const FieldInfo& field : SheetLine::fields())
        if (!leftBlank(field.valueIn(&first)) && leftBlank(field.valueIn(&now))) return true;
    const auto other = [](const auto& was, const auto& is) { return was && was != is; };
    return other(first.supersOn, now.supersOn) || other(first.supersOff, now.supersOff) ||
           other(first.deepsOn, now.deepsOn) || other(first.deepsOff, now.deepsOff) ||
           other(first.fed, now.fed) || other(first.whole, now.whole) ||
           other(first.left, now.left) || other(first.right, now.right);
}

}  // namespace

std::map<std::int64_t, std::vector<LineWas>> linesWrittenAnew(const Read& file, Id<Hive> hive) {
    std::map<std::int64_t, std::vector<LineWas>> anew;
    const auto lines = file.where<Inspection>({is("hive", hive)});
    if (lines.empty()) return anew;
    // A step names the hive as it was called then. Only a day with a second step is worth opening:
    // a hive has years of lines and hardly one of them was written twice.
    std::set<std::string, std::less<>> marks;
    if (const auto stand = file.find(hive)) marks.insert(stand->mark.text());
    for (const HiveMove& move : file.where<HiveMove>({is("hive", hive)}))
        marks.insert({move.fromMark.text(), move.toMark.text()});
    const Journal journal(file.database());
    std::map<std::string, std::vector<JournalEntry>, std::less<>> byDay;
    // By its number it is called all its life, by the window always; no other has it as its mark.
    marks.insert("#" + std::to_string(hive.number));
    for (const std::string& mark : marks)
        for (JournalEntry& entry : journal.linesSaidOf(mark)) {
            const std::string_view line = entry.info.line;
            if (saidAt(line, "\"hive\":\"") == mark)
                byDay[std::string(saidAt(line, "\"on\":\""))].push_back(std::move(entry));
        }
    for (auto& [day, entries] : byDay) {
        if (entries.size() < 2) continue;
        std::sort(entries.begin(), entries.end(),
                  [](const JournalEntry& a, const JournalEntry& b) { return a.seq < b.seq; });
        for (const JournalEntry& entry : entries)
            for (const Revised& each : revisedBy(file, entry.seq)) {
                const auto* was = std::get_if<std::string>(&each.was);
                if (each.table == Inspection::table && each.field->name == "line" && was)
                    anew[each.id].push_back({*was, entry.info.why});
            }
    }
    return anew;
}

std::vector<Question> lineQuestions(const Read& file, const RowChange& row, std::int64_t step) {
    if (row.table != Inspection::table || row.kind != ChangeKind::Changed) return {};
    const auto entry = Journal(file.database()).entry(step);
    if (!entry || entry->kind != StepKind::Do || !writesLine(entry->info.action)) return {};
    const auto inspection = file.find(Id<Inspection>{row.id});
    const auto visit = inspection ? file.find(inspection->visit) : std::nullopt;
    if (!visit) return {};
    for (const Revised& each : revisedBy(file, step)) {
        const auto* was = std::get_if<std::string>(&each.was);
        if (each.table != Inspection::table || each.id != row.id || each.field->name != "line" ||
            !was || was->empty())
            continue;
        if (!leavesOut(readShorthand(*was), readShorthand(inspection->line))) continue;
        return {{Asked::LineReplaced,
                 QCoreApplication::translate("questions",
                                             "%1 had a line that day: “%2”; it is replaced, and "
                                             "what it moved, fed or weighed taken back. Undo "
                                             "brings it back.")
                     .arg(fromUtf8(calledOn(file, inspection->hive, visit->on)), fromUtf8(*was))}};
    }
    return {};
}

}  // namespace combwright
