// Deeds with honey after the gate made up at random, and the dice they are made up with.
#pragma once

#include <random>
#include <string>

#include "tests/support/support.h"

namespace combwright::test {

class RandomHoney {
  public:
    explicit RandomHoney(unsigned seed) : m_random(seed) {}
    unsigned pick(unsigned below) { return m_random() % below; }

  protected:
    std::string number(unsigned below) { return std::to_string(pick(below) + 1); }
    /// Honey in buckets and lots.
    std::string vessels() {
        const std::string head = R"(","on":")" + isoText(day("2027-08-08") + days(pick(6))) + "\"";
        const std::string bucket = "B" + number(9) + " of R" + number(2);
        const std::string ofVessel =
            head + (pick(3) ? R"(,"bucket":"#)" + number(20) : R"(,"lot":"#)" + number(9)) + "\"";
        switch (pick(9)) {
            case 0:
                return R"({"do":"read-water)" + ofVessel + R"(,"water_percent":1)" + number(9) +
                       (pick(2) ? R"(,"temperature_c":26})" : "}");
            case 1:
                return R"({"do":"take-correction)" + ofVessel + "}";
            case 2:
                return R"({"do":"describe-honey)" + ofVessel + R"(,"taste":"t)" + number(4) + "\"}";
            case 3:
                return R"({"do":"work-honey)" + ofVessel + R"(,"work":"dried","after_g":12)" +
                       number(9) + "00}";
            case 4:
                return R"({"do":"weigh-left)" + ofVessel + R"(,"left_over_g":)" +
                       (pick(3) ? "5000}" : "0}");
            case 5:
                return R"({"do":"buy-honey)" + head + R"(,"name":"L)" + number(9) +
                       R"(","net_g":30000})";
            case 6:
                return R"({"do":"hold-back)" + ofVessel + R"(,"reason":"wet honey"})";
            default:
                return R"({"do":"blend-honey)" + head + R"(,"name":"L)" + number(9) +
                       R"(","parts":")" + bucket + (pick(2) ? " all, L" : " 2 kg, L") + number(9) +
                       " " + number(5) + " kg" + (pick(2) ? R"("})" : R"(","reason":"r"})");
        }
    }
    /// From the run on: kinds, fillings, what goes out, fairs. Late in the year, so that the
    /// buckets are there.
    std::string goods() {
        const std::string on = isoText(day("2027-08-10") + days(pick(60)));
        const std::string head = R"(","on":")" + on + "\"";
        const std::string kind = "K" + number(3);
        const std::string some = number(9) + " " + kind;
        switch (pick(16)) {
            case 0:
                return R"({"do":"add-goods)" + head + R"(,"name":")" + kind +
                       (pick(3) ? R"(","net_g":454,"lid":"63","price":)" + number(9) + "}"
                                : R"(","what":"candle"})");
            case 1:
            case 2:
            case 3:
                return R"({"do":"fill-jars)" + head + R"(,"bucket":{"bucket":"B)" + number(9) +
                       R"(","run":"R)" + number(2) + R"("},"jars":")" + some +
                       (pick(2) ? "\"}" : R"(","lost_honey_g":30,"reason":"tasted"})");
            case 4:
            case 5:
                return R"({"do":"go-out)" + head + R"(,"goods":")" + some +
                       (pick(2) ? "\"}" : R"(","went":"given","reason":"tasted"})");
            case 6:
                return R"({"do":"go-out)" + head + R"(,"bucket":{"bucket":"B)" + number(9) +
                       R"(","run":"R)" + number(2) + R"("},"mass_g":400})";
            case 7:
                return R"({"do":"go-out)" + head + R"(,"went":"came back","goods":"1 )" + kind +
                       "\"}";
            case 8:
                return R"({"do":"pack-fair)" + head + R"(,"fair_name":"F)" + number(2) +
                       R"(","goods":")" + some + R"(","change_money":20})";
            case 9:
                return R"({"do":"fair-home","on":"2027-10-20","fair":"F)" + number(2) +
                       R"(","home":"1 )" + kind + R"(, 1 broken","cash":30})";
            case 10:
                return R"({"do":"count-goods)" + head + R"(,"goods_kind":")" + kind +
                       R"(","count":)" + number(30) + "}";
            case 11:
                return R"({"do":"buy-packing)" + head +
                       (pick(2) ? R"(,"goods_kind":")" + kind + "\"" : R"(,"lid":"63")") +
                       R"(,"bought":)" + number(90) + "}";
            case 12:
                return pick(2) ? R"({"do":"count-packing)" + head + R"(,"lid":"63","counted":)" +
                                     number(60) + "}"
                               : R"({"do":"weigh-jars)" + head + R"(,"bottling":"#)" + number(5) +
                                     R"(","weighed":"45)" + number(9) + "\"}";
            case 13:
                return pick(2) ? R"({"do":"note-complaint)" + head + R"(,"bottling":"#)" +
                                     number(5) + R"(","what":"foam"})"
                               : R"({"do":"close-complaint","on":"2027-10-20","complaint":"#)" +
                                     number(3) + R"(","became":"only foam"})";
            case 14:
                return R"({"do":"set-prices)" + head + R"(,"prices":")" + kind + " " + number(9) +
                       "\"}";
            default: {
                static const char* const amended[] = {
                    R"("goods_kind":"#{s}","set":{"price":null,"note":"old"})",
                    R"("bottling":"#{n}","set":{"on_day":"2027-09-01","lost_honey_g":20,"lost_honey_how":"weighed"})",
                    R"("bottled_jars":"#{n}","set":{"count":{n}})",
                    R"("going_out":"#{n}","set":{"count":{n},"place":"gate"})",
                    R"("going_out":"#{n}","set":{"went":"kept","price":null})",
                    R"("fair":"#{s}","set":{"cash":40})",
                    R"("fair_line":"#{n}","set":{"given_away":1})",
                    R"("goods_count":"#{s}","set":{"count":12})",
                    R"("packing_stock":"#{n}","set":{"supplier":"shop"})",
                    R"("complaint":"#{s}","set":{"who":"Ann"})"};
                std::string what = amended[pick(10)];
                for (const auto& [mark, below] : {std::pair("{n}", 9U), std::pair("{s}", 3U)})
                    for (auto at = what.find(mark); at != std::string::npos; at = what.find(mark))
                        what.replace(at, 3, number(below));
                return R"({"do":"amend)" + head + "," + what + R"(,"why":"misread"})";
            }
        }
    }
    std::string toldOnPaper(const std::string& on) {
        switch (pick(4)) {
            case 0:
                return R"({"do":"move-labels","on":")" + on + R"(","grid":"a4-3x7","right_mm":)" +
                       number(40) + "}";
            case 1:
                return R"({"do":"keep-sheet","on":")" + on +
                       R"(","what_sheet":"trace","subject":"S)" + number(3) +
                       R"(","as_it_read":"R)" + number(3) + "\"}";
            case 2:
                return R"({"do":"set-labels","on":")" + on + R"(","flower":"Lime")" +
                       (pick(2) ? R"(,"flower_grounds":"seen"})" : "}");
            default:
                return R"({"do":"set-labels","on":")" + on + R"(","months":)" + number(30) +
                       R"(,"producer":"P)" + number(3) + "\"}";
        }
    }

  private:
    std::mt19937 m_random;
};

}  // namespace combwright::test
