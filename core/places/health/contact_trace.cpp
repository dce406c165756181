#include "core/places/health/contact_trace.h"

#include <algorithm>

#include "core/model/yard/queen.h"
#include "core/model/yard/visit.h"
#include "core/storage/queries/hive_days.h"
#include "core/storage/queries/holds.h"
#include "core/storage/queries/stays.h"
#include "core/storage/queries/yards.h"

namespace combwright {
namespace {

/// The colony of the hive on which a suspicion stands, with it; else the last that lived there.
std::pair<std::optional<Colony>, std::optional<Hold>> suspected(const Read& file, Id<Hive> hive,
                                                                Day on) {
    for (Colony& colony : file.where<Colony>({is("hive", hive)}))
        for (Hold& hold : file.where<Hold>({is("colony", colony.id)}))
            if (hold.why == HoldWhy::SuspectedDisease && standsOn(hold, on))
                return {std::move(colony), std::move(hold)};
    return {lastColonyIn(file, hive, on), std::nullopt};
}

/// The last look before a day with brood seen and no disease met.
std::optional<Day> lastCleanLook(const Read& file, const Colony& colony, Day before) {
    const auto findings = file.where<Finding>({is("hive", colony.hive)});
    for (const DatedInspection& each : inspectionsOf(file, colony.hive, before)) {
        if (each.on < colony.since) continue;
        const Seen& seen = each.inspection.seen;
        const bool lookedAtBrood =
            seen.looked == Looked::Opened &&
            (seen.eggs || seen.openBrood || seen.cappedBrood || (seen.brood && seen.brood->value));
        const bool met = std::any_of(findings.begin(), findings.end(), [&](const Finding& found) {
            return found.on == each.on && found.what == Pest::BroodDiseaseSuspected;
        });
        if (lookedAtBrood && !met) return each.on;
    }
    return std::nullopt;
}

class Tracer {
  public:
    Tracer(const Read& file, ContactTrace& trace)
        : m_file(file), m_trace(trace), m_held(heldThings(file, trace.until)) {}

    void trace() {
        const Day lived = std::min(m_trace.colony.ended.value_or(m_trace.until), m_trace.until);
        for (const BoxStay& stay : staysOn(m_file, m_trace.hive.id))
            if (stay.touches(m_trace.from, lived)) m_stays.push_back(stay);
        for (const BoxStay& stay : m_stays) {
            if (stay.from >= m_trace.from) cameIn(stay);
            if (stay.to && *stay.to <= m_trace.until) wentOut(stay);
        }
        for (const FrameMove& move : m_file.all<FrameMove>())
            if (move.on >= m_trace.from && move.on <= m_trace.until) frameMoved(move);
        kin();
        std::stable_sort(m_trace.contacts.begin(), m_trace.contacts.end(),
                         [](const Contact& a, const Contact& b) { return a.on < b.on; });
    }

  private:
    void add(Contact contact) {
        for (const Contact& each : m_trace.contacts)
            if (each.what == contact.what && each.in == contact.in && sameThing(each, contact))
                return;
        contact.held = isHeld(contact);
        m_trace.contacts.push_back(std::move(contact));
    }

    static bool sameThing(const Contact& a, const Contact& b) {
        switch (a.what) {
            case Contact::What::Box:
                return a.box == b.box;
            case Contact::What::Frame:
                return a.frame == b.frame;
            case Contact::What::Colony:
                return a.colony == b.colony;
            case Contact::What::Honey:
                return a.run == b.run;
        }
        return false;
    }

    bool isHeld(const Contact& contact) const {
        const auto any = [](const std::vector<Hold>& holds) {
            return std::any_of(holds.begin(), holds.end(), quarantines);
        };
        switch (contact.what) {
            case Contact::What::Box:
                return any(m_held.of(*contact.box));
            case Contact::What::Frame: {
                const auto frame = m_file.find(*contact.frame);
                return frame && any(m_held.of(*frame));
            }
            case Contact::What::Colony: {
                const auto holds = m_held.colonies.find(contact.colony->number);
                return holds != m_held.colonies.end() && any(holds->second);
            }
            case Contact::What::Honey:
                return false;
        }
        return false;
    }

    void addBox(Id<Box> id, bool in, Day on, std::optional<Id<Hive>> wentTo) {
        const auto box = m_file.find(id);
        Contact contact;
        contact.what = Contact::What::Box;
        contact.in = in;
        contact.on = on;
        contact.box = id;
        contact.hive = wentTo;
        if (box) contact.place = box->place;
        add(std::move(contact));
    }

    /// The colony that lived in a hive on a day, by what it is a contact.
    void addHive(Id<Hive> hive, bool in, Day on, std::optional<Id<Box>> box,
                 std::optional<Id<Frame>> frame) {
        if (const auto colony = lastColonyIn(m_file, hive, on)) {
            if (colony->id == m_trace.colony.id) return;
            addColony(*colony, in, on, box, frame);
        }
    }

    void addColony(const Colony& colony, bool in, Day on, std::optional<Id<Box>> box,
                   std::optional<Id<Frame>> frame) {
        if (colony.id == m_trace.colony.id) return;
        Contact contact;
        contact.what = Contact::What::Colony;
        contact.in = in;
        contact.on = on;
        contact.box = box;
        contact.frame = frame;
        contact.colony = colony.id;
        contact.hive = colony.hive;
        add(std::move(contact));
    }

    void cameIn(const BoxStay& stay) {
        // The boxes a hive was begun with came with it, not from elsewhere.
        const bool withHive = !stay.cameFrom && stay.from == m_trace.hive.since;
        if (!withHive) addBox(stay.box, true, stay.from, {});
        for (const auto& [hive, before] : staysOf(m_file, stay.box))
            if (hive != m_trace.hive.id && before.to && *before.to >= m_trace.from &&
                *before.to <= stay.from)
                addHive(hive, true, stay.from, stay.box, {});
    }

    void wentOut(const BoxStay& stay) {
        addBox(stay.box, false, *stay.to, stay.wentTo);
        for (const auto& [hive, later] : staysOf(m_file, stay.box))
            if (hive != m_trace.hive.id && later.from >= *stay.to && later.from <= m_trace.until)
                addHive(hive, false, later.from, stay.box, {});
        for (const ExtractionBox& spun : m_file.where<ExtractionBox>({is("box", stay.box)})) {
            const auto run = m_file.find(spun.extraction);
            if (!run || run->on < *stay.to || run->on > m_trace.until) continue;
            Contact contact;
            contact.what = Contact::What::Honey;
            contact.on = run->on;
            contact.box = stay.box;
            contact.run = run->id;
            add(std::move(contact));
        }
    }

    bool stoodHere(const std::optional<Id<Box>>& box, Day on) const {
        return box && std::any_of(m_stays.begin(), m_stays.end(), [&](const BoxStay& stay) {
                   return stay.box == *box && stay.touches(on, on);
               });
    }

    /// It stood here once: what comes out of it later is a contact too.
    bool stoodHereBefore(const std::optional<Id<Box>>& box, Day on) const {
        return box && std::any_of(m_stays.begin(), m_stays.end(), [&](const BoxStay& stay) {
                   return stay.box == *box && stay.from <= on;
               });
    }

    void frameMoved(const FrameMove& move) {
        const bool out = stoodHereBefore(move.fromBox, move.on);
        const bool in = stoodHere(move.toBox, move.on);
        if (out == in || (out && stoodHereBefore(move.toBox, move.on))) return;
        Contact contact;
        contact.what = Contact::What::Frame;
        contact.in = in;
        contact.on = move.on;
        contact.frame = move.frame;
        contact.box = out ? move.toBox : move.fromBox;
        if (contact.box) contact.hive = hiveUnder(m_file, *contact.box, move.on);
        add(contact);
        if (!contact.box) return;
        addBox(*contact.box, in, move.on, contact.hive);
        // Where that box stood then, and where it went with the frame in it.
        for (const auto& [hive, stay] : staysOf(m_file, *contact.box)) {
            const bool then = stay.touches(move.on, move.on);
            const bool since = out && stay.from >= move.on && stay.from <= m_trace.until;
            if (hive != m_trace.hive.id && (then || since))
                addHive(hive, in, std::max(move.on, stay.from), *contact.box, move.frame);
        }
    }

    bool within(Day on) const { return on >= m_trace.from && on <= m_trace.until; }

    /// Split off, united: bees and brood went over.
    void kin() {
        const Colony& own = m_trace.colony;
        for (const Colony& each : m_file.where<Colony>({is("mother", own.id)}))
            if (within(each.since)) addColony(each, false, each.since, {}, {});
        if (const auto mother = m_file.find(own.mother); mother && within(own.since))
            addColony(*mother, true, own.since, {}, {});
        for (const Colony& each : m_file.where<Colony>({is("united_into", own.id)}))
            if (each.ended && within(*each.ended)) addColony(each, true, *each.ended, {}, {});
        // Who moved into what it left.
        if (own.ended)
            for (const Colony& each : m_file.where<Colony>({is("hive", own.hive)}))
                if (each.since >= *own.ended && within(each.since) &&
                    std::any_of(m_stays.begin(), m_stays.end(), [&](const BoxStay& stay) {
                        return stay.from <= *own.ended && (!stay.to || *stay.to > each.since);
                    }))
                    addColony(each, false, each.since, {}, {});
        if (const auto host = m_file.find(own.unitedInto); host && own.ended && within(*own.ended))
            addColony(*host, false, *own.ended, {}, {});
        for (const ColonyMove& move : m_file.where<ColonyMove>({is("colony", own.id)}))
            if (within(move.on)) leftBehind(move);
        for (const QueenStay& stay : m_file.where<QueenStay>({is("colony", own.id)}))
            queenMoved(stay);
    }

    /// Boxes of the stand it lived on before, and who moved in there.
    void leftBehind(const ColonyMove& move) {
        for (const BoxStay& stay : staysOn(m_file, move.fromHive))
            if (stay.touches(move.on, move.on) && stay.wentTo != move.toHive)
                addBox(stay.box, false, move.on, move.fromHive);
        for (const ColonyStay& next : colonyStaysIn(m_file, move.fromHive))
            if (next.from >= move.on && within(next.from))
                addColony(next.colony, false, next.from, {}, {});
    }

    /// A queen carries what her bees had: where she came from, where she went.
    void queenMoved(const QueenStay& stay) {
        for (const QueenStay& other : m_file.where<QueenStay>({is("queen", stay.queen)})) {
            const auto colony = m_file.find(other.colony);
            if (!colony || other.colony == stay.colony) continue;
            if (other.until == stay.since && within(stay.since))
                addColony(*colony, true, stay.since, {}, {});
            if (stay.until == other.since && within(other.since))
                addColony(*colony, false, other.since, {}, {});
        }
    }

    const Read& m_file;
    ContactTrace& m_trace;
    HeldThings m_held;
    std::vector<BoxStay> m_stays;
};

}  // namespace

bool ContactTrace::allHeld() const {
    return std::all_of(contacts.begin(), contacts.end(), [](const Contact& contact) {
        return contact.held || contact.what == Contact::What::Honey;
    });
}

std::vector<Hive> suspectedHives(const Read& file, Day on) {
    std::vector<Hold> suspicions;
    for (Hold& hold : file.where<Hold>({is("why", HoldWhy::SuspectedDisease)}))
        // A contact is held because of another's suspicion, not of its own.
        if (hold.colony && !hold.because && standsOn(hold, on))
            suspicions.push_back(std::move(hold));
    std::stable_sort(suspicions.begin(), suspicions.end(),
                     [](const Hold& a, const Hold& b) { return a.since > b.since; });
    std::vector<Hive> hives;
    for (const Hold& hold : suspicions) {
        const auto colony = file.find(*hold.colony);
        auto hive = colony ? file.find(colony->hive) : std::nullopt;
        const bool listed = hive && std::any_of(hives.begin(), hives.end(), [&](const Hive& each) {
                                return each.id == hive->id;
                            });
        if (hive && !listed) hives.push_back(*std::move(hive));
    }
    return hives;
}

std::optional<ContactTrace> contactTrace(const Read& file, Id<Hive> id, Day on) {
    const auto hive = file.find(id);
    if (!hive) return std::nullopt;
    auto [colony, suspicion] = suspected(file, id, on);
    if (!colony) return std::nullopt;
    ContactTrace trace;
    trace.hive = *hive;
    trace.colony = *colony;
    trace.suspicion = suspicion;
    trace.found = suspicion ? suspicion->since : on;
    trace.cleanLook = lastCleanLook(file, *colony, trace.found);
    trace.from =
        std::min(trace.cleanLook.value_or(colony->since), trace.found - days(broodCycleDays));
    trace.until = on;
    Tracer(file, trace).trace();
    return trace;
}

}  // namespace combwright
