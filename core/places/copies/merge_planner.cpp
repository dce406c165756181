#include "core/places/copies/merge_planner.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/copies/merge_groups.h"
#include "core/places/copies/value_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr std::size_t mostValuesAsked = 6;

QString mergeSay(const char* text) { return QCoreApplication::translate("merge", text); }

bool isBlank(const Value& value) {
    const auto* text = std::get_if<std::string>(&value);
    return std::holds_alternative<std::monostate>(value) || (text && text->empty());
}

std::vector<Value> slice(const Row& row, const std::vector<std::size_t>& places) {
    std::vector<Value> values;
    for (const std::size_t i : places) values.push_back(row[i]);
    return values;
}

void takeOver(Row& row, const std::vector<std::size_t>& places, const Row& from) {
    for (const std::size_t i : places) row[i] = from[i];
}

bool allBlank(const std::vector<Value>& values) {
    return std::all_of(values.begin(), values.end(), isBlank);
}

bool inSet(const RowSet& rows, std::string_view table, std::int64_t id) {
    const auto found = rows.find(table);
    return found != rows.end() && found->second.contains(id);
}

std::int64_t numberAt(const Row& row, std::size_t i) {
    const auto* number = std::get_if<std::int64_t>(&row[i]);
    return number ? *number : 0;
}

std::size_t wholeField(const RecordType& type, std::string_view name) {
    const Fields& fields = type.fields();
    for (std::size_t i = 0; i < fields.size(); ++i)
        if (fields[i].name == name) return i;
    return 0;
}

/// Of a number counted among others: what only one changed, else the lower of the two, so that
/// both ways of putting them together begin alike.
Value countedOf(const Value* base, const Value& ours, const Value& theirs) {
    if (base && ours == *base) return theirs;
    if (base && theirs == *base) return ours;
    if (isBlank(ours) || isBlank(theirs)) return isBlank(ours) ? theirs : ours;
    return std::min(ours, theirs);
}

}  // namespace

bool MergePlanner::isNew(std::string_view table, std::int64_t theirs) const {
    return inSet(m_sides.madeThere, table, theirs) &&
           !m_sides.known.contains({std::string(table), theirs});
}

std::int64_t MergePlanner::here(std::string_view table, std::int64_t theirs) const {
    const RecordAt at{std::string(table), theirs};
    if (const auto found = m_sides.known.find(at); found != m_sides.known.end())
        return found->second;
    if (const auto found = m_twins.find(at); found != m_twins.end()) return found->second;
    return isNew(table, theirs) ? -theirs : theirs;
}

std::int64_t MergePlanner::there(std::string_view table, std::int64_t ours) const {
    for (const auto* map : {&m_sides.known, &m_twins})
        for (const auto& [at, id] : *map)
            if (id == ours && at.first == table) return at.second;
    return ours;
}

Row MergePlanner::translated(const RecordType& type, const Row& row) const {
    Row moved = row;
    const Fields& fields = type.fields();
    for (std::size_t i = 1; i < fields.size(); ++i)
        if (fields[i].kind == Kind::Reference && !isBlank(row[i]))
            moved[i] = here(fields[i].refersTo, std::get<std::int64_t>(row[i]));
    return moved;
}

std::optional<Row> MergePlanner::baseRow(const RecordType& type, std::int64_t theirs,
                                         std::int64_t ours) const {
    if (m_sides.baseHasOurIds) return recordRow(m_sides.base, type.table, ours);
    auto row = recordRow(m_sides.base, type.table, theirs);
    if (!row) return row;
    row = translated(type, *row);
    row->front() = ours;
    return row;
}

std::optional<MergeChoice> MergePlanner::ask(MergeQuestion question) {
    const auto found = m_answers.find(question.key);
    const auto choices = choicesFor(question.asked);
    if (found != m_answers.end() &&
        std::find(choices.begin(), choices.end(), found->second) != choices.end())
        question.chosen = found->second;
    m_plan.questions.push_back(question);
    return question.chosen;
}

QString MergePlanner::groupText(const RecordType& type, const Row& row,
                                const std::vector<std::size_t>& group, const Read& file) const {
    QStringList texts;
    for (const std::size_t i : group) {
        if (isBlank(row[i]) && group.size() > 1) continue;
        const FieldInfo& field = type.fields()[i];
        Value value = row[i];
        const Read* named = &file;
        // What comes in with the plan has its number there.
        if (field.kind == Kind::Reference && numberAt(row, i) < 0) {
            value = Value{-numberAt(row, i)};
            named = &m_sides.theirs;
        }
        const QString text = valueInWords(*named, field, value);
        texts << (field.part == ReadingPart::To ? mergeSay("to %1").arg(text) : text);
    }
    return texts.isEmpty() ? mergeSay("not known") : texts.join(QStringLiteral(", "));
}

Row MergePlanner::joined(const RecordType& type, std::int64_t id, const std::optional<Row>& base,
                         const Row& ours, const Row& theirs) {
    Row row = ours;
    for (const MergeGroup& group : mergeGroups(type)) {
        const auto o = slice(ours, group.fields);
        const auto t = slice(theirs, group.fields);
        const auto b = base ? slice(*base, group.fields) : std::vector<Value>();
        bool takesTheirs = base && o == b && t != b;
        const bool keepsOurs = o == t || (base && t == b) || (!base && allBlank(t));
        if (!base && o != t && allBlank(o)) takesTheirs = true;
        if (!takesTheirs && !keepsOurs) {
            const FieldInfo& field = type.fields()[group.fields.front()];
            MergeQuestion question;
            question.key = std::string(type.table) + "/" + std::to_string(id) + "/" + field.name;
            question.about = mergeSay("%1 %2: %3")
                                 .arg(word(type.table), recordInWords(m_sides.ours, type, ours),
                                      word(field.name));
            question.ours = groupText(type, ours, group.fields, m_sides.ours);
            question.theirs = groupText(type, theirs, group.fields, m_sides.ours);
            if (base) question.was = groupText(type, *base, group.fields, m_sides.ours);
            takesTheirs = ask(std::move(question)) == MergeChoice::Theirs;
            if (const MovesOf* moves = movesOf(type.table); moves && moves->place == field.name)
                m_movedByBoth[{std::string(type.table), id}] = takesTheirs;
            takeOver(row, group.fields, takesTheirs ? theirs : ours);
            takeOver(row, group.counted, takesTheirs ? theirs : ours);
            continue;
        }
        if (takesTheirs) {
            takeOver(row, group.fields, theirs);
            takeOver(row, group.counted, theirs);
        } else if (o == t) {
            for (const std::size_t i : group.counted)
                row[i] = countedOf(base ? &(*base)[i] : nullptr, ours[i], theirs[i]);
        }
    }
    return row;
}

MergeEdit* MergePlanner::editOf(std::string_view table, std::int64_t ours) {
    for (MergeEdit& edit : m_plan.edits)
        if (edit.type->table == table && edit.id == ours && edit.kind != ChangeKind::Added)
            return &edit;
    return nullptr;
}

void MergePlanner::change(const RecordType& type, std::int64_t id, const Row& present, Row row) {
    row.front() = id;
    if (row == present) return;
    if (MergeEdit* edit = editOf(type.table, id)) {
        edit->row = std::move(row);
        return;
    }
    m_plan.edits.push_back({ChangeKind::Changed, &type, id, std::move(row)});
}

bool MergePlanner::belongsToTwin(const RecordType& type, const Row& row) const {
    const Fields& fields = type.fields();
    for (std::size_t i = 1; i < fields.size(); ++i) {
        if (fields[i].kind != Kind::Reference || isBlank(row[i])) continue;
        const auto found = m_twinsHere.find(fields[i].refersTo);
        if (found != m_twinsHere.end() && found->second.contains(numberAt(row, i))) return true;
    }
    return false;
}

/// A box nobody marked says nothing of which one it is: two such are one only where what stands
/// with it is, for instance the hive it was put on.
bool MergePlanner::isOneOfMany(const RecordType& type, const NewRow& row) const {
    const Fields& fields = type.fields();
    const auto mark = std::find_if(fields.begin(), fields.end(),
                                   [](const FieldInfo& field) { return field.name == "mark"; });
    if (mark == fields.end()) return false;
    if (!isBlank(row.row[static_cast<std::size_t>(mark - fields.begin())])) return false;
    for (const RecordType& other : recordTypes())
        for (const FieldInfo& field : other.fields()) {
            if (field.kind != Kind::Reference || field.refersTo != type.table) continue;
            for (const Row& with : m_sides.theirs.rows(other.table, other.fields(),
                                                       {Match{field.name, Value{row.theirs}}}))
                if (belongsToTwin(other, translated(other, with))) return false;
        }
    return true;
}

/// The row here that says the same, or is about the same and the only one on either side.
std::optional<std::int64_t> MergePlanner::twin(const RecordType& type, const NewRow& row,
                                               const std::vector<NewRow>& rows,
                                               std::map<std::int64_t, Row>& candidates) const {
    if (isOneOfMany(type, row)) return std::nullopt;
    for (const auto& [id, candidate] : candidates)
        if (std::equal(candidate.begin() + 1, candidate.end(), row.row.begin() + 1)) return id;
    const auto key = sameKey(type, row.row);
    if (!key) return std::nullopt;
    const auto alike = [&](const Row& other) { return sameKey(type, other) == key; };
    const auto there = std::count_if(rows.begin(), rows.end(),
                                     [&](const NewRow& other) { return alike(other.row); });
    const auto hereToo = std::count_if(candidates.begin(), candidates.end(),
                                       [&](const auto& each) { return alike(each.second); });
    if (there != 1 || hereToo != 1) return std::nullopt;
    for (const auto& [id, candidate] : candidates)
        if (alike(candidate)) return id;
    return std::nullopt;
}

void MergePlanner::planMade(const RecordType& type, const std::vector<NewRow>& rows) {
    std::map<std::int64_t, Row> candidates;
    if (const auto made = m_sides.madeHere.find(type.table); made != m_sides.madeHere.end())
        for (const std::int64_t id : made->second)
            if (auto row = recordRow(m_sides.ours, type.table, id)) candidates[id] = *row;
    for (const auto& [at, ours] : m_sides.known)
        if (at.first == type.table) candidates.erase(ours);
    std::vector<NewRow> there;
    for (const NewRow& fresh : rows) there.push_back({fresh.theirs, translated(type, fresh.row)});
    for (const NewRow& fresh : rows) {
        // Twins met a moment ago may be what this row belongs to.
        const NewRow row{fresh.theirs, translated(type, fresh.row)};
        const auto same = twin(type, row, there, candidates);
        bool isSame = same.has_value();
        if (same && !belongsToTwin(type, row.row)) {
            MergeQuestion question;
            question.asked = MergeAsked::SameTwice;
            question.key = std::string(type.table) + "/" + std::to_string(*same) + "=" +
                           std::to_string(row.theirs);
            const Row& ours = candidates.at(*same);
            question.about = mergeSay("%1 %2: written down in both copies; one thing, or two?")
                                 .arg(word(type.table), recordInWords(m_sides.ours, type, ours));
            question.ours = rowInWords(m_sides.ours, type, ours, mostValuesAsked);
            question.theirs = rowInWords(m_sides.theirs, type, fresh.row, mostValuesAsked);
            isSame = ask(std::move(question)) != MergeChoice::Two;
        }
        if (!isSame) {
            m_plan.edits.push_back({ChangeKind::Added, &type, row.theirs, row.row});
            continue;
        }
        m_twins[{std::string(type.table), row.theirs}] = *same;
        m_twinsHere[std::string(type.table)].insert(*same);
        m_plan.same.push_back({&type, row.theirs, *same});
        const Row ours = candidates.at(*same);
        candidates.erase(*same);
        change(type, *same, ours, joined(type, *same, std::nullopt, ours, row.row));
    }
}

void MergePlanner::planMoves(const RecordType& type, std::vector<NewRow>& rows) {
    const MovesOf* moves = thingMovedBy(type.table);
    if (!moves) return;
    const std::string thing(moves->thing);
    const std::size_t ofAt = wholeField(type, moves->thing);
    std::erase_if(rows, [&](const NewRow& fresh) {
        const Row row = translated(type, fresh.row);
        const auto both = m_movedByBoth.find({thing, numberAt(row, ofAt)});
        if (both == m_movedByBoth.end()) return false;
        if (both->second) m_plan.edits.push_back({ChangeKind::Added, &type, fresh.theirs, row});
        return true;
    });
    const RecordType& thingType = *findRecordType(thing);
    for (const auto& [at, theirsHolds] : m_movedByBoth) {
        if (at.first != thing) continue;
        if (const auto is = recordRow(m_sides.ours, thing, at.second))
            m_plan.notes << (theirsHolds
                                 ? mergeSay("%1 %2 was moved in both copies: what was written down "
                                            "here of that goes, the other's holds.")
                                 : mergeSay("%1 %2 was moved in both copies: ours holds, the "
                                            "other's moves of it do not come."))
                                .arg(word(thing), recordInWords(m_sides.ours, thingType, *is));
        const auto made = m_sides.madeHere.find(type.table);
        if (!theirsHolds || made == m_sides.madeHere.end()) continue;
        for (const std::int64_t id : made->second)
            if (const auto ours = recordRow(m_sides.ours, type.table, id);
                ours && numberAt(*ours, ofAt) == at.second)
                m_plan.edits.push_back({ChangeKind::Removed, &type, id, *ours});
    }
}

void MergePlanner::planOld(const RecordType& type, std::int64_t theirs) {
    const std::int64_t id = here(type.table, theirs);
    const auto ours = recordRow(m_sides.ours, type.table, id);
    auto theirRow = recordRow(m_sides.theirs, type.table, theirs);
    const auto base = baseRow(type, theirs, id);
    if (theirRow) {
        theirRow = translated(type, *theirRow);
        theirRow->front() = id;
    }
    if (theirRow == base || theirRow == ours) return;
    if (ours && theirRow) {
        change(type, id, *ours, joined(type, id, base, *ours, *theirRow));
        return;
    }
    if (ours && ours == base) {
        m_plan.edits.push_back({ChangeKind::Removed, &type, id, *ours});
        return;
    }
    const Row& there = ours ? *ours : *theirRow;
    bool takes = !base;
    if (base) {
        MergeQuestion question;
        question.asked = MergeAsked::ChangedAndGone;
        question.key = std::string(type.table) + "/" + std::to_string(id);
        question.about = mergeSay("%1 %2: struck in one copy, changed in the other")
                             .arg(word(type.table),
                                  recordInWords(ours ? m_sides.ours : m_sides.theirs, type, there));
        const QString struck = mergeSay("struck");
        question.ours = ours ? rowInWords(m_sides.ours, type, *ours, mostValuesAsked) : struck;
        question.theirs =
            ours ? struck
                 : rowInWords(m_sides.theirs, type, *recordRow(m_sides.theirs, type.table, theirs),
                              mostValuesAsked);
        takes = ask(std::move(question)) == MergeChoice::Theirs;
    }
    if (!takes) return;
    if (ours)
        m_plan.edits.push_back({ChangeKind::Removed, &type, id, *ours});
    else
        m_plan.edits.push_back({ChangeKind::Added, &type, theirs, *theirRow});
}

/// What comes in may speak of a record that was struck here: then that comes back with it.
void MergePlanner::bringBackWhatIsNeeded() {
    for (std::size_t at = 0; at < m_plan.edits.size(); ++at) {
        if (m_plan.edits[at].kind == ChangeKind::Removed) continue;
        const RecordType& type = *m_plan.edits[at].type;
        for (std::size_t i = 1; i < type.fields().size(); ++i) {
            const FieldInfo& field = type.fields()[i];
            const std::int64_t id = numberAt(m_plan.edits[at].row, i);
            if (field.kind != Kind::Reference || id <= 0) continue;
            if (MergeEdit* removed = editOf(field.refersTo, id);
                removed && removed->kind == ChangeKind::Removed) {
                removed->kind = ChangeKind::Changed;
                continue;
            }
            if (m_sides.ours.holds(field.refersTo, id)) continue;
            const RecordType& needed = *findRecordType(field.refersTo);
            const std::int64_t theirs = there(needed.table, id);
            const auto back = recordRow(m_sides.theirs, needed.table, theirs);
            if (!back) continue;
            m_plan.edits[at].row[i] = Value{-theirs};
            const bool comes =
                std::any_of(m_plan.edits.begin(), m_plan.edits.end(), [&](const MergeEdit& edit) {
                    return edit.kind == ChangeKind::Added && edit.type == &needed &&
                           edit.id == theirs;
                });
            if (comes) continue;
            m_plan.notes << mergeSay(
                                "%1 %2 was struck here; what comes in belongs to it, so it "
                                "comes back.")
                                .arg(word(needed.table),
                                     recordInWords(m_sides.theirs, needed, *back));
            m_plan.edits.push_back({ChangeKind::Added, &needed, theirs, translated(needed, *back)});
        }
    }
}

bool MergePlanner::stoodOn(const MergeEdit& removed) {
    for (const RecordType& type : recordTypes())
        for (std::size_t i = 1; i < type.fields().size(); ++i) {
            const FieldInfo& field = type.fields()[i];
            if (field.kind != Kind::Reference || field.refersTo != removed.type->table) continue;
            for (const MergeEdit& edit : m_plan.edits)
                if (edit.type == &type && edit.kind != ChangeKind::Removed &&
                    numberAt(edit.row, i) == removed.id)
                    return true;
            // A reading has no references, so the base name finds the field.
            for (const Row& row : m_sides.ours.rows(type.table, type.fields(),
                                                    {Match{field.name, Value{removed.id}}})) {
                const MergeEdit* edit = editOf(type.table, numberAt(row, 0));
                if (!edit) return true;
            }
        }
    return false;
}

void MergePlanner::keepWhatIsStoodOn() {
    for (bool again = true; again;) {
        again = false;
        for (std::size_t at = 0; at < m_plan.edits.size(); ++at) {
            const MergeEdit& edit = m_plan.edits[at];
            if (edit.kind != ChangeKind::Removed || !stoodOn(edit)) continue;
            m_plan.notes << mergeSay(
                                "%1 %2 was struck in the other copy; records here belong to "
                                "it, so it stays.")
                                .arg(word(edit.type->table),
                                     recordInWords(m_sides.ours, *edit.type, edit.row));
            m_plan.edits.erase(m_plan.edits.begin() + static_cast<std::ptrdiff_t>(at));
            again = true;
            break;
        }
    }
}

/// What a row says, in the same words in either copy.
std::string MergePlanner::content(const RecordType& type, const Row& row) const {
    std::string content = rowContent(type, row);
    for (std::size_t i = 1; i < type.fields().size(); ++i) {
        const FieldInfo& field = type.fields()[i];
        const std::int64_t id = numberAt(row, i);
        // What was there before they parted has one number in both.
        if (field.kind == Kind::Reference && id > 0 && !inSet(m_sides.madeHere, field.refersTo, id))
            content += std::to_string(id) + '\x1f';
    }
    return content;
}

/// Numbers what stands in one place anew, where something came or went: by the number each had,
/// and where two have the same by what they say, so that it is the same whoever takes in whom.
void MergePlanner::countAlong(std::string_view table, std::string_view group,
                              std::string_view number, std::int64_t from) {
    const RecordType& type = *findRecordType(table);
    const std::size_t groupAt = wholeField(type, group);
    const std::size_t numberedAt = wholeField(type, number);
    const std::size_t closedAt = wholeField(type, "closed");
    const auto counts = [&](const Row& row) {
        if (isBlank(row[groupAt]) || isBlank(row[numberedAt])) return false;
        return table != "hive" || isBlank(row[closedAt]);
    };
    std::set<std::int64_t> groups;
    for (const MergeEdit& edit : m_plan.edits) {
        if (edit.type != &type) continue;
        groups.insert(numberAt(edit.row, groupAt));
        if (edit.kind == ChangeKind::Added) continue;
        if (const auto was = recordRow(m_sides.ours, table, edit.id))
            groups.insert(numberAt(*was, groupAt));
    }
    groups.erase(0);
    for (const std::int64_t each : groups) {
        struct Counted {
            std::int64_t number;
            std::string content;
            std::int64_t ours;  ///< 0 for one that comes in
            std::size_t edit;   ///< of one that comes in
            Row row;
        };
        std::vector<Counted> list;
        for (std::size_t at = 0; at < m_plan.edits.size(); ++at) {
            const MergeEdit& edit = m_plan.edits[at];
            if (edit.type != &type || edit.kind == ChangeKind::Removed || !counts(edit.row) ||
                numberAt(edit.row, groupAt) != each)
                continue;
            const bool comes = edit.kind == ChangeKind::Added;
            list.push_back({numberAt(edit.row, numberedAt), content(type, edit.row),
                            comes ? 0 : edit.id, at, edit.row});
        }
        if (each > 0)
            for (const Row& row : m_sides.ours.rows(
                     type.table, type.fields(), {Match{type.fields()[groupAt].name, Value{each}}}))
                if (counts(row) && !editOf(table, numberAt(row, 0)))
                    list.push_back(
                        {numberAt(row, numberedAt), content(type, row), numberAt(row, 0), 0, row});
        std::stable_sort(list.begin(), list.end(), [](const Counted& a, const Counted& b) {
            return std::tie(a.number, a.content) < std::tie(b.number, b.content);
        });
        std::int64_t next = from;
        for (Counted& one : list) {
            const Value numbered{next++};
            if (one.row[numberedAt] == numbered) continue;
            one.row[numberedAt] = numbered;
            if (one.ours == 0)
                m_plan.edits[one.edit].row = std::move(one.row);
            else
                change(type, one.ours, Row(), std::move(one.row));
        }
    }
}

/// Added rows after what they refer to, then the changes, then what goes, children first.
void MergePlanner::order() {
    std::map<const RecordType*, int> place;
    int next = 0;
    for (const RecordType& type : recordTypes()) place[&type] = next++;
    std::vector<MergeEdit> added;
    std::vector<MergeEdit> changed;
    std::vector<MergeEdit> removed;
    for (MergeEdit& edit : m_plan.edits)
        (edit.kind == ChangeKind::Added     ? added
         : edit.kind == ChangeKind::Changed ? changed
                                            : removed)
            .push_back(std::move(edit));
    const auto before = [&](const MergeEdit& a, const MergeEdit& b) {
        return std::pair(place[a.type], a.id) < std::pair(place[b.type], b.id);
    };
    std::sort(added.begin(), added.end(), before);
    std::sort(changed.begin(), changed.end(), before);
    std::sort(removed.begin(), removed.end(),
              [&](const MergeEdit& a, const MergeEdit& b) { return before(b, a); });
    // A record may refer to one of its own kind that was written down after it.
    m_plan.edits.clear();
    std::set<std::pair<const RecordType*, std::int64_t>> there;
    while (!added.empty()) {
        const auto ready = std::find_if(added.begin(), added.end(), [&](const MergeEdit& edit) {
            for (std::size_t i = 1; i < edit.type->fields().size(); ++i) {
                const FieldInfo& field = edit.type->fields()[i];
                const std::int64_t id = numberAt(edit.row, i);
                if (field.kind == Kind::Reference && id < 0 &&
                    !there.contains({findRecordType(field.refersTo), -id}))
                    return false;
            }
            return true;
        });
        const auto taken = ready == added.end() ? added.begin() : ready;
        there.insert({taken->type, taken->id});
        m_plan.edits.push_back(std::move(*taken));
        added.erase(taken);
    }
    for (auto* list : {&changed, &removed})
        for (MergeEdit& edit : *list) m_plan.edits.push_back(std::move(edit));
}

MergePlan MergePlanner::plan() {
    for (const RecordType& type : recordTypes()) {
        const auto touched = m_sides.touched.find(type.table);
        if (touched == m_sides.touched.end()) continue;
        std::vector<NewRow> made;
        for (const std::int64_t theirs : touched->second)
            if (isNew(type.table, theirs))
                if (auto row = recordRow(m_sides.theirs, type.table, theirs))
                    made.push_back({theirs, *std::move(row)});
        planMoves(type, made);
        planMade(type, made);
        for (const std::int64_t theirs : touched->second)
            if (!isNew(type.table, theirs)) planOld(type, theirs);
    }
    bringBackWhatIsNeeded();
    keepWhatIsStoodOn();
    countAlong("hive", "yard", "stand_order", 1);
    countAlong("box", "hive", "level", 0);
    // What was only kept from going is no change.
    std::erase_if(m_plan.edits, [&](const MergeEdit& edit) {
        return edit.kind == ChangeKind::Changed &&
               recordRow(m_sides.ours, edit.type->table, edit.id) == edit.row;
    });
    for (MergeEdit& edit : m_plan.edits)
        if (edit.kind != ChangeKind::Added)
            edit.present = recordRow(m_sides.ours, edit.type->table, edit.id).value_or(Row());
    order();
    return std::move(m_plan);
}

}  // namespace combwright
