#include "core/places/due/due_tasks.h"

namespace combwright {

void addDueTasks(const Read& file, Day today, std::optional<Id<Yard>> yard,
                 std::vector<DueItem>& due) {
    for (const Task& task : file.where<Task>({isUnknown("done")})) {
        if (task.since > today) continue;
        DueItem item;
        item.rule = DueRule::Task;
        item.hive = task.hive;
        item.yard = task.yard;
        if (const auto hive = file.find(task.hive)) {
            if (hive->closed) continue;
            item.yard = hive->yard;
        }
        if (yard && item.yard != *yard) continue;
        item.id = "task-" + std::to_string(task.id.number);
        item.since = item.from = task.since;
        item.by = task.due;
        item.about = task.text.text();
        item.count = task.id.number;
        due.push_back(std::move(item));
    }
}

Id<Task> taskOf(const DueItem& item) { return Id<Task>{item.count.value_or(0)}; }

}  // namespace combwright
