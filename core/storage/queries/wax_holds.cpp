#include "core/storage/queries/wax_holds.h"

#include <algorithm>

#include "core/model/wax/block.h"
#include "core/storage/queries/names.h"

namespace combwright {

HeldWax::HeldWax(const Read& file, Day on)
    : m_file(file), m_any(anythingApart(file, on)), m_honey(file, on), m_on(on) {}

std::vector<WaxHold> HeldWax::named(const std::vector<Hold>& holds) const {
    std::vector<WaxHold> apart;
    for (const Hold& hold : holds) {
        if (!keepsApart(hold)) continue;
        const auto colony = m_file.find(hold.colony);
        std::string name;
        if (hold.box)
            name = nameOf(m_file, Box::table, hold.box->number);
        else if (colony)
            name = nameOf(m_file, Hive::table, colony->hive.number);
        apart.push_back({hold, std::move(name)});
    }
    return apart;
}

std::vector<WaxHold> HeldWax::of(Id<Extraction> run) {
    return m_any ? named(m_honey.ofRun(run)) : std::vector<WaxHold>{};
}

std::vector<WaxHold> HeldWax::of(Id<Box> box) {
    if (!m_any) return {};
    if (!m_things) m_things = heldThings(m_file, m_on);
    return named(m_things->of(box));
}

void HeldWax::addBatch(Id<WaxBatch> batch, std::set<std::int64_t>& met,
                       std::vector<WaxHold>& holds) {
    if (!met.insert(batch.number).second) return;
    const auto add = [&holds](std::vector<WaxHold> more) {
        for (WaxHold& each : more)
            if (std::none_of(holds.begin(), holds.end(),
                             [&](const WaxHold& there) { return there.hold.id == each.hold.id; }))
                holds.push_back(std::move(each));
    };
    for (const WaxSource& source : m_file.where<WaxSource>({is("batch", batch)})) {
        if (source.run) add(of(*source.run));
        if (source.box) add(of(*source.box));
        const auto heap = m_file.find(source.rawWax);
        if (heap && heap->box) add(of(*heap->box));
    }
    for (const WaxStep& step : m_file.where<WaxStep>({is("into_batch", batch)}))
        if (step.on <= m_on) addBatch(step.batch, met, holds);
    for (const WaxUse& again : m_file.where<WaxUse>({is("batch", batch)})) {
        const auto block = m_file.find(again.block);
        if (again.on <= m_on && block && block->batch) addBatch(*block->batch, met, holds);
    }
}

std::vector<WaxHold> HeldWax::of(Id<WaxBatch> batch) {
    std::vector<WaxHold> holds;
    if (!m_any) return holds;
    std::set<std::int64_t> met;
    addBatch(batch, met, holds);
    return holds;
}

}  // namespace combwright
