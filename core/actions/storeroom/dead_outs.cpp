#include "core/actions/storeroom/dead_outs.h"

#include <algorithm>

#include "core/places/health/contact_trace.h"
#include "core/places/health/dead_outs.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// A hold that an amended end left behind never stood.
bool neverStood(const Hold& hold) { return hold.lifted == hold.since && hold.liftedBy.empty(); }

bool isAny(const std::vector<Hold>& holds, HoldWhy why) {
    return std::any_of(holds.begin(), holds.end(),
                       [&](const Hold& hold) { return hold.why == why && !neverStood(hold); });
}

void holdColony(Write& file, Id<Colony> colony, HoldWhy why, Day since, const std::string& note) {
    Hold hold;
    hold.colony = colony;
    hold.why = why;
    hold.since = since;
    hold.note = note;
    file.add(hold);
}

void lift(Write& file, Hold hold, Day on, const std::string& by, const std::string& grounds) {
    hold.lifted = std::max(on, hold.since);
    hold.liftedBy = by;
    hold.grounds = grounds;
    file.change(hold);
}

/// The colony meant by hive or number, ended by that day.
Result<Colony> deadColony(const Read& file, const RecordDeadOut& asked) {
    if (!asked.hive && !asked.colony) return Refusal{Code::Missing, "hive", {}};
    if (asked.hive && asked.colony)
        return Refusal{Code::Contradiction, "colony", {{"other", "hive"}}};
    const char* field = asked.hive ? "hive" : "colony";
    const auto colony = asked.hive
                            ? file.find(*asked.hive) ? lastDeadIn(file, *asked.hive) : std::nullopt
                            : file.find(*asked.colony);
    const std::string name =
        asked.hive ? nameOf(file, Hive::table, asked.hive->number) : std::string();
    if (!colony) {
        const auto last =
            asked.hive ? lastColonyIn(file, *asked.hive, asked.on) : std::optional<Colony>();
        if (last && last->ended) return Refusal{Code::Contradiction, field, {{"other", "ending"}}};
        if (last) return Refusal{Code::OtherAction, field, {{"action", "end-colony"}}};
        return Refusal{Code::NotFound, field, {{"name", name}}};
    }
    if (!colony->ended) return Refusal{Code::OtherAction, field, {{"action", "end-colony"}}};
    if (!leftDeadCombs(*colony)) return Refusal{Code::Contradiction, field, {{"other", "ending"}}};
    if (asked.on < *colony->ended)
        return Refusal{Code::BeforeItBegan,
                       "on",
                       {{"name", nameOf(file, Hive::table, colony->hive.number)},
                        {"since", isoText(*colony->ended)}}};
    return *colony;
}

/// Holds and releases as the answers say.
void settleHolds(Write& file, const Colony& colony, Day on, const std::string& by) {
    const DeadOut said = answersOf(file, colony.id, on);
    auto holds = file.where<Hold>({is("colony", colony.id)});
    if (!isAny(holds, HoldWhy::DeadOutUnexplained) && !isAny(holds, HoldWhy::SuspectedDisease)) {
        // Written down before dead-outs were held.
        holdColony(file, colony.id, HoldWhy::DeadOutUnexplained, *colony.ended, {});
        holds = file.where<Hold>({is("colony", colony.id)});
    }
    const bool suspect = looksLikeDisease(said);
    const bool clear = foulbroodRuledOut(said) && !said.cause.empty() && !said.by.empty();
    if (!suspect && !clear) return;
    for (const Hold& hold : holds) {
        if (hold.lifted || hold.why != HoldWhy::DeadOutUnexplained) continue;
        // Words of the record itself: they are read in the history of the comb.
        lift(file, hold, on, saysSomething(by) ? by : said.by,
             suspect ? "disease is suspected, see there" : said.cause + ": no scale, not ropy");
    }
    const bool standing = std::any_of(holds.begin(), holds.end(), [](const Hold& hold) {
        return hold.why == HoldWhy::SuspectedDisease && !hold.lifted;
    });
    if (suspect && !standing) holdColony(file, colony.id, HoldWhy::SuspectedDisease, on, said.note);
}

}  // namespace

void holdDeadCombs(Write& file, const Colony& ended) {
    if (!leftDeadCombs(ended)) return;
    const auto holds = file.where<Hold>({is("colony", ended.id)});
    const bool disease = ended.ending == Ending::DestroyedForDisease;
    const auto standing = [&](HoldWhy why) {
        return std::any_of(holds.begin(), holds.end(),
                           [&](const Hold& hold) { return hold.why == why && !hold.lifted; });
    };
    if (standing(HoldWhy::SuspectedDisease)) return;
    if (disease)
        holdColony(file, ended.id, HoldWhy::SuspectedDisease, *ended.ended, {});
    else if (!isAny(holds, HoldWhy::DeadOutUnexplained))
        holdColony(file, ended.id, HoldWhy::DeadOutUnexplained, *ended.ended, {});
}

void followEnding(Write& file, const Colony& before, const Colony& after) {
    if (before.ended == after.ended && before.ending == after.ending) return;
    for (Hold hold : file.where<Hold>({is("colony", after.id)})) {
        if (hold.why != HoldWhy::DeadOutUnexplained || !before.ended) continue;
        if (!leftDeadCombs(after)) {
            if (hold.lifted) continue;
            const std::string now(after.ending ? word(*after.ending) : "alive");
            lift(file, hold, hold.since, {}, "amended: " + now);
        } else if (hold.since == *before.ended && after.ended != before.ended) {
            hold.since = *after.ended;
            if (hold.lifted && *hold.lifted < hold.since) hold.lifted = hold.since;
            file.change(hold);
        }
    }
    holdDeadCombs(file, after);
}

const Fields& RecordDeadOut::fields() {
    static const Fields all = describe(
        field<&RecordDeadOut::on>("on"), field<&RecordDeadOut::hive>("hive"),
        field<&RecordDeadOut::colony>("colony"), field<&RecordDeadOut::cluster>("cluster"),
        field<&RecordDeadOut::stores>("stores_near"), field<&RecordDeadOut::brood>("brood_seen"),
        field<&RecordDeadOut::frass>("frass"), field<&RecordDeadOut::wet>("wet"),
        field<&RecordDeadOut::queen>("queen"), field<&RecordDeadOut::droppings>("droppings"),
        field<&RecordDeadOut::ropy>("ropy"), field<&RecordDeadOut::scale>("scale"),
        field<&RecordDeadOut::mouse>("mouse"), field<&RecordDeadOut::sampleKept>("sample_kept"),
        field<&RecordDeadOut::cause>("cause"), field<&RecordDeadOut::by>("by"),
        field<&RecordDeadOut::note>("note"));
    return all;
}

Result<Id<DeadOut>> RecordDeadOut::perform(Write& file) const {
    const auto dead = deadColony(file, *this);
    if (!dead) return dead.error();
    DeadOut said;
    if (const auto earlier = file.first<DeadOut>({is("colony", dead->id), is("on_day", on)}))
        said.id = earlier->id;
    said.colony = dead->id;
    said.on = on;
    said.cluster = cluster;
    said.stores = stores;
    said.brood = brood;
    said.frass = frass;
    said.wet = wet;
    said.queen = queen;
    said.droppings = droppings;
    said.ropy = ropy;
    said.scale = scale;
    said.mouse = mouse;
    said.sampleKept = sampleKept;
    said.cause = cause;
    said.by = by;
    said.note = note;
    if (said.id)
        file.change(said);
    else
        file.add(said);
    settleHolds(file, *dead, on, by);
    return said.id;
}

const Fields& HoldContacts::fields() {
    static const Fields all =
        describe(field<&HoldContacts::on>("on"), field<&HoldContacts::hive>("hive"),
                 field<&HoldContacts::note>("note"));
    return all;
}

Result<std::vector<Id<Hold>>> HoldContacts::perform(Write& file) const {
    const std::string mark = nameOf(file, Hive::table, hive.number);
    const auto trace = contactTrace(file, hive, on);
    if (!trace || !trace->suspicion) {
        const bool lives = colonyIn(file, hive).has_value();
        return Refusal{
            Code::NotFound, "hive", {{"name", mark}, {"lacks", lives ? "suspicion" : "colony"}}};
    }
    std::vector<Id<Hold>> made;
    for (const Contact& contact : trace->contacts) {
        if (contact.held) continue;
        Hold hold;
        hold.box = contact.what == Contact::What::Box ? contact.box : std::nullopt;
        hold.frame = contact.what == Contact::What::Frame ? contact.frame : std::nullopt;
        hold.colony = contact.what == Contact::What::Colony ? contact.colony : std::nullopt;
        if (!hold.box && !hold.frame && !hold.colony) continue;  // honey in buckets: for the list
        // What came in and went out again is listed for each way, and held once.
        const auto same = [&](Id<Hold> id) {
            const auto other = file.find(id);
            return other->box == hold.box && other->frame == hold.frame &&
                   other->colony == hold.colony;
        };
        if (std::any_of(made.begin(), made.end(), same)) continue;
        hold.why = HoldWhy::Contact;
        hold.since = on;
        hold.note = note;
        hold.because = trace->suspicion->id;
        made.push_back(file.add(hold));
    }
    if (made.empty()) return Refusal{Code::NothingToDo, "hive", {{"name", mark}}};
    return made;
}

}  // namespace combwright
