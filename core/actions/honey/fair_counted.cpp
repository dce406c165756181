#include "core/actions/honey/fair_counted.h"

#include "core/actions/honey/fairs.h"
#include "core/actions/honey/goods_line.h"

namespace combwright {
namespace {

Result<FairLine> countedLine(const Read& file, FairLine line, const std::string& typed) {
    const auto said = readHome(file, typed, "home");
    if (!said) return said.error();
    const bool another = said->size() == 1 && said->front().kind &&
                         (said->front().kind->id != line.kind ||
                          (said->front().bottling && said->front().bottling != line.bottling));
    if (said->size() != 1 || another)
        return Refusal{
            Code::WrongType, "home", {{"wanted", "what came home of one kind"}, {"value", typed}}};
    line.home = Count(said->front().home);
    if (said->front().broken) line.broken = Count(*said->front().broken);
    if (said->front().given) line.given = Count(*said->front().given);
    if (auto ok = demandFairLine(file, line); !ok) return ok.error();
    return line;
}

}  // namespace

FairCounted fairCounted(const Read& file, const Fair& fair, const std::vector<std::string>& home,
                        const std::optional<Money>& cash) {
    FairCounted counted;
    auto lines = file.where<FairLine>({is("fair", fair.id)});
    counted.refused.resize(lines.size());
    for (std::size_t i = 0; i < lines.size() && i < home.size(); ++i) {
        if (home[i].find_first_not_of(" \t") == std::string::npos) continue;
        const auto line = countedLine(file, lines[i], home[i]);
        if (line)
            lines[i] = *line;
        else
            counted.refused[i] = line.error();
    }
    Fair over = fair;
    over.closed = over.closed.value_or(over.on);
    if (cash) over.cash = cash;
    counted.sheet = fairSheetOf(file, over, lines);
    return counted;
}

}  // namespace combwright
