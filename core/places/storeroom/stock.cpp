#include "core/places/storeroom/stock.h"

#include <algorithm>
#include <numeric>
#include <set>

#include "core/model/storeroom/review.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/machines.h"

namespace combwright {
namespace {

/// A hive as far as its parts count.
struct StockHive {
    Hive hive;
    bool lives = false;
    bool held = false;  ///< its last colony is
};

std::map<std::int64_t, StockHive> openStockHives(const Read& file, const HeldThings& held) {
    std::map<std::int64_t, StockHive> hives;
    for (Hive& hive : file.all<Hive>())
        if (!hive.closed) hives[hive.id.number].hive = std::move(hive);
    std::map<std::int64_t, Colony> last;
    for (const Colony& colony : file.all<Colony>()) {
        Colony& newest = last[colony.hive.number];
        // One that lives is the last one, whenever the others ended.
        if (!newest.id || !colony.ended || (newest.ended && colony.since >= newest.since))
            newest = colony;
    }
    for (auto& [id, each] : hives) {
        const auto found = last.find(id);
        if (found == last.end()) continue;
        each.lives = !found->second.ended;
        each.held = held.colonies.contains(found->second.id.number);
    }
    return hives;
}

/// Without an excluder the brood has the floor's box, and every further box of its kind up to the
/// first of another.
bool isInNest(const StockHive& hive, const Box& box, const std::optional<Box>& bottom,
              bool unbroken) {
    if (hive.hive.excluderAbove) return box.level < hive.hive.excluderAbove;
    return !bottom || box.id == bottom->id || (unbroken && box.kind == bottom->kind);
}

class Counter {
  public:
    Counter(const Read& file, Day on)
        : m_file(file), m_held(heldThings(file, on)), m_hives(openStockHives(file, m_held)) {
        m_stock.on = on;
        for (BoxKind& kind : file.all<BoxKind>()) m_boxKinds.emplace(kind.id.number, kind);
        for (const FrameKind& kind : file.all<FrameKind>()) m_frames[kind.id.number].kind = kind;
    }

    Stock count() {
        for (const auto& [id, hive] : m_hives)
            if (hive.lives) ++m_stock.colonies;
        countBoxes();
        countFrames();
        countEquipment();
        for (auto& [id, kind] : m_kinds) m_stock.boxKinds.push_back(std::move(kind));
        for (auto& [id, kind] : m_frames)
            if (kind.ever() > 0 || kind.boxesCounted > 0 || kind.boxesNotCounted > 0)
                m_stock.frameKinds.push_back(std::move(kind));
        return std::move(m_stock);
    }

  private:
    BoxStands standsOf(const Box& box) const {
        switch (box.place) {
            case BoxPlace::Freezer:
                return BoxStands::Freezer;
            case BoxPlace::Lent:
                return BoxStands::Lent;
            case BoxPlace::OnHive: {
                const auto hive = box.hive ? m_hives.find(box.hive->number) : m_hives.end();
                if (hive == m_hives.end()) return BoxStands::Store;
                if (!hive->second.lives) return BoxStands::EmptyHive;
                return m_nests.contains(box.id.number) ? BoxStands::Nest : BoxStands::Super;
            }
            default:
                return BoxStands::Store;
        }
    }

    /// Which boxes are nests of living colonies.
    void findNests(const std::vector<Box>& boxes) {
        std::map<std::int64_t, std::vector<Box>> stacks;
        for (const Box& box : boxes)
            if (box.place == BoxPlace::OnHive && box.hive) stacks[box.hive->number].push_back(box);
        for (auto& [id, stack] : stacks) {
            const auto hive = m_hives.find(id);
            if (hive == m_hives.end() || !hive->second.lives) continue;
            std::stable_sort(stack.begin(), stack.end(),
                             [](const Box& a, const Box& b) { return a.level < b.level; });
            bool unbroken = true;
            for (const Box& box : stack) {
                unbroken = unbroken && box.kind == stack.front().kind;
                if (isInNest(hive->second, box, stack.front(), unbroken))
                    m_nests.insert(box.id.number);
            }
            if (isNucleusBox(m_boxKinds.at(stack.front().kind.number))) ++m_nucleiInUse;
        }
    }

    void countBoxes() {
        std::set<std::int64_t> counted;
        for (const BoxCount& count : m_file.all<BoxCount>()) counted.insert(count.box.number);
        for (const BoxReview& review : m_file.all<BoxReview>()) counted.insert(review.box.number);
        for (const Frame& frame : m_file.where<Frame>({isUnknown("retired")}))
            if (frame.box) counted.insert(frame.box->number);
        const std::vector<Box> boxes = m_file.all<Box>();
        findNests(boxes);
        for (const Box& box : boxes) {
            if (!inUse(box)) {
                m_gone.insert(box.id.number);
                continue;
            }
            StockBox each{box, standsOf(box), m_held.holds(box.id),
                          counted.contains(box.id.number)};
            const BoxKind& kind = m_boxKinds.at(box.kind.number);
            addBox(each, kind);
            if (kind.takes && each.isFree()) {
                FramesOfKind& frames = m_frames[kind.takes->number];
                ++(each.counted ? frames.boxesCounted : frames.boxesNotCounted);
            }
            m_byId.emplace(box.id.number, m_stock.boxes.size());
            m_stock.boxes.push_back(std::move(each));
        }
    }

    void addBox(const StockBox& each, const BoxKind& kind) {
        BoxStock& sum = m_kinds[kind.id.number];
        sum.kind = kind;
        ++sum.about;
        switch (each.box.condition) {
            case BoxCondition::ToScrape:
                ++sum.toScrape;
                break;
            case BoxCondition::NeedsRepair:
                ++sum.needRepair;
                break;
            default:
                ++sum.sound;
        }
        if (each.box.wantsPaint == true) ++sum.wantPaint;
        switch (each.stands) {
            case BoxStands::Nest:
                ++sum.inNests;
                break;
            case BoxStands::Super:
                ++sum.supersOn;
                break;
            case BoxStands::EmptyHive:
                ++sum.onEmptyHives;
                break;
            case BoxStands::Store:
                ++sum.inStore;
                break;
            case BoxStands::Freezer:
                ++sum.inFreezer;
                break;
            case BoxStands::Lent:
                ++sum.lent;
                break;
        }
        if (each.held) ++sum.held;
        if (!each.isFree()) return;
        ++(each.isSound() ? sum.usable : sum.repairable);
        if (!each.counted) ++sum.notCounted;
    }

    void countFrames() {
        for (Frame& frame : m_file.all<Frame>()) {
            FramesOfKind& sum = m_frames[frame.kind.number];
            if (frame.retired) {
                ++(*frame.retired == Retired::Melted  ? sum.melted
                   : *frame.retired == Retired::Burnt ? sum.burnt
                   : *frame.retired == Retired::Sold  ? sum.sold
                                                      : sum.missing);
                continue;
            }
            if (frame.box && m_gone.contains(frame.box->number)) {
                ++sum.gone;
                continue;
            }
            ++sum.kept;
            const auto found = frame.box ? m_byId.find(frame.box->number) : m_byId.end();
            const StockBox* box = found == m_byId.end() ? nullptr : &m_stock.boxes[found->second];
            if (!box) ++sum.loose;
            if (box && box->stands == BoxStands::Nest) {
                ++sum.inNests;
            } else if (box && box->stands == BoxStands::Lent) {
                ++sum.lent;
            } else {
                ++sum.use[useOf(frame, m_held.holds(frame))];
                ++sum.state[frame.faults];
            }
            m_stock.frames.push_back(std::move(frame));
        }
    }

    void countEquipment() {
        std::map<std::int64_t, Day> counted;
        for (const EquipmentCount& count : m_file.all<EquipmentCount>()) {
            Day& latest = counted.try_emplace(count.equipment.number, count.on).first->second;
            latest = std::max(latest, count.on);
        }
        const auto& words = Choices<EquipmentItem>::words;
        m_stock.equipment.resize(words.size());
        for (std::size_t item = 0; item < words.size(); ++item)
            m_stock.equipment[item].item = static_cast<EquipmentItem>(item);
        std::set<std::pair<EquipmentItem, std::string>> machines;
        for (Equipment& each : m_file.all<Equipment>()) {
            if (isMachine(each.item) && !machines.emplace(each.item, each.name).second) continue;
            EquipmentStock& sum = m_stock.equipment[static_cast<std::size_t>(each.item)];
            const auto on = counted.find(each.id.number);
            if (sum.kinds.empty()) sum.wholly = true;
            sum.wholly = sum.wholly && each.onHand;
            sum.lastCounts.push_back(on != counted.end() ? std::optional(on->second)
                                                         : std::nullopt);
            if (on != counted.end())
                sum.counted = sum.counted ? std::min(*sum.counted, on->second) : on->second;
            const auto add = [](std::optional<std::int64_t>& total,
                                const std::optional<Count>& more) {
                if (more) total = total.value_or(0) + more->value();
            };
            add(sum.onHand, each.onHand);
            add(sum.inRepair, each.inRepair);
            add(sum.lent, each.lent);
            sum.kinds.push_back(std::move(each));
        }
        countOnHives();
    }

    void countOnHives() {
        for (const EquipmentItem item :
             {EquipmentItem::Floor, EquipmentItem::Lid, EquipmentItem::Excluder}) {
            EquipmentStock& sum = m_stock.equipment[static_cast<std::size_t>(item)];
            sum.inUse = sum.onEmptyHives = sum.held = 0;
            for (const auto& [id, hive] : m_hives) {
                if (item == EquipmentItem::Excluder && !hive.hive.excluderAbove) continue;
                ++*(hive.held ? sum.held : hive.lives ? sum.inUse : sum.onEmptyHives);
            }
        }
        m_stock.equipment[static_cast<std::size_t>(EquipmentItem::NucleusBox)].inUse =
            m_nucleiInUse;
    }

    const Read& m_file;
    HeldThings m_held;
    std::map<std::int64_t, StockHive> m_hives;
    std::map<std::int64_t, BoxKind> m_boxKinds;
    std::map<std::int64_t, BoxStock> m_kinds;
    std::map<std::int64_t, FramesOfKind> m_frames;
    std::set<std::int64_t> m_nests;
    std::set<std::int64_t> m_gone;  ///< boxes no longer about
    std::map<std::int64_t, std::size_t> m_byId;
    std::int64_t m_nucleiInUse = 0;
    Stock m_stock;
};

}  // namespace

std::int64_t UseCounts::sum() const {
    return std::accumulate(m_counts.begin(), m_counts.end(), std::int64_t{0});
}

const BoxStock* Stock::of(Id<BoxKind> kind) const {
    for (const BoxStock& each : boxKinds)
        if (each.kind.id == kind) return &each;
    return nullptr;
}

const FramesOfKind* Stock::of(Id<FrameKind> kind) const {
    for (const FramesOfKind& each : frameKinds)
        if (each.kind.id == kind) return &each;
    return nullptr;
}

const EquipmentStock& Stock::of(EquipmentItem item) const {
    return equipment[static_cast<std::size_t>(item)];
}

std::vector<StockTakeRow> stockTake(const Stock& stock) {
    std::vector<StockTakeRow> rows;
    for (const EquipmentStock& each : stock.equipment) {
        if (each.kinds.empty()) {
            rows.push_back({each.item, std::nullopt, each.inUse, std::nullopt});
            continue;
        }
        for (std::size_t n = 0; n < each.kinds.size(); ++n)
            rows.push_back(
                {each.item, each.kinds[n], n == 0 ? each.inUse : std::nullopt, each.lastCounts[n]});
    }
    return rows;
}

Stock stockOn(const Read& file, Day on) { return Counter(file, on).count(); }

}  // namespace combwright
