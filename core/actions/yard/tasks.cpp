#include "core/actions/yard/tasks.h"

namespace combwright {
namespace {

template <class Record>
Result<void> demandOpen(const Read& file, std::optional<Id<Record>> id, const char* field) {
    if (!id) return {};
    const auto found = file.find(*id);
    if (!found) return Refusal{Code::NotFound, field, {}};
    if (!found->closed) return {};
    if constexpr (requires { found->mark; })
        return Refusal{Code::Closed, field, {{"name", found->mark.text()}}};
    else
        return Refusal{Code::Closed, field, {{"name", found->name.text()}}};
}

bool overlap(const Quiet& a, const Quiet& b) {
    return (!a.until || b.since <= *a.until) && (!b.until || a.since <= *b.until);
}

/// One that was ended on the day it began was never in force.
bool everQuiet(const Quiet& quiet) { return !quiet.until || *quiet.until >= quiet.since; }

/// The action speaks of its own day where the record says since when.
Refusal asAction(Refusal refusal) {
    if (refusal.field == "since") refusal.field = "on";
    for (auto& value : refusal.values)
        if (value.first == "other" && value.second == "since") value.second = "on";
    return refusal;
}

}  // namespace

Result<void> demandTask(const Read& file, const Task& task) {
    if (task.due && *task.due < task.since)
        return Refusal{Code::Contradiction, "due", {{"other", "since"}}};
    if (task.done && *task.done < task.since)
        return Refusal{Code::Contradiction, "done", {{"other", "since"}}};
    if (task.hive && task.yard) {
        const auto hive = file.find(*task.hive);
        if (hive && hive->yard != *task.yard)
            return Refusal{Code::Contradiction, "hive", {{"other", "yard"}}};
    }
    return {};
}

Result<void> demandQuiet(const Read& file, const Quiet& quiet) {
    if (!quiet.hive && !quiet.yard) return Refusal{Code::Missing, "hive", {}};
    if (quiet.hive && quiet.yard) return Refusal{Code::Contradiction, "hive", {{"other", "yard"}}};
    // One day before it began: ended on the day it was said.
    if (quiet.until && *quiet.until < quiet.since - days(1))
        return Refusal{Code::Contradiction, "until", {{"other", "since"}}};
    if (!everQuiet(quiet)) return {};
    for (const Quiet& each : file.where<Quiet>({is("rule", quiet.rule)}))
        if (each.id != quiet.id && each.hive == quiet.hive && each.yard == quiet.yard &&
            everQuiet(each) && overlap(each, quiet))
            return Refusal{Code::Taken, "rule", {{"name", each.reason.text()}}};
    return {};
}

const Fields& NoteTask::fields() {
    static const Fields all = describe(
        field<&NoteTask::on>("on"), field<&NoteTask::text>("text"), field<&NoteTask::yard>("yard"),
        field<&NoteTask::hive>("hive"), field<&NoteTask::due>("due"), field<&NoteTask::who>("who"));
    return all;
}

Result<Id<Task>> NoteTask::perform(Write& file) const {
    if (auto open = demandOpen(file, yard, "yard"); !open) return open.error();
    if (auto open = demandOpen(file, hive, "hive"); !open) return open.error();
    Task task;
    task.text = text;
    task.yard = yard;
    task.hive = hive;
    task.since = on;
    task.due = due;
    task.who = who;
    if (auto ok = demandTask(file, task); !ok) return asAction(ok.error());
    return file.add(task);
}

const Fields& FinishTask::fields() {
    static const Fields all =
        describe(field<&FinishTask::on>("on"), field<&FinishTask::task>("task"));
    return all;
}

Result<Id<Task>> FinishTask::perform(Write& file) const {
    auto found = file.find(task);
    if (!found) return Refusal{Code::NotFound, "task", {}};
    if (found->done) return Refusal{Code::NothingToDo, "task", {{"name", found->text.text()}}};
    if (on < found->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", found->text.text()}, {"since", isoText(found->since)}}};
    found->done = on;
    file.change(*found);
    return task;
}

const Fields& QuietRule::fields() {
    static const Fields all =
        describe(field<&QuietRule::on>("on"), field<&QuietRule::rule>("rule"),
                 field<&QuietRule::yard>("yard"), field<&QuietRule::hive>("hive"),
                 field<&QuietRule::until>("until"), field<&QuietRule::reason>("reason"));
    return all;
}

Result<Id<Quiet>> QuietRule::perform(Write& file) const {
    if (auto open = demandOpen(file, yard, "yard"); !open) return open.error();
    if (auto open = demandOpen(file, hive, "hive"); !open) return open.error();
    if (until && *until < on) return Refusal{Code::Contradiction, "until", {{"other", "on"}}};
    Quiet quiet;
    quiet.rule = rule;
    quiet.yard = yard;
    quiet.hive = hive;
    quiet.since = on;
    quiet.until = until;
    quiet.reason = reason;
    if (auto ok = demandQuiet(file, quiet); !ok) return asAction(ok.error());
    return file.add(quiet);
}

const Fields& EndQuiet::fields() {
    static const Fields all =
        describe(field<&EndQuiet::on>("on"), field<&EndQuiet::quiet>("quiet"));
    return all;
}

Result<Id<Quiet>> EndQuiet::perform(Write& file) const {
    auto found = file.find(quiet);
    if (!found) return Refusal{Code::NotFound, "quiet", {}};
    if (found->until && *found->until < on)
        return Refusal{Code::NothingToDo, "quiet", {{"name", found->reason.text()}}};
    if (on < found->since)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", found->reason.text()}, {"since", isoText(found->since)}}};
    found->until = on - days(1);
    file.change(*found);
    return quiet;
}

}  // namespace combwright
