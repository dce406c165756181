#include "tests/bench/long_season.h"

#include <algorithm>
#include <cstdio>
#include <filesystem>
#include <random>
#include <stdexcept>

#include "core/actions/boxes/box_list.h"
#include "core/actions/health/medicines.h"
#include "core/actions/health/treatments.h"
#include "core/actions/yard/colonies.h"
#include "core/actions/yard/feeds.h"
#include "core/actions/yard/queens.h"
#include "core/actions/yard/sheet.h"
#include "core/actions/yard/weighings.h"
#include "core/actions/yard/yards.h"
#include "core/storage/migrations.h"

namespace combwright::bench {
namespace {

/// Counted up where what is made changes, so that a file kept from before is not measured.
constexpr int madeAs = 2;

class Chronicle {
  public:
    Chronicle(Season& season, const LongSeason& wanted) : m_season(season), m_wanted(wanted) {}

    void write() {
        const int last = yearOf(longSeasonDay());
        for (int year = last - m_wanted.years + 1; year <= last; ++year) {
            const auto done = m_season.together([&]() -> Result<void> {
                if (m_stands.empty()) begin(year);
                writeYear(year);
                return {};
            });
            if (!done) throw std::runtime_error("a year was refused");
        }
    }

  private:
    struct Stand {
        Id<Hive> id;
        std::string mark;
        bool lives = true;
        bool hasSupers = false;
    };

    template <class Action>
    auto deed(const Action& action) {
        auto done = perform(m_season, action);
        if (!done)
            throw std::runtime_error(std::string(Action::name) +
                                     " was refused: " + std::string(key(done.error().code)) + " " +
                                     done.error().field);
        return *done;
    }
    /// 0 up to below `n`.
    int pick(int n) { return static_cast<int>(m_random() % static_cast<unsigned>(n)); }
    bool oneIn(int n) { return pick(n) == 0; }
    static std::string number(int n) { return std::to_string(n); }

    void begin(int year) {
        const Day on = m_begun = *makeDay(year, 3, 20);
        const auto medium = boxKindNamed(m_season.read(), "medium");
        for (int yard = 0; yard < m_wanted.yards; ++yard) {
            AddYard add;
            add.on = on;
            add.yard = *Name::of("Yard " + number(yard + 1));
            add.winterNeed = Mass::grams(20000);
            if (medium) add.usualSuper = medium->id;
            m_yards.push_back(deed(add));
        }
        m_stands.resize(m_yards.size());
        for (int hive = 0; hive < m_wanted.hives; ++hive) {
            auto& stands = m_stands[static_cast<std::size_t>(hive) % m_yards.size()];
            const std::string mark = "H" + number(hive + 1);
            AddHive add;
            add.on = on;
            add.yard = m_yards[static_cast<std::size_t>(hive) % m_yards.size()];
            add.hive = *Name::of(mark);
            add.boxes = "deep D" + number(hive + 1) + ", x";
            add.origin = Origin::Overwintered;
            add.tare = Known<Mass>{Mass::grams(11000), {}, How::Weighed};
            stands.push_back({deed(add), mark});
        }
    }

    /// The visits of a year in the order of the days, each yard on a day of its own; weekly while
    /// the bees may swarm.
    void writeYear(int year) {
        struct Round {
            unsigned month, day;
            void (Chronicle::*at)(std::size_t yard, Day on);
        };
        static constexpr Round rounds[] = {
            {1, 5, &Chronicle::weigh},    {4, 1, &Chronicle::spring},
            {4, 12, &Chronicle::look},    {4, 22, &Chronicle::look},
            {5, 2, &Chronicle::supering}, {5, 10, &Chronicle::look},
            {5, 18, &Chronicle::look},    {5, 26, &Chronicle::look},
            {6, 3, &Chronicle::June},     {6, 11, &Chronicle::look},
            {6, 19, &Chronicle::look},    {6, 27, &Chronicle::look},
            {7, 8, &Chronicle::pull},     {7, 22, &Chronicle::look},
            {8, 2, &Chronicle::treat},    {8, 20, &Chronicle::feed},
            {8, 28, &Chronicle::look},    {9, 12, &Chronicle::takenOut},
            {10, 10, &Chronicle::weigh},
        };
        struct Due {
            Day on;
            std::size_t yard;
            void (Chronicle::*at)(std::size_t yard, Day on);
        };
        std::vector<Due> visits;
        for (const Round& round : rounds)
            for (std::size_t yard = 0; yard < m_yards.size(); ++yard) {
                const Day on = *makeDay(year, round.month, round.day) + days(yard);
                if (on > m_begun && on < longSeasonDay()) visits.push_back({on, yard, round.at});
            }
        std::stable_sort(visits.begin(), visits.end(),
                         [](const Due& a, const Due& b) { return a.on < b.on; });
        m_bought.reset();
        for (const Due& due : visits) (this->*due.at)(due.yard, due.on);
    }

    void visited(std::size_t yard, Day on) {
        RecordVisit visit;
        visit.on = on;
        visit.yard = m_yards[yard];
        visit.begun = Instant(on) + std::chrono::hours(9);
        visit.ended = *visit.begun + std::chrono::minutes(6 * m_stands[yard].size());
        deed(visit);
    }

    template <class LineOf>
    void lines(std::size_t yard, Day on, LineOf lineOf) {
        visited(yard, on);
        for (Stand& stand : m_stands[yard])
            if (const std::string line = lineOf(stand); !line.empty())
                deed(WriteLine{on, stand.id, line});
    }

    std::string broodAndStores(int brood, int stores) {
        return "e b" + number(brood + pick(4)) + " s" + number(stores + pick(3));
    }

    void spring(std::size_t yard, Day on) {
        for (Stand& stand : m_stands[yard])
            if (stand.lives && oneIn(12)) {
                EndColony end;
                end.on = on;
                end.hive = stand.id;
                end.ending = Ending::Sold;
                deed(end);
                stand.lives = false;
            }
        lines(yard, on, [&](Stand& stand) {
            return stand.lives ? broodAndStores(2, 2) + (oneIn(9) ? " light f2" : "") : "";
        });
    }

    void look(std::size_t yard, Day on) {
        lines(yard, on, [&](Stand& stand) {
            if (!stand.lives) return std::string();
            std::string line = broodAndStores(5, 2);
            if (oneIn(3)) line += " w" + number(pick(6)) + "/300";
            if (oneIn(30)) line += " cross";
            return line;
        });
    }

    void supering(std::size_t yard, Day on) {
        for (Stand& stand : m_stands[yard])
            if (!stand.lives) {
                StartColony start;
                start.on = on;
                start.hive = stand.id;
                start.origin = Origin::Split;
                start.mother = motherFor(yard);
                deed(start);
                stand.lives = true;
            }
        lines(yard, on, [&](Stand& stand) {
            stand.hasSupers = true;
            return broodAndStores(5, 2) + " qc0 +1";
        });
    }

    std::optional<Id<Hive>> motherFor(std::size_t yard) {
        for (const Stand& stand : m_stands[yard])
            if (stand.lives) return stand.id;
        return std::nullopt;
    }

    void June(std::size_t yard, Day on) {
        lines(yard, on, [&](Stand&) {
            std::string line = broodAndStores(6, 3);
            if (oneIn(4)) line += " w" + number(pick(6)) + "/300";
            if (oneIn(15)) line += " qc3o left1";
            return line;
        });
        for (Stand& stand : m_stands[yard])
            if (oneIn(3)) {
                PutQueen queen;
                queen.on = on + days(1);
                queen.hive = stand.id;
                queen.reared = Count(yearOf(on));
                queen.from = QueenFrom::OwnCell;
                queen.marked = true;
                deed(queen);
            }
    }

    void pull(std::size_t yard, Day on) {
        lines(yard, on, [&](Stand& stand) {
            const bool off = std::exchange(stand.hasSupers, false) && !oneIn(10);
            if (!off) stand.hasSupers = true;
            return broodAndStores(5, 2) + (off ? " -1" : "") + " w" + number(pick(9)) + "/300";
        });
    }

    void treat(std::size_t yard, Day on) {
        if (!m_bought) {
            BuyMedicine buy;
            buy.on = on;
            buy.medicine = *Name::of("Strips " + number(yearOf(on)));
            buy.batch = "B" + number(yearOf(on));
            buy.expires = on + days(600);
            buy.quantity = Number::rounded(2.0 * m_wanted.hives + 10);
            buy.unit = "strips";
            buy.supers = LabelSupers::MayStay;
            buy.inHiveFrom = Count(35);
            buy.inHiveTo = Count(42);
            m_bought = deed(buy);
        }
        Treat give;
        give.on = on;
        give.medicine = *m_bought;
        give.yard = m_yards[yard];
        give.amount = Number::rounded(2);
        deed(give);
    }

    void feed(std::size_t yard, Day on) {
        FeedHives feed;
        feed.on = on;
        feed.yard = m_yards[yard];
        feed.kind = FeedKind::Thick;
        feed.given = Known<Mass>{Mass::grams(4000 + 500 * pick(6)), {}, How::Counted};
        deed(feed);
    }

    void takenOut(std::size_t yard, Day on) {
        lines(yard, on, [&](Stand& stand) {
            const bool off = std::exchange(stand.hasSupers, false);
            return broodAndStores(2, 6) + (off ? " -1" : "") + " w" + number(pick(4)) + "/300";
        });
        TakeOutMedicine out;
        out.on = on;
        out.yard = m_yards[yard];
        deed(out);
    }

    void weigh(std::size_t yard, Day on) {
        std::string readings;
        for (const Stand& stand : m_stands[yard]) {
            if (!stand.lives) continue;
            const int half = (monthOf(on) == 10 ? 170 : 120) + pick(40);
            readings += (readings.empty() ? "" : ", ") + stand.mark + " " + number(half / 10) +
                        "." + number(half % 10) + "+" + number(half / 10) + ".5";
        }
        WeighHive weigh;
        weigh.on = on;
        weigh.yard = m_yards[yard];
        weigh.readings = readings;
        deed(weigh);
    }

    Season& m_season;
    LongSeason m_wanted;
    std::mt19937 m_random{20270729};
    Day m_begun;
    std::vector<Id<Yard>> m_yards;
    std::vector<std::vector<Stand>> m_stands;  ///< by yard
    std::optional<Id<Medicine>> m_bought;      ///< this year's
};

}  // namespace

Day longSeasonDay() { return *parseDay("2027-07-29"); }

std::string longSeasonFile(const LongSeason& wanted) {
    // A file of an older shape of the tables is none of ours.
    const std::string shape = migrations().back().digest().substr(0, 8);
    const std::filesystem::path path =
        std::filesystem::path(COMBWRIGHT_BENCH_DIR) /
        ("season-" + std::to_string(wanted.years) + "-years-" + std::to_string(wanted.hives) +
         "-hives-" + std::to_string(madeAs) + "-" + shape + ".combwright");
    if (std::filesystem::exists(path)) return path.string();
    std::fprintf(stderr, "Making %s, once; this takes a while.\n", path.c_str());
    // Under another name first: one that was not finished must not be taken for it.
    const std::filesystem::path making = path.string() + ".making";
    std::filesystem::remove(making);
    const LongSeasonClock clock;
    {
        auto season = Season::create(making.string(), clock);
        if (!season) throw std::runtime_error("the file was refused");
        Chronicle(*season, wanted).write();
    }
    std::filesystem::rename(making, path);
    return path.string();
}

}  // namespace combwright::bench
