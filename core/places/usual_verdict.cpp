#include "core/places/usual_verdict.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <array>

#include "core/words/words.h"

namespace combwright {
namespace {

constexpr auto usualByLetter = std::to_array<std::pair<char, Verdict>>({
    {'W', Verdict::Refit},
    {'S', Verdict::Refit},
    {'B', Verdict::Refit},
    {'U', Verdict::Refit},
    {'O', Verdict::Keep},
    {'D', Verdict::Hold},
    {'X', Verdict::Scrape},
    {'N', Verdict::Refit},
    {'V', Verdict::Repair},
    {'T', Verdict::Refit},
    {'G', Verdict::Keep},
    {'Y', Verdict::Refit},
    {'P', Verdict::Scrape},
    {'C', Verdict::Refit},
    {'L', Verdict::Freeze},
    {'Q', Verdict::Hold},
});

Verdict usualFor(char letter) {
    const auto* const found = std::find_if(usualByLetter.begin(), usualByLetter.end(),
                                           [&](const auto& each) { return each.first == letter; });
    return found == usualByLetter.end() ? Verdict::Keep : found->second;
}

}  // namespace

int gravity(Verdict verdict) {
    switch (verdict) {
        case Verdict::Hold:
            return 7;
        case Verdict::Burn:
            return 6;
        case Verdict::Melt:
            return 5;
        case Verdict::Refit:
            return 4;
        case Verdict::Repair:
            return 3;
        case Verdict::Scrape:
            return 2;
        case Verdict::Freeze:
            return 1;
        case Verdict::Keep:
            return 0;
    }
    return 0;
}

Verdict usualVerdict(std::string_view faults) {
    Verdict gravest = Verdict::Keep;
    for (const char letter : faults)
        if (gravity(usualFor(letter)) > gravity(gravest)) gravest = usualFor(letter);
    return gravest;
}

QString faultWords(std::string_view letters) {
    QStringList words;
    for (const Fault& fault : faults())
        if (letters.find(fault.letter) != std::string_view::npos)
            words << QCoreApplication::translate("faults", fault.word.data());
    return words.join(QStringLiteral(", "));
}

QString whyVerdict(const Frame& frame) {
    if (!frame.verdict) return {};
    const Verdict usual = usualVerdict(frame.faults);
    const QString seen = frame.faults.empty() ? QCoreApplication::translate("verdicts", "no fault")
                                              : faultWords(frame.faults);
    QString text = fromUtf8(word(*frame.verdict)) + QStringLiteral(": ") + seen;
    if (usual != *frame.verdict)
        text += QCoreApplication::translate("verdicts", "; usually %1").arg(fromUtf8(word(usual)));
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
