#include "core/places/storeroom/stack_weight.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/model/honey/extraction.h"
#include "core/places/pull/full_frame.h"
#include "core/places/storeroom/shelf_comb.h"
#include "core/trade/storeroom/box_on_shelf.h"
#include "core/words/figures.h"

namespace combwright {
namespace {

QString weightSay(const char* text) { return QCoreApplication::translate("stack_weight", text); }

/// What may still hang in a frame. Looked through or never with bees, it is what was seen in it.
HoneyShare honeyIn(const Frame& frame, bool mayBeFull) {
    const auto share = [](const std::optional<Share>& part) {
        return static_cast<double>(part->count()) / 10000.0;
    };
    if (frame.filledA && frame.filledB) {
        const double filled = (share(frame.filledA) + share(frame.filledB)) / 2;
        return {filled, filled, filled};
    }
    if (frame.filledA || frame.filledB) {
        const double one = share(frame.filledA ? frame.filledA : frame.filledB);
        return {one / 2, one, (1 + one) / 2};
    }
    const bool comb = !frame.comb || (*frame.comb != Comb::Bare && *frame.comb != Comb::Foundation);
    if (!comb) return {};
    // Granulated, fermented, bound with pollen: something is in it, nobody wrote how much.
    if (frame.faults.find_first_of("GYL") != std::string::npos) return {0, 0.5, 1};
    if (frame.wet.value_or(false)) return {0, wetHoneyShare / 2, wetHoneyShare};
    if (mayBeFull && !frame.reviewed) return {0, 0.5, 1};
    return {};
}

void weigh(BoxWeight& weight, BoxOnShelf box, const ShelfBox& shelf, bool cameFull) {
    if (!shelf.frames.empty()) {
        box.frames = static_cast<std::int64_t>(shelf.frames.size());
        for (const ShelfFrame& each : shelf.frames) {
            weight.mayBeFull = weight.mayBeFull || (cameFull && !each.frame.reviewed);
            box.honey.push_back(honeyIn(each.frame, cameFull));
        }
    } else if (cameFull) {
        // Nobody counted its frames, and it came off its hive as it was.
        weight.mayBeFull = true;
        box.honey.assign(static_cast<std::size_t>(box.nominal), HoneyShare{0, 0.5, 1});
    }
    weight.grams = boxOnShelfGrams(box);
    weight.lift = judgeLift(weight.grams->high);
}

QString kilograms(const Between& grams) {
    const QString low = massFigure(grams.low, How::Assumed);
    const QString high = massFigure(grams.high, How::Assumed);
    const QString about = massKnown(grams.likely, How::Assumed);
    return low == high ? weightSay("about %1").arg(about)
                       : weightSay("about %1 (%2 to %3)").arg(about, low, high);
}

}  // namespace

ShelfWeights::ShelfWeights(const Read& file, Day on) {
    std::map<std::int64_t, Day> ran;
    for (const Extraction& run : file.all<Extraction>()) ran.emplace(run.id.number, run.on);
    std::map<std::int64_t, Day> spun;  // when a box was last in a run
    for (const ExtractionBox& entry : file.all<ExtractionBox>()) {
        const auto day = ran.find(entry.extraction.number);
        if (!entry.box || day == ran.end() || day->second > on) continue;
        const auto at = spun.try_emplace(entry.box->number, day->second).first;
        at->second = std::max(at->second, day->second);
    }
    std::map<std::int64_t, std::optional<BoxOnShelf>> kinds;
    const auto emptyOf = [&](const BoxKind& kind) {
        const auto known = kinds.find(kind.id.number);
        if (known != kinds.end()) return known->second;
        std::optional<BoxOnShelf> empty;
        const auto emptyG = emptyBoxGramsOf(file, kind, {}, on);
        const auto takes = file.find(kind.takes);
        const auto full = takes ? fullFrameGramsOf(file, *takes, {}, on) : std::nullopt;
        if (emptyG && full && kind.framesNominal && *kind.framesNominal > Count())
            empty = BoxOnShelf{*emptyG, kind.framesNominal->value(), {}, *full, {}};
        kinds.emplace(kind.id.number, empty);
        return empty;
    };
    for (const ShelfBox& shelf : shelfComb(file, on)) {
        if (!shelf.box || !shelf.kind || !shelf.onShelf()) continue;
        BoxWeight weight;
        weight.box = shelf.box->id;
        if (auto box = emptyOf(*shelf.kind)) {
            const auto run = spun.find(weight.box.number);
            const bool wasSpun =
                run != spun.end() && (!shelf.offSince || run->second >= *shelf.offSince);
            weigh(weight, *box, shelf, shelf.cameOff && !wasSpun);
        }
        m_boxes.emplace(weight.box.number, weight);
        if (shelf.box->place != BoxPlace::Storeroom || shelf.box->stack.empty()) continue;
        m_stackOf.emplace(weight.box.number, shelf.box->stack);
        m_stacks[shelf.box->stack].push_back(weight.box.number);
    }
}

const BoxWeight* ShelfWeights::of(Id<Box> box) const {
    const auto at = m_boxes.find(box.number);
    return at == m_boxes.end() ? nullptr : &at->second;
}

std::optional<StackWeight> ShelfWeights::stackOf(Id<Box> box) const {
    const auto name = m_stackOf.find(box.number);
    if (name == m_stackOf.end() || m_stacks.at(name->second).size() < 2) return std::nullopt;
    StackWeight stack;
    stack.stack = name->second;
    for (const std::int64_t number : m_stacks.at(name->second)) {
        const BoxWeight& weight = m_boxes.at(number);
        stack.tooHeavy += weight.tooHeavy();
        if (weight.grams) {
            stack.grams.low += weight.grams->low;
            stack.grams.likely += weight.grams->likely;
            stack.grams.high += weight.grams->high;
        } else {
            ++stack.notWeighed;
        }
        stack.boxes.push_back(weight);
    }
    return stack;
}

QString weightText(const BoxWeight& weight) {
    if (!weight.grams) return weightSay("weight not known: its kind was never measured");
    return weightSay("weighs %1").arg(kilograms(*weight.grams));
}

QString weightText(const StackWeight& weight) {
    QString text = weightSay("its stack of %1 %2")
                       .arg(static_cast<int>(weight.boxes.size()))
                       .arg(kilograms(weight.grams));
    if (weight.notWeighed > 0)
        text += weightSay(" and %1 nobody measured").arg(static_cast<int>(weight.notWeighed));
    return text;
}

QString liftText(const BoxWeight& weight) {
    if (!weight.tooHeavy()) return {};
    const QString most = massText(weight.grams->high, How::Assumed);
    return weight.mayBeFull
               ? weightSay("It may be full, up to %1: over %2 lift with two, or carry frames.")
                     .arg(most, liftLimitText())
               : weightSay("It may weigh %1: over %2 lift with two, or carry frames.")
                     .arg(most, liftLimitText());
}

}  // namespace combwright
