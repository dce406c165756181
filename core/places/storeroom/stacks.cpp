#include "core/places/storeroom/stacks.h"

#include <map>
#include <utility>

#include "core/model/honey/extraction.h"
#include "core/places/pull/full_frame.h"
#include "core/storage/queries/constants.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

class StackReader {
  public:
    StackReader(const Read& file, const Stock& stock) : m_file(file), m_on(stock.on) {
        m_limits.carefulG = constantOr(file, "careful_lift_g", {}, m_on, m_limits.carefulG);
        m_limits.mostG = constantOr(file, "carry_g", {}, m_on, m_limits.mostG);
        for (const BoxKind& kind : file.all<BoxKind>()) m_kinds[kind.id.number] = kind;
        for (const Frame& frame : stock.frames)
            if (frame.box) ++(isDrawn(frame) ? m_drawn : m_undrawn)[frame.box->number];
        for (ExtractionBox& entry : file.all<ExtractionBox>())
            if (entry.box && (entry.gross || entry.wet))
                m_weighed[entry.box->number] = std::move(entry);
    }

    void add(const StockBox& each) {
        const Box& box = each.box;
        BoxStack& stack = m_stacks[{box.place, box.stack}];
        stack.place = box.place;
        stack.stack = box.stack;
        BoxInStack stacked;
        stacked.box = box.id;
        stacked.name = nameOf(m_file, Box::table, box.id.number);
        const auto kind = m_kinds.find(box.kind.number);
        if (kind != m_kinds.end()) weigh(stacked, box, kind->second);
        stacked.lift = judgeLift(stacked.massG, m_limits);
        stacked.fullLift = judgeLift(stacked.fullG, m_limits);
        stack.boxes.push_back(std::move(stacked));
        BoxToStack sides;
        if (kind != m_kinds.end()) {
            const auto mm = [](const std::optional<Length>& side) {
                return side ? std::optional(side->mm()) : std::nullopt;
            };
            sides.outerLengthMm = mm(kind->second.outerLength);
            sides.outerWidthMm = mm(kind->second.outerWidth);
            sides.heightMm = mm(kind->second.outerHeight);
        }
        sides.massG = stack.boxes.back().massG;
        m_sides[{box.place, box.stack}].push_back(sides);
    }

    std::vector<BoxStack> stacks() && {
        std::vector<BoxStack> all;
        for (auto& [where, stack] : m_stacks) {
            stack.load = stackLoad(m_sides[where], m_limits, &stack.working);
            all.push_back(std::move(stack));
        }
        return all;
    }

  private:
    static bool isDrawn(const Frame& frame) {
        return frame.comb && *frame.comb != Comb::Bare && *frame.comb != Comb::Foundation;
    }

    /// What the scales said in its last run, as long as it stands as it was weighed.
    std::optional<double> weighed(const Box& box) const {
        const auto entry = m_weighed.find(box.id.number);
        if (entry == m_weighed.end()) return std::nullopt;
        const bool waits = box.place == BoxPlace::Waiting || box.place == BoxPlace::Cleared;
        const auto& reading = entry->second.wet ? entry->second.wet
                              : waits           ? entry->second.gross
                                                : std::optional<Known<Mass>>();
        if (!reading || (entry->second.wet && box.place != BoxPlace::Wet)) return std::nullopt;
        const auto middle = reading->middle();
        return middle;
    }

    std::int64_t countOf(const std::map<std::int64_t, std::int64_t>& counts, Id<Box> box) const {
        const auto found = counts.find(box.number);
        return found == counts.end() ? 0 : found->second;
    }

    void weigh(BoxInStack& stacked, const Box& box, const BoxKind& kind) const {
        stacked.kind = kind.name.text();
        const auto empty = emptyBoxGramsOf(m_file, kind, std::nullopt, m_on);
        const std::int64_t drawn = countOf(m_drawn, box.id);
        const std::int64_t frames = drawn + countOf(m_undrawn, box.id);
        const auto frame = m_file.find(kind.takes);
        const auto full =
            frame ? fullFrameGramsOf(m_file, *frame, std::nullopt, m_on) : std::optional<double>();
        const std::int64_t room = frames > 0           ? frames
                                  : kind.framesNominal ? kind.framesNominal->value()
                                                       : 0;
        if (empty && full && room > 0) stacked.fullG = *empty + *full * static_cast<double>(room);
        if (const auto mass = weighed(box)) {
            stacked.massG = mass;
            stacked.how = How::Weighed;
            return;
        }
        // What waits for the knife holds honey that nobody weighed.
        const bool holdsHoney = box.place == BoxPlace::Waiting || box.place == BoxPlace::Cleared;
        if (holdsHoney || drawn == 0 || !empty) return;
        stacked.massG = empty;
        stacked.how = How::Assumed;
    }

    using Where = std::pair<BoxPlace, std::string>;
    const Read& m_file;
    Day m_on;
    LiftLimits m_limits;
    std::map<std::int64_t, BoxKind> m_kinds;
    std::map<std::int64_t, std::int64_t> m_drawn, m_undrawn;
    std::map<std::int64_t, ExtractionBox> m_weighed;
    std::map<Where, BoxStack> m_stacks;
    std::map<Where, std::vector<BoxToStack>> m_sides;
};

}  // namespace

const BoxInStack* BoxStack::heaviest() const {
    const BoxInStack* most = nullptr;
    for (const BoxInStack& each : boxes)
        if (each.massG && (!most || *each.massG > *most->massG)) most = &each;
    return most;
}

const BoxInStack* BoxStack::heaviestFull() const {
    const BoxInStack* most = nullptr;
    for (const BoxInStack& each : boxes)
        if (each.fullG && (!most || *each.fullG > *most->fullG)) most = &each;
    return most;
}

std::vector<BoxStack> boxStacks(const Read& file, const Stock& stock) {
    StackReader reader(file, stock);
    for (const StockBox& each : stock.boxes)
        if (each.stands == BoxStands::Store || each.stands == BoxStands::Freezer) reader.add(each);
    return std::move(reader).stacks();
}

}  // namespace combwright
