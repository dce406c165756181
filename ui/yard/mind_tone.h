// The tone of what one has to mind of a hive: one for the sheet and for the card beside the board.
#pragma once

#include "core/places/yard/yard_sheet.h"
#include "ui/look/tokens.h"

namespace combwright {

/// Ink where it is only good to know.
inline Tone mindTone(MindKind kind) {
    switch (kind) {
        case MindKind::MitesOver:
        case MindKind::FoundDead:
            return Tone::Bad;
        case MindKind::QueenWait:
        case MindKind::CellsSeen:
        case MindKind::Light:
        case MindKind::NoEggs:
        case MindKind::NobodyLives:
            return Tone::Warn;
        case MindKind::Mites:
        case MindKind::NotOpened:
        case MindKind::ComeBack:
        case MindKind::SuperOn:
        case MindKind::MedicineIn:
        case MindKind::SupersNotYet:
            break;
    }
    return Tone::Ink;
}

}  // namespace combwright
