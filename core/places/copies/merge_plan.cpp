#include "core/places/copies/merge_plan.h"

#include <QFileInfo>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>

#include "core/places/copies/merge_planner.h"
#include "core/storage/journal.h"

namespace combwright {
namespace {

constexpr std::pair<MergeChoice, std::string_view> choiceWords[] = {{MergeChoice::Ours, "ours"},
                                                                    {MergeChoice::Theirs, "theirs"},
                                                                    {MergeChoice::One, "one"},
                                                                    {MergeChoice::Two, "two"}};

/// A time one copy took the other in: what the one got, by the number it had in the other.
struct TakenIn {
    std::int64_t step = 0;                     ///< of the one that took in
    std::int64_t upTo = 0;                     ///< of the one taken in: its newest step then
    std::map<RecordAt, std::int64_t> records;  ///< of the one taken in, of the other
};

TakenIn takenInBy(const Journal& journal, const Database& database, const JournalEntry& entry,
                  const QJsonObject& line) {
    TakenIn taken;
    taken.step = entry.seq;
    taken.upTo = line.value(QStringLiteral("up_to_step")).toInteger();
    std::map<std::string, std::vector<std::int64_t>> came;
    for (const RowChange& row : rowsIn(database, journal.changesOf(entry.seq)))
        if (row.kind == ChangeKind::Added) came[row.table].push_back(row.id);
    for (auto& [table, ids] : came) std::sort(ids.begin(), ids.end());
    std::map<std::string, std::size_t> next;
    const QJsonObject rows = line.value(QStringLiteral("rows")).toObject();
    const QJsonArray edits = rows.value(QStringLiteral("edits")).toArray();
    for (const auto& edit : edits) {
        const std::string table = edit[QLatin1String("add")].toString().toStdString();
        if (table.empty()) continue;
        const std::size_t at = next[table]++;
        if (at < came[table].size())
            taken.records[{table, edit[QLatin1String("as")].toInteger()}] = came[table][at];
    }
    const QJsonArray sames = rows.value(QStringLiteral("same")).toArray();
    for (const auto& same : sames)
        taken.records[{same[QLatin1String("of")].toString().toStdString(),
                       same[QLatin1String("theirs")].toInteger()}] =
            same[QLatin1String("ours")].toInteger();
    return taken;
}

/// Each time `one` took `other` in and kept it, oldest first.
std::vector<TakenIn> timesTakenIn(const Read& one, const Read& other) {
    std::vector<TakenIn> times;
    const Journal journal(one.database());
    const Journal theirs(other.database());
    for (const JournalEntry& entry : journal.entries(0)) {
        if (entry.kind != StepKind::Do || !entry.stands || entry.info.action != "merge-copy")
            continue;
        const QJsonObject line =
            QJsonDocument::fromJson(QByteArray::fromStdString(entry.info.line)).object();
        const std::int64_t step = line.value(QStringLiteral("up_to_step")).toInteger();
        const std::string digest = line.value(QStringLiteral("digest")).toString().toStdString();
        if (digest.empty() || theirs.digestOf(step) != digest) continue;
        times.push_back(takenInBy(journal, one.database(), entry, line));
    }
    std::reverse(times.begin(), times.end());
    return times;
}

}  // namespace

std::string_view key(MergeAsked asked) {
    switch (asked) {
        case MergeAsked::BothChanged:
            return "both_changed";
        case MergeAsked::ChangedAndGone:
            return "changed_and_gone";
        case MergeAsked::SameTwice:
            return "same_twice";
    }
    return "";
}

std::string_view key(MergeChoice choice) {
    for (const auto& [each, text] : choiceWords)
        if (each == choice) return text;
    return "";
}

std::optional<MergeChoice> mergeChoiceNamed(std::string_view word) {
    for (const auto& [each, text] : choiceWords)
        if (text == word) return each;
    return std::nullopt;
}

std::vector<MergeChoice> choicesFor(MergeAsked asked) {
    if (asked == MergeAsked::SameTwice) return {MergeChoice::One, MergeChoice::Two};
    return {MergeChoice::Ours, MergeChoice::Theirs};
}

std::size_t MergePlan::open() const {
    return static_cast<std::size_t>(
        std::count_if(questions.begin(), questions.end(),
                      [](const MergeQuestion& each) { return !each.chosen; }));
}

std::size_t MergePlan::count(ChangeKind kind) const {
    return static_cast<std::size_t>(std::count_if(
        edits.begin(), edits.end(), [kind](const MergeEdit& each) { return each.kind == kind; }));
}

Result<CopiesToMerge> CopiesToMerge::of(const Read& ours, const std::string& otherPath,
                                        const Clock& clock) {
    CopiesToMerge copies;
    copies.m_name = QFileInfo(QString::fromStdString(otherPath)).fileName().toStdString();
    copies.m_theirsAside = seasonAside(otherPath);
    copies.m_theirs = std::make_unique<Season>(
        Season::open(copies.m_theirsAside.path, clock, Database::Mode::ReadOnly));
    const Read& theirs = copies.m_theirs->read();
    copies.m_common = lastCommonStep(ours, theirs);
    if (copies.m_common == 0) return Refusal{Code::NotOfThis, {}, {{"path", otherPath}}};
    copies.m_since = copies.m_common;
    const Database* baseOf = &theirs.database();
    std::int64_t baseStep = copies.m_common;
    const auto we = timesTakenIn(ours, theirs);
    const auto they = timesTakenIn(theirs, ours);
    for (const TakenIn& time : we) {
        copies.m_known.insert(time.records.begin(), time.records.end());
        copies.m_since = std::max(copies.m_since, time.upTo);
        baseStep = copies.m_since;
    }
    for (const TakenIn& time : they)
        for (const auto& [at, id] : time.records) copies.m_known[{at.first, id}] = at.second;
    // Where they took us in last, what they had then is ours, and all of theirs may be new to us.
    if (!they.empty() && (we.empty() || they.back().upTo >= we.back().step)) {
        copies.m_since = copies.m_common;
        copies.m_baseHasOurIds = true;
        baseOf = &ours.database();
        baseStep = they.back().upTo;
    }
    auto base = asItStoodAside(*baseOf, baseStep, clock.today());
    if (!base) return base.error();
    copies.m_baseAside = *std::move(base);
    copies.m_base = std::make_unique<Season>(
        Season::open(copies.m_baseAside.path, clock, Database::Mode::ReadOnly));
    return copies;
}

MergePlan CopiesToMerge::plan(const Read& ours, const MergeAnswers& answers) const {
    const Read& theirs = m_theirs->read();
    const std::int64_t newest = newestStep(theirs);
    const MergeSides sides{ours,
                           theirs,
                           m_base->read(),
                           m_baseHasOurIds,
                           m_known,
                           rowsTouched(theirs, m_since, newest),
                           rowsAdded(theirs, m_common, newest),
                           rowsAdded(ours, m_common, newestStep(ours))};
    MergePlan plan = MergePlanner(sides, answers).plan();
    plan.from = m_name;
    plan.step = newest;
    plan.digest = Journal(theirs.database()).digestOf(newest);
    return plan;
}

}  // namespace combwright
