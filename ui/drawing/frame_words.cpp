#include <QCoreApplication>
#include <QStringList>
#include <algorithm>
#include <cmath>

#include "ui/drawing/frame.h"

namespace combwright {

namespace {

struct FaultRow {
    FrameFault fault;
    const char* word;
};

constexpr FaultRow faultTable[] = {
    {FrameFault::Web, QT_TRANSLATE_NOOP("combwright::Frame", "web of moth")},
    {FrameFault::Slime, QT_TRANSLATE_NOOP("combwright::Frame", "beetle slime")},
    {FrameFault::Bent, QT_TRANSLATE_NOOP("combwright::Frame", "bent, sagged")},
    {FrameFault::Mouse, QT_TRANSLATE_NOOP("combwright::Frame", "mouse")},
    {FrameFault::Mould, QT_TRANSLATE_NOOP("combwright::Frame", "mould")},
    {FrameFault::DeadBrood, QT_TRANSLATE_NOOP("combwright::Frame", "dead brood")},
    {FrameFault::DeadBees, QT_TRANSLATE_NOOP("combwright::Frame", "dead bees")},
    {FrameFault::Drone, QT_TRANSLATE_NOOP("combwright::Frame", "drone")},
    {FrameFault::BrokenWood, QT_TRANSLATE_NOOP("combwright::Frame", "broken wood")},
    {FrameFault::OldDark, QT_TRANSLATE_NOOP("combwright::Frame", "old dark")},
    {FrameFault::Granulated, QT_TRANSLATE_NOOP("combwright::Frame", "granulated")},
    {FrameFault::Fermented, QT_TRANSLATE_NOOP("combwright::Frame", "fermented")},
    {FrameFault::Propolis, QT_TRANSLATE_NOOP("combwright::Frame", "propolis")},
    {FrameFault::CrossComb, QT_TRANSLATE_NOOP("combwright::Frame", "cross comb")},
    {FrameFault::PollenBound, QT_TRANSLATE_NOOP("combwright::Frame", "pollen-bound")},
    {FrameFault::Foulbrood, QT_TRANSLATE_NOOP("combwright::Frame", "suspected foulbrood")},
};

/// Words of this file, where the translators' tools find them.
struct FrameTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Frame)
};

QString percentOf(double share) {
    return QString::number(std::lround(std::clamp(share, 0.0, 1.0) * 100.0));
}

QString combWords(const FrameView& frame) {
    switch (frame.comb) {
        case CombState::Unknown:
            return FrameTexts::tr("not recorded");
        case CombState::Bare:
            return FrameTexts::tr("bare, wires only");
        case CombState::Foundation:
            return FrameTexts::tr("foundation, nothing drawn");
        case CombState::PartDrawn:
            return FrameTexts::tr("%1 % of the sheet drawn").arg(percentOf(frame.drawn));
        case CombState::Drawn:
            return frame.wet ? FrameTexts::tr("drawn comb, wet") : FrameTexts::tr("drawn comb");
    }
    return {};
}

QString sideWords(const SideView& side) {
    QStringList parts;
    if (side.filled) parts << FrameTexts::tr("%1 % filled").arg(percentOf(*side.filled));
    if (side.capped) parts << FrameTexts::tr("%1 % capped").arg(percentOf(*side.capped));
    if (side.brood) parts << FrameTexts::tr("%1 % brood").arg(percentOf(*side.brood));
    return parts.join(QStringLiteral(", "));
}

}  // namespace

const std::vector<FrameFault>& allFaults() {
    static const std::vector<FrameFault> faults = [] {
        std::vector<FrameFault> all;
        for (const auto& row : faultTable) all.push_back(row.fault);
        return all;
    }();
    return faults;
}

QString faultWord(FrameFault fault) {
    for (const auto& row : faultTable) {
        if (row.fault == fault) return FrameTexts::tr(row.word);
    }
    return {};
}

std::optional<FrameFault> faultFor(QChar letter) {
    for (const auto& row : faultTable) {
        if (letter.toUpper() == QLatin1Char(static_cast<char>(row.fault))) return row.fault;
    }
    return std::nullopt;
}

bool isGrave(FrameFault fault) {
    return fault == FrameFault::DeadBrood || fault == FrameFault::Foulbrood;
}

QString spoken(const FrameView& frame) {
    if (!frame.found) return FrameTexts::tr("Frame not found.");
    QStringList sentences = {FrameTexts::tr("Frame, %1").arg(combWords(frame))};
    if (frame.b) {
        const QString a = sideWords(frame.a), b = sideWords(*frame.b);
        if (!a.isEmpty()) sentences << FrameTexts::tr("side A %1").arg(a);
        if (!b.isEmpty()) sentences << FrameTexts::tr("side B %1").arg(b);
    } else if (const QString only = sideWords(frame.a); !only.isEmpty()) {
        sentences << only;
    }
    QStringList seen;
    for (const FrameFault fault : frame.faults) {
        seen << QString(QLatin1Char(static_cast<char>(fault))) + QLatin1Char(' ') +
                    faultWord(fault);
    }
    if (!seen.isEmpty()) sentences << seen.join(QStringLiteral(", "));
    return sentences.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace combwright
