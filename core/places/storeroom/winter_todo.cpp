#include "core/places/storeroom/winter_todo.h"

#include <algorithm>
#include <set>

#include "core/model/storeroom/review.h"
#include "core/model/storeroom/season_plan.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

class TodoGatherer {
  public:
    TodoGatherer(const Read& file, Day on)
        : m_file(file), m_stock(stockOn(file, on)), m_held(heldThings(file, on)) {
        m_todo.on = on;
        for (const BoxKind& kind : file.all<BoxKind>()) m_boxKinds.emplace(kind.id.number, kind);
        for (const BoxReview& review : file.all<BoxReview>()) {
            BoxReview& last = m_lastLooks[review.box.number];
            if (!last.id || review.on >= last.on) last = review;
        }
        for (const StockBox& each : m_stock.boxes) {
            m_names[each.box.id.number] = nameOf(m_file, Box::table, each.box.id.number);
            m_boxes[each.box.id.number] = &each;
        }
        for (const StockBox& each : m_stock.boxes)
            if (each.stands == BoxStands::Nest) {
                const auto& kind = m_boxKinds.at(each.box.kind.number);
                if (kind.takes) m_broodKinds.insert(kind.takes->number);
            }
        for (const SeasonPlan& plan : file.all<SeasonPlan>())
            if (const auto kind = file.find(plan.broodKind); kind && kind->takes)
                m_broodKinds.insert(kind->takes->number);
    }

    WinterTodo gather() {
        for (const StockBox& each : m_stock.boxes) workOn(each);
        for (const Frame& frame : m_stock.frames) workOn(frame);
        const auto byVerdict = [](const TodoFrames& a, const TodoFrames& b) {
            return std::pair(a.verdict, a.kind.id) < std::pair(b.verdict, b.kind.id);
        };
        std::stable_sort(m_todo.frames.begin(), m_todo.frames.end(), byVerdict);
        materials();
        holds();
        for (auto& [name, stack] : m_stacks) m_todo.stacks.push_back(std::move(stack));
        return std::move(m_todo);
    }

  private:
    TodoBox todoBox(const StockBox& each) const {
        TodoBox todo{each.box.id,
                     m_names.at(each.box.id.number),
                     m_boxKinds.at(each.box.kind.number).name.text(),
                     each.box.stack,
                     {},
                     each.held};
        const auto look = m_lastLooks.find(each.box.id.number);
        if (look != m_lastLooks.end()) todo.wood = look->second.wood;
        return todo;
    }

    void workOn(const StockBox& each) {
        if (each.stands != BoxStands::Nest && each.stands != BoxStands::Lent) {
            if (each.box.condition == BoxCondition::ToScrape)
                m_todo.scrape.push_back(todoBox(each));
            if (each.box.condition == BoxCondition::NeedsRepair)
                m_todo.repair.push_back(todoBox(each));
            if (each.box.wantsPaint == true) m_todo.paint.push_back(todoBox(each));
        }
        if (each.stands != BoxStands::Store || each.box.place != BoxPlace::Storeroom) return;
        TodoStack& stack = m_stacks[each.box.stack];
        stack.stack = each.box.stack;
        m_inStack[each.box.id.number] = {each.box.stack, stack.boxes.size()};
        stack.boxes.push_back({m_names.at(each.box.id.number),
                               m_boxKinds.at(each.box.kind.number).name.text(),
                               each.held,
                               each.counted,
                               {},
                               0,
                               0});
        const auto look = m_lastLooks.find(each.box.id.number);
        if (look == m_lastLooks.end())
            ++stack.neverLooked;
        else
            stack.lastLook =
                stack.lastLook ? std::min(*stack.lastLook, look->second.on) : look->second.on;
    }

    void workOn(const Frame& frame) {
        const StockBox* box = nullptr;
        if (frame.box)
            if (const auto found = m_boxes.find(frame.box->number); found != m_boxes.end())
                box = found->second;
        const bool held = m_held.holds(frame);
        const FrameUse use = useOf(frame, held);
        inStack(frame, box, use);
        if (box && (box->stands == BoxStands::Nest || box->stands == BoxStands::Lent)) return;
        if (use == FrameUse::Held) {
            if (!held) ++m_byVerdict[{frame.kind.number, frame.box ? frame.box->number : 0}];
            return;
        }
        if (frame.verdict && *frame.verdict != Verdict::Keep)
            add(m_todo.frames, *frame.verdict, frame);
        else if (use == FrameUse::Bare)
            ++m_bare[frame.kind.number];
        const bool brood = m_broodKinds.contains(frame.kind.number);
        const bool pollen = frame.faults.find('L') != std::string::npos;
        if (use == FrameUse::Drawn && !frame.frozen && (brood || pollen) &&
            !(box && box->stands == BoxStands::Freezer))
            add(m_todo.notFrozen, Verdict::Freeze, frame);
    }

    void inStack(const Frame& frame, const StockBox* box, FrameUse use) {
        TodoStack* stack = nullptr;
        if (!frame.box) {
            stack = &m_stacks[frame.stack];
            stack->stack = frame.stack;
            ++stack->loose[use];
        } else if (const auto found = m_inStack.find(frame.box->number);
                   box && found != m_inStack.end()) {
            stack = &m_stacks[found->second.first];
            StackedContents& contents = stack->boxes[found->second.second];
            ++contents.use[use];
            if (useOf(frame, false) == FrameUse::Drawn) {
                ++contents.combs;
                if (frame.frozen) ++contents.frozen;
            }
        }
        if (stack && frame.frozen)
            stack->frozen = stack->frozen ? std::min(*stack->frozen, *frame.frozen) : *frame.frozen;
    }

    void add(std::vector<TodoFrames>& list, Verdict verdict, const Frame& frame) const {
        const bool combGone = verdict == Verdict::Refit && frame.comb == Comb::Bare;
        auto line = std::find_if(list.begin(), list.end(), [&](const TodoFrames& each) {
            return each.verdict == verdict && each.kind.id == frame.kind &&
                   each.combGone == combGone;
        });
        if (line == list.end()) {
            list.push_back({verdict, *m_file.find(frame.kind), 0, {}, combGone});
            line = std::prev(list.end());
        }
        ++line->frames;
        const std::string name = frame.box ? nameOfBox(*frame.box) : frame.stack;
        auto part = std::find_if(line->parts.begin(), line->parts.end(), [&](const TodoPart& each) {
            return each.box == frame.box && each.name == name;
        });
        if (part == line->parts.end()) {
            line->parts.push_back({frame.box, name, 0});
            part = std::prev(line->parts.end());
        }
        ++part->frames;
    }

    std::string nameOfBox(Id<Box> box) const {
        const auto found = m_names.find(box.number);
        return found != m_names.end() ? found->second : nameOf(m_file, Box::table, box.number);
    }

    void materials() {
        std::map<std::int64_t, TodoMaterial> needed;
        for (const TodoFrames& each : m_todo.frames) {
            if (each.verdict == Verdict::Refit) needed[each.kind.id.number].refit += each.frames;
            if (each.verdict == Verdict::Repair) needed[each.kind.id.number].repair += each.frames;
        }
        for (const auto& [kind, bare] : m_bare) needed[kind].bare += bare;
        for (auto& [kind, material] : needed) {
            material.kind = *m_file.find(Id<FrameKind>{kind});
            for (const Equipment& each : m_stock.of(EquipmentItem::Foundation).kinds)
                if (each.frameKind == material.kind.id && each.onHand)
                    material.sheetsThere = material.sheetsThere.value_or(0) + each.onHand->value();
            m_todo.materials.push_back(material);
        }
    }

    void holds() {
        std::map<std::int64_t, std::int64_t> inBox;
        for (const Frame& frame : m_stock.frames)
            if (frame.box) ++inBox[frame.box->number];
        for (const Hold& hold : m_file.all<Hold>()) {
            if (hold.since > m_todo.on || (hold.lifted && *hold.lifted <= m_todo.on)) continue;
            TodoHold todo{{}, hold.why, hold.since, hold.note, 0};
            if (hold.box) {
                todo.what = nameOfBox(*hold.box);
                todo.frames = inBox[hold.box->number];
            } else if (const auto colony = m_file.find(hold.colony)) {
                todo.what = nameOf(m_file, Hive::table, colony->hive.number);
                for (const auto& [box, why] : m_held.boxes)
                    for (const Hold& each : why)
                        if (each.id == hold.id) todo.frames += inBox[box];
            } else if (const auto frame = m_file.find(hold.frame)) {
                todo.what = frame->box ? nameOfBox(*frame->box) : frame->stack;
                todo.frames = 1;
            } else {
                continue;  // a bucket is no matter of the storeroom
            }
            addHold(std::move(todo), hold.frame.has_value());
        }
        for (const auto& [where, frames] : m_byVerdict)
            m_todo.held.push_back({where.second ? nameOfBox(Id<Box>{where.second}) : std::string(),
                                   std::nullopt, std::nullopt, std::string(), frames});
    }

    /// Frames of one box held for one reason are one line.
    void addHold(TodoHold todo, bool frame) {
        if (frame)
            for (TodoHold& each : m_todo.held)
                if (each.what == todo.what && each.why == todo.why && each.since == todo.since &&
                    each.note == todo.note) {
                    each.frames += todo.frames;
                    return;
                }
        m_todo.held.push_back(std::move(todo));
    }

    const Read& m_file;
    Stock m_stock;
    HeldThings m_held;
    std::map<std::int64_t, BoxKind> m_boxKinds;
    std::map<std::int64_t, BoxReview> m_lastLooks;
    std::map<std::int64_t, std::string> m_names;
    std::map<std::int64_t, const StockBox*> m_boxes;
    std::set<std::int64_t> m_broodKinds;
    std::map<std::int64_t, std::int64_t> m_bare;
    std::map<std::pair<std::int64_t, std::int64_t>, std::int64_t> m_byVerdict;
    std::map<std::string, TodoStack> m_stacks;
    std::map<std::int64_t, std::pair<std::string, std::size_t>> m_inStack;
    WinterTodo m_todo;
};

}  // namespace

bool WinterTodo::isEmpty() const {
    return scrape.empty() && repair.empty() && paint.empty() && frames.empty() &&
           materials.empty() && notFrozen.empty() && held.empty();
}

WinterTodo winterTodo(const Read& file, Day on) { return TodoGatherer(file, on).gather(); }

Comb likelyAfterRepair(const Read& file) {
    const auto waiting = file.where<Frame>({is("verdict", Verdict::Repair), isUnknown("retired")});
    const bool sheets =
        !waiting.empty() && std::all_of(waiting.begin(), waiting.end(), [](const Frame& frame) {
            return frame.comb == Comb::Foundation;
        });
    return sheets ? Comb::Foundation : Comb::Bare;
}

}  // namespace combwright
