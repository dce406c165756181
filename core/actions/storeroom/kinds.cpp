#include "core/actions/storeroom/kinds.h"

#include <algorithm>

namespace combwright {
namespace {

constexpr std::string_view measuredSource = "measured by the keeper";

struct Measured {
    std::string_view field;
    std::optional<Length> length;
};

constexpr std::int64_t longestTenths = 20'000;

std::string lowered(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(),
                   [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return text;
}

/// Whether a word of the trade alone, "medium", means a kind of the catalogue already. Who calls
/// his own so would have it taken for the other, or the other for it.
template <class Kind>
bool meansAKind(const Read& file, const std::string& word) {
    for (const Kind& kind : file.all<Kind>()) {
        if (kind.source == measuredSource) continue;
        const std::string name = lowered(kind.name.text());
        if (lowered(kind.code.text()) == word || name == word || name.ends_with(" " + word) ||
            name.find(" " + word + " frame") != std::string::npos)
            return true;
    }
    return false;
}

Result<void> demandOwnName(const Read& file, const Name& called) {
    const std::string word = lowered(called.text());
    if (meansAKind<FrameKind>(file, word) || meansAKind<BoxKind>(file, word))
        return Refusal{Code::Taken, "called", {{"name", called.text()}}};
    return {};
}

/// A measure of nothing is a slip, and so is one over 2 m; what is unknown is left out.
Result<void> demandLengths(std::initializer_list<Measured> measures) {
    for (const Measured& each : measures)
        if (each.length && (each.length->count() == 0 || each.length->count() > longestTenths))
            return Refusal{Code::OutOfRange,
                           std::string(each.field) + "_mm",
                           {{"low", "0.1"}, {"high", "2000"}}};
    return {};
}

/// Where both are known, `inside` must be less than `outside`.
Result<void> demandLess(const Measured& inside, const Measured& outside) {
    if (inside.length && outside.length && *inside.length >= *outside.length)
        return Refusal{Code::Contradiction,
                       std::string(inside.field) + "_mm",
                       {{"other", std::string(outside.field) + "_mm"}}};
    return {};
}

template <class Kind>
Result<Kind> kindCalled(const Read& file, const Name& called) {
    Kind kind;
    for (const Kind& each : file.all<Kind>())
        if (each.code == called || each.name == called) {
            if (each.source != measuredSource)
                return Refusal{Code::Taken, "called", {{"name", called.text()}}};
            kind = each;
        }
    kind.code = called;
    kind.name = called;
    kind.source = measuredSource;
    return kind;
}

template <class T>
void takeGiven(std::optional<T>& into, const std::optional<T>& given) {
    if (given) into = given;
}

template <class Kind>
Id<Kind> keepKind(Write& file, Kind& kind) {
    if (!kind.id) return file.add(kind);
    file.change(kind);
    return kind.id;
}

}  // namespace

const Fields& MeasureFrameKind::fields() {
    static const Fields all =
        describe(field<&MeasureFrameKind::on>("on"), field<&MeasureFrameKind::called>("called"),
                 field<&MeasureFrameKind::topBarLength>("top_bar_length"),
                 field<&MeasureFrameKind::topBarWidth>("top_bar_width"),
                 field<&MeasureFrameKind::topBarThickness>("top_bar_thickness"),
                 field<&MeasureFrameKind::height>("height"),
                 field<&MeasureFrameKind::bottomBarLength>("bottom_bar_length"),
                 field<&MeasureFrameKind::spacing>("spacing"),
                 field<&MeasureFrameKind::combWidth>("comb_width"),
                 field<&MeasureFrameKind::combHeight>("comb_height"));
    return all;
}

Result<Id<FrameKind>> MeasureFrameKind::perform(Write& file) const {
    if (auto own = demandOwnName(file, called); !own) return own.error();
    auto known = kindCalled<FrameKind>(file, called);
    if (!known) return known.error();
    FrameKind kind = *std::move(known);
    const FrameKind before = kind;
    takeGiven(kind.topBarLength, topBarLength);
    takeGiven(kind.topBarWidth, topBarWidth);
    takeGiven(kind.topBarThickness, topBarThickness);
    takeGiven(kind.height, height);
    takeGiven(kind.bottomBarLength, bottomBarLength);
    takeGiven(kind.spacing, spacing);
    takeGiven(kind.combWidth, combWidth);
    takeGiven(kind.combHeight, combHeight);
    if (auto good = demandLengths({{"top_bar_length", kind.topBarLength},
                                   {"top_bar_width", kind.topBarWidth},
                                   {"top_bar_thickness", kind.topBarThickness},
                                   {"height", kind.height},
                                   {"bottom_bar_length", kind.bottomBarLength},
                                   {"spacing", kind.spacing},
                                   {"comb_width", kind.combWidth},
                                   {"comb_height", kind.combHeight}});
        !good)
        return good.error();
    if (auto good = demandLess({"bottom_bar_length", kind.bottomBarLength},
                               {"top_bar_length", kind.topBarLength});
        !good)
        return good.error();
    if (auto good = demandLess({"comb_height", kind.combHeight}, {"height", kind.height}); !good)
        return good.error();
    if (auto good =
            demandLess({"comb_width", kind.combWidth}, {"bottom_bar_length", kind.bottomBarLength});
        !good)
        return good.error();
    if (kind.id && toRow(kind) == toRow(before)) return Refusal{Code::NothingToDo, "called", {}};
    return keepKind(file, kind);
}

const Fields& MeasureBoxKind::fields() {
    static const Fields all = describe(
        field<&MeasureBoxKind::on>("on"), field<&MeasureBoxKind::called>("called"),
        field<&MeasureBoxKind::framesNominal>("frames_nominal"),
        field<&MeasureBoxKind::outerLength>("outer_length"),
        field<&MeasureBoxKind::outerWidth>("outer_width"),
        field<&MeasureBoxKind::outerHeight>("outer_height"),
        field<&MeasureBoxKind::innerLength>("inner_length"),
        field<&MeasureBoxKind::innerWidth>("inner_width"),
        field<&MeasureBoxKind::restDepth>("rest_depth"),
        field<&MeasureBoxKind::beeSpace>("bee_space"), field<&MeasureBoxKind::takes>("takes"));
    return all;
}

Result<Id<BoxKind>> MeasureBoxKind::perform(Write& file) const {
    if (takes && !file.find(*takes)) return Refusal{Code::NotFound, "takes", {}};
    if (framesNominal && (framesNominal->value() < 1 || framesNominal->value() > 40))
        return Refusal{Code::OutOfRange, "frames_nominal", {{"low", "1"}, {"high", "40"}}};
    if (auto own = demandOwnName(file, called); !own) return own.error();
    auto known = kindCalled<BoxKind>(file, called);
    if (!known) return known.error();
    BoxKind kind = *std::move(known);
    const BoxKind before = kind;
    takeGiven(kind.framesNominal, framesNominal);
    takeGiven(kind.outerLength, outerLength);
    takeGiven(kind.outerWidth, outerWidth);
    takeGiven(kind.outerHeight, outerHeight);
    takeGiven(kind.innerLength, innerLength);
    takeGiven(kind.innerWidth, innerWidth);
    takeGiven(kind.restDepth, restDepth);
    takeGiven(kind.beeSpace, beeSpace);
    takeGiven(kind.takes, takes);
    if (auto good = demandLengths({{"outer_length", kind.outerLength},
                                   {"outer_width", kind.outerWidth},
                                   {"outer_height", kind.outerHeight},
                                   {"inner_length", kind.innerLength},
                                   {"inner_width", kind.innerWidth}});
        !good)
        return good.error();
    // Frames may rest level with the rim: a depth of nothing is one.
    if (kind.restDepth && kind.restDepth->count() > 0)
        if (auto good = demandLengths({{"rest_depth", kind.restDepth}}); !good) return good.error();
    for (const auto& [inside, outside] : {std::pair{Measured{"inner_length", kind.innerLength},
                                                    Measured{"outer_length", kind.outerLength}},
                                          std::pair{Measured{"inner_width", kind.innerWidth},
                                                    Measured{"outer_width", kind.outerWidth}},
                                          std::pair{Measured{"rest_depth", kind.restDepth},
                                                    Measured{"outer_height", kind.outerHeight}}})
        if (auto good = demandLess(inside, outside); !good) return good.error();
    if (kind.id && toRow(kind) == toRow(before)) return Refusal{Code::NothingToDo, "called", {}};
    return keepKind(file, kind);
}

}  // namespace combwright
