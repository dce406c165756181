// Actions made up at random, as odd as those a keeper types and odder: for tests that hold for
// whatever is done.
#pragma once

#include <string>

#include "tests/core/storage/random_wax.h"
#include "tests/support/support.h"

namespace combwright::test {

class RandomActions : public RandomWax {
  public:
    explicit RandomActions(unsigned seed) : RandomWax(seed) {}

    std::string line() {
        const std::string on = isoText(day("2027-04-01") + days(pick(200)));
        // The yards are gone through every few weeks; otherwise no line is ever met again.
        const std::string visited = isoText(day("2027-04-10") + days(21 * pick(6)));
        switch (pick(82)) {
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
                       (pick(3) ? R"(","all":"e +1"})" : R"(","all":"lid +1, 3 light"})");
            case 6:
            case 11:
            case 15:
            case 27:
            case 28:
                if (pick(6) == 0)
                    return R"({"do":"strike-visit","on":")" + visited + R"(","yard":"Y)" +
                           number(6) + "\"}";
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
            case 64:
                return deadOut("2027-10-20");
            case 24:
                return suspicion(on);
            case 34:
            case 35:
            case 36:
            case 37:
            case 47:
            case 54:
            case 55:
            case 56:
                return room();
            case 38:
            case 39:
            case 40:
                return pegs(on);
            case 41:
            case 42:
            case 43:
            case 45:
            case 46:
                return clearers(on);
            case 44:
                return pick(2) ? feeding(on) : weighing(on);
            case 48:
            case 53:
            case 67:
            case 68:
            case 69:
                return health(on);
            case 62:
                return toldOnPaper(on);
            case 49:
                return bees(on);
            case 50:
            case 51:
                return queens(on);
            case 52:
                return tasks(on);
            case 57:
            case 58:
            case 59:
            case 60:
            case 61:
                return vessels();
            case 63:
            case 65:
            case 66:
            case 70:
                return goods();
            case 71:
                return tables(on);
            case 72:
            case 73:
            case 74:
            case 75:
            case 76:
            case 77:
            case 78:
            case 79:
            case 80:
            case 81:
                return wax();
            default: {
                static const char* const lines[] = {"e b7 s3 +1", "x rain",      "-1",
                                                    "w4/300 +1d", "f2.5 light!", "qc2c left1 +2"};
                return R"({"do":"write-line","on":")" + visited + R"(","hive":"H)" + number(30) +
                       R"(","line":")" + lines[pick(6)] + "\"}";
            }
        }
    }

  private:
    /// Rows of tables as one step, some refused half-way, and imports taken back whatever stands on
    /// them.
    std::string tables(const std::string& on) {
        const auto row = [&](const std::string& rest) {
            return R"({\"do\":\")" + rest + R"(\",\"on\":\")" + on + R"(\"})" + "\\n";
        };
        if (pick(3) == 0)
            return R"({"do":"take-back-import","on":")" + on + R"(","import_step":)" +
                   number(2000) + "}";
        std::string rows;
        for (int i = 0; i < 3; ++i)
            rows += row(pick(2) ? R"(weigh-hive\",\"hive\":\"H)" + number(30) +
                                      R"(\",\"whole_g\":3)" + number(9) + R"(000,\"note\":\"scale)"
                                : R"(add-hive\",\"yard\":\"Y)" + number(6) + R"(\",\"mark\":\"H)" +
                                      number(60) + R"(\",\"origin\":\"swarm)");
        return R"({"do":"import-rows","on":")" + on + R"(","rows_of":"weights","lines":")" + rows +
               "\"}";
    }
    /// Colonies split, united and moved, hives moved and relabelled.
    std::string bees(const std::string& on) {
        const auto head = [&](const char* deed) {
            return R"({"do":")" + std::string(deed) + R"(","on":")" + on + R"(","hive":"H)" +
                   number(30) + "\"";
        };
        switch (pick(9)) {
            case 0:
                return head("split-colony") + R"(,"mark":"H)" + number(30) +
                       R"(","new_boxes":"deep","queen_goes":)" + (pick(2) ? "true" : "false") +
                       (pick(2) ? R"(,"step":"queen lost"})" : "}");
            case 1:
                return head("split-colony") + R"(,"onto":"H)" + number(30) + R"(","boxes":"#)" +
                       number(60) + "\"}";
            case 2:
                return head("unite-colonies") + R"(,"into":"H)" + number(30) +
                       (pick(2) ? R"(","queen_kept":"of the hive that went"})"
                                : R"(","boxes_to":"on hive"})");
            case 3:
                return head("swarmed") + (pick(3) ? "}" : R"(,"queen_goes":false})");
            case 4:
                return R"({"do":"hive-swarm","on":")" + on + R"(","from_hive":"H)" + number(30) +
                       R"(","hive":"H)" + number(30) + R"(","queen_goes":true})";
            case 5:
                return head("move-colony") + R"(,"to_hive":"H)" + number(30) +
                       (pick(2) ? R"(","boxes":"all"})" : "\"}");
            case 6:
                return head("relabel-hive") + R"(,"mark":"H)" + number(30) + "\"}";
            default:
                return head("move-hive") + R"(,"yard":"Y)" + number(6) + "\"}";
        }
    }
    std::string queens(const std::string& on) {
        const auto head = [&](const char* deed) {
            return R"({"do":")" + std::string(deed) + R"(","on":")" + on + R"(","hive":"H)" +
                   number(30) + "\"";
        };
        switch (pick(8)) {
            case 0:
                return head("put-queen") + R"(,"reared":202)" + number(7) +
                       (pick(2) ? R"(,"mother":"#)" + number(9) + "\"}" : "}");
            case 1:
                return head("mark-queen") + R"(,"number":")" + number(50) + "\"}";
            case 2:
                return head("move-queen") + R"(,"to_hive":"H)" + number(30) +
                       R"(","step":"queen lost"})";
            case 3:
                return head("lose-queen") + (pick(2) ? R"(,"step":"queen lost"})" : "}");
            case 4:
                return head("wait-for-queen") + R"(,"step":"cell open"})";
            case 5:
                return head("end-queen-wait") + "}";
            case 6:
                return R"({"do":"set-queen-colour","on":")" + on + R"(","digit":)" + number(9) +
                       R"(,"colour":")" + (pick(2) ? "pink" : "red") + "\"}";
            default:
                return head("put-queen") + R"(,"origin":"bought","left_how":"superseded"})";
        }
    }
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
    std::string feeding(const std::string& on) {
        switch (pick(6)) {
            case 0:
                return R"({"do":"buy-feed","on":")" + on +
                       (pick(2) ? R"(","kind":"fondant","packs":6,"pack_g":2000})"
                                : R"(","bought_g":25000})");
            case 1:
                return R"({"do":"count-feed","on":")" + on + R"(","counted_g":)" + number(90) +
                       "000}";
            case 2:
                return R"({"do":"feed","on":")" + on + R"(","yard":"Y)" + number(6) +
                       R"(","kind":"syrup 2:1","given_g":2500})";
            case 3:
                return R"({"do":"put-in-truck","on":")" + on + R"(","items":")" + number(4) +
                       R"( hive tool, smoker"})";
            case 4:
                return R"({"do":"take-off-truck","on":"2027-10-20","items":"hive tool"})";
            default:
                return R"({"do":"feed","on":")" + on + R"(","hives":"H)" + number(30) +
                       R"(","kind":"fondant","packs":)" + number(3) + "}";
        }
    }
    std::string weighing(const std::string& on) {
        const std::string head = R"(","on":")" + on + "\",";
        switch (pick(4)) {
            case 0:
                return R"({"do":"set-tare)" + head + R"("hive":"H)" + number(30) +
                       R"(","tare_g":)" + number(20) + "000}";
            case 1:
                return R"({"do":"weigh-hive)" + head + R"("readings":"H)" + number(30) + " 2" +
                       number(9) + "+2" + number(9) + ", H" + number(30) + R"( 41"})";
            case 2:
                return R"({"do":"weigh-hive)" + head + R"("hive":"H)" + number(30) +
                       R"(","right_g":21000})";
            default:
                return R"({"do":"weigh-hive)" + head + R"("hive":"H)" + number(30) +
                       R"(","left_g":20000})";
        }
    }
    std::string health(const std::string& on) {
        const std::string head = R"(","on":")" + on + "\"";
        const std::string hive = R"(,"hive":"H)" + number(30) + "\"";
        switch (pick(11)) {
            case 0:
                return R"({"do":"buy-medicine)" + head + R"(,"name":"P)" + number(3) +
                       R"(","quantity":)" + number(40) + R"(,"unit":"strips","supers":")" +
                       (pick(2) ? "off" : "may stay") + R"(","wait_days":)" + number(20) + "}";
            case 1:
                return R"({"do":"dispose-medicine)" + head + R"(,"medicine":"#)" + number(5) +
                       R"(","amount":)" + number(9) + R"(,"how":"depot"})";
            case 2:
            case 3:
                return R"({"do":"treat)" + head + R"(,"medicine":"#)" + number(5) +
                       R"(","yard":"Y)" + number(6) + R"(","amount":)" + number(3) + "}";
            case 4:
                return R"({"do":"treat)" + head + R"(,"medicine":"#)" + number(5) +
                       R"(","hives":"H)" + number(30) + ", H" + number(30) + "\"}";
            case 5:
                return R"({"do":"take-out-medicine","on":"2027-10-20")" +
                       (pick(2) ? R"(,"hives":"H)" + number(30) + "\"}"
                                : R"(,"yard":"Y)" + number(6) + "\"}");
            case 6:
                return R"({"do":"record-finding)" + head + hive +
                       (pick(6) ? R"(,"what":"varroa","method":"wash","mites":)" + number(20) +
                                      R"(,"bees":300})"
                                : R"(,"what":"brood disease suspected","method":"seen"})");
            case 7:
                return R"({"do":"set-mite-line)" + head + R"(,"phase":"peak","per_100":)" +
                       number(4) + "}";
            case 8:
                return R"({"do":"set-phase-day)" + head + R"(,"phase":"decrease","month":)" +
                       number(13) + R"(,"day_of_month":)" + number(31) + "}";
            case 9:
                return R"({"do":"choose-tables)" + head + R"(,"medicines_region":"US"})";
            default:
                return R"({"do":"amend)" + head +
                       (pick(2) ? R"(,"treatment":"#)" + number(20) + R"(","set":{"on_day":")" +
                                      isoText(day("2027-04-10") + days(pick(150))) + "\"}"
                                : R"(,"medicine":"#)" + number(5) + R"(","set":{"supers":"off"})") +
                       R"(,"why":"misread"})";
        }
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
            R"("hive_weighing":"#{n}","set":{"on_day":"{day}"})",
            R"("hive_weighing":"#{n}","set":{"left_g":null})",
            R"("feeding":"#{n}","set":{"given_g":1500})",
            R"("feed_stock":"#{n}","set":{"on_day":"{day}"})",
            R"("truck_item":"#{n}","set":{"until":"{day}"})",
            R"("hive_move":"#{n}","set":{"on_day":"{day}"})",
            R"("colony_move":"#{m}","set":{"on_day":"{day}"})",
            R"("queen":"#{n}","set":{"reared":2024,"mother":"#{m}"})",
            R"("queen_stay":"#{n}","set":{"since":"{day}"})",
            R"("queen_stay":"#{n}","set":{"until":null,"left_how":null})",
            R"("queen_wait":"#{n}","set":{"over_day":null,"on_day":"{day}"})",
            R"("queen_colour":"#{s}","set":{"colour":"gold"})",
            R"("task":"#{n}","set":{"due":"{day}","done":null})",
            R"("quiet":"#{n}","set":{"until":"{day}"})",
            R"("lot":"#{s}","set":{"on_day":"2027-08-0{s}","taste":"mint"})",
            R"("lot_part":"#{m}","set":{"mass_g":1{m}00})",
            R"("water_reading":"#{m}","set":{"water_percent":17.{s},"corrected_percent":null})",
            R"("honey_step":"#{m}","set":{"minutes_min":6{m}0})",
            R"("honey_left":"#{m}","set":{"left_over_g":4{m}00})",
        };
        std::string what = amended[pick(37)];
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
};

}  // namespace combwright::test
