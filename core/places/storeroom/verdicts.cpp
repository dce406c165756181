#include "core/places/storeroom/verdicts.h"

#include <QCoreApplication>
#include <QStringList>
#include <array>

#include "core/trade/storeroom/usual_verdict.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

constexpr std::array verdictReasons{
    std::pair{"moth_ate_the_comb", QT_TRANSLATE_NOOP("verdicts", "moth ate the comb")},
    std::pair{"slime_soaks_the_comb", QT_TRANSLATE_NOOP("verdicts", "slime soaks the comb")},
    std::pair{"comb_is_out_of_shape", QT_TRANSLATE_NOOP("verdicts", "the comb is out of shape")},
    std::pair{"mouse_fouled_the_comb", QT_TRANSLATE_NOOP("verdicts", "a mouse fouled the comb")},
    std::pair{"air_and_dry_it", QT_TRANSLATE_NOOP("verdicts", "air it and let it dry")},
    std::pair{"dead_brood_until_looked_at",
              QT_TRANSLATE_NOOP("verdicts", "held until foulbrood is ruled out")},
    std::pair{"brush_out_dead_bees", QT_TRANSLATE_NOOP("verdicts", "brush out the dead bees")},
    std::pair{"too_many_drone_cells", QT_TRANSLATE_NOOP("verdicts", "too many drone cells")},
    std::pair{"wood_is_broken", QT_TRANSLATE_NOOP("verdicts", "the wood is broken")},
    std::pair{"comb_is_old", QT_TRANSLATE_NOOP("verdicts", "the comb is old")},
    std::pair{"bees_of_its_yard_clean_it",
              QT_TRANSLATE_NOOP("verdicts", "bees of its own yard clean it")},
    std::pair{"fermented_stores", QT_TRANSLATE_NOOP("verdicts", "fermented stores")},
    std::pair{"scrape_off_propolis", QT_TRANSLATE_NOOP("verdicts", "scrape off the propolis")},
    std::pair{"comb_is_built_across", QT_TRANSLATE_NOOP("verdicts", "the comb is built across")},
    std::pair{"moths_eat_pollen", QT_TRANSLATE_NOOP("verdicts", "moths come to pollen")},
    std::pair{"quarantine_call_inspector",
              QT_TRANSLATE_NOOP("verdicts", "call the inspector, move nothing")},
    std::pair{"black_mould_does_not_air_out",
              QT_TRANSLATE_NOOP("verdicts", "black mould does not air out")},
    std::pair{"nothing_seen", QT_TRANSLATE_NOOP("verdicts", "nothing wrong seen")},
};

Verdict ofRecord(UsualVerdict verdict) {
    switch (verdict) {
        case UsualVerdict::Keep:
            return Verdict::Keep;
        case UsualVerdict::Scrape:
            return Verdict::Scrape;
        case UsualVerdict::Repair:
            return Verdict::Repair;
        case UsualVerdict::Refit:
            return Verdict::Refit;
        case UsualVerdict::Freeze:
            return Verdict::Freeze;
        case UsualVerdict::Melt:
            return Verdict::Melt;
        case UsualVerdict::Hold:
            return Verdict::Hold;
        case UsualVerdict::Burn:
            return Verdict::Burn;
    }
    return Verdict::Keep;
}

}  // namespace

Verdict verdictFor(std::string_view faults) {
    // Letters in the file are letters of faults; others were refused on the way in.
    const auto answer = usualVerdict(faults);
    return answer ? ofRecord(answer->verdict) : Verdict::Keep;
}

int gravityOf(Verdict verdict) {
    static constexpr std::array fromLightest{Verdict::Keep,   Verdict::Freeze, Verdict::Scrape,
                                             Verdict::Repair, Verdict::Refit,  Verdict::Melt,
                                             Verdict::Burn,   Verdict::Hold};
    for (std::size_t i = 0; i < fromLightest.size(); ++i)
        if (fromLightest[i] == verdict) return static_cast<int>(i);
    return 0;
}

QString whyUsual(std::string_view faults) {
    const auto answer = usualVerdict(faults);
    if (!answer) return {};
    for (const auto& [key, reason] : verdictReasons)
        if (answer->reason == key) return QCoreApplication::translate("verdicts", reason);
    return {};
}

QString faultWords(std::string_view letters) {
    QStringList words;
    for (const Fault& fault : faults())
        if (letters.find(fault.letter) != std::string_view::npos) words << faultText(fault);
    return words.join(QStringLiteral(", "));
}

QString whyVerdict(const Frame& frame) {
    if (!frame.verdict) return {};
    const Verdict usual = verdictFor(frame.faults);
    QStringList why;
    if (!frame.faults.empty()) why << faultWords(frame.faults);
    if (usual == *frame.verdict) why << whyUsual(frame.faults);
    QString text = choiceText(word(*frame.verdict));
    if (!why.isEmpty()) text += QStringLiteral(": ") + why.join(QStringLiteral(", "));
    if (usual != *frame.verdict)
        text +=
            QCoreApplication::translate("verdicts", "; usually %1").arg(choiceText(word(usual)));
    if (!frame.note.empty()) text += QStringLiteral("; ") + fromUtf8(frame.note);
    return text;
}

std::string faultsOfWood(std::string_view letters) {
    std::string wood;
    for (const char letter : letters)
        if (letter == 'V' || letter == 'P') wood += letter;
    return wood;
}

}  // namespace combwright
