#include "core/actions/copies/adopt.h"

#include <QCoreApplication>
#include <QJsonDocument>
#include <QJsonObject>
#include <algorithm>
#include <map>
#include <set>

#include "core/actions/play.h"
#include "core/model/records.h"
#include "core/storage/as_it_stood.h"
#include "core/storage/journal.h"
#include "core/storage/queries/lineage.h"
#include "core/storage/queries/names.h"
#include "core/storage/sqlite/changes.h"
#include "core/words/words.h"

namespace combwright {
namespace {

using TableAndId = std::pair<std::string, std::int64_t>;

/// What follows from how many stand there, and moves along with others' deeds.
bool countsAlong(std::string_view field) { return field == "stand_order" || field == "level"; }

class Adoption {
  public:
    Adoption(Season& season, const Season& whatIf)
        : m_season(season), m_whatIf(whatIf), m_journal(whatIf.read().database()) {}

    Adopted adopted;

    void play(const JournalEntry& entry) {
        const std::string line = lineHere(entry);
        const PlayResult result = combwright::play(m_season, line);
        if (result.stopped) {
            adopted.conflicts.push_back({entry.seq, entry.info.action, AdoptConflict::Kind::Refused,
                                         result.stopped->refusal});
            return;
        }
        const std::int64_t step = result.steps.empty() ? 0 : result.steps.front().step;
        if (step) adopted.steps.push_back(step);
        compare(entry, step);
    }

  private:
    std::int64_t idHere(const std::string& table, std::int64_t id) const {
        const auto found = m_ids.find({table, id});
        return found == m_ids.end() ? id : found->second;
    }

    /// The line with what the what-if made anew called by the numbers it has here.
    std::string lineHere(const JournalEntry& entry) const {
        const ActionType* type = findActionType(entry.info.action);
        if (!type || m_ids.empty()) return entry.info.line;
        QJsonObject line =
            QJsonDocument::fromJson(QByteArray::fromStdString(entry.info.line)).object();
        bool changed = false;
        for (const FieldInfo& field : type->fields()) {
            if (field.kind != Kind::Reference) continue;
            const QString key = QString::fromStdString(field.key());
            const QString text = line.value(key).toString();
            bool isNumber = false;
            const qlonglong id = text.mid(1).toLongLong(&isNumber);
            if (!text.startsWith(QLatin1Char('#')) || !isNumber) continue;
            const std::int64_t here = idHere(std::string(field.refersTo), id);
            if (here == id) continue;
            line.insert(key, QStringLiteral("#%1").arg(here));
            changed = true;
        }
        if (!changed) return entry.info.line;
        return QJsonDocument(line).toJson(QJsonDocument::Compact).toStdString();
    }

    static std::map<std::string, std::vector<std::int64_t>> added(
        const std::vector<RowChange>& rows) {
        std::map<std::string, std::vector<std::int64_t>> ids;
        for (const RowChange& row : rows)
            if (row.kind == ChangeKind::Added) ids[row.table].push_back(row.id);
        for (auto& [table, list] : ids) std::sort(list.begin(), list.end());
        return ids;
    }

    void compare(const JournalEntry& entry, std::int64_t step) {
        const Database& there = m_whatIf.read().database();
        const Database& here = m_season.read().database();
        const Bytes planned = m_journal.changesOf(entry.seq);
        const Bytes done = step ? Journal(here).changesOf(step) : Bytes();
        const auto rowsThere = rowsIn(there, planned);
        const auto rowsHere = done.empty() ? std::vector<RowChange>() : rowsIn(here, done);
        const auto addedHere = added(rowsHere);
        bool same = true;
        for (const auto& [table, ids] : added(rowsThere)) {
            const auto found = addedHere.find(table);
            if (found == addedHere.end() || found->second.size() != ids.size()) {
                same = false;
                continue;
            }
            for (std::size_t i = 0; i < ids.size(); ++i) m_ids[{table, ids[i]}] = found->second[i];
        }
        std::set<TableAndId> touched;
        for (const RowChange& row : rowsHere) touched.insert({row.table, row.id});
        for (const RowChange& row : rowsThere)
            if (row.kind != ChangeKind::Added && !movesAlong(planned, row))
                same = same && touched.contains({row.table, idHere(row.table, row.id)});
        if (!same) {
            adopted.conflicts.push_back(
                {entry.seq, entry.info.action, AdoptConflict::Kind::OtherRecords});
            return;
        }
        changedSince(entry, planned, done);
    }

    /// Whether only its place among others was changed.
    bool movesAlong(const Bytes& planned, const RowChange& row) const {
        const RecordType* type = findRecordType(row.table);
        if (row.kind != ChangeKind::Changed || !type) return false;
        for (const ValueChange& value : valuesIn(m_whatIf.read().database(), planned))
            if (value.table == row.table && value.id == row.id &&
                !countsAlong(type->fields()[static_cast<std::size_t>(value.column)].name))
                return false;
        return true;
    }

    /// A value the what-if changed must have been here what it was there.
    void changedSince(const JournalEntry& entry, const Bytes& planned, const Bytes& done) {
        if (done.empty()) return;
        const auto here = valuesIn(m_season.read().database(), done);
        for (const ValueChange& value : valuesIn(m_whatIf.read().database(), planned)) {
            const RecordType* type = findRecordType(value.table);
            const FieldInfo& field = type->fields()[static_cast<std::size_t>(value.column)];
            if (countsAlong(field.name) || field.kind == Kind::Reference) continue;
            const std::int64_t id = idHere(value.table, value.id);
            for (const ValueChange& other : here) {
                if (other.table != value.table || other.id != id || other.column != value.column ||
                    other.was == value.was)
                    continue;
                AdoptConflict conflict{entry.seq, entry.info.action,
                                       AdoptConflict::Kind::ChangedSince};
                conflict.table = value.table;
                conflict.id = id;
                conflict.field = field.key();
                adopted.conflicts.push_back(std::move(conflict));
            }
        }
    }

    Season& m_season;
    const Season& m_whatIf;
    Journal m_journal;
    std::map<TableAndId, std::int64_t> m_ids;  ///< what the what-if made, and its number here
};

}  // namespace

QString conflictText(const Read& season, const AdoptConflict& conflict) {
    const auto say = [](const char* text) { return QCoreApplication::translate("what-if", text); };
    const QString deed = word(conflict.action);
    switch (conflict.kind) {
        case AdoptConflict::Kind::Refused:
            return say("Step %1, %2: %3").arg(conflict.step).arg(deed, sentence(conflict.refusal));
        case AdoptConflict::Kind::OtherRecords:
            return say("Step %1, %2: here it would touch other records than it did in the what-if.")
                .arg(conflict.step)
                .arg(deed);
        case AdoptConflict::Kind::ChangedSince:
            break;
    }
    return say("Step %1, %2: %3 %4 was changed in the season since (%5).")
        .arg(conflict.step)
        .arg(deed, word(conflict.table), fromUtf8(nameOf(season, conflict.table, conflict.id)),
             word(conflict.field));
}

Result<Adopted> adoptWhatIf(Season& season, const Season& whatIf, AdoptHow how) {
    const auto& mark = whatIf.copyMark();
    if (!mark || mark->kind != CopyKind::WhatIf)
        return Refusal{Code::NotFound, "what_if", {{"name", whatIf.path()}}};
    if (lastCommonStep(season.read(), whatIf.read()) < mark->step || mark->step == 0)
        return Refusal{Code::NotOfThis, {}, {{"path", whatIf.path()}}};
    auto entries = whatIf.history();
    std::reverse(entries.begin(), entries.end());
    Adoption adoption(season, whatIf);
    // What is tried or does not go is rolled back with the refusal; its code is never told.
    const auto done = season.together([&]() -> Result<void> {
        for (const JournalEntry& entry : entries)
            if (entry.seq > mark->step && entry.kind == StepKind::Do && entry.stands)
                adoption.play(entry);
        const bool keeps = how == AdoptHow::Keep && adoption.adopted.conflicts.empty();
        if (!keeps) return Refusal{Code::NothingToDo, {}, {}};
        return {};
    });
    if (!done && done.error().code != Code::NothingToDo) return done.error();
    if (!done) adoption.adopted.steps.clear();
    return std::move(adoption.adopted);
}

}  // namespace combwright
