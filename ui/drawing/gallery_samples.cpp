#include "ui/drawing/gallery_samples.h"

#include <QStringList>
#include <array>

namespace combwright {

namespace {

FrameView sampleFrame(CombState comb, std::uint64_t seed) {
    FrameView frame;
    frame.comb = comb;
    frame.seed = seed;
    return frame;
}

FrameView sampleFilled(double filled, double capped, std::uint64_t seed) {
    FrameView frame = sampleFrame(CombState::Drawn, seed);
    frame.a = {filled, capped, {}};
    return frame;
}

FrameView sampleFault(FrameFault fault, std::uint64_t seed) {
    FrameView frame = sampleFrame(CombState::Drawn, seed);
    frame.faults = {fault};
    if (fault == FrameFault::Mouse) frame.faults.push_back(FrameFault::BrokenWood);
    if (fault == FrameFault::Granulated || fault == FrameFault::Fermented) frame.a.filled = 0.8;
    return frame;
}

BoxView sampleSuper(const QString& mark, std::optional<double> filled, const QString& words) {
    BoxView box;
    box.mark = mark;
    box.filled = filled;
    if (!words.isEmpty()) box.words = {words};
    return box;
}

BoxView sampleBrood(const QString& mark, const QStringList& words, bool faded = false) {
    BoxView box;
    box.mark = mark;
    box.heightMm = 244.5;
    box.brood = true;
    box.words = words;
    box.faded = faded;
    return box;
}

StackView sampleStack(std::vector<BoxView> boxes) {
    StackView stack;
    stack.name = boxes.front().mark;
    stack.boxes = std::move(boxes);
    return stack;
}

/// Three supers over each other with their pegs, no lid words, on the ground.
StackView sampleWaiting() {
    StackView stack = sampleStack(
        {sampleSuper("M14", 0.3, "3 left"), sampleSuper("M12", {}, "3 spun, 6 in"),
         sampleSuper("M20", 0.85, "7 of 9 capped"), sampleSuper("M18", 0.8, "7 of 9 capped")});
    int peg = 9;
    for (auto& box : stack.boxes) box.peg = QString::number(peg++);
    stack.floor = false;
    return stack;
}

SlotView sampleSlot(double start, double end, const QString& letter = {}) {
    SlotView slot;
    slot.startGrams = start;
    slot.endGrams = end;
    slot.letter = letter;
    return slot;
}

// Weighed frames, grams at the start and the end, slots 1 to 12 (the sketches' worked example).
constexpr std::array<std::array<double, 2>, 12> weighedLoad = {{{2450, 400},
                                                                {2080, 410},
                                                                {1960, 380},
                                                                {2010, 390},
                                                                {2310, 390},
                                                                {2400, 420},
                                                                {2100, 380},
                                                                {2160, 400},
                                                                {1690, 390},
                                                                {2420, 420},
                                                                {2350, 360},
                                                                {1900, 410}}};

ExtractorView sampleWeighed() {
    ExtractorView extractor;
    for (const auto& frame : weighedLoad) {
        extractor.slotViews.push_back(sampleSlot(frame[0], frame[1]));
    }
    extractor.start = OffsetView{2.8, 160.0, 0.0};
    extractor.end = OffsetView{2.7, 20.0, 0.0};
    extractor.ringGrams = 122.0;
    extractor.ringRan = false;
    return extractor;
}

ExtractorView sampleChanged() {
    ExtractorView extractor = sampleWeighed();
    std::swap(extractor.slotViews[0], extractor.slotViews[5]);
    extractor.slotViews[0].ringed = true;
    extractor.slotViews[5].ringed = true;
    extractor.start = OffsetView{94.0, 163.0, 0.0};
    extractor.end = OffsetView{39.0, 345.0, 0.0};
    return extractor;
}

double heftGrams(QChar letter) {
    if (letter == QLatin1Char('h')) return 2400.0;
    return letter == QLatin1Char('m') ? 2100.0 : 1800.0;
}

ExtractorView sampleLetters() {
    ExtractorView extractor;
    const QString letters = QStringLiteral("hlmhmlhmhlmm");
    for (const QChar letter : letters) {
        extractor.slotViews.push_back(sampleSlot(heftGrams(letter), 400.0, letter));
    }
    extractor.slotViews[2].ringed = true;
    extractor.slotViews[3].ringed = true;
    extractor.start = OffsetView{155.0, 165.0, 421.0};
    extractor.end = OffsetView{0.0, 0.0, 158.0};
    extractor.ringGrams = 700.0;
    return extractor;
}

ExtractorView sampleLastThree() {
    ExtractorView extractor;
    for (int i = 0; i < 12; ++i) {
        const bool used = i % 4 == 0;
        extractor.slotViews.push_back(used ? sampleSlot(2100.0, 400.0, "m") : SlotView{});
        extractor.slotViews.back().inUse = used;
    }
    extractor.start = OffsetView{0.0, 0.0, 210.0};
    extractor.ringGrams = 700.0;
    return extractor;
}

RibbonMark sampleDay(int month, int day, bool done = true) {
    return {QDate(2027, month, day), {}, done, {}};
}

RibbonMark sampleSpan(int month, int day, int days, bool done) {
    const QDate from(2027, month, day);
    return {from, from.addDays(days - 1), done, {}};
}

BandView sampleBand(const QString& name, double kilograms, char how, BandFill fill) {
    return {name, kilograms * 1000.0, {QString::number(kilograms, 'f', 1), "kg", how}, fill, {}};
}

}  // namespace

std::vector<DrawnSample<FrameView>> frameSamples() {
    FrameView begun = sampleFrame(CombState::PartDrawn, 3);
    begun.drawn = 0.45;
    FrameView wet = sampleFrame(CombState::Drawn, 8);
    wet.wet = true;
    std::vector<DrawnSample<FrameView>> samples = {
        {sampleFrame(CombState::Bare, 1), "bare", "wires only"},
        {sampleFrame(CombState::Foundation, 2), "foundation", "nothing drawn"},
        {begun, "part drawn", "45 % of the sheet"},
        {sampleFrame(CombState::Drawn, 4), "drawn, empty", "ready for a super"},
        {sampleFilled(0.4, 0.0, 5), "filling", "40 %, none capped"},
        {sampleFilled(0.75, 0.3, 6), "filling", "75 %, 30 % capped"},
        {sampleFilled(0.97, 0.9, 7), "ripe", "97 %, 90 % capped"},
        {wet, "wet", "not licked dry"},
    };
    const std::pair<FrameFault, QString> notes[] = {
        {FrameFault::Mouse, "two stand in a row"},    {FrameFault::DeadBrood, "until ruled out"},
        {FrameFault::BrokenWood, "bar or lug"},       {FrameFault::OldDark, "no light through"},
        {FrameFault::Granulated, "set in the cells"}, {FrameFault::Foulbrood, "stop, hold, report"},
    };
    std::uint64_t seed = 20;
    for (const FrameFault fault : allFaults()) {
        const QString letter(QLatin1Char(static_cast<char>(fault)));
        DrawnSample<FrameView> sample{sampleFault(fault, ++seed), letter + " " + faultWord(fault)};
        if (fault == FrameFault::Foulbrood) sample.title = "Q foulbrood?";
        for (const auto& [noted, words] : notes) {
            if (noted == fault) sample.words = words;
        }
        samples.push_back(sample);
    }
    return samples;
}

std::vector<DrawnSample<FrameView>> kindSamples() {
    const std::array<std::pair<double, QString>, 4> kinds = {
        {{231.8, "deep"}, {184.1, "three quarter"}, {158.8, "medium"}, {136.5, "shallow"}}};
    std::vector<DrawnSample<FrameView>> samples;
    for (const auto& [height, name] : kinds) {
        FrameView frame = sampleFilled(0.7, 0.5, 40);
        frame.shape.combHeight += height - frame.shape.height;
        frame.shape.height = height;
        samples.push_back({frame, name, QString::number(height, 'f', 1)});
    }
    return samples;
}

FrameView twoSidedSample() {
    FrameView frame = sampleFilled(0.95, 0.85, 51);
    frame.b = SideView{0.6, 0.35, {}};
    return frame;
}

std::vector<DrawnSample<StackView>> stackSamples() {
    BoxView fresh = sampleSuper("M45", {}, {});
    fresh.corner = "today";
    BoxView half = sampleSuper("M33", 7.0 / 9.0, "7 of 9, 2 Jun");
    half.excluderBelow = true;
    BoxView unseen = sampleSuper("M36", {}, {});
    unseen.lookedInto = false;
    unseen.excluderBelow = true;
    BoxView shut = sampleSuper("M37", 5.0 / 9.0, "5 of 9, 2 Jun");
    shut.faded = true;
    shut.excluderBelow = true;
    BoxView taken = sampleSuper("M05", 8.0 / 9.0, QStringLiteral("8 of 9, ¾ capped"));
    taken.take = true;
    BoxView left = sampleSuper("M41", 0.42, "1 of 9 capped");
    left.excluderBelow = true;
    StackView lifted = sampleStack({taken, left, sampleBrood("D21", {"8 brood", "2 stores"})});
    lifted.lid = false;
    return {
        {sampleStack({fresh, half, sampleBrood("D13", {"7 brood", "3 stores"})}), "as it stands",
         "lid a loose line,\nexcluder a row of ticks"},
        {sampleStack({unseen, sampleBrood("D08", {"5 brood", "1 of stores"})}), "never looked into",
         "no chalk line,\none “?”"},
        {sampleStack({shut, sampleBrood("D17", {"8 brood", "2 stores"}, true)}), "not opened",
         "the last chalk,\nmark muted"},
        {lifted, "to take", "lifted and moved\nto the right"},
        {sampleWaiting(), "waiting", "a numbered peg until\nit is weighed wet"},
    };
}

std::vector<DrawnSample<BucketView>> bucketSamples() {
    BucketView empty{"B12", 0.0};
    BucketView filling{"B10", 0.42};
    filling.underGate = true;
    BucketView open{"B9", 0.86, "17.3"};
    BucketView lidded{"B1", 0.95, "17.1", true};
    BucketView hold{"B6", 0.92, "18.9", true, true};
    return {{empty, "B12", "empty"},
            {filling, "B10", "filling"},
            {open, "B9", "open"},
            {lidded, "B1", "lidded"},
            {hold, "B6", "do not bottle"}};
}

std::vector<DrawnSample<FrameRowView>> rowSamples() {
    const FrameView good = sampleFrame(CombState::Drawn, 60);
    const auto with = [&](FrameFault fault) {
        FrameView frame = good;
        frame.faults = {fault};
        return frame;
    };
    FrameView gone = good;
    gone.found = false;
    FrameView set = with(FrameFault::Granulated);
    set.a.filled = 0.6;
    FrameRowView first{"M11", {with(FrameFault::Web), with(FrameFault::BrokenWood)}, {}};
    first.counted.assign(6, good);
    first.counted.push_back(gone);
    FrameRowView second{"M19", {}, {}};
    second.counted.assign(7, good);
    second.counted.insert(second.counted.end(), 2, set);
    FrameRowView third{"D2", {with(FrameFault::DeadBrood), with(FrameFault::DeadBrood)}, {}};
    third.counted.assign(4, good);
    third.counted.insert(third.counted.end(), 2, with(FrameFault::Mould));
    third.counted.insert(third.counted.end(), 2, with(FrameFault::OldDark));
    for (auto* frames : {&third.pointed, &third.counted}) {
        for (auto& frame : *frames) frame.shape = kindSamples().front().view.shape;
    }
    return {{first, "M11"}, {second, "M19"}, {third, "D2"}};
}

std::vector<DrawnSample<ExtractorView>> extractorSamples() {
    return {{sampleWeighed(), "all weighed, as planned", "start 3 g, end 3 g"},
            {sampleChanged(), "all weighed, 1 and 6 changed", "start 94 g, end 39 g"},
            {sampleLetters(), "by letters: h, m, l", "start 0.2 kg, may be 0.6"},
            {sampleLastThree(), "last load of three", "start even, may be 0.2"}};
}

RibbonView ribbonSample() {
    RibbonView ribbon;
    ribbon.year = 2027;
    ribbon.today = QDate(2027, 8, 8);
    ribbon.todayWords = "8 August";
    RibbonLane visits{"Yard visits", {}};
    const int days[][2] = {{3, 14}, {4, 10}, {4, 24}, {5, 8}, {5, 14}, {5, 25}, {6, 2},
                           {6, 9},  {6, 16}, {6, 23}, {7, 1}, {7, 12}, {7, 22}, {8, 4}};
    for (const auto& day : days) visits.marks.push_back(sampleDay(day[0], day[1]));
    visits.marks.push_back(sampleDay(8, 13, false));
    visits.marks.push_back(sampleDay(8, 21, false));
    ribbon.lanes = {
        visits,
        {"Supers on, off",
         {sampleDay(4, 24), sampleDay(5, 12), sampleDay(6, 9), sampleDay(6, 24), sampleDay(8, 6),
          sampleDay(8, 21, false)}},
        {"Feed, treat", {sampleDay(2, 12), sampleDay(3, 2), sampleSpan(8, 14, 42, false)}},
        {"Honey room", {sampleDay(6, 24), sampleDay(8, 7), sampleSpan(8, 22, 2, false)}},
        {"Wax, candles",
         {sampleDay(1, 12), sampleDay(1, 19), sampleDay(1, 26), sampleSpan(11, 15, 26, false)}},
        {"Storeroom",
         {sampleSpan(1, 5, 3, true), sampleSpan(1, 16, 12, true), sampleSpan(12, 2, 6, false)}},
    };
    return ribbon;
}

BalanceView balanceSample() {
    BalanceView balance;
    balance.in = {
        sampleBand("H1", 31.0, 'w', BandFill::Honey), sampleBand("H2", 16.8, 'w', BandFill::Honey),
        sampleBand("H3", 28.9, 'w', BandFill::Honey), sampleBand("H5", 12.0, 'w', BandFill::Honey),
        sampleBand("box without tag", 14.4, 'w', BandFill::Unknown)};
    balance.out = {sampleBand("buckets", 91.5, 'w', BandFill::Honey),
                   sampleBand("wet cappings", 11.0, 'w', BandFill::Cappings),
                   sampleBand("missing", 0.6, 'd', BandFill::Missing)};
    balance.out.back().note = "0.6 %";
    balance.total = {"103.1", "kg", 'w'};
    return balance;
}

std::vector<std::pair<FigureText, QString>> figureSamples() {
    return {{{"91.5", "kg", 'w'}, "weighed"},
            {{"11", "hives", 'c'}, "counted"},
            {{"28", "kg", 'e'}, "by eye: no more digits than are known"},
            {{"13.5", "kg", 'd'}, "by difference: what is left over"},
            {{"1.80", "kg", 'a'}, "assumed: a rate times a count"},
            {{"", "", '?'}, "unknown: not nought, not “no”"}};
}

}  // namespace combwright
