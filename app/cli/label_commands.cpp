#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>
#include <algorithm>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/goods/jar_leaf_page.h"
#include "core/places/pages/goods/label_pages.h"
#include "core/places/pages/page_text.h"
#include "core/places/trace/comb_trace.h"
#include "core/storage/queries/names.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

/// The filling of --code, else the newest.
Result<Id<Bottling>> fillingAsked(const Context& context, const Read& file) {
    const Day today = context.clock.today();
    if (const auto code = context.arguments.value("code")) {
        const auto found =
            findNamed(file, Bottling::table, NameQuery{.name = code->toStdString(), .on = today});
        if (!found) return found.error();
        return Id<Bottling>{*found};
    }
    const auto newest = newestFilling(file, today);
    if (!newest) return Refusal{Code::NotFound, "bottling", {}};
    return *newest;
}

/// A whole number behind an option; refused with WrongType.
Result<std::optional<std::int64_t>> numberAsked(const Context& context, const char* option,
                                                const char* field) {
    const auto text = context.arguments.value(option);
    if (!text) return std::optional<std::int64_t>();
    bool isNumber = false;
    const qlonglong number = text->toLongLong(&isNumber);
    if (!isNumber) return Refusal{Code::WrongType, field, {}};
    return std::optional<std::int64_t>(number);
}

Result<LabelsAsked> labelsAsked(const Context& context, const Read& file) {
    LabelsAsked asked;
    const auto filling = fillingAsked(context, file);
    const auto code = context.arguments.value("code");
    if (!filling && code) asked.comb = combCalled(file, code->toStdString());
    if (!filling && !asked.comb) return filling.error();
    if (filling) asked.bottling = *filling;
    if (const auto grid = context.arguments.value("grid")) asked.grid = grid->toStdString();
    if (const auto kind = context.arguments.value("kind")) {
        const auto found =
            findNamed(file, GoodsKind::table,
                      NameQuery{.name = kind->toStdString(), .on = context.clock.today()});
        if (!found) return found.error();
        asked.kind = Id<GoodsKind>{*found};
    }
    const auto start = numberAsked(context, "start", "start_cell");
    if (!start) return start.error();
    // Beyond every sheet stays beyond it.
    if (*start) asked.startCell = static_cast<int>(std::clamp<std::int64_t>(**start, -1, 100000));
    const auto count = numberAsked(context, "count", "count");
    if (!count) return count.error();
    asked.count = *count;
    return asked;
}

const char* stateKey(LabelWordState state) {
    switch (state) {
        case LabelWordState::There:
            return "there";
        case LabelWordState::Lacks:
            return "lacks";
        case LabelWordState::Yours:
            return "yours";
    }
    return "";
}

int runLabels(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto asked = labelsAsked(context, file);
    if (!asked) return refuse(context, asked.error());
    const auto sheet = labelSheet(file, *asked, today);
    if (!sheet) return refuse(context, sheet.error());
    if (!context.json()) {
        context.streams.out << pageText(labelWordsPage(file, *sheet, today)) << '\n'
                            << pageText(labelsPage(*sheet));
        return Done;
    }
    QJsonArray placed;
    for (const LabelAt& each : sheet->placed)
        placed.append(
            QJsonObject{{QStringLiteral("sheet"), each.sheet + 1},
                        {QStringLiteral("cell"), each.cell},
                        {QStringLiteral("left_mm"), each.leftMm},
                        {QStringLiteral("top_mm"), each.topMm},
                        {QStringLiteral("kind"), fromUtf8(sheet->labels[each.label].kind)}});
    QJsonArray reminders;
    for (const LabelReminder& each : sheet->reminders)
        reminders.append(QJsonObject{{QStringLiteral("what"), fromUtf8(each.word.what)},
                                     {QStringLiteral("when"), fromUtf8(each.word.when)},
                                     {QStringLiteral("says"), fromUtf8(each.word.says)},
                                     {QStringLiteral("state"), QLatin1String(stateKey(each.state))},
                                     {QStringLiteral("source"), fromUtf8(each.word.source)}});
    printJson(context, QJsonObject{{QStringLiteral("code"), fromUtf8(sheet->bottling.code.text())},
                                   {QStringLiteral("grid"), fromUtf8(sheet->grid.id)},
                                   {QStringLiteral("sheets"), sheet->sheets},
                                   {QStringLiteral("right_mm"), sheet->rightMm},
                                   {QStringLiteral("down_mm"), sheet->downMm},
                                   {QStringLiteral("labels"), placed},
                                   {QStringLiteral("reminders"), reminders}});
    return Done;
}

int runLeaf(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const auto filling = fillingAsked(context, file);
    if (!filling) return refuse(context, filling.error());
    LeafTold told;
    if (const auto words = context.arguments.value("without")) {
        const auto left = leafWithout(words->toStdString(), told);
        if (!left) return refuse(context, left.error());
        told = *left;
    }
    if (const auto words = context.arguments.value("with")) {
        const auto more = leafWith(words->toStdString(), told);
        if (!more) return refuse(context, more.error());
        told = *more;
    }
    const auto leaf = jarLeaf(file, *filling);
    if (!leaf) return refuse(context, Refusal{Code::NotFound, "bottling", {}});
    if (!context.json()) {
        context.streams.out << pageText(jarLeafPage(file, *leaf, told));
        return Done;
    }
    QJsonArray yards, strainers, colours, tastes, medicines;
    const auto list = [](QJsonArray& into, const std::vector<std::string>& all, bool isTold) {
        if (isTold)
            for (const std::string& each : all) into.append(fromUtf8(each));
    };
    list(yards, leaf->yards, told.place);
    list(strainers, leaf->strainers, told.work);
    list(colours, leaf->colours, told.colour);
    list(tastes, leaf->tastes, told.taste);
    list(medicines, leaf->medicines, told.medicines);
    const auto toldDay = [&](const std::optional<Day>& day) {
        return told.weeks ? orNull(day) : QJsonValue();
    };
    const bool tellsWater = told.water && leaf->water;
    printJson(
        context,
        QJsonObject{{QStringLiteral("code"), fromUtf8(leaf->bottling.code.text())},
                    {QStringLiteral("yards"), yards},
                    {QStringLiteral("boxes_on"), toldDay(leaf->boxesOn)},
                    {QStringLiteral("extracted_from"), toldDay(leaf->extractedFrom)},
                    {QStringLiteral("extracted_to"), toldDay(leaf->extractedTo)},
                    {QStringLiteral("hives"),
                     told.hives ? QJsonValue(static_cast<qint64>(leaf->hives)) : QJsonValue()},
                    {QStringLiteral("boxes"),
                     told.hives ? QJsonValue(static_cast<qint64>(leaf->boxes)) : QJsonValue()},
                    {QStringLiteral("strainers"), strainers},
                    {QStringLiteral("colours"), colours},
                    {QStringLiteral("tastes"), tastes},
                    {QStringLiteral("water_percent"),
                     tellsWater ? QJsonValue(leaf->water->percent()) : QJsonValue()},
                    {QStringLiteral("medicines"), medicines},
                    {QStringLiteral("caution"), infantCaution()}});
    return Done;
}

}  // namespace

std::vector<Command> labelCommands() {
    return {{"labels",
             "FILE",
             "labels of a filling: what stands on them, where they lie, what the table reminds of",
             1,
             1,
             {{"code", "CODE", "of which filling; without it of the newest"},
              {"kind", "NAME", "only for jars of that kind"},
              {"grid", "ID", "sheet of labels: a4-3x7, letter-3x10 ..."},
              {"start", "CELL", "first cell that is not used up, from 1"},
              {"count", "N", "so many of each kind; without it one a jar"}},
             &runLabels},
            {"leaf",
             "FILE",
             "a jar's leaf: where its honey was gathered, what bees and keeper did",
             1,
             1,
             {{"code", "CODE", "of which filling; without it of the newest"},
              {"without", "WORDS", "leave out: place, weeks, hives, work, water, colour, taste"},
              {"with", "WORDS", "tell too: medicines"}},
             &runLeaf}};
}

}  // namespace combwright::cli
