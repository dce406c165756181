#include "core/places/pull/wets_home.h"

#include <algorithm>
#include <map>
#include <set>
#include <tuple>

#include "core/model/honey/extraction.h"
#include "core/model/yard/visit.h"
#include "core/places/health/treatments.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/yards.h"
#include "core/trade/storeroom/left_over_stores.h"

namespace combwright {
namespace {

bool ofDisease(const Hold& hold) {
    return hold.why == HoldWhy::DeadOutUnexplained || hold.why == HoldWhy::SuspectedDisease ||
           hold.why == HoldWhy::Contact;
}

bool anyOfDisease(const std::vector<Hold>& holds) {
    return std::any_of(holds.begin(), holds.end(), ofDisease);
}

bool isNucleus(const Colony& colony, const std::vector<Box>& standing,
               const std::map<std::int64_t, BoxKind>& kinds, Day on) {
    if (standing.empty()) return false;
    std::int64_t frames = 0;
    for (const Box& box : standing) {
        const auto kind = kinds.find(box.kind.number);
        if (kind == kinds.end() || !kind->second.framesNominal) return false;
        frames += kind->second.framesNominal->value();
    }
    const bool young = colony.origin == Origin::Nucleus || colony.origin == Origin::Split;
    return frames <= nucleusFrames ||
           (young && yearOf(colony.since) == yearOf(on) && standing.size() == 1);
}

int wholeConstant(const Read& file, const char* name, Day on, double otherwise) {
    return static_cast<int>(constantOr(file, name, {}, on, otherwise));
}

/// Stores to be seen in a frame.
bool hasStores(const Frame& frame) {
    const auto filled = [](const std::optional<Share>& share) {
        return share && share->count() > 0;
    };
    return frame.faults.find('G') != std::string::npos || filled(frame.filledA) ||
           filled(frame.filledB);
}

/// The newest look into a hive's colony since a day that shows no disease.
std::optional<Day> cleanLookSince(const Read& file, Id<Hive> hive, Day since, Day on) {
    for (const Finding& finding : file.where<Finding>({is("hive", hive), isFrom("on_day", since)}))
        if (finding.what == Pest::BroodDiseaseSuspected && finding.on >= since && finding.on <= on)
            return std::nullopt;
    for (const DatedInspection& each : inspectionsBetween(file, hive, since, on))
        if (each.inspection.seen.looked == Looked::Opened) return each.on;
    return std::nullopt;
}

/// Puts wet boxes on hives, one after the other.
class Homeward {
  public:
    Homeward(const WetsRules& rules, std::int64_t perHive) : m_rules(rules), m_perHive(perHive) {
        for (const WetsHive& each : rules.hives()) m_on[each.hive.id.number] = each.given;
    }

    bool toOwn(WetBox& box, const WetsOrigin& origin) {
        if (!origin.hive || origin.treated) return false;
        const WetsHive* own = m_rules.find(*origin.hive);
        if (!own || m_rules.bar(box.box, own->hive.id) != WetsBar::None || full(*own)) return false;
        put(box, *own);
        box.ownHive = true;
        return true;
    }

    /// The hive of its own yard with the fewest; of equals the first in walking order.
    bool toYard(WetBox& box, const WetsOrigin& origin) {
        if (origin.treated) return false;
        const auto yard = m_rules.yardOf(origin);
        const WetsHive* best = nullptr;
        for (const WetsHive& each : m_rules.hives()) {
            if (yard != each.yard.id || full(each)) continue;
            if (m_rules.bar(box.box, each.hive.id) != WetsBar::None) continue;
            if (!best || m_on[each.hive.id.number] < m_on[best->hive.id.number]) best = &each;
        }
        if (!best) return false;
        put(box, *best);
        return true;
    }

  private:
    bool full(const WetsHive& hive) { return m_on[hive.hive.id.number] >= m_perHive; }
    void put(WetBox& box, const WetsHive& hive) {
        ++m_on[hive.hive.id.number];
        box.to = hive.hive.id;
        box.hive = hive.hive.mark.text();
        box.yard = hive.yard.name.text();
    }

    const WetsRules& m_rules;
    std::int64_t m_perHive;
    std::map<std::int64_t, std::int64_t> m_on;
};

/// Why a box goes to no hive.
WetsBar barOf(const WetsRules& rules, const WetBox& box, const WetsOrigin& origin) {
    if (origin.disease) return WetsBar::Disease;
    if (origin.treated) return WetsBar::BoxHeld;
    if (!origin.hive) return WetsBar::Unknown;
    return rules.bar(box.box, *origin.hive);
}

/// Boxes and hives that a hold ever stood on, lifted by now or not.
struct EverHeld {
    std::set<std::int64_t> boxes, hives;

    explicit EverHeld(const Read& file) {
        for (const Hold& hold : file.all<Hold>()) {
            if (hold.box) boxes.insert(hold.box->number);
            if (const auto colony = file.find(hold.colony)) hives.insert(colony->hive.number);
        }
    }
};

LeftOver leftOverOf(const Read& file, const WetsRules& rules, const EverHeld& everHeld,
                    const ShelfBox& box, Day on) {
    LeftOver left;
    left.box = box;
    for (const ShelfFrame& each : box.frames) {
        if (!hasStores(each.frame)) continue;
        ++left.frames;
        left.granulated = left.granulated || each.frame.faults.find('G') != std::string::npos;
    }
    if (left.frames == 0) return left;
    const WetsOrigin origin = rules.origin(box);
    const WetsHive* own = origin.hive ? rules.find(*origin.hive) : nullptr;
    LeftOverStores stores;
    stores.cameOff = box.offSince;
    stores.granulated = left.granulated;
    stores.everHeld = origin.held || (box.box && everHeld.boxes.contains(box.box->id.number)) ||
                      (origin.hive && everHeld.hives.contains(origin.hive->number));
    if (own) {
        left.cameOff = stores.hive.emplace(own->hive.mark.text());
        left.yard = stores.yard.emplace(own->yard.name.text());
        left.cleanLook = cleanLookSince(file, own->hive.id, box.offSince.value_or(Day{}), on);
        stores.cleanLook = left.cleanLook;
    }
    std::vector<HungryHive> hungry;
    for (const WetsHive& each : rules.hives())
        hungry.push_back(
            {each.hive.mark.text(), each.yard.name.text(), each.held, each.lives && !each.nucleus});
    const StoresAnswer answer = hivesFor(stores, hungry);
    for (const std::size_t at : answer.hives) left.hives.push_back(hungry[at].hive);
    if (!answer.keptBack) {
        left.way = LeftOverWay::Give;
    } else if (*answer.keptBack == WhyKeptBack::EverHeld) {
        left.way = LeftOverWay::Held;
    } else {
        // Where nobody lives any more no look will ever be had.
        const bool look = *answer.keptBack == WhyKeptBack::NoCleanLookSince && own && own->lives;
        left.way = look ? LeftOverWay::LookFirst : LeftOverWay::Melt;
    }
    return left;
}

}  // namespace

WetsRules::WetsRules(const Read& file, Day on) : m_held(heldThings(file, on)) {
    std::map<std::int64_t, BoxKind> kinds;
    for (const BoxKind& kind : file.all<BoxKind>()) kinds[kind.id.number] = kind;
    std::map<std::int64_t, Colony> living;
    for (const Colony& colony : file.all<Colony>()) {
        if (colony.since <= on && (!colony.ended || on < *colony.ended))
            living[colony.hive.number] = colony;
        // A hold outlives the colony: what it was for is still in the boxes.
        const auto held = m_held.colonies.find(colony.id.number);
        if (held == m_held.colonies.end()) continue;
        auto& holds = m_holds[colony.hive.number];
        holds.insert(holds.end(), held->second.begin(), held->second.end());
    }
    std::map<std::int64_t, std::vector<Box>> standing;
    std::map<std::int64_t, std::int64_t> given;
    for (const Box& box : file.all<Box>()) {
        if (!box.hive) continue;
        if (box.place == BoxPlace::OnHive) standing[box.hive->number].push_back(box);
        if (box.place == BoxPlace::GivenBack) ++given[box.hive->number];
    }
    for (const Hive& hive : file.all<Hive>()) m_yards[hive.id.number] = hive.yard;
    for (const Yard& yard : openYards(file))
        for (const Hive& hive : openHives(file, yard.id)) {
            WetsHive made;
            made.hive = hive;
            made.yard = yard;
            const auto colony = living.find(hive.id.number);
            made.lives = colony != living.end();
            made.nucleus =
                made.lives && isNucleus(colony->second, standing[hive.id.number], kinds, on);
            const auto holds = m_holds.find(hive.id.number);
            made.held = holds != m_holds.end();
            made.disease = made.held && anyOfDisease(holds->second);
            made.medicine = made.lives && supersBackOf(file, hive.id, on).has_value();
            made.given = given[hive.id.number];
            m_hives.push_back(std::move(made));
        }
    for (const Treatment& each : file.all<Treatment>())
        m_treatments.emplace(each.id.number, each.hive);
    for (const ExtractionBox& each : file.all<ExtractionBox>())
        if (each.box && each.hive) m_named[each.box->number] = *each.hive;
}

const WetsHive* WetsRules::find(Id<Hive> hive) const {
    const auto found = std::find_if(m_hives.begin(), m_hives.end(),
                                    [&](const WetsHive& each) { return each.hive.id == hive; });
    return found == m_hives.end() ? nullptr : &*found;
}

WetsOrigin WetsRules::origin(const ShelfBox& box) const {
    WetsOrigin origin;
    if (!box.box) return origin;
    // A box whose lost tag was named later came off the hive that was named.
    const auto named = m_named.find(box.box->id.number);
    origin.hive = box.cameOff;
    if (named != m_named.end() && !origin.hive) origin.hive = named->second;
    if (const auto own = m_held.boxes.find(box.box->id.number); own != m_held.boxes.end()) {
        origin.held = true;
        origin.disease = anyOfDisease(own->second);
        for (const Hold& hold : own->second) {
            const auto treatment = m_treatments.find(hold.treatment ? hold.treatment->number : 0);
            if (!hold.box || treatment == m_treatments.end()) continue;
            origin.treated = true;
            origin.treatedOn.push_back(treatment->second);
        }
    }
    if (!origin.hive) return origin;
    if (const auto holds = m_holds.find(origin.hive->number); holds != m_holds.end()) {
        origin.held = true;
        origin.disease = origin.disease || anyOfDisease(holds->second);
    }
    return origin;
}

std::optional<Id<Yard>> WetsRules::yardOf(const WetsOrigin& origin) const {
    if (!origin.hive) return std::nullopt;
    const auto found = m_yards.find(origin.hive->number);
    return found == m_yards.end() ? std::nullopt : std::optional(found->second);
}

bool WetsRules::held(Id<Hive> hive) const { return m_holds.contains(hive.number); }

WetsBar WetsRules::bar(const ShelfBox& box, Id<Hive> to) const {
    const WetsOrigin from = origin(box);
    const WetsHive* hive = find(to);
    // Held for what it was on with, its own hive is the one that had the medicine.
    const bool own = from.treated ? std::find(from.treatedOn.begin(), from.treatedOn.end(), to) !=
                                        from.treatedOn.end()
                                  : from.hive == to;
    if (from.disease) return WetsBar::Disease;
    if (from.held && !own) return WetsBar::BoxHeld;
    if (hive && (hive->disease || (hive->held && !own))) return WetsBar::HiveHeld;
    if (!hive || !hive->lives) return WetsBar::NoColony;
    if (hive->medicine) return WetsBar::Medicine;
    if (hive->nucleus) return WetsBar::Nucleus;
    if (!from.hive) return WetsBar::Unknown;
    if (yardOf(from) != hive->yard.id) return WetsBar::OtherYard;
    return WetsBar::None;
}

WetsHome wetsHome(const Read& file, Day on) { return wetsHome(file, on, shelfComb(file, on)); }

WetsHome wetsHome(const Read& file, Day on, const std::vector<ShelfBox>& comb) {
    WetsHome home;
    home.on = on;
    home.perHive = wholeConstant(file, "wets_per_hive", on, 3);
    const int offFrom = wholeConstant(file, "wets_off_from_days", on, 2);
    const int offTo = wholeConstant(file, "wets_off_to_days", on, 7);
    home.offFrom = on + days(offFrom);
    home.offTo = on + days(offTo);
    const WetsRules rules(file, on);
    const auto walkOf = [&](std::optional<Id<Hive>> hive) {
        const auto& all = rules.hives();
        return std::find_if(all.begin(), all.end(),
                            [&](const WetsHive& each) { return hive == each.hive.id; }) -
               all.begin();
    };

    const EverHeld everHeld(file);
    std::vector<WetBox> wet;
    for (const ShelfBox& box : comb) {
        if (!box.box) continue;
        if (box.box->place == BoxPlace::GivenBack && box.box->hive) {
            WetsOut out{*box.box, box.name, {}, {}, box.box->since, {}, {}};
            for (const BoxMove& move : file.where<BoxMove>({is("box", box.box->id)}))
                if (move.toPlace == BoxPlace::GivenBack) out.since = move.on;
            if (const WetsHive* hive = rules.find(*box.box->hive)) {
                out.hive = hive->hive.mark.text();
                out.yard = hive->yard.name.text();
            }
            out.from = out.since + days(offFrom);
            out.to = out.since + days(offTo);
            home.out.push_back(std::move(out));
        } else if (box.box->place == BoxPlace::Wet) {
            WetBox made;
            made.box = box;
            if (const auto from = rules.origin(box).hive)
                if (const auto hive = file.find(*from)) made.cameOff = hive->mark.text();
            wet.push_back(std::move(made));
        } else if (box.onShelf()) {
            LeftOver left = leftOverOf(file, rules, everHeld, box, on);
            if (left.frames > 0) home.leftOver.push_back(std::move(left));
        }
    }
    std::stable_sort(wet.begin(), wet.end(), [&](const WetBox& a, const WetBox& b) {
        return walkOf(rules.origin(a.box).hive) < walkOf(rules.origin(b.box).hive);
    });
    // All that fit go to their own hive first; only then are the others spread over the yard.
    Homeward homeward(rules, home.perHive);
    std::vector<WetBox> further;
    for (WetBox& box : wet) {
        const bool own = homeward.toOwn(box, rules.origin(box.box));
        (own ? home.go : further).push_back(std::move(box));
    }
    for (WetBox& box : further) {
        const WetsOrigin origin = rules.origin(box.box);
        if (!homeward.toYard(box, origin)) box.why = barOf(rules, box, origin);
        (box.to ? home.go : home.stay).push_back(std::move(box));
    }
    std::stable_sort(home.go.begin(), home.go.end(),
                     [&](const WetBox& a, const WetBox& b) { return walkOf(a.to) < walkOf(b.to); });
    std::stable_sort(home.out.begin(), home.out.end(),
                     [](const WetsOut& a, const WetsOut& b) { return a.since < b.since; });
    return home;
}

}  // namespace combwright
