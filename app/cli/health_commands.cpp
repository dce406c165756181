#include <QCoreApplication>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/exchange/or_null.h"
#include "core/places/pages/health/dead_out_pages.h"
#include "core/places/pages/page_text.h"
#include "core/storage/queries/names.h"
#include "core/storage/season.h"
#include "core/words/dead_out_words.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QJsonObject answersObject(const DeadOut& said) {
    return {{QStringLiteral("cluster"), orNull(said.cluster)},
            {QStringLiteral("stores_near"), orNull(said.stores)},
            {QStringLiteral("brood_seen"), orNull(said.brood)},
            {QStringLiteral("frass"), orNull(said.frass)},
            {QStringLiteral("wet"), orNull(said.wet)},
            {QStringLiteral("queen"), orNull(said.queen)},
            {QStringLiteral("droppings"), orNull(said.droppings)},
            {QStringLiteral("mouse"), orNull(said.mouse)},
            {QStringLiteral("ropy"), orNull(said.ropy)},
            {QStringLiteral("scale"), orNull(said.scale)},
            {QStringLiteral("sample_kept"), orNull(said.sampleKept)},
            {QStringLiteral("cause"), orNull(said.cause)},
            {QStringLiteral("by"), orNull(said.by)}};
}

const char* useKey(FrameUse use) {
    switch (use) {
        case FrameUse::Drawn:
            return "drawn";
        case FrameUse::Foundation:
            return "foundation";
        case FrameUse::Bare:
            return "bare";
        case FrameUse::Repairable:
            return "repairable";
        case FrameUse::Held:
            return "held";
        case FrameUse::Lost:
            return "lost";
        case FrameUse::Unknown:
            return "unknown";
    }
    return "";
}

QJsonObject cardObject(const DeadOutCard& card) {
    QJsonArray looks;
    for (const LooksLike cause : card.reading.causes) looks.append(fromUtf8(key(cause)));
    QJsonArray today;
    for (const DoToday deed : card.reading.today) today.append(fromUtf8(key(deed)));
    QJsonArray missing;
    for (const std::string_view field : card.stillToAnswer) missing.append(fromUtf8(field));
    QJsonArray boxes;
    for (const HeldBox& each : card.boxes)
        boxes.append(QJsonObject{
            {QStringLiteral("box"), orNull(each.box.mark)},
            {QStringLiteral("kind"), fromUtf8(each.kind)},
            {QStringLiteral("place"), fromUtf8(word(each.box.place))},
            {QStringLiteral("frames"),
             each.frames > 0 ? QJsonValue(static_cast<qint64>(each.frames)) : QJsonValue()}});
    QJsonObject frames;
    for (const auto& [use, count] : card.frames)
        frames.insert(QLatin1String(useKey(use)), static_cast<qint64>(count));
    return {{QStringLiteral("hive"), fromUtf8(card.hive.mark.text())},
            {QStringLiteral("yard"), fromUtf8(card.yard.name.text())},
            {QStringLiteral("ended"), fromUtf8(isoText(*card.colony.ended))},
            {QStringLiteral("ending"), orNull(card.colony.ending)},
            {QStringLiteral("answered_on"),
             card.given.empty() ? QJsonValue() : QJsonValue(fromUtf8(isoText(card.answers.on)))},
            {QStringLiteral("answers"), answersObject(card.answers)},
            {QStringLiteral("still_to_answer"), missing},
            {QStringLiteral("looks_like"), looks},
            {QStringLiteral("combs"), fromUtf8(key(card.reading.combs))},
            {QStringLiteral("today"), today},
            {QStringLiteral("sample"), fromUtf8(key(card.reading.sample))},
            {QStringLiteral("held"),
             card.hold ? QJsonValue(fromUtf8(word(card.hold->why))) : QJsonValue()},
            {QStringLiteral("held_since"),
             card.hold ? QJsonValue(fromUtf8(isoText(card.hold->since))) : QJsonValue()},
            {QStringLiteral("ever_suspected"), card.everSuspected},
            {QStringLiteral("boxes"), boxes},
            {QStringLiteral("frames"), frames},
            {QStringLiteral("frames_elsewhere"), static_cast<qint64>(card.looseFrames)},
            {QStringLiteral("floors"), static_cast<qint64>(card.floors)},
            {QStringLiteral("lids"), static_cast<qint64>(card.lids)}};
}

int runDeadOuts(Context& context) {
    const Season season = seasonToRead(context);
    const Day today = context.clock.today();
    auto cards = deadOuts(season.read(), today);
    if (!context.arguments.has("all"))
        std::erase_if(cards, [](const DeadOutCard& card) { return !card.hold; });
    if (!context.json()) {
        if (cards.empty())
            context.streams.out << QCoreApplication::translate("cli", "No dead-out is held back.")
                                << '\n';
        for (std::size_t i = 0; i < cards.size(); ++i) {
            if (i > 0) context.streams.out << '\n';
            context.streams.out << pageText(deadOutPage(season.read(), cards[i], today));
        }
        return Done;
    }
    QJsonArray list;
    qint64 unanswered = 0;
    for (const DeadOutCard& card : cards) {
        list.append(cardObject(card));
        if (card.unanswered()) ++unanswered;
    }
    printJson(context, QJsonObject{{QStringLiteral("as_of"), fromUtf8(isoText(today))},
                                   {QStringLiteral("unanswered"), unanswered},
                                   {QStringLiteral("dead_outs"), list}});
    return Done;
}

QJsonObject contactObject(const Read& file, const Contact& contact) {
    static constexpr const char* whats[] = {"box", "frame", "colony", "honey"};
    QJsonObject object{
        {QStringLiteral("what"), QLatin1String(whats[static_cast<std::size_t>(contact.what)])},
        {QStringLiteral("way"), contact.in ? QStringLiteral("in") : QStringLiteral("out")},
        {QStringLiteral("on"), fromUtf8(isoText(contact.on))},
        {QStringLiteral("held"), contact.held}};
    if (contact.box)
        object.insert(QStringLiteral("box"),
                      fromUtf8(nameOf(file, Box::table, contact.box->number)));
    if (contact.frame)
        object.insert(QStringLiteral("frame"), static_cast<qint64>(contact.frame->number));
    if (contact.hive)
        object.insert(QStringLiteral("hive"),
                      fromUtf8(nameOf(file, Hive::table, contact.hive->number)));
    if (contact.run)
        object.insert(QStringLiteral("run"),
                      fromUtf8(nameOf(file, Extraction::table, contact.run->number)));
    return object;
}

int runContacts(Context& context) {
    const Season season = seasonToRead(context);
    const Read& file = season.read();
    const Day today = context.clock.today();
    const auto name = context.arguments.value("hive");
    if (!name)
        return misused(context,
                       QCoreApplication::translate("cli", "contacts needs --hive and its name"));
    NameQuery query{.name = name->toStdString(), .on = today};
    if (const auto yard = context.arguments.value("yard")) query.yard = yard->toStdString();
    const auto found = findNamed(file, Hive::table, query);
    if (!found) return refuse(context, found.error());
    const auto trace = contactTrace(file, Id<Hive>{*found}, today);
    if (!trace)
        return refuse(context, Refusal{Code::NotFound, "colony", {{"name", name->toStdString()}}});
    if (!context.json()) {
        context.streams.out << pageText(contactTracePage(file, *trace));
        return Done;
    }
    QJsonArray contacts;
    for (const Contact& contact : trace->contacts) contacts.append(contactObject(file, contact));
    printJson(context, QJsonObject{{QStringLiteral("hive"), fromUtf8(trace->hive.mark.text())},
                                   {QStringLiteral("suspected"), trace->suspicion.has_value()},
                                   {QStringLiteral("found"), fromUtf8(isoText(trace->found))},
                                   {QStringLiteral("clean_look"), orNull(trace->cleanLook)},
                                   {QStringLiteral("from"), fromUtf8(isoText(trace->from))},
                                   {QStringLiteral("all_held"), trace->allHeld()},
                                   {QStringLiteral("contacts"), contacts}});
    return Done;
}

}  // namespace

std::vector<Command> healthCommands() {
    return {
        {"dead-outs",
         "FILE",
         "colonies that died: what they look like and what is held back",
         1,
         1,
         {{"all", nullptr, "those released since, too"}},
         &runDeadOuts},
        {"contacts",
         "FILE",
         "what moved in or out of a hive where disease is suspected",
         1,
         1,
         {{"hive", "NAME", "which hive"},
          {"yard", "NAME", "its yard, where the name is not enough"}},
         &runContacts},
    };
}

}  // namespace combwright::cli
