#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/room_json.h"
#include "app/cli/season_asked.h"
#include "app/cli/why.h"
#include "core/exchange/or_null.h"
#include "core/places/explain/explain_honey_room.h"
#include "core/places/honey_room/room_boxes.h"
#include "core/places/pages/honey_room/honey_room_pages.h"
#include "core/places/pages/honey_room/room_day_words.h"
#include "core/places/pages/page_text.h"
#include "core/storage/season.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

/// "hhmml", blanks between them or not, and e for an empty drawn frame.
Result<std::vector<FeltFrame>> feltFrames(const std::string& letters) {
    std::vector<FeltFrame> frames;
    for (const char letter : letters) {
        if (letter == ' ' || letter == ',') continue;
        FeltFrame frame;
        if (letter == 'e' || letter == 'E')
            frame.emptied = true;
        else if (letter == 'h' || letter == 'H')
            frame.heft = FrameHeft::Heavy;
        else if (letter == 'l' || letter == 'L')
            frame.heft = FrameHeft::Light;
        else if (letter != 'm' && letter != 'M')
            return Refusal{Code::NotAChoice,
                           "felt",
                           {{"value", std::string(1, letter)}, {"choices", "h, m, l, e"}}};
        frames.push_back(frame);
    }
    return frames;
}

QString loadLine(const SheetLoad& load) {
    return QString::number(load.number) + QStringLiteral(": ") + loadSlotsText(load) +
           QStringLiteral("; ") + loadDoubtText(load);
}

/// The run named with --run, else those not closed.
Result<std::vector<Id<Extraction>>> runsMeant(const Context& context, const Read& file) {
    const auto named = runNamed(context, file);
    if (!named) return named.error();
    if (*named) return std::vector{**named};
    std::vector<Id<Extraction>> runs;
    for (const Extraction& run : openRuns(file)) runs.push_back(run.id);
    return runs;
}

struct LoadsAnswer {
    LoadSheet sheet;
    RoomDaySheet day;
    std::optional<FeltLoad> felt;
    std::vector<std::pair<std::string, GateMinder>> gates;  ///< of the runs not closed, by name
    bool inDay = false;                                     ///< the day is told too
    std::vector<Explained> why;
};

Result<LoadsAnswer> loadsAnswer(const Context& context, const Read& file) {
    const Day today = context.clock.today();
    const bool mixLots = context.arguments.has("mix-lots");
    const auto runs = runsMeant(context, file);
    if (!runs) return runs.error();
    auto sheet = loadSheet(file, *runs, today, {mixLots, context.arguments.has("mix-kinds")});
    if (!sheet) return sheet.error();
    Working dayWorking;
    auto day = roomDay(file, today, {}, &dayWorking);
    if (!day) return day.error();
    LoadsAnswer answer{*std::move(sheet), *std::move(day), {}, {}, false, {}};
    if (const auto letters = context.arguments.value("felt")) {
        const auto typed = feltFrames(letters->toStdString());
        if (!typed) return typed.error();
        auto load = feltLoad(file, *runs, *typed, today, {mixLots, true});
        if (!load) return load.error();
        answer.felt = *std::move(load);
    }
    // Of one run the day is told where that run is in it.
    answer.inDay = !context.arguments.has("run");
    for (const Id<Extraction> id : *runs) {
        const auto run = file.find(id);
        if (!run) continue;
        answer.inDay = answer.inDay || !run->closed ||
                       file.first<SpinLoad>({is("extraction", id), is("on_day", today)});
        if (!run->closed)
            answer.gates.emplace_back(run->name.text(), gateMinder(file, id, answer.sheet, today));
    }
    if (!context.arguments.has("why")) return answer;
    std::vector<Explained>& why = answer.why;
    for (const SheetLoad& load : answer.sheet.loads)
        for (Explained& each : explainLoad(file, answer.sheet, load, today))
            if (why.empty() || each.what != why.back().what) why.push_back(std::move(each));
    if (answer.day.plan.loads > 0) why.push_back(explainRoomDay(answer.day, std::move(dayWorking)));
    return answer;
}

void printLoads(Context& context, const Read& file, const LoadsAnswer& answer) {
    QTextStream& out = context.streams.out;
    out << pageText(loadsPage(file, answer.sheet, context.clock.today()));
    for (const SheetLoad& load : answer.sheet.spun)
        out << load.number << QStringLiteral(": ") << loadSlotsText(load) << '\n';
    for (const SheetLoad& load : answer.sheet.loads) out << loadLine(load) << '\n';
    if (answer.felt) out << loadLine(answer.felt->load) << '\n';
    for (const auto& [run, minder] : answer.gates)
        for (const QString& line : gateLines(minder))
            out << fromUtf8(run) << QStringLiteral(": ") << line << '\n';
    if (answer.inDay)
        for (const QString& line : roomDayLines(answer.day)) out << line << '\n';
    printWhy(context, answer.why);
}

QJsonArray loadsArray(const std::vector<SheetLoad>& loads) {
    QJsonArray array;
    for (const SheetLoad& load : loads) array.append(loadObject(load));
    return array;
}

QJsonObject feltObject(const FeltLoad& felt) {
    QJsonObject object = loadObject(felt.load);
    object.insert(QStringLiteral("proven"), felt.load.proven);
    object.insert(QStringLiteral("boxes_weighed"), static_cast<qint64>(felt.boxes));
    object.insert(QStringLiteral("heavy_g"), felt.endG + felt.classes.heavy.meanG);
    object.insert(QStringLiteral("middling_g"), felt.endG + felt.classes.middling.meanG);
    object.insert(QStringLiteral("light_g"), felt.endG + felt.classes.light.meanG);
    return object;
}

QJsonObject loadsAnswerObject(const Read& file, const LoadsAnswer& answer, Day today) {
    const LoadSheet& sheet = answer.sheet;
    QJsonArray gates;
    for (const auto& [run, minder] : answer.gates) gates.append(gateObject(run, minder));
    QJsonObject object{{QStringLiteral("loads"), loadsArray(sheet.loads)},
                       {QStringLiteral("told_by_days_up_to"), orNull(toldByLaterDays(file, today))},
                       {QStringLiteral("loads_if_mixed"), static_cast<qint64>(sheet.loadsIfMixed)},
                       {QStringLiteral("loads_done"), static_cast<qint64>(sheet.loadsDone)},
                       {QStringLiteral("frames_left"), static_cast<qint64>(sheet.framesLeft)},
                       {QStringLiteral("allowed_offset_g"), sheet.allowedG},
                       {QStringLiteral("ran_smooth_g"), orNull(sheet.ranSmoothG)},
                       {QStringLiteral("walked_g"), orNull(sheet.walkedG)},
                       {QStringLiteral("spun"), loadsArray(sheet.spun)},
                       {QStringLiteral("machine"), machineObject(sheet)},
                       {QStringLiteral("gates"), gates},
                       {QStringLiteral("day"), roomDayObject(answer.day)}};
    if (answer.felt) object.insert(QStringLiteral("felt"), feltObject(*answer.felt));
    if (!answer.why.empty()) object.insert(QStringLiteral("why"), whyArray(answer.why));
    return object;
}

int runLoads(Context& context) {
    const Season season = seasonToRead(context);
    const auto answer = loadsAnswer(context, season.read());
    if (!answer) return refuse(context, answer.error());
    if (context.json())
        printJson(context, loadsAnswerObject(season.read(), *answer, context.clock.today()));
    else
        printLoads(context, season.read(), *answer);
    return Done;
}

}  // namespace

std::vector<Command> loadCommands() {
    return {
        {"loads",
         "FILE",
         "what goes into the extractor, load by load",
         1,
         1,
         {{"run", "NAME", "only this run; else those not closed"},
          {"mix-lots", nullptr, "lots may share a load"},
          {"mix-kinds", nullptr, "sizes of frame that fit the same slots may share a load"},
          {"felt", "LETTERS", "the next load as its frames felt: h, m, l, e for an empty one"},
          {"why", nullptr, "how each figure came about"}},
         &runLoads},
    };
}

}  // namespace combwright::cli
