#include "core/words/words.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <array>
#include <map>

namespace combwright {
namespace {

struct Label {
    const char* key;
    const char* label;
};

// In alphabetical order of the keys. Labels begin small: they stand inside sentences and tables.
constexpr Label labels[] = {
    {"add-boxes", QT_TRANSLATE_NOOP("words", "boxes added")},
    {"add-hive", QT_TRANSLATE_NOOP("words", "a hive added")},
    {"add-yard", QT_TRANSLATE_NOOP("words", "a yard added")},
    {"amend", QT_TRANSLATE_NOOP("words", "a record amended")},
    {"check-frames", QT_TRANSLATE_NOOP("words", "frames checked")},
    {"close-hive", QT_TRANSLATE_NOOP("words", "a hive closed")},
    {"count-box", QT_TRANSLATE_NOOP("words", "a box counted")},
    {"hold-back", QT_TRANSLATE_NOOP("words", "something held back")},
    {"keep-plan", QT_TRANSLATE_NOOP("words", "a pull plan kept")},
    {"look-box", QT_TRANSLATE_NOOP("words", "a look into a box")},
    {"note-crop", QT_TRANSLATE_NOOP("words", "a crop noted")},
    {"release-hold", QT_TRANSLATE_NOOP("words", "a hold released")},
    {"set-constant", QT_TRANSLATE_NOOP("words", "a rate set")},
    {"close-run", QT_TRANSLATE_NOOP("words", "a run closed")},
    {"end-colony", QT_TRANSLATE_NOOP("words", "the end of a colony")},
    {"start-colony", QT_TRANSLATE_NOOP("words", "a colony moved in")},
    {"set-excluder", QT_TRANSLATE_NOOP("words", "an excluder set")},
    {"fill-bucket", QT_TRANSLATE_NOOP("words", "a bucket filled")},
    {"name-lost-box", QT_TRANSLATE_NOOP("words", "a lost box named")},
    {"open-run", QT_TRANSLATE_NOOP("words", "a run opened")},
    {"spin-load", QT_TRANSLATE_NOOP("words", "a load spun")},
    {"take-box-out", QT_TRANSLATE_NOOP("words", "a box taken out of a run")},
    {"weigh-box", QT_TRANSLATE_NOOP("words", "a box weighed")},
    {"weigh-cappings", QT_TRANSLATE_NOOP("words", "cappings weighed")},
    {"look-into", QT_TRANSLATE_NOOP("words", "a look into a hive")},
    {"move-hive", QT_TRANSLATE_NOOP("words", "a hive moved")},
    {"move-box", QT_TRANSLATE_NOOP("words", "a box moved")},
    {"name-season", QT_TRANSLATE_NOOP("words", "the season named")},
    {"record-visit", QT_TRANSLATE_NOOP("words", "a visit recorded")},
    {"strike-line", QT_TRANSLATE_NOOP("words", "a line struck out")},
    {"write-line", QT_TRANSLATE_NOOP("words", "a line of the yard sheet")},
    {"all", QT_TRANSLATE_NOOP("words", "line for all")},
    {"all_line", QT_TRANSLATE_NOOP("words", "line for all")},
    {"bee_space", QT_TRANSLATE_NOOP("words", "bee space")},
    {"bees", QT_TRANSLATE_NOOP("words", "bees in the sample")},
    {"begun", QT_TRANSLATE_NOOP("words", "begun")},
    {"bottom_bar_length", QT_TRANSLATE_NOOP("words", "bottom bar, length")},
    {"box", QT_TRANSLATE_NOOP("words", "box")},
    {"boxes_under", QT_TRANSLATE_NOOP("words", "boxes under the excluder")},
    {"box_look", QT_TRANSLATE_NOOP("words", "look into a box")},
    {"boxes", QT_TRANSLATE_NOOP("words", "boxes")},
    {"boxes_to", QT_TRANSLATE_NOOP("words", "where its boxes go")},
    {"brood", QT_TRANSLATE_NOOP("words", "frames of brood")},
    {"brood_in", QT_TRANSLATE_NOOP("words", "brood in it")},
    {"bucket", QT_TRANSLATE_NOOP("words", "bucket")},
    {"capped", QT_TRANSLATE_NOOP("words", "capped")},
    {"capped_brood", QT_TRANSLATE_NOOP("words", "capped brood")},
    {"cappings", QT_TRANSLATE_NOOP("words", "wet cappings")},
    {"carry", QT_TRANSLATE_NOOP("words", "mass to carry")},
    {"cell_state", QT_TRANSLATE_NOOP("words", "cells open or capped")},
    {"cells_left", QT_TRANSLATE_NOOP("words", "cells left")},
    {"clearer_boards", QT_TRANSLATE_NOOP("words", "clearer boards")},
    {"closed", QT_TRANSLATE_NOOP("words", "closed")},
    {"code", QT_TRANSLATE_NOOP("words", "code")},
    {"colony", QT_TRANSLATE_NOOP("words", "colony")},
    {"comb", QT_TRANSLATE_NOOP("words", "comb")},
    {"comb_height", QT_TRANSLATE_NOOP("words", "comb, height")},
    {"comb_width", QT_TRANSLATE_NOOP("words", "comb, width")},
    {"come_back", QT_TRANSLATE_NOOP("words", "come back")},
    {"condition", QT_TRANSLATE_NOOP("words", "condition")},
    {"contents", QT_TRANSLATE_NOOP("words", "what is in it")},
    {"count", QT_TRANSLATE_NOOP("words", "how many")},
    {"constant", QT_TRANSLATE_NOOP("words", "rate or limit")},
    {"crop_note", QT_TRANSLATE_NOOP("words", "crop noted")},
    {"damp", QT_TRANSLATE_NOOP("words", "damp in the room")},
    {"deeps_off", QT_TRANSLATE_NOOP("words", "deeps off")},
    {"deeps_on", QT_TRANSLATE_NOOP("words", "deeps on")},
    {"do", QT_TRANSLATE_NOOP("words", "action")},
    {"doubt", QT_TRANSLATE_NOOP("words", "doubt")},
    {"drawn_year", QT_TRANSLATE_NOOP("words", "year the comb was drawn")},
    {"eggs", QT_TRANSLATE_NOOP("words", "eggs")},
    {"end_offset", QT_TRANSLATE_NOOP("words", "off balance at the end")},
    {"ended", QT_TRANSLATE_NOOP("words", "ended")},
    {"ending", QT_TRANSLATE_NOOP("words", "how it ended")},
    {"excluder_above", QT_TRANSLATE_NOOP("words", "boxes under the excluder")},
    {"extract_by", QT_TRANSLATE_NOOP("words", "extract within")},
    {"extraction", QT_TRANSLATE_NOOP("words", "run")},
    {"into", QT_TRANSLATE_NOOP("words", "united with")},
    {"united_into", QT_TRANSLATE_NOOP("words", "united with")},
    {"extraction_box", QT_TRANSLATE_NOOP("words", "box in a run")},
    {"from_under", QT_TRANSLATE_NOOP("words", "stood under the excluder")},
    {"family", QT_TRANSLATE_NOOP("words", "family")},
    {"force", QT_TRANSLATE_NOOP("words", "decided against the reckoning")},
    {"faults", QT_TRANSLATE_NOOP("words", "faults")},
    {"fed", QT_TRANSLATE_NOOP("words", "fed")},
    {"feed_up_to", QT_TRANSLATE_NOOP("words", "willing to feed each hive")},
    {"filled", QT_TRANSLATE_NOOP("words", "filled")},
    {"filled_a", QT_TRANSLATE_NOOP("words", "side A filled")},
    {"filled_b", QT_TRANSLATE_NOOP("words", "side B filled")},
    {"first_mark", QT_TRANSLATE_NOOP("words", "first mark")},
    {"for_day", QT_TRANSLATE_NOOP("words", "for the day")},
    {"forced", QT_TRANSLATE_NOOP("words", "decided by the keeper")},
    {"frame", QT_TRANSLATE_NOOP("words", "frame")},
    {"frame_check", QT_TRANSLATE_NOOP("words", "check of frames")},
    {"frame_kind", QT_TRANSLATE_NOOP("words", "kind of frame")},
    {"frames", QT_TRANSLATE_NOOP("words", "frames")},
    {"frames_nominal", QT_TRANSLATE_NOOP("words", "frames it is made for")},
    {"from_hive", QT_TRANSLATE_NOOP("words", "from hive")},
    {"from_level", QT_TRANSLATE_NOOP("words", "from level")},
    {"from_place", QT_TRANSLATE_NOOP("words", "from")},
    {"from_stack", QT_TRANSLATE_NOOP("words", "from stack")},
    {"frozen", QT_TRANSLATE_NOOP("words", "frozen")},
    {"given", QT_TRANSLATE_NOOP("words", "fed")},
    {"gross", QT_TRANSLATE_NOOP("words", "weight full")},
    {"grounds", QT_TRANSLATE_NOOP("words", "on what grounds")},
    {"heft", QT_TRANSLATE_NOOP("words", "heft")},
    {"height", QT_TRANSLATE_NOOP("words", "height")},
    {"hive", QT_TRANSLATE_NOOP("words", "hive")},
    {"hold", QT_TRANSLATE_NOOP("words", "hold")},
    {"honey", QT_TRANSLATE_NOOP("words", "honey")},
    {"how", QT_TRANSLATE_NOOP("words", "how it is known")},
    {"how_many", QT_TRANSLATE_NOOP("words", "how many")},
    {"id", QT_TRANSLATE_NOOP("words", "number")},
    {"inner_length", QT_TRANSLATE_NOOP("words", "inside length")},
    {"inner_width", QT_TRANSLATE_NOOP("words", "inside width")},
    {"inspection", QT_TRANSLATE_NOOP("words", "look")},
    {"invented", QT_TRANSLATE_NOOP("words", "invented sample")},
    {"kind", QT_TRANSLATE_NOOP("words", "kind")},
    {"known_as", QT_TRANSLATE_NOOP("words", "known as")},
    {"level", QT_TRANSLATE_NOOP("words", "level above the floor")},
    {"lidded", QT_TRANSLATE_NOOP("words", "lid on")},
    {"lifted", QT_TRANSLATE_NOOP("words", "lifted")},
    {"lifted_by", QT_TRANSLATE_NOOP("words", "lifted by")},
    {"line", QT_TRANSLATE_NOOP("words", "line as typed")},
    {"load", QT_TRANSLATE_NOOP("words", "load")},
    {"looked", QT_TRANSLATE_NOOP("words", "opened")},
    {"lost", QT_TRANSLATE_NOOP("words", "box without a tag")},
    {"mark", QT_TRANSLATE_NOOP("words", "mark")},
    {"mark_boxes", QT_TRANSLATE_NOOP("words", "supers on, off; a deep on")},
    {"mark_brood_stages", QT_TRANSLATE_NOOP("words", "open, capped brood (l0, c0: none)")},
    {"mark_cells", QT_TRANSLATE_NOOP("words", "no cells, 2 capped, 3 open")},
    {"mark_come_back", QT_TRANSLATE_NOOP("words", "come back")},
    {"mark_eggs", QT_TRANSLATE_NOOP("words", "eggs, looked: none")},
    {"mark_fed", QT_TRANSLATE_NOOP("words", "kg fed")},
    {"mark_frames", QT_TRANSLATE_NOOP("words", "frames of brood, stores")},
    {"mark_heft", QT_TRANSLATE_NOOP("words", "as hefted")},
    {"mark_left", QT_TRANSLATE_NOOP("words", "cells left")},
    {"mark_lid", QT_TRANSLATE_NOOP("words", "lid only")},
    {"mark_not_opened", QT_TRANSLATE_NOOP("words", "not opened")},
    {"mark_queen", QT_TRANSLATE_NOOP("words", "queen seen, looked: not seen")},
    {"mark_seams", QT_TRANSLATE_NOOP("words", "seams of bees")},
    {"mark_temper", QT_TRANSLATE_NOOP("words", "temper")},
    {"mark_wash", QT_TRANSLATE_NOOP("words", "mites in bees")},
    {"mass", QT_TRANSLATE_NOOP("words", "mass")},
    {"max_water", QT_TRANSLATE_NOOP("words", "water at most")},
    {"method", QT_TRANSLATE_NOOP("words", "method")},
    {"min_capped", QT_TRANSLATE_NOOP("words", "capped at least")},
    {"mites", QT_TRANSLATE_NOOP("words", "mites")},
    {"mother", QT_TRANSLATE_NOOP("words", "mother")},
    {"name", QT_TRANSLATE_NOOP("words", "name")},
    {"net", QT_TRANSLATE_NOOP("words", "honey in it")},
    {"note", QT_TRANSLATE_NOOP("words", "note")},
    {"number", QT_TRANSLATE_NOOP("words", "number")},
    {"occasion", QT_TRANSLATE_NOOP("words", "occasion")},
    {"on", QT_TRANSLATE_NOOP("words", "day")},
    {"on_day", QT_TRANSLATE_NOOP("words", "day")},
    {"onto", QT_TRANSLATE_NOOP("words", "onto hive")},
    {"open_brood", QT_TRANSLATE_NOOP("words", "open brood")},
    {"origin", QT_TRANSLATE_NOOP("words", "origin")},
    {"outer_height", QT_TRANSLATE_NOOP("words", "outside height")},
    {"outer_length", QT_TRANSLATE_NOOP("words", "outside length")},
    {"outer_width", QT_TRANSLATE_NOOP("words", "outside width")},
    {"place", QT_TRANSLATE_NOOP("words", "place")},
    {"plan", QT_TRANSLATE_NOOP("words", "pull plan")},
    {"position", QT_TRANSLATE_NOOP("words", "position")},
    {"pull_plan", QT_TRANSLATE_NOOP("words", "pull plan")},
    {"queen_cells", QT_TRANSLATE_NOOP("words", "queen cells")},
    {"queen_seen", QT_TRANSLATE_NOOP("words", "queen seen")},
    {"reason", QT_TRANSLATE_NOOP("words", "why")},
    {"ran", QT_TRANSLATE_NOOP("words", "how it ran")},
    {"registration", QT_TRANSLATE_NOOP("words", "registration")},
    {"rest_depth", QT_TRANSLATE_NOOP("words", "frame rest, depth")},
    {"retired", QT_TRANSLATE_NOOP("words", "retired")},
    {"retired_on", QT_TRANSLATE_NOOP("words", "retired on")},
    {"room", QT_TRANSLATE_NOOP("words", "room temperature")},
    {"rpm", QT_TRANSLATE_NOOP("words", "turns a minute")},
    {"run", QT_TRANSLATE_NOOP("words", "run")},
    {"scrapings", QT_TRANSLATE_NOOP("words", "scrapings")},
    {"seams", QT_TRANSLATE_NOOP("words", "seams of bees")},
    {"season", QT_TRANSLATE_NOOP("words", "season's name")},
    {"since", QT_TRANSLATE_NOOP("words", "since")},
    {"set", QT_TRANSLATE_NOOP("words", "what it should be")},
    {"source", QT_TRANSLATE_NOOP("words", "source")},
    {"spacing", QT_TRANSLATE_NOOP("words", "spacing")},
    {"spin_load", QT_TRANSLATE_NOOP("words", "load spun")},
    {"spread", QT_TRANSLATE_NOOP("words", "spread")},
    {"spun", QT_TRANSLATE_NOOP("words", "time spun")},
    {"stack", QT_TRANSLATE_NOOP("words", "stack")},
    {"stand_order", QT_TRANSLATE_NOOP("words", "place in walking order")},
    {"start_offset", QT_TRANSLATE_NOOP("words", "off balance at the start")},
    {"stores", QT_TRANSLATE_NOOP("words", "frames of stores")},
    {"supers_off", QT_TRANSLATE_NOOP("words", "supers off")},
    {"supers_on", QT_TRANSLATE_NOOP("words", "supers on")},
    {"takes", QT_TRANSLATE_NOOP("words", "takes frame")},
    {"tare", QT_TRANSLATE_NOOP("words", "weight empty")},
    {"temper", QT_TRANSLATE_NOOP("words", "temper")},
    {"to", QT_TRANSLATE_NOOP("words", "to")},
    {"to_fork", QT_TRANSLATE_NOOP("words", "needs the fork")},
    {"to_hive", QT_TRANSLATE_NOOP("words", "to hive")},
    {"to_level", QT_TRANSLATE_NOOP("words", "to level")},
    {"to_place", QT_TRANSLATE_NOOP("words", "to")},
    {"to_stack", QT_TRANSLATE_NOOP("words", "to stack")},
    {"top_bar_length", QT_TRANSLATE_NOOP("words", "top bar, length")},
    {"top_bar_thickness", QT_TRANSLATE_NOOP("words", "top bar, thickness")},
    {"top_bar_width", QT_TRANSLATE_NOOP("words", "top bar, width")},
    {"usual_super", QT_TRANSLATE_NOOP("words", "usual super")},
    {"value", QT_TRANSLATE_NOOP("words", "value")},
    {"verdict", QT_TRANSLATE_NOOP("words", "verdict")},
    {"visit", QT_TRANSLATE_NOOP("words", "visit")},
    {"walk_order", QT_TRANSLATE_NOOP("words", "place in the round")},
    {"water", QT_TRANSLATE_NOOP("words", "water")},
    {"wet", QT_TRANSLATE_NOOP("words", "weight wet")},
    {"what", QT_TRANSLATE_NOOP("words", "what")},
    {"why", QT_TRANSLATE_NOOP("words", "why")},
    {"why_take_held", QT_TRANSLATE_NOOP("words", "the reason for taking what is held back")},
    {"winter_need", QT_TRANSLATE_NOOP("words", "needed for winter")},
    {"yard", QT_TRANSLATE_NOOP("words", "yard")},
    {"yards", QT_TRANSLATE_NOOP("words", "yards")},
    {"yard_name", QT_TRANSLATE_NOOP("words", "yard's name")},
    {"year", QT_TRANSLATE_NOOP("words", "year")},
};

const char* labelOf(std::string_view key) {
    static const std::map<std::string_view, const char*> byKey = [] {
        std::map<std::string_view, const char*> map;
        for (const Label& label : labels) map.emplace(label.key, label.label);
        return map;
    }();
    const auto found = byKey.find(key);
    return found == byKey.end() ? nullptr : found->second;
}

QDate asDate(Day day) {
    return QDate(yearOf(day), static_cast<int>(monthOf(day)), static_cast<int>(dayOfMonth(day)));
}

}  // namespace

QString fromUtf8(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

bool hasWord(std::string_view key) { return labelOf(key) != nullptr; }

QString word(std::string_view key) {
    if (const char* label = labelOf(key)) return QCoreApplication::translate("words", label);
    return fromUtf8(key).replace(QLatin1Char('_'), QLatin1Char(' '));
}

QString dayText(Day day) {
    return QLocale().toString(asDate(day), QStringLiteral("ddd d MMM yyyy"));
}
QString shortDayText(Day day) {
    return QLocale().toString(asDate(day), QStringLiteral("ddd d MMM"));
}
QString dayAndMonth(Day day) { return QLocale().toString(asDate(day), QStringLiteral("d MMM")); }

QString howWord(How how) {
    static constexpr std::array words{
        QT_TRANSLATE_NOOP("words", "weighed"), QT_TRANSLATE_NOOP("words", "counted"),
        QT_TRANSLATE_NOOP("words", "by eye"),  QT_TRANSLATE_NOOP("words", "by difference"),
        QT_TRANSLATE_NOOP("words", "assumed"), QT_TRANSLATE_NOOP("words", "unknown")};
    return QCoreApplication::translate("words", words[static_cast<std::size_t>(how)]);
}

}  // namespace combwright
