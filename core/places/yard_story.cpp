#include "core/places/yard_story.h"

#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/shorthand.h"

namespace combwright {
namespace {

void addLooks(const Read& file, Id<Hive> hive, std::vector<StoryEntry>& story) {
    for (const DatedInspection& each : inspectionsOf(file, hive)) {
        const auto visit = file.find(each.inspection.visit);
        StoryEntry entry{StoryEntry::What::Look, each.on};
        entry.line = readShorthand(visit ? visit->all : std::string(), each.inspection.line);
        entry.line.seen = each.inspection.seen;
        entry.looked = each.inspection.seen.looked;
        story.push_back(std::move(entry));
    }
}

void addMoves(const Read& file, Id<Hive> hive, std::vector<StoryEntry>& story) {
    const auto add = [&](const BoxMove& move, StoryEntry::What what) {
        // Moves of a sheet's line stand in that line's sentence already.
        if (move.inspection) return;
        StoryEntry entry{what, move.on};
        const auto box = file.find(move.box);
        const auto kind = box ? file.find(box->kind) : std::nullopt;
        entry.box = box ? box->mark : std::string();
        entry.kind = kind ? kind->name.text() : std::string();
        story.push_back(std::move(entry));
    };
    for (const BoxMove& move : file.where<BoxMove>({is("to_hive", hive)}))
        add(move, StoryEntry::What::BoxOn);
    for (const BoxMove& move : file.where<BoxMove>({is("from_hive", hive)}))
        if (move.toHive != hive) add(move, StoryEntry::What::BoxOff);
}

void addColonies(const Read& file, Id<Hive> hive, std::vector<StoryEntry>& story) {
    for (const Colony& colony : file.where<Colony>({is("hive", hive)})) {
        StoryEntry came{StoryEntry::What::ColonyCame, colony.since};
        came.origin = colony.origin;
        story.push_back(std::move(came));
        if (!colony.ended) continue;
        StoryEntry ended{StoryEntry::What::ColonyEnded, *colony.ended};
        ended.ending = colony.ending;
        story.push_back(std::move(ended));
    }
}

}  // namespace

std::vector<StoryEntry> hiveStory(const Read& file, Id<Hive> hive) {
    std::vector<StoryEntry> story;
    addLooks(file, hive, story);
    addMoves(file, hive, story);
    addColonies(file, hive, story);
    std::stable_sort(story.begin(), story.end(),
                     [](const StoryEntry& a, const StoryEntry& b) { return a.on > b.on; });
    return story;
}

}  // namespace combwright
