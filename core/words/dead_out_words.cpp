#include "core/words/dead_out_words.h"

#include <QCoreApplication>
#include <iterator>

#include "core/words/words.h"

namespace combwright {
namespace {

struct DeadOutWord {
    std::string_view key;
    const char* text;
};

constexpr DeadOutWord looksLikeWords[] = {
    {"foulbrood", QT_TRANSLATE_NOOP("dead_outs", "suspected American foulbrood")},
    {"european_foulbrood", QT_TRANSLATE_NOOP("dead_outs", "suspected European foulbrood")},
    {"starvation", QT_TRANSLATE_NOOP("dead_outs", "looks like starvation")},
    {"varroa_and_virus", QT_TRANSLATE_NOOP("dead_outs", "looks like mites and their viruses")},
    {"mites_or_dwindling",
     QT_TRANSLATE_NOOP(
         "dead_outs",
         "the bees are gone, which looks more like mites or dwindling than absconding")},
    {"queen_loss", QT_TRANSLATE_NOOP("dead_outs", "looks as if the queen was lost")},
    {"dysentery", QT_TRANSLATE_NOOP("dead_outs", "looks like dysentery, nosema possible")},
    {"damp", QT_TRANSLATE_NOOP("dead_outs", "looks damp, often after another cause")},
    {"mouse", QT_TRANSLATE_NOOP("dead_outs", "looks as if a mouse was in it")},
    {"chilled",
     QT_TRANSLATE_NOOP(
         "dead_outs",
         "looks like too few bees to keep their brood warm (common practice, no source)")},
};

constexpr DeadOutWord combUseWords[] = {
    {"reuse", QT_TRANSLATE_NOOP("dead_outs", "its combs may be used again")},
    {"reuse_after_drying",
     QT_TRANSLATE_NOOP("dead_outs", "its combs may be used once dry and clean")},
    {"reuse_after_scrubbing",
     QT_TRANSLATE_NOOP("dead_outs", "scrub them; freezing does not prove them safe")},
    {"reuse_after_cutting",
     QT_TRANSLATE_NOOP("dead_outs", "cut out what was chewed, freeze the rest")},
    {"reuse_after_freezing",
     QT_TRANSLATE_NOOP("dead_outs", "its combs may be used once they were frozen, against moth")},
    {"hold", QT_TRANSLATE_NOOP("dead_outs", "hold every comb back")},
    {"quarantine", QT_TRANSLATE_NOOP("dead_outs", "quarantine: nothing leaves, nothing is used")},
    {"never",
     QT_TRANSLATE_NOOP("dead_outs", "never to be used again: destroyed as the inspector says")},
};

constexpr DeadOutWord doTodayWords[] = {
    {"call_inspector",
     QT_TRANSLATE_NOOP("dead_outs", "Call your bee inspector; the law may want it reported.")},
    {"move_nothing", QT_TRANSLATE_NOOP("dead_outs", "Move nothing of it.")},
    {"close_hive",
     QT_TRANSLATE_NOOP("dead_outs", "Close the hive bee-tight where it stands, or it is robbed.")},
    {"look_for_scale_and_rope",
     QT_TRANSLATE_NOOP("dead_outs",
                       "Look for scale on the lower cell walls, and draw dead brood with a match: "
                       "does it rope?")},
    {"wash_dead_bees",
     QT_TRANSLATE_NOOP("dead_outs",
                       "Wash half a cup of the dead bees in soapy water and count the mites.")},
    {"dry_combs", QT_TRANSLATE_NOOP("dead_outs", "Let the combs dry in moving air.")},
    {"scrub_combs", QT_TRANSLATE_NOOP("dead_outs", "Scrape and scrub off the droppings.")},
    {"cut_out_chewed", QT_TRANSLATE_NOOP("dead_outs", "Cut out what the mouse chewed or soiled.")},
    {"freeze_combs", QT_TRANSLATE_NOOP("dead_outs", "Freeze the combs against moth.")},
    {"honey_to_bees_only",
     QT_TRANSLATE_NOOP("dead_outs",
                       "Its honey is for bees only, never for sale, and for no other hive while "
                       "it is held.")},
};

constexpr DeadOutWord sampleWords[] = {
    {"leave_to_inspector", QT_TRANSLATE_NOOP("dead_outs", "leave the sample to the inspector")},
    {"half_cup_of_bees",
     QT_TRANSLATE_NOOP("dead_outs", "half a cup of bees from the cluster, for the mite wash")},
    {"bees_for_spores",
     QT_TRANSLATE_NOOP("dead_outs", "30 to 60 bees in the freezer, for a spore count")},
};

constexpr DeadOutWord questionWords[] = {
    {"cluster", QT_TRANSLATE_NOOP("dead_outs", "What is left of the cluster?")},
    {"stores_near", QT_TRANSLATE_NOOP("dead_outs", "Honey near the cluster?")},
    {"brood_seen", QT_TRANSLATE_NOOP("dead_outs", "What do brood and capping look like?")},
    {"frass", QT_TRANSLATE_NOOP("dead_outs", "White specks of mites in the cell roofs?")},
    {"wet", QT_TRANSLATE_NOOP("dead_outs", "Combs or lid wet or mouldy?")},
    {"queen", QT_TRANSLATE_NOOP("dead_outs", "A queen among the dead?")},
    {"droppings", QT_TRANSLATE_NOOP("dead_outs", "Streaks of bees on combs and front?")},
    {"mouse", QT_TRANSLATE_NOOP("dead_outs", "Nest of a mouse, chewed comb?")},
    {"ropy", QT_TRANSLATE_NOOP("dead_outs", "Does dead brood draw a thread on a match?")},
    {"scale", QT_TRANSLATE_NOOP("dead_outs", "Dark scale stuck hard in the cells?")},
    {"sample_kept", QT_TRANSLATE_NOOP("dead_outs", "A sample kept?")},
};

template <std::size_t n>
const char* textOf(const DeadOutWord (&list)[n], std::string_view key) {
    for (const DeadOutWord& each : list)
        if (each.key == key) return each.text;
    return nullptr;
}

template <std::size_t n>
QString deadOutText(const DeadOutWord (&list)[n], std::string_view key) {
    const char* text = textOf(list, key);
    return text ? QCoreApplication::translate("dead_outs", text) : fromUtf8(key);
}

}  // namespace

QString looksLikeText(std::string_view key) { return deadOutText(looksLikeWords, key); }
QString combUseText(std::string_view key) { return deadOutText(combUseWords, key); }
QString doTodayText(std::string_view key) { return deadOutText(doTodayWords, key); }
QString sampleText(std::string_view key) { return deadOutText(sampleWords, key); }
QString deadOutQuestion(std::string_view field) { return deadOutText(questionWords, field); }

bool hasDeadOutWord(std::string_view key) {
    return textOf(looksLikeWords, key) || textOf(combUseWords, key) || textOf(doTodayWords, key) ||
           textOf(sampleWords, key);
}

QString quarantineCaution() {
    return QCoreApplication::translate(
        "dead_outs",
        "Report to your apiary inspector. Do not move anything: no box, frame, honey, feeder or "
        "tool leaves. What the law where you live says goes before anything said here.");
}

QString noDiagnosis() {
    return QCoreApplication::translate(
        "dead_outs",
        "What it looks like is no diagnosis: inspector and laboratory say what it was.");
}

QString setOutCaution() {
    return QCoreApplication::translate(
        "dead_outs",
        "Comb and cappings in the open start robbing and carry disease from every hive that comes. "
        "Where local rules forbid it, leave it. Never set out what is held back, nor anything near "
        "a yard under suspicion; little at a time, well away from the hives, gone by evening.");
}

}  // namespace combwright
