// INTERIM: see the header.
#include "core/places/due/due_look.h"

#include "core/places/yard_sheet.h"

namespace combwright {
namespace {

std::optional<DueItem> itemOfMind(const Mind& mind) {
    DueItem item;
    item.since = item.from = mind.since;
    switch (mind.kind) {
        case MindKind::QueenWait:
            item.rule = DueRule::Look;
            item.leaveShut = true;
            item.from = mind.queen->lookFrom;
            item.by = mind.queen->testFrameFrom;
            item.other = mind.queen->doNotOpenUntil;
            return item;
        case MindKind::MitesOver:
            item.rule = DueRule::Treat;
            item.value = mind.mitesPer100;
            return item;
        case MindKind::Light:
            item.rule = DueRule::Feed;
            item.take = {{"feeder", 1, std::nullopt}};
            return item;
        case MindKind::ComeBack:
            item.rule = DueRule::ComeBack;
            return item;
        default:
            return std::nullopt;
    }
}

}  // namespace

void addDueLooks(const Read& file, Day today, std::optional<Id<Yard>> only,
                 std::vector<DueItem>& due) {
    for (const Yard& yard : openYards(file)) {
        if (only && yard.id != *only) continue;
        for (const YardSheetRow& row : yardSheet(file, yard.id, today).rows)
            for (const Mind& mind : row.minds) {
                auto item = itemOfMind(mind);
                if (!item) continue;
                item->hive = row.hive.id;
                item->yard = yard.id;
                const auto word = Choices<DueRule>::words[static_cast<std::size_t>(item->rule)];
                item->id = std::string(word) + "-h" + std::to_string(row.hive.id.number) + "-" +
                           isoText(mind.since);
                for (char& letter : item->id)
                    if (letter == ' ') letter = '-';
                due.push_back(*std::move(item));
            }
    }
}

}  // namespace combwright
