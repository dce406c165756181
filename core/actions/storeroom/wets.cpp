#include "core/actions/storeroom/wets.h"

#include "core/actions/boxes/box_steps.h"
#include "core/actions/storeroom/marked_boxes.h"
#include "core/places/pull/wets_home.h"
#include "core/storage/queries/names.h"

namespace combwright {
namespace {

struct HomeAsked {
    Box box;
    std::string hive;
};

/// "M03 H1": the longest beginning that is a box's mark, and the hive behind it.
Result<HomeAsked> homeAsked(const Read& file, const std::string& part, Day on) {
    const auto words = wordsOf(part);
    for (std::size_t end = words.size() - 1; end > 0; --end)
        if (auto box = markedBox(file, joinedWords(words, 0, end), on))
            return HomeAsked{*std::move(box), joinedWords(words, end, words.size())};
    if (words.size() < 2)
        return Refusal{Code::Missing, "hive", {{"form", "M06 H1"}, {"name", part}}};
    return Refusal{Code::NotFound, "boxes", {{"name", words.front()}}};
}

Result<Id<Hive>> hiveAsked(const Read& file, const WetsRules& rules, const ShelfBox& box,
                           const std::string& mark, Day on) {
    NameQuery query{.name = mark, .on = on};
    if (const auto home = rules.yardOf(rules.origin(box)))
        if (const auto yard = file.find(*home)) {
            query.yard = yard->name.text();
            if (const auto own = findNamed(file, Hive::table, query)) return Id<Hive>{*own};
            query.yard.reset();
        }
    const auto found = findNamed(file, Hive::table, query);
    if (!found) return found.error();
    return Id<Hive>{*found};
}

/// Empty where the bar is only asked about.
std::string_view barKey(WetsBar bar) {
    switch (bar) {
        case WetsBar::Disease:
            return "disease";
        case WetsBar::BoxHeld:
            return "box held";
        case WetsBar::HiveHeld:
            return "hive held";
        case WetsBar::NoColony:
            return "no colony";
        case WetsBar::None:
        case WetsBar::Medicine:
        case WetsBar::Nucleus:
        case WetsBar::OtherYard:
        case WetsBar::Unknown:
            return {};
    }
    return {};
}

}  // namespace

const Fields& SendWetsHome::fields() {
    static const Fields all =
        describe(field<&SendWetsHome::on>("on"), field<&SendWetsHome::boxes>("boxes"));
    return all;
}

Result<std::vector<Id<Box>>> SendWetsHome::perform(Write& file) const {
    const auto parts = listedParts(boxes);
    if (parts.empty()) return Refusal{Code::Missing, "boxes", {}};
    const WetsRules rules(file, on);
    std::vector<Id<Box>> sent;
    for (const std::string& part : parts) {
        const auto asked = homeAsked(file, part, on);
        if (!asked) return asked.error();
        if (on < asked->box.since)
            return Refusal{Code::BeforeItBegan,
                           "on",
                           {{"name", asked->box.mark}, {"since", isoText(asked->box.since)}}};
        const ShelfBox box = shelfBox(file, asked->box.id, on);
        const bool withBees =
            asked->box.place == BoxPlace::OnHive || asked->box.place == BoxPlace::GivenBack;
        if (withBees) return Refusal{Code::NothingToDo, "boxes", {{"name", box.name}}};
        if (!box.onShelf()) return Refusal{Code::Closed, "boxes", {{"name", box.name}}};
        const auto hive = hiveAsked(file, rules, box, asked->hive, on);
        if (!hive) return hive.error();
        if (const auto bar = barKey(rules.bar(box, *hive)); !bar.empty())
            return Refusal{Code::Contradiction,
                           "boxes",
                           {{"other", "hive"},
                            {"bar", std::string(bar)},
                            {"box", box.name},
                            {"hive", asked->hive}}};
        if (auto moved = moveBoxTo(file, asked->box.id, BoxSpot{BoxPlace::GivenBack, *hive}, on);
            !moved)
            return moved.error();
        sent.push_back(asked->box.id);
    }
    return sent;
}

const Fields& TakeWetsOff::fields() {
    static const Fields all =
        describe(field<&TakeWetsOff::on>("on"), field<&TakeWetsOff::boxes>("boxes"),
                 field<&TakeWetsOff::stack>("stack"));
    return all;
}

Result<std::vector<Id<Box>>> TakeWetsOff::perform(Write& file) const {
    const auto meant = markedBoxes(file, boxes, on);
    if (!meant) return meant.error();
    std::vector<Id<Box>> off;
    for (const Box& box : *meant) {
        if (box.place != BoxPlace::GivenBack)
            return Refusal{Code::OtherAction, "boxes", {{"action", "move-box"}}};
        if (on < box.since)
            return Refusal{
                Code::BeforeItBegan, "on", {{"name", box.mark}, {"since", isoText(box.since)}}};
        if (auto moved = moveBoxTo(
                file, box.id, BoxSpot{BoxPlace::Storeroom, std::nullopt, std::nullopt, stack}, on);
            !moved)
            return moved.error();
        for (Frame& frame : file.where<Frame>({is("box", box.id), isUnknown("retired")})) {
            if (frame.wet == false) continue;
            frame.wet = false;
            file.change(frame);
        }
        off.push_back(box.id);
    }
    return off;
}

}  // namespace combwright
