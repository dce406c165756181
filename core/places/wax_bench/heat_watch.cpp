#include "core/places/wax_bench/heat_watch.h"

#include <QCoreApplication>
#include <algorithm>
#include <chrono>

#include "core/trade/wax/wax_heat.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString heatWord(const char* text) { return QCoreApplication::translate("heat_watch", text); }

std::int64_t minutesFrom(Instant from, Instant to) {
    return std::max<std::int64_t>(
        std::chrono::duration_cast<std::chrono::minutes>(to - from).count(), 0);
}

HeatSaid saidOf(WaxHeat heat) {
    switch (heat) {
        case WaxHeat::Solid:
            return {HeatMind::Plain, heatWord("Wax is still solid.")};
        case WaxHeat::Melting:
            return {HeatMind::Plain, heatWord("It is melting.")};
        case WaxHeat::TooCoolToPour:
            return {HeatMind::Mind, heatWord("Molten, but too cool to pour: lines and wrinkles.")};
        case WaxHeat::Pour:
            return {HeatMind::Plain, heatWord("Right for pouring, 68 to 75 °C.")};
        case WaxHeat::Enough:
            return {HeatMind::Plain, heatWord("Enough for melting; let it come down to pour.")};
        case WaxHeat::TheMost:
            return {HeatMind::Mind, heatWord("As warm as it should ever get: turn it down.")};
        case WaxHeat::Discolours:
            return {HeatMind::Stop,
                    heatWord("Above 85 °C wax discolours: take it off, stay with it.")};
    }
    return {};
}

}  // namespace

std::vector<HeatShown> heatNow(const Read& file, Instant now, std::optional<Instant> lookedAt,
                               std::int64_t callMinutes) {
    return heatNow(openHeat(file), now, lookedAt, callMinutes);
}

std::vector<HeatShown> heatNow(std::vector<HeatSession> open, Instant now,
                               std::optional<Instant> lookedAt, std::int64_t callMinutes) {
    std::vector<HeatShown> all;
    for (HeatSession& session : open) {
        HeatShown shown;
        shown.minutes = minutesFrom(session.begun, now);
        Instant quiet = session.begun;
        if (lookedAt) quiet = std::max(quiet, *lookedAt);
        shown.calls = minutesFrom(quiet, now) >= callMinutes;
        shown.session = std::move(session);
        all.push_back(std::move(shown));
    }
    return all;
}

std::optional<HeatSaid> heatSaid(const std::optional<Temperature>& temperature) {
    if (!temperature) return std::nullopt;
    const auto heat = waxHeat(temperature->celsius());
    if (!heat)
        return HeatSaid{HeatMind::Stop,
                        heatWord("Over water nothing gets hotter than 100 °C: a slip of the pen, "
                                 "or a pot on the bare ring. Take it off.")};
    return saidOf(*heat);
}

}  // namespace combwright
