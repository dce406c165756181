#include "core/places/storeroom/needs.h"

#include <algorithm>
#include <cassert>
#include <utility>

#include "core/storage/queries/constants.h"
#include "core/trade/storeroom/frame_needs.h"
#include "core/trade/storeroom/kit_needs.h"

namespace combwright {
namespace {

/// What a plan asks of one kind of box.
struct BoxWish {
    Id<BoxKind> kind;
    double perColony = 0;
    double perSplit = 0;
    double spareShare = 0;
    std::int64_t perBox = 0, undrawnPerBox = 0;  ///< frames a box, of supers
    std::optional<std::int64_t> frames;          ///< in all, of brood boxes
};

double dm2Of(const FrameKind& kind) {
    return kind.combWidth && kind.combHeight
               ? kind.combWidth->mm() * kind.combHeight->mm() / 10000.0
               : 0.0;
}

class Reckoner {
  public:
    Reckoner(const Read& file, const Stock& stock, Day on, int year)
        : m_file(file), m_stock(stock) {
        m_next.on = on;
        m_next.year = year;
        m_next.colonies = m_stock.colonies;
    }

    void plan(const SeasonPlan& plan, std::vector<PlanItem> items) {
        m_next.plan = plan;
        m_next.items = std::move(items);
    }

    /// What the reckoning refused; nothing for a plan as it is kept, whose limits are narrower.
    const std::optional<Refusal>& refused() const { return m_refused; }

    NextSeason reckon() {
        if (m_next.plan) {
            readPlan();
            for (const BoxWish& wish : m_wishes) needBoxes(wish);
            for (const BoxWish& wish : m_wishes) needFrames(wish);
            closeFrames();
            for (const PlanItem& item : m_next.items) needPieces(item);
        } else {
            m_next.gaps.push_back(PlanGap::Plan);
        }
        cull();
        spare();
        return std::move(m_next);
    }

  private:
    void readPlan() {
        const SeasonPlan& plan = *m_next.plan;
        if (plan.colonies) {
            m_next.colonies = plan.colonies->value();
            m_next.coloniesPlanned = true;
        }
        if (plan.splits) m_next.splits = plan.splits->value();
        const bool asksSplits =
            plan.broodKind || std::any_of(m_next.items.begin(), m_next.items.end(),
                                          [](const PlanItem& item) { return item.perSplit; });
        if (!plan.splits && asksSplits) m_next.gaps.push_back(PlanGap::Splits);
        if (plan.superKind) wishSupers(plan);
        if (plan.broodKind && plan.splits) wishBrood(plan);
    }

    void wishSupers(const SeasonPlan& plan) {
        const auto kind = m_file.find(*plan.superKind);
        BoxWish wish;
        wish.kind = *plan.superKind;
        wish.perColony = plan.supersPerColony ? plan.supersPerColony->value() : 0;
        wish.spareShare = plan.spare ? plan.spare->value() : 0;
        const auto nominal = kind ? kind->framesNominal : std::nullopt;
        const auto perSuper = plan.framesPerSuper ? plan.framesPerSuper : nominal;
        if (!perSuper) m_next.gaps.push_back(PlanGap::FramesPerSuper);
        if (!kind || !kind->takes) m_next.gaps.push_back(PlanGap::SuperFrame);
        if (perSuper) {
            wish.perBox = perSuper->value();
            wish.undrawnPerBox = plan.undrawnPerSuper.value_or(*perSuper).value();
        }
        m_wishes.push_back(wish);
    }

    void wishBrood(const SeasonPlan& plan) {
        const auto kind = m_file.find(*plan.broodKind);
        BoxWish wish;
        wish.kind = *plan.broodKind;
        const auto perSplit = plan.broodPerSplit.value_or(Count());
        wish.perSplit = static_cast<double>(perSplit.value());
        if (plan.framesPerSplit)
            wish.frames = plan.framesPerSplit->value() * m_next.splits;
        else if (kind && kind->framesNominal)
            wish.frames = kind->framesNominal->value() * perSplit.value() * m_next.splits;
        else
            m_next.gaps.push_back(PlanGap::FramesPerSplit);
        if (!kind || !kind->takes) m_next.gaps.push_back(PlanGap::BroodFrame);
        m_wishes.push_back(wish);
    }

    /// The line of a kind, made where it is the first wish for it: supers and brood may share one.
    BoxNeed& boxLine(Id<BoxKind> id) {
        for (BoxNeed& each : m_next.boxes)
            if (each.kind.id == id) return each;
        BoxNeed line;
        line.kind = *m_file.find(id);
        if (const BoxStock* there = m_stock.of(id)) {
            line.boxes.there = there->usable;
            line.boxes.inRepair = there->repairable;
            line.held = there->held;
            for (const StockBox& box : m_stock.boxes)
                if (box.box.kind == id && box.isFree() &&
                    box.box.condition == BoxCondition::ToScrape)
                    ++line.toScrape;
        }
        m_next.boxes.push_back(std::move(line));
        return m_next.boxes.back();
    }

    void needBoxes(const BoxWish& wish) {
        BoxNeed& line = boxLine(wish.kind);
        (wish.perSplit > 0 ? line.brood : line.supers) = true;
        needKit(wish.perColony, wish.perSplit, wish.spareShare, line.boxes, line.working);
    }

    /// Adds a need to a line: what the needs before it left over is there for it.
    void needKit(double perColony, double perSplit, double spareShare, Shortage& line,
                 Working& working) {
        KitNeed kit{perColony, perSplit, spareShare,
                    std::max<std::int64_t>(0, line.there - line.need), 0};
        kit.inRepair =
            std::max<std::int64_t>(0, line.there + line.inRepair - std::max(line.need, line.there));
        note(&working, "colonies", static_cast<double>(m_next.colonies), "",
             m_next.coloniesPlanned ? "planned" : "living now");
        if (perSplit > 0) note(&working, "splits", static_cast<double>(m_next.splits), "");
        const auto answer = kitNeeds(m_next.colonies, m_next.splits, kit, &working);
        if (!answer) return refuse(answer.error());
        line.need += answer->need;
        line.nowAtMost += answer->missing;
        line.afterRepairsAtMost += answer->missingAfterRepair;
    }

    FrameNeed& frameLine(Id<FrameKind> id) {
        for (FrameNeed& each : m_next.frames)
            if (each.kind.id == id) return each;
        FrameNeed line;
        line.kind = *m_file.find(id);
        if (const FramesOfKind* there = m_stock.of(id)) {
            line.use = there->use;
            line.boxesNotCounted = there->boxesNotCounted;
            line.frames.known = !there->inDoubt();
        }
        m_next.frames.push_back(std::move(line));
        return m_next.frames.back();
    }

    void needFrames(const BoxWish& wish) {
        const auto kind = m_file.find(wish.kind);
        if (!kind || !kind->takes) return;
        if (wish.perSplit > 0 || wish.frames) {
            if (!wish.frames) return;
            FrameNeed& line = frameLine(*kind->takes);
            line.frames.need += *wish.frames;
            note(&line.working, "frames_of_splits", static_cast<double>(*wish.frames), "",
                 "splits · frames a split");
            return;
        }
        if (wish.perBox == 0) return;
        const auto kit = kitNeeds(m_next.colonies, m_next.splits,
                                  {wish.perColony, wish.perSplit, wish.spareShare, 0, 0});
        FrameNeed& line = frameLine(*kind->takes);
        if (!kit) return refuse(kit.error());
        note(&line.working, "boxes_to_fill", static_cast<double>(kit->need), "", "supers needed");
        note(&line.working, "frames_drawn", static_cast<double>(line.use[FrameUse::Drawn]), "");
        const auto places = placesToFill({kit->need, wish.perBox, wish.undrawnPerBox},
                                         line.use[FrameUse::Drawn], &line.working);
        if (!places) return refuse(places.error());
        line.frames.need += *places;
    }

    void closeFrames() {
        for (FrameNeed& line : m_next.frames) {
            const FrameStock there{line.use[FrameUse::Drawn], line.use[FrameUse::Foundation],
                                   line.use[FrameUse::Bare], line.use[FrameUse::Repairable]};
            const auto answer = frameNeeds(line.frames.need, there, &line.working);
            if (!answer) {
                refuse(answer.error());
                continue;
            }
            line.frames.there = answer->usable - there.repairable;
            line.frames.inRepair = there.repairable;
            line.frames.nowAtMost = std::max<std::int64_t>(0, line.frames.need - line.frames.there);
            line.frames.afterRepairsAtMost = answer->buyFrames;
            line.sheets = answer->foundationSheets;
            for (const Equipment& each : m_stock.of(EquipmentItem::Foundation).kinds)
                if (each.frameKind == line.kind.id && each.onHand)
                    line.sheetsThere = line.sheetsThere.value_or(0) + each.onHand->value();
            line.sheetsToBuy =
                std::max<std::int64_t>(0, line.sheets - line.sheetsThere.value_or(0));
            if (line.sheetsThere) {
                note(&line.working, "sheets_there", static_cast<double>(*line.sheetsThere), "");
                note(&line.working, "sheets_to_buy", static_cast<double>(line.sheetsToBuy), "",
                     "sheets − on the shelf, not below 0");
            }
            packs(m_next.plan->framePack, line.frames.afterRepairsAtMost, line.pack, line.packs,
                  "frame_packs", &line.working);
            packs(m_next.plan->foundationPack, line.sheetsToBuy, line.sheetPack, line.sheetPacks,
                  "sheet_packs", &line.working);
        }
    }

    static void packs(const std::optional<Count>& size, std::int64_t pieces,
                      std::optional<std::int64_t>& pack, std::optional<std::int64_t>& number,
                      const char* what, Working* working) {
        if (!size || *size < Count(1)) return;
        pack = size->value();
        number = packsFor(pieces, *pack);
        note(working, what, static_cast<double>(*number), "",
             "⌈pieces ÷ " + std::to_string(*pack) + "⌉");
    }

    void needPieces(const PlanItem& item) {
        if (item.perSplit && !m_next.plan->splits) return;  // told as a gap
        const EquipmentStock& there = m_stock.of(item.item);
        ItemNeed line;
        line.plan = item;
        line.inUse = there.inUse;
        line.held = there.held;
        // What a living hive stands on is there for its colony, not for a split.
        const bool forColonies = item.perColony && item.perColony->value() > 0;
        line.pieces.there = there.there() - (forColonies ? 0 : there.inUse.value_or(0));
        line.pieces.inRepair = there.inRepair.value_or(0);
        line.pieces.known = there.wholly;
        note(&line.working, "on_hand", static_cast<double>(there.onHand.value_or(0)), "",
             there.onHand ? "counted in the shed" : "nobody counted the shed");
        if (there.inUse)
            note(&line.working, "on_hives", static_cast<double>(*there.inUse), "",
                 forColonies ? "counted from the hives" : "stay where they are, not counted");
        if (there.onEmptyHives)
            note(&line.working, "on_empty_hives", static_cast<double>(*there.onEmptyHives), "",
                 "no colony lives there, and none is held back");
        needKit(item.perColony ? item.perColony->value() : 0,
                item.perSplit ? item.perSplit->value() : 0, item.spare ? item.spare->value() : 0,
                line.pieces, line.working);
        std::optional<std::int64_t> pack;
        packs(item.pack, line.pieces.afterRepairsAtMost, pack, line.packs, "packs", &line.working);
        m_next.pieces.push_back(std::move(line));
    }

    /// The kind brood is in: as planned, else that of most boxes in nests.
    std::optional<Id<FrameKind>> broodFrame() const {
        std::optional<Id<BoxKind>> kind = m_next.plan ? m_next.plan->broodKind : std::nullopt;
        std::int64_t most = 0;
        if (!kind)
            for (const BoxStock& each : m_stock.boxKinds)
                if (each.inNests > most) {
                    most = each.inNests;
                    kind = each.kind.id;
                }
        const auto box = m_file.find(kind);
        return box ? box->takes : std::nullopt;
    }

    void cull() {
        const auto kind = broodFrame();
        if (!kind) return;
        CombCull cull;
        cull.kind = *m_file.find(*kind);
        std::map<int, std::int64_t> years;
        for (const Frame& frame : m_stock.frames) {
            if (frame.kind != *kind || !isComb(frame)) continue;
            ++cull.combs;
            if (frame.drawnYear)
                ++years[static_cast<int>(frame.drawnYear->value())];
            else
                ++cull.yearUnknown;
        }
        if (cull.combs == 0) return;
        std::vector<CombsOfYear> combs;
        for (const auto& [year, many] : years) {
            cull.years.push_back({year, many, 0});
            combs.push_back({year, many});
        }
        if (cull.yearUnknown > 0) {
            cull.years.push_back({std::nullopt, cull.yearUnknown, 0});
            combs.push_back({std::nullopt, cull.yearUnknown});
        }
        cull.target = cullTarget(
            cull.combs,
            constantOr(m_file, "comb_cull_share", std::nullopt, m_stock.on, combCullShare),
            &cull.working);
        for (const CullOf& each : cullFirst(combs, cull.target))
            cull.years[each.at].takeOut += each.combs;
        m_next.cull = std::move(cull);
    }

    /// Drawn, and not on its way out already.
    static bool isComb(const Frame& frame) { return useOf(frame, false) == FrameUse::Drawn; }

    void spare() {
        CombSpared spared;
        for (const FramesOfKind& each : m_stock.frameKinds) {
            const std::int64_t drawn = each.use[FrameUse::Drawn];
            if (drawn == 0) continue;
            const double area = dm2Of(each.kind);
            if (area <= 0) {
                spared.combsWithoutSize += drawn;
                continue;
            }
            spared.combs += drawn;
            note(&spared.working, "combs_on_shelf", static_cast<double>(drawn), "",
                 each.kind.name.text());
            const double wax = waxInCombGrams(area, &spared.working);
            spared.waxG += wax * static_cast<double>(drawn);
        }
        if (spared.combs == 0 && spared.combsWithoutSize == 0) return;
        note(&spared.working, "wax_on_shelf", spared.waxG, "g", "combs · wax a comb");
        spared.honeyG = honeySparedGrams(spared.waxG, {}, &spared.working);
        m_next.spared = std::move(spared);
    }

    void refuse(const Refusal& refusal) {
        if (!m_refused) m_refused = refusal;
    }

    const Read& m_file;
    const Stock& m_stock;
    NextSeason m_next;
    std::optional<Refusal> m_refused;
    std::vector<BoxWish> m_wishes;
};

}  // namespace

std::string_view key(PlanGap gap) {
    switch (gap) {
        case PlanGap::Plan:
            return "plan-season";
        case PlanGap::Splits:
            return "splits";
        case PlanGap::FramesPerSuper:
            return "frames_per_super";
        case PlanGap::SuperFrame:
            return "super_kind";
        case PlanGap::FramesPerSplit:
            return "frames_per_split";
        case PlanGap::BroodFrame:
            return "brood_kind";
    }
    return {};
}

int plannedYear(const Read& file, Day on) {
    const int year = yearOf(on);
    if (monthOf(on) >= 9) return year + 1;
    const bool own = file.first<SeasonPlan>({is("year", Count(year))}).has_value();
    const bool next = file.first<SeasonPlan>({is("year", Count(year + 1))}).has_value();
    return !own && next ? year + 1 : year;
}

NextSeason nextSeason(const Read& file, Day on, int year) {
    const Stock stock = stockOn(file, on);
    Reckoner reckoner(file, stock, on, year);
    if (const auto plan = file.first<SeasonPlan>({is("year", Count(year))}))
        reckoner.plan(*plan, file.where<PlanItem>({is("plan", plan->id)}));
    NextSeason next = reckoner.reckon();
    assert(!reckoner.refused());  // a kept plan's limits are narrower than the reckoning's
    return next;
}

Result<NextSeason> nextSeason(const Read& file, const Stock& stock, Day on, const SeasonPlan& plan,
                              const std::vector<PlanItem>& items) {
    Reckoner reckoner(file, stock, on, static_cast<int>(plan.year.value()));
    reckoner.plan(plan, items);
    NextSeason next = reckoner.reckon();
    if (reckoner.refused()) return *reckoner.refused();
    return next;
}

}  // namespace combwright
