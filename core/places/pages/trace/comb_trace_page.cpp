#include "core/places/pages/trace/comb_trace_page.h"

#include <QCoreApplication>

#include "core/places/pages/trace/trace_words.h"
#include "core/places/pages/wax_bench/wax_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString combSay(const char* text) { return QCoreApplication::translate("trace", text); }

Cell combCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

QString combDay(const std::optional<Day>& day) {
    return day ? dayText(*day) : combSay("not written down");
}

}  // namespace

void addCombTrace(const CombTrace& traced, Day on, Page& page) {
    const HiveProject& project = traced.comb.project;
    if (const QString care = projectCareText(traced.comb); !care.isEmpty()) {
        TextBlock block;
        block.text = care;
        block.caution = true;
        page.blocks.emplace_back(std::move(block));
    }
    TextBlock what;
    what.text = projectText(traced.comb, on);
    page.blocks.emplace_back(std::move(what));
    TableBlock way;
    way.title = combSay("Where it came from");
    way.columns = {{combSay("hive"), 1, false},
                   {combSay("starter in"), 1.2, false},
                   {combSay("stood there since"), 1.2, false},
                   {combSay("came off"), 1.2, false},
                   {combSay("lidded"), 1.2, false}};
    TableRow row;
    row.cells = {
        combCell(traced.comb.hive.empty() ? combSay("not known") : fromUtf8(traced.comb.hive),
                 true),
        combCell(combDay(project.starter)), combCell(combDay(project.putOn)),
        combCell(combDay(project.off)), combCell(combDay(project.lidded))};
    way.rows.push_back(std::move(row));
    page.blocks.emplace_back(std::move(way));
    if (traced.out.empty()) {
        TextBlock none;
        none.text = combSay("None of that kind went out since they were lidded.");
        page.blocks.emplace_back(std::move(none));
        return;
    }
    TableBlock out;
    out.title = combSay("Of that kind, and who has them");
    out.columns = {{combSay("day"), 1.2, false}, {combSay("what became of them"), 4.4, false}};
    for (const TracedOut& each : traced.out) {
        TableRow gone;
        gone.cells = {combCell(dayText(each.on)), combCell(tracedOutText(each))};
        out.rows.push_back(std::move(gone));
    }
    page.blocks.emplace_back(std::move(out));
}

QStringList combGapTexts(const CombTrace& traced) {
    QStringList gaps;
    if (!traced.comb.project.hive)
        gaps << combSay("Nobody wrote down on which hive they were built.");
    if (!traced.comb.project.kind)
        gaps << combSay("Nobody said as what they are sold: who has them cannot be told.");
    if (traced.otherSets > 0)
        gaps << combSay(
            "Other comb is sold as the same kind, and nobody writes down of which set a jar is: "
            "those that went out may be of either.");
    if (traced.nobodyKnows > 0)
        gaps << combSay("To whom they went was not written down of all of them: %1.")
                    .arg(traced.nobodyKnows);
    return gaps;
}

}  // namespace combwright
