#include "core/places/pages/yard/queen_words.h"

#include <QCoreApplication>
#include <QStringList>

#include "core/words/words.h"

namespace combwright {
namespace {

QString queenSay(const char* text) { return QCoreApplication::translate("queens", text); }

}  // namespace

QString queenText(const Queen& queen, const std::string& colour) {
    QStringList parts;
    parts << (queen.number.empty() ? queenSay("a queen")
                                   : queenSay("queen %1").arg(fromUtf8(queen.number)));
    if (queen.marked == true && !colour.empty())
        // A disc or a dot is there; whether it has her year's colour nobody wrote down.
        parts << (queen.colour.empty() ? queenSay("marked, %1 by her year") : queenSay("marked %1"))
                     .arg(choiceText(colour));
    else if (queen.marked == true)
        parts << queenSay("marked");
    else if (queen.marked == false)
        parts << (colour.empty() ? queenSay("not marked")
                                 : queenSay("not marked (%1 by her year)").arg(choiceText(colour)));
    else if (!colour.empty())
        parts << queenSay("%1 by her year").arg(choiceText(colour));
    parts << (queen.reared ? queenSay("of %1").arg(queen.reared->value())
                           : queenSay("year not known"));
    if (queen.from != QueenFrom::NotKnown) parts << choiceText(word(queen.from));
    if (queen.clipped == true) parts << queenSay("clipped");
    return parts.join(QStringLiteral(", "));
}

QString queenHeadText(const Queen& queen, const std::string& colour) {
    QString head =
        queen.number.empty() ? queenSay("Queen") : queenSay("Queen %1").arg(fromUtf8(queen.number));
    if (queen.reared) head += queenSay(" of %1").arg(queen.reared->value());
    QStringList parts{head};
    if (!queen.reared) parts << queenSay("year not known");
    // A colour she does not wear is only what her year would give her.
    if (queen.marked == true) {
        if (!colour.empty()) parts << choiceText(colour);
        parts << queenSay("marked");
    } else {
        if (queen.marked == false) parts << queenSay("not marked");
        if (!colour.empty()) parts << queenSay("%1 by her year").arg(choiceText(colour));
    }
    if (queen.clipped == true) parts << queenSay("clipped");
    return parts.join(QStringLiteral(", "));
}

QString queenShortText(const Queen& queen) {
    const QString named =
        queen.number.empty() ? QStringLiteral("#%1").arg(queen.id.number) : fromUtf8(queen.number);
    return queen.reared ? queenSay("%1 of %2").arg(named).arg(queen.reared->value()) : named;
}

QString queenLeftText(QueenLeft left) {
    switch (left) {
        case QueenLeft::Lost:
            return queenSay("was lost");
        case QueenLeft::Superseded:
            return queenSay("was superseded");
        case QueenLeft::Replaced:
            return queenSay("was replaced");
        case QueenLeft::Moved:
            return queenSay("was moved");
        case QueenLeft::Swarmed:
            return queenSay("went with a swarm");
        case QueenLeft::WithColony:
            return queenSay("ended with her colony");
        case QueenLeft::NotKnown:
            return queenSay("is no longer there; how is not known");
    }
    return {};
}

QString queenStepText(QueenStep step) {
    switch (step) {
        case QueenStep::CellOpen:
            return queenSay("an open queen cell");
        case QueenStep::CellSealed:
            return queenSay("a capped queen cell");
        case QueenStep::QueenLost:
            return queenSay("the queen lost");
        case QueenStep::LarvaMoved:
            return queenSay("a larva moved into a cell");
    }
    return {};
}

QString leaveShutText(Day lastDay) {
    return queenSay("leave shut to %1").arg(dayAndMonth(lastDay));
}

QString waitingText(const WaitingQueen& waiting, Day today) {
    const QueenDates& dates = waiting.dates;
    QStringList parts;
    parts << queenSay("Waits for a young queen since %1: %2.")
                 .arg(shortDayText(waiting.since), queenStepText(waiting.step));
    parts << (dates.emergesFrom == dates.emergesTo
                  ? queenSay("She comes out about %1.").arg(dayAndMonth(dates.emergesTo))
                  : queenSay("She comes out between %1 and %2.")
                        .arg(dayAndMonth(dates.emergesFrom), dayAndMonth(dates.emergesTo)));
    if (waiting.lookedInVain)
        parts << queenSay("No eggs seen %1.").arg(shortDayText(*waiting.lookedInVain));
    if (today < dates.lookFrom)
        parts << queenSay("Leave shut to %1, look for eggs from %2;")
                     .arg(dayAndMonth(dates.doNotOpenUntil), dayAndMonth(dates.lookFrom));
    else
        parts << queenSay("Look for eggs, since %1;").arg(shortDayText(dates.lookFrom));
    parts << queenSay("test frame from %1, act by %2.")
                 .arg(dayAndMonth(dates.testFrameFrom), dayAndMonth(dates.actBy));
    if (today > dates.actBy) parts << queenSay("Overdue: unite it or give it a queen.");
    return parts.join(QLatin1Char(' '));
}

}  // namespace combwright
