// Actions made up at random, as odd as those a keeper types and odder: for tests that hold for
// whatever is done.
#pragma once

#include <random>
#include <string>

#include "tests/support/support.h"

namespace combwright::test {

class RandomActions {
  public:
    explicit RandomActions(unsigned seed) : m_random(seed) {}

    std::string line() {
        const std::string on = isoText(day("2027-04-01") + days(pick(200)));
        // The yards are gone through every few weeks; otherwise no line is ever met again.
        const std::string visited = isoText(day("2027-04-10") + days(21 * pick(6)));
        switch (pick(47)) {
            case 0:
                return R"({"do":"add-yard","on":")" + on + R"(","yard_name":"Y)" + number(6) +
                       "\"}";
            case 1:
            case 2:
                return R"({"do":"add-hive","on":")" + on + R"(","yard":"Y)" + number(6) +
                       R"(","mark":"H)" + number(30) +
                       R"(","boxes":"deep 2, x, medium","origin":"swarm"})";
            case 3:
                return R"({"do":"close-hive","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(2) == 0 ? "\"}" : R"(","boxes_to":"storeroom"})");
            case 4:
                return R"({"do":"move-hive","on":")" + on + R"(","hive":"H)" + number(30) +
                       R"(","stand_order":)" + number(5) + "}";
            case 5:
                return R"({"do":"record-visit","on":")" + visited + R"(","yard":"Y)" + number(6) +
                       R"(","all":"e +1"})";
            case 6:
            case 11:
            case 15:
            case 27:
            case 28:
                return R"({"do":"strike-line","on":")" + visited + R"(","hive":"H)" + number(30) +
                       "\"}";
            case 7:
            case 8:
                return amend(on);
            case 9:
                return R"({"do":"check-frames","on":")" + on + R"(","box":"#)" + number(30) +
                       (pick(2) ? R"(","position":)" + number(10)
                                : R"(","how_many":)" + number(3)) +
                       R"(,"faults":"W","verdict":"melt"})";
            case 10:
                return R"({"do":"count-box","on":")" + on + R"(","box":"#)" + number(30) +
                       R"(","contents":")" + number(2) + R"( drawn, 1 W"})";
            case 12:
            case 19:
            case 25:
            case 26:
                return R"({"do":"end-colony","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(3) == 0 ? R"(","ending":"united","into":"H)" + number(30) + "\"}"
                                     : "\"}");
            case 13:
            case 31:
                return R"({"do":"start-colony","on":")" + on + R"(","hive":"H)" + number(30) +
                       R"(","origin":"split","mother":"H)" + number(30) + "\"}";
            case 14:
                return R"({"do":"set-excluder","on":")" + on + R"(","hive":"H)" + number(30) +
                       (pick(3) ? R"(","boxes_under":)" + number(3) + "}" : "\"}");
            case 16:
                return equipment(on);
            case 17:
                return wets(on);
            case 18:
            case 20:
                return freezer(on);
            case 21:
            case 22:
            case 23:
            case 29:
            case 30:
                return deadOut("2027-10-20");
            case 24:
                return suspicion(on);
            case 34:
            case 35:
            case 36:
            case 37:
                return room();
            case 38:
            case 39:
            case 40:
                return pegs(on);
            case 41:
            case 42:
            case 43:
            case 44:
                return clearers(on);
            case 45:
            case 46:
                return tasks(on);
            default: {
                static const char* const lines[] = {"e b7 s3 +1", "x rain",      "-1",
                                                    "w4/300 +1d", "f2.5 light!", "qc2c left1 +2"};
                return R"({"do":"write-line","on":")" + visited + R"(","hive":"H)" + number(30) +
                       R"(","line":")" + lines[pick(6)] + "\"}";
            }
        }
    }
    unsigned pick(unsigned below) { return m_random() % below; }

  private:
    std::string equipment(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"describe-equipment","on":")" + on +
                       R"(","item":"freezer","litres":)" + number(400) + "}";
            case 1:
                return R"({"do":"plan-season","on":")" + on + R"(","year":2028,"splits":)" +
                       number(9) + R"(,"items":"floor 1 )" + number(3) +
                       (pick(2) ? R"(, lid 1 1"})" : R"(, excluder 1 0 10 %"})");
            default:
                return R"({"do":"count-equipment","on":")" + on + R"(","item":")" +
                       (pick(2) ? "floor" : "lid") + R"(","on_hand":)" + number(30) +
                       R"(,"lent":)" + number(3) + R"(,"why_fewer":"counted again"})";
        }
    }
    std::string wets(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"move-box","on":")" + on + R"(","box":"#)" + number(30) +
                       R"(","to":"wet"})";
            case 1:
                return R"({"do":"take-wets-off","on":")" + on + R"(","boxes":"#)" + number(30) +
                       R"(","stack":"S)" + number(3) + "\"}";
            default:
                return R"({"do":"send-wets-home","on":")" + on + R"(","boxes":"#)" + number(30) +
                       " H" + number(30) + "\"}";
        }
    }
    /// Clipped through the summer, off or weighed late in it: otherwise most are not on yet.
    std::string pegs(const std::string& on) {
        const auto head = [&](const std::string& day) {
            return R"(","on":")" + day + R"(","peg":)" + number(30);
        };
        const std::string run = R"(,"run":"27-)" + number(2) + '"';
        switch (pick(7)) {
            case 0:
            case 1:
                return R"({"do":"take-peg-off)" + head("2027-10-20") + "}";
            case 2:
                return R"({"do":"clip-peg)" + head(on) + R"(,"hive":"H)" + number(20) + "\"}";
            case 3:
                return R"({"do":"weigh-box)" + head("2027-10-20") + run + R"(,"hive":"H)" +
                       number(20) + R"(","gross_g":)" + std::to_string(15000 + 100 * pick(90)) +
                       "}";
            case 4:
                return R"({"do":"weigh-box)" + head("2027-10-20") + run + R"(,"wet_g":5000})";
            case 5:
                return R"({"do":"open-run","on":"2027-04-01","name":"27-)" + number(2) + "\"}";
            default:
                return R"({"do":"clip-peg)" + head(on) + R"(,"box":"#)" + number(40) + "\"}";
        }
    }
    std::string clearers(const std::string& on) {
        if (pick(2))
            return R"({"do":"put-clearer","on":")" + on + R"(","hive":"H)" + number(20) + "\"}";
        // In the middle of the year too, so that a board goes in again after it.
        return R"({"do":"take-clearer","on":")" +
               std::string(pick(2) ? "2027-10-20" : "2027-07-01") + R"(","hive":"H)" + number(20) +
               "\"}";
    }
    std::string tasks(const std::string& on) {
        const std::string head = R"(","on":")" + on + "\"";
        switch (pick(4)) {
            case 0:
                return R"({"do":"note-task)" + head + R"(,"text":"mend the gate","hive":"H)" +
                       number(30) + (pick(2) ? "\"}" : R"(","due":")" + on + "\"}");
            case 1:
                return R"({"do":"finish-task)" + head + R"(,"task":"#)" + number(9) + "\"}";
            case 2:
                return R"({"do":"quiet-rule)" + head + R"(,"rule":"mite sample","reason":"sold",)" +
                       (pick(2) ? R"("yard":"Y)" + number(6) : R"("hive":"H)" + number(30)) +
                       (pick(2) ? "\"}" : R"(","until":")" + on + "\"}");
            default:
                return R"({"do":"end-quiet)" + head + R"(,"quiet":"#)" + number(9) + "\"}";
        }
    }
    std::string freezer(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"take-out-frozen","on":")" + on + R"(","round":"#)" + number(9) +
                       "\"}";
            case 1:
                return R"({"do":"spoil-frozen","on":")" + on + R"(","boxes":"#)" + number(30) +
                       R"(","reason":"opened"})";
            default:
                return R"({"do":"freeze-frames","on":")" + on + R"(","boxes":"#)" + number(30) +
                       (pick(2) ? " 1\"}" : "\",\"hours\":48}");
        }
    }
    std::string deadOut(const std::string& on) {
        static const char* const answers[] = {
            R"("ropy":false,"scale":false,"cause":"starved","by":"me")",
            R"("cluster":"small","wet":true)", R"("scale":true)"};
        return R"({"do":"record-dead-out","on":")" + on + R"(","hive":"H)" + number(30) + R"(",)" +
               answers[pick(3)] + "}";
    }
    std::string suspicion(const std::string& on) {
        const std::string head = R"(","on":")" + on + "\"";
        switch (pick(6)) {
            case 0:
                return R"({"do":"hold-back)" + head + R"(,"hive":"H)" + number(30) +
                       R"(","reason":"suspected disease"})";
            case 1:
                return R"({"do":"hold-contacts)" + head + R"(,"hive":"H)" + number(30) + "\"}";
            case 2:
                return R"({"do":"set-out)" + head + R"(,"what_out":"comb","boxes":"M)" +
                       number(30) + "\"}";
            case 3:
                return R"({"do":"take-in-set-out)" + head + "}";
            default:
                return R"({"do":"release-hold)" + head + R"(,"hold":"#)" + number(30) +
                       R"(","lifted_by":"laboratory","grounds":"negative"})";
        }
    }
    /// Two lots side by side, now and then on one day.
    std::string room() {
        const std::string head = R"(","on":")" + isoText(day("2027-08-08") + days(pick(3))) + "\"";
        const std::string inRun = head + R"(,"run":"R)" + number(2) + "\"";
        switch (pick(12)) {
            case 0:
                return R"({"do":"weigh-box)" + inRun + R"(,"known_as":"T)" + number(9) +
                       R"(","frames":9,"gross_g":20000})";
            case 1:
                return R"({"do":"spin-load)" + inRun + R"(,"slots":"T)" + number(9) + " h, T" +
                       number(9) + R"( l, , empty","begun":"2027-08-08T09:00:00Z"})";
            case 2:
                return R"({"do":"spin-load)" + inRun + R"(,"boxes":"T)" + number(9) + " " +
                       number(7) + R"(","ran":")" + (pick(3) ? "smooth" : "stopped") + "\"}";
            case 3:
                return R"({"do":"set-aside)" + inRun + R"(,"box":{"extraction_box":"T)" +
                       number(9) + R"(","run":"R)" + number(2) + R"("},"frames":)" + number(3) +
                       (pick(2) ? R"(,"reason":"not empty"})" : "}");
            case 4:
                return R"({"do":"set-aside)" + inRun + R"(,"reason":"broke"})";
            case 5:
            case 6:
            case 9:
            case 10:
                return R"({"do":"settle-aside)" + head + R"(,"aside":"#)" + number(30) +
                       R"(","became":")" + (pick(2) ? "spun again" : "melted") +
                       (pick(4) ? "\"}" : R"(","frames":1})");
            case 7:
                return R"({"do":"open-gate)" + inRun + (pick(2) ? R"(,"run_empty":true})" : "}");
            case 8:
                return R"({"do":"log-room-day)" + head + R"(,"hands":)" + number(3) +
                       (pick(2) ? R"(,"knife_checked":true})" : R"(,"who":"Ann"})");
            default:
                return R"({"do":"fill-bucket)" + inRun + R"(,"mark":"B)" + number(9) +
                       R"(","net_g":13)" + number(9) + "00}";
        }
    }
    std::string amend(const std::string& on) {
        static const char* const amended[] = {
            R"("hive":"H{n}","set":{"mark":"H{m}","note":"red lid"})",
            R"("hive":"H{n}","set":{"since":"{day}"})",
            R"("yard":"Y{s}","set":{"name":"Y{s}","winter_need_g":null,"usual_super":"deep"})",
            R"("box":"#{n}","set":{"mark":"M{m}","condition":"to scrape"})",
            R"("box":"#{n}","set":{"since":"{day}"})",
            R"("box":"#{n}","set":{"kind":"shallow"})",
            R"("colony":"#{n}","set":{"origin":"package","since":"{day}"})",
            R"("colony":"#{n}","set":{"ended":null,"ending":null})",
            R"("inspection":"#{n}","set":{"brood_frames":{m},"eggs":null,"note":"amended"})",
            R"("visit":"#{n}","set":{"on_day":"{day}","note":null})",
            R"("frame_check":"#{n}","set":{"faults":"V","verdict":null})",
            R"("frame":"#{m}","set":{"drawn_year":2025})",
            R"("set_aside":"#{n}","set":{"reason":"unripe","became":null})",
            R"("gate_opening":"#{n}","set":{"after_load":1})",
            R"("room_day":"#{n}","set":{"hands":null,"who":"Ben"})",
            R"("spin_load":"#{n}","set":{"ran":"walked","uncapping_min":{m}})",
            R"("peg":"#{n}","set":{"number":{m},"off_day":"{day}"})",
            R"("clearer_board":"#{n}","set":{"on_day":"{day}"})",
            R"("task":"#{n}","set":{"due":"{day}","done":null})",
            R"("quiet":"#{n}","set":{"until":"{day}"})",
        };
        std::string what = amended[pick(20)];
        const auto fill = [&what](const std::string& mark, const std::string& with) {
            for (auto at = what.find(mark); at != std::string::npos; at = what.find(mark))
                what.replace(at, mark.size(), with);
        };
        fill("{n}", number(30));
        fill("{m}", number(30));
        fill("{s}", number(6));
        fill("{day}", isoText(day("2027-03-01") + days(pick(200))));
        return R"({"do":"amend","on":")" + on + R"(",)" + what + R"(,"why":"misread"})";
    }
    std::string number(unsigned below) { return std::to_string(pick(below) + 1); }
    std::mt19937 m_random;
};

}  // namespace combwright::test
