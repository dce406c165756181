#include "core/model/frames/frame.h"

#include <algorithm>

namespace combwright {

std::span<const Fault> faults() {
    // said: faults
    static constexpr auto all = std::to_array<Fault>({
        {'W', "web of moth"},
        {'S', "beetle slime"},
        {'B', "bent or sagged"},
        {'U', "mouse"},
        {'O', "mould"},
        {'D', "dead brood"},
        {'X', "dead bees"},
        {'N', "mostly drone cells"},
        {'V', "broken wood"},
        {'T', "dark old comb"},
        {'G', "granulated"},
        {'Y', "fermented"},
        {'P', "clogged with propolis"},
        {'C', "cross comb"},
        {'L', "pollen-bound"},
        {'Q', "suspected foulbrood"},
    });
    return all;
}

std::optional<std::string> tidyFaults(std::string_view letters) {
    std::string tidy;
    for (const Fault& fault : faults())
        if (letters.find(fault.letter) != std::string_view::npos) tidy += fault.letter;
    const bool allKnown = std::all_of(letters.begin(), letters.end(),
                                      [&](char c) { return tidy.find(c) != std::string::npos; });
    if (!allKnown) return std::nullopt;
    return tidy;
}

std::string faultLetters() {
    std::string all;
    for (const Fault& fault : faults())
        all += (all.empty() ? "" : ", ") + std::string(1, fault.letter);
    return all;
}

const Fields& Frame::fields() {
    static const Fields all =
        describe(ownId<&Frame::id>(), field<&Frame::kind>("kind"), field<&Frame::box>("box"),
                 field<&Frame::position>("position"), field<&Frame::comb>("comb"),
                 field<&Frame::drawnYear>("drawn_year"), field<&Frame::wet>("wet"),
                 field<&Frame::filledA>("filled_a"), field<&Frame::filledB>("filled_b"),
                 field<&Frame::capped>("capped"), field<&Frame::faults>("faults"),
                 field<&Frame::frozen>("frozen"), field<&Frame::retired>("retired"),
                 field<&Frame::retiredOn>("retired_on"), field<&Frame::verdict>("verdict"),
                 field<&Frame::reviewed>("reviewed"), field<&Frame::stack>("stack"),
                 field<&Frame::mark>("mark"), field<&Frame::note>("note"));
    return all;
}

const Fields& BoxCount::fields() {
    static const Fields all = describe(
        ownId<&BoxCount::id>(), field<&BoxCount::box>("box"), field<&BoxCount::on>("on_day"),
        field<&BoxCount::occasion>("occasion"), field<&BoxCount::comb>("comb"),
        field<&BoxCount::faults>("faults"), field<&BoxCount::frames>("frames"),
        field<&BoxCount::verdict>("verdict"), field<&BoxCount::frameKind>("frame_kind"));
    return all;
}

const Fields& FrameCheck::fields() {
    static const Fields all =
        describe(ownId<&FrameCheck::id>(), field<&FrameCheck::frame>("frame"),
                 field<&FrameCheck::box>("box"), field<&FrameCheck::on>("on_day"),
                 field<&FrameCheck::occasion>("occasion"), field<&FrameCheck::howMany>("how_many"),
                 field<&FrameCheck::faults>("faults"), field<&FrameCheck::verdict>("verdict"),
                 field<&FrameCheck::note>("note"));
    return all;
}

const Fields& FrameMove::fields() {
    static const Fields all = describe(
        ownId<&FrameMove::id>(), field<&FrameMove::frame>("frame"), field<&FrameMove::on>("on_day"),
        field<&FrameMove::fromBox>("from_box"), field<&FrameMove::toBox>("to_box"),
        field<&FrameMove::fromStack>("from_stack"), field<&FrameMove::toStack>("to_stack"));
    return all;
}

}  // namespace combwright
