#include "core/storage/queries/labels.h"

namespace combwright {
namespace {

template <class Record, class Fits>
std::optional<Record> newestSince(const Read& file, Day on, Fits fits) {
    std::optional<Record> newest;
    for (Record& each : file.where<Record>({isUpTo("since", on)}))
        if (fits(each) && (!newest || each.since >= newest->since)) newest = std::move(each);
    return newest;
}

}  // namespace

std::optional<LabelText> labelTextInForce(const Read& file, Day on) {
    return newestSince<LabelText>(file, on, [](const LabelText&) { return true; });
}

std::optional<LabelOffset> labelOffsetInForce(const Read& file, std::string_view grid, Day on) {
    return newestSince<LabelOffset>(
        file, on, [&](const LabelOffset& each) { return each.grid.text() == grid; });
}

}  // namespace combwright
