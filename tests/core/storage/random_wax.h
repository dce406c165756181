// Deeds at the wax bench made up at random: few names, so that most of them meet.
#pragma once

#include <string>

#include "tests/core/storage/random_honey.h"

namespace combwright::test {

class RandomWax : public RandomHoney {
  protected:
    using RandomHoney::RandomHoney;

    std::string wax() {
        const std::string on = isoText(day("2027-08-10") + days(pick(90)));
        const std::string head = R"(","on":")" + on + "\"";
        const std::string candle = "C" + number(2);
        const std::string mould = "O" + number(3);
        const std::string block = "W" + number(6);
        switch (pick(26)) {
            case 0:
                return R"({"do":"add-goods)" + head + R"(,"name":")" + candle +
                       R"(","what":"candle","net_g":45})";
            case 1:
            case 2:
                return R"({"do":"gather-wax)" + head + R"(,"name":"A)" + number(6) +
                       R"(","source":")" + (pick(2) ? "cappings" : "mixed") + R"(","raw_g":)" +
                       number(9) + "000" + (pick(2) ? R"(,"runs":"R1"})" : R"(,"kept":"open"})");
            case 3:
            case 4: {
                static const char* const works[] = {"washed", "melted", "strained", "dripped"};
                return R"({"do":"work-wax)" + head + R"(,"batch":"A)" + number(6) +
                       R"(","work":")" + works[pick(4)] + R"(","put_in_g":)" + number(9) +
                       R"(000,"came_out_g":)" + number(9) + "000}";
            }
            case 5:
                return pick(3)
                           ? R"({"do":"work-wax)" + head + R"(,"batch":"A)" + number(6) +
                                 R"(","work":"gone together","into_batch":"A)" + number(6) + "\"}"
                           : R"({"do":"work-wax)" + head + R"(,"batch":"A)" + number(6) +
                                 R"(","work":"bees cleaned","hive":"H)" + number(20) + "\"}";
            case 6:
                return R"({"do":"keep-wax)" + head + R"(,"batch":"A)" + number(6) +
                       R"(","kept":")" + (pick(2) ? "frozen" : "tight lid") + "\"}";
            case 7:
                return R"({"do":"heat-on)" + head + R"(,"begun":")" + on +
                       R"(T14:00:00Z","what_heated":"pot"})";
            case 8:
                return R"({"do":"heat-off)" + head + R"(,"off_at":")" + on + R"(T15:00:00Z"})";
            case 9:
            case 10:
            case 11:
                return R"({"do":"cast-block)" + head + R"(,"name":")" + block +
                       R"(","shade":"light","mass_g":)" + number(30) + "00" +
                       (pick(2) ? R"(,"batch":"A)" + number(6) + "\"}" : "}");
            case 12:
                return R"({"do":"use-wax)" + head + R"(,"block":")" + block +
                       (pick(2) ? R"(","went":"sold","mass_g":)" + number(9) + "0}"
                                : R"(","went":"melted again","batch":"A)" + number(6) +
                                      R"(","mass_g":)" + number(9) + "0}");
            case 13:
                return R"({"do":"add-mould)" + head + R"(,"name":")" + mould +
                       R"(","goods_kind":")" + candle + R"(","cavities":1)" + number(6) +
                       R"(,"volume_ml":47,"wick":"#1","wick_length_mm":120)" +
                       (pick(4) ? "}"
                                : R"(,"shape":"cylinder","height_mm":60,"diameter_mm":)" +
                                      number(50) + "}");
            case 14:
            case 15:
            case 16:
                return R"({"do":"pour-candles)" + head + R"(,"mould":")" + mould + R"(","good":)" +
                       number(4) + R"(,"failed":1,"blocks":")" + block +
                       (pick(2) ? "\"}" : R"(","returned_g":)" + number(9) + "0}");
            case 17:
            case 18: {
                static const char* const steps[] = {"released", "trimmed", "labelled"};
                return R"({"do":"finish-candles)" + head + R"(,"pour":"#)" + number(9) +
                       R"(","candle_work":")" + steps[pick(3)] +
                       (pick(3) ? "\"}" : R"(","broke":1})");
            }
            case 19:
                return R"({"do":"wish-candles)" + head + R"(,"goods_kind":")" + candle +
                       R"(","count":)" + number(40) +
                       R"(,"wanted_by":"2027-12-11","what_for":"fair"})";
            case 20:
                return pick(2)
                           ? R"({"do":"set-evenings)" + head +
                                 R"(,"from_day":"2027-11-01","to_day":"2027-11-10","weekdays":"mon fri"})"
                           : R"({"do":"set-evening)" + head +
                                 R"(,"evening_day":"2027-11-05","free":)" +
                                 (pick(2) ? "true}" : "false}");
            case 21:
                return pick(2) ? R"({"do":"buy-wick)" + head +
                                     R"(,"wick":"#1","bought_length_mm":)" + number(9) + "000}"
                               : R"({"do":"test-burn)" + head + R"(,"mould":")" + mould +
                                     R"(","hours":5,"verdict":"burns well"})";
            case 22:
                return R"({"do":"note-propolis)" + head + R"(,"went":")" +
                       (pick(2) ? "scraped" : "sold") + R"(","mass_g":)" + number(90) + "}";
            case 23:
                return comb(head);
            default:
                return waxAmended(head);
        }
    }

  private:
    std::string comb(const std::string& head) {
        const std::string project = "J" + number(3);
        static const char* const works[] = {"starter in", "put on", "taken off", "lidded"};
        switch (pick(4)) {
            case 0:
                return R"({"do":"start-project)" + head + R"(,"name":")" + project +
                       R"(","pieces":8,"hive":"H)" + number(20) + "\"}";
            case 1:
                return R"({"do":"look-at-project)" + head + R"(,"project":")" + project +
                       R"(","built":)" + number(8) + R"(,"filled_pieces":1})";
            default:
                return R"({"do":"work-project)" + head + R"(,"project":")" + project +
                       R"(","project_work":")" + works[pick(4)] + "\"}";
        }
    }
    std::string waxAmended(const std::string& head) {
        static const char* const amended[] = {
            R"("wax_batch":"A{s}","set":{"raw_g":{n}000,"shade":"dark"})",
            R"("wax_batch":"#{n}","set":{"on_day":"2027-08-{n}"})",
            R"("wax_step":"#{n}","set":{"came_out_g":{n}00})",
            R"("wax_step":"#{n}","set":{"put_in_g":{n}000,"work":"melted"})",
            R"("pour":"#{n}","set":{"returned_g":{n}0})",
            R"("hive_project":"#{s}","set":{"taken_off":null})",
            R"("wax_batch":"A{s}","set":{"source":"old comb"})",
            R"("mould":"#{s}","set":{"volume_ml":{n}})",
            R"("heat_session":"#{s}","set":{"note":"small pot"})",
            R"("wax_block":"#{n}","set":{"mass_g":{n}00})",
            R"("wax_use":"#{n}","set":{"mass_g":{n}0})",
            R"("mould":"#{s}","set":{"cavities":{n},"made_of":"tin"})",
            R"("burn_test":"#{s}","set":{"hours":{n}})",
            R"("pour":"#{n}","set":{"good":{s}})",
            R"("pour":"#{n}","set":{"on_day":"2027-10-1{s}"})",
            R"("pour":"#{n}","set":{"labelled":null})",
            R"("candle_wish":"#{s}","set":{"count":{n},"wish_order":2})",
            R"("free_evening":"#{s}","set":{"cycles":2})",
            R"("wick_stock":"#{s}","set":{"bought_length_mm":{n}000})",
            R"("propolis_move":"#{n}","set":{"mass_g":{n}})",
            R"("hive_project":"#{s}","set":{"pieces":{n},"code":"J"})",
            R"("project_look":"#{s}","set":{"built":{s}})"};
        std::string what = amended[pick(22)];
        for (const auto& [mark, below] : {std::pair("{n}", 20U), std::pair("{s}", 4U)})
            for (auto at = what.find(mark); at != std::string::npos; at = what.find(mark))
                what.replace(at, 3, number(below));
        return R"({"do":"amend)" + head + "," + what + R"(,"why":"misread"})";
    }
};

}  // namespace combwright::test
