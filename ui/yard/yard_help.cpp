// F1 in the yard.
#include "core/words/figures.h"
#include "ui/common/help_groups.h"
#include "ui/yard/yard_place.h"

namespace combwright {

QString YardPlace::help() const {
    std::vector<HelpGroup> groups;
    groups.push_back(
        {tr("Safety"),
         {{{},
           tr("Bees sting: wear what you wear, and have help at hand where a sting could harm "
              "you.")},
          {{}, liftCaution()}}});
    groups.push_back(
        {tr("Going about"),
         {{tr("Left, Right"),
           tr("from hive to hive, in the order you walk past them; Page Up and Page Down a row")},
          {tr("Up, Down"), tr("from the floor into the boxes of a hive, and back")},
          {QStringLiteral("↵"), tr("on a hive: all of its story; on a box: its frames laid flat")},
          {tr("the day above"),
           tr("a past day shows the yard as it was then: its hives, marks and colonies")},
          {QStringLiteral("R"), tr("from a past day back to today")},
          {tr("Ctrl+Z"), tr("takes back what was done last")}}});
    groups.push_back(
        {tr("On a hive"),
         {{QStringLiteral("W"), tr("writes its line of the day, in the marks of the yard sheet")},
          {QStringLiteral("B"), tr("puts a box on")},
          {QStringLiteral("J"), tr("follows a box, a comb or a queen of it through the years")},
          {QStringLiteral("V"),
           tr("health of the yard: mites, medicines, findings; T treats, O takes out, L what was "
              "found; the hives that are ticked are meant (Space, A for all), else the one you "
              "are at")},
          {QStringLiteral("F"), tr("stores of the yard: what each hive lives on and how long; W "
                                   "weighs hive by hive, G feeds "
                                   "those ticked or the one you are at")},
          {QStringLiteral("K"), tr("holds its colony back, or lifts the hold")},
          {QStringLiteral("M"), tr("moves the hive to another yard or place in the walk")},
          {tr("Shift+Left, Shift+Right"), tr("moves it in the walking order")}}});
    groups.push_back(
        {tr("Split, unite: X and a letter"),
         {{QStringLiteral("X S"), tr("split: boxes or frames go onto another stand, the queen too "
                                     "or not")},
          {QStringLiteral("X U"), tr("united with another colony")},
          {QStringLiteral("X H · X W"), tr("a swarm was hived; swarmed, and it is gone")},
          {QStringLiteral("X M · X Y"),
           tr("the colony moves onto another stand, a nucleus with its combs into a hive of its "
              "own; the hive goes to another yard")},
          {QStringLiteral("X P"), tr("its mark is painted over")},
          {QStringLiteral("X B · X E"), tr("a colony begins here; it ended")},
          {QStringLiteral("X C"), tr("the stand is closed")}}});
    groups.push_back(
        {tr("Its queen: Q and a letter"),
         {{QStringLiteral("Q P"), tr("put in, or a young one met: year, colour, number, mother")},
          {QStringLiteral("Q M"), tr("marked, numbered, clipped")},
          {QStringLiteral("Q L · Q T"), tr("lost or gone; taken to another hive")},
          {QStringLiteral("Q W"),
           tr("a young one is waited for: the card shows how long to leave the hive shut, when to "
              "look, to give a test frame and to act")},
          {QStringLiteral("Q O"), tr("the wait is over; eggs that were seen end it by themselves")},
          {QStringLiteral("Q K"), tr("your own colour of a year")}}});
    groups.push_back({tr("On a box"),
                      {{QStringLiteral("L"), tr("looks into it: 9 drawn; 7 capped, 85 % full")},
                       {QStringLiteral("C"), tr("counts its frames")},
                       {QStringLiteral("T"), tr("takes it off")},
                       {QStringLiteral("M"), tr("moves it to another hive or place")},
                       {tr("Shift+Up, Shift+Down"), tr("moves it within the hive")},
                       {QStringLiteral("K"), tr("holds it back, or lifts the hold")},
                       {QStringLiteral("J"), tr("follows it through the years")}}});
    groups.push_back({tr("What is new"),
                      {{QStringLiteral("H"), tr("a hive, or several alike: ML3-ML8")},
                       {QStringLiteral("N"), tr("boxes")},
                       {QStringLiteral("Y"), tr("a yard")},
                       {QStringLiteral("U"), tr("which super is the yard's usual one")}}});
    groups.push_back(
        {tr("The yard sheet: S"),
         {{{},
           tr("One line for each hive, in the short marks you would write on a lid. What was "
              "seen last time stands in grey and is never stored again. A line left blank is a "
              "hive not looked at.")},
          {QStringLiteral("↵"),
           tr("keeps a line and goes to the next hive; Shift+Enter goes back")},
          {QStringLiteral("F6"),
           tr("takes the line apart into cells and puts it together again; Tab goes from cell to "
              "cell")}}});
    groups.push_back(
        {tr("On paper: Ctrl+P"),
         {{{},
           tr("the yard sheet, what to take along, the feeding sheet, the colonies that stand "
              "there for the registration, the queens")}}});
    return helpOf(groups);
}

}  // namespace combwright
