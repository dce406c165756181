#include "core/actions/honey/weighed_jars.h"

#include <algorithm>
#include <numeric>

#include "core/actions/honey/goods_line.h"

namespace combwright {

BottledJars* jarsLineOf(std::vector<BottledJars>& lines, Id<GoodsKind> kind) {
    const auto found = std::find_if(lines.begin(), lines.end(),
                                    [&](const BottledJars& each) { return each.kind == kind; });
    return found == lines.end() ? nullptr : &*found;
}

Result<bool> readWeighed(const Read& file, const std::string& text,
                         std::vector<BottledJars>& lines) {
    bool any = false;
    for (const std::string& group : goodsParts(text, ";", Decimals::None)) {
        if (group.empty()) continue;
        BottledJars* line = &lines.front();
        std::string_view readings = group;
        if (const std::size_t colon = group.rfind(':'); colon != std::string::npos) {
            const auto kind = goodsKindMeant(file, readings.substr(0, colon), "weighed");
            if (!kind) return kind.error();
            line = jarsLineOf(lines, kind->id);
            if (!line) return Refusal{Code::NotFound, "weighed", {{"name", kind->name.text()}}};
            readings.remove_prefix(colon + 1);
        }
        const auto grams = readGrams(readings, "weighed");
        if (!grams) return grams.error();
        if (grams->empty()) continue;
        const auto many = static_cast<std::int64_t>(grams->size());
        any = true;
        if (many > line->count.value())
            return Refusal{
                Code::TooMany, "weighed", {{"most", std::to_string(line->count.value())}}};
        line->weighed = Count(many);
        line->mean = Number::rounded(std::accumulate(grams->begin(), grams->end(), 0.0) /
                                     static_cast<double>(many));
        // Down to the gram: a jar is never made heavier than it was.
        line->lightest =
            Mass::grams(static_cast<std::int64_t>(*std::min_element(grams->begin(), grams->end())));
    }
    return any;
}

const Fields& WeighJars::fields() {
    static const Fields all =
        describe(field<&WeighJars::on>("on"), field<&WeighJars::bottling>("bottling"),
                 field<&WeighJars::weighed>("weighed"));
    return all;
}

Result<Id<Bottling>> WeighJars::perform(Write& file) const {
    const auto filled = file.find(bottling);
    if (!filled) return Refusal{Code::NotFound, "bottling", {}};
    if (on < filled->on)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", filled->code.text()}, {"since", isoText(filled->on)}}};
    auto lines = file.where<BottledJars>({is("bottling", bottling)});
    if (lines.empty()) return Refusal{Code::NotFound, "weighed", {}};
    const auto before = lines;
    const auto any = readWeighed(file, weighed, lines);
    if (!any) return any.error();
    if (!*any) return Refusal{Code::Missing, "weighed", {}};
    for (std::size_t i = 0; i < lines.size(); ++i)
        if (lines[i].weighed != before[i].weighed || lines[i].mean != before[i].mean ||
            lines[i].lightest != before[i].lightest)
            file.change(lines[i]);
    return bottling;
}

}  // namespace combwright
