#include "core/places/wax_bench/mould_change.h"

#include <algorithm>

namespace combwright {
namespace {

Mould anotherLike(const Read& file, const Mould& like, std::int64_t cavities) {
    Mould mould = like;
    mould.id = {};
    mould.cavities = Count(cavities);
    for (int n = 2;; ++n)
        if (const auto name = Name::of(like.name.text() + " " + std::to_string(n));
            name && !file.first<Mould>({is("name", *name)})) {
            mould.name = *name;
            return mould;
        }
}

}  // namespace

MouldChange mouldChange(const Read& file, Id<GoodsKind> kind, std::int64_t cavities, Day on) {
    MouldChange change;
    std::vector<Mould> moulds;
    std::int64_t have = 0;
    for (Mould& mould : file.where<Mould>({is("goods_kind", kind)})) {
        if (mould.since > on || (mould.gone && *mould.gone <= on)) continue;
        have += mould.cavities.value();
        moulds.push_back(std::move(mould));
    }
    if (moulds.empty() || cavities == have || cavities < 0) return change;
    if (cavities > have) {
        change.comes = anotherLike(file, moulds.front(), cavities - have);
        return change;
    }
    // The last that came go first; of one that goes in part, the rest comes anew.
    while (have > cavities && !moulds.empty()) {
        const std::int64_t of = moulds.back().cavities.value();
        change.gone.push_back(moulds.back());
        have -= of;
        moulds.pop_back();
    }
    if (have < cavities) change.comes = anotherLike(file, change.gone.back(), cavities - have);
    return change;
}

}  // namespace combwright
