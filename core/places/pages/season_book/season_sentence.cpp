#include "core/places/pages/season_book/season_sentence.h"

#include <QCoreApplication>
#include <algorithm>
#include <cmath>

#include "core/places/season_book/reckoned_got.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString yearSay(const char* text, int count = -1) {
    return QCoreApplication::translate("harvest", text, nullptr, count);
}

double sentenceGrams(Mass mass) { return static_cast<double>(mass.grams()); }

/// What the year is against the one beside it; whole sentences, so that each language may order
/// its words.
enum class YearAgainst { Nothing, More, Less, Same };
struct YearChange {
    YearAgainst against = YearAgainst::Nothing;
    QString by;
    bool yearBefore = true;
};

YearChange yearChangeOf(const SeasonYield& season) {
    YearChange change;
    const auto grams = changeGrams(season.total, season.before);
    if (!grams) return change;
    change.against = *grams == 0  ? YearAgainst::Same
                     : *grams > 0 ? YearAgainst::More
                                  : YearAgainst::Less;
    change.by = massFigure(std::abs(*grams), weaker(season.how, season.beforeHow));
    change.yearBefore = season.beforeYear == season.year - 1;
    return change;
}

QString gaveText(const SeasonYield& season, const YearChange& change, const QString& total) {
    const int lived = std::max(season.lived, season.producing);
    const QString year = QString::number(season.year);
    const QString gave = QString::number(season.producing);
    const QString other = QString::number(season.beforeYear);
    switch (change.against) {
        case YearAgainst::More:
            return change.yearBefore
                       ? yearSay(
                             "In %1, %2 of %n colonies gave %3 of honey, %4 more than the year "
                             "before.",
                             lived)
                             .arg(year, gave, total, change.by)
                       : yearSay("In %1, %2 of %n colonies gave %3 of honey, %4 more than in %5.",
                                 lived)
                             .arg(year, gave, total, change.by, other);
        case YearAgainst::Less:
            return change.yearBefore
                       ? yearSay(
                             "In %1, %2 of %n colonies gave %3 of honey, %4 less than the year "
                             "before.",
                             lived)
                             .arg(year, gave, total, change.by)
                       : yearSay("In %1, %2 of %n colonies gave %3 of honey, %4 less than in %5.",
                                 lived)
                             .arg(year, gave, total, change.by, other);
        case YearAgainst::Same:
            return change.yearBefore
                       ? yearSay(
                             "In %1, %2 of %n colonies gave %3 of honey, as much as the year "
                             "before.",
                             lived)
                             .arg(year, gave, total)
                       : yearSay("In %1, %2 of %n colonies gave %3 of honey, as much as in %4.",
                                 lived)
                             .arg(year, gave, total, other);
        case YearAgainst::Nothing:
            break;
    }
    return yearSay("In %1, %2 of %n colonies gave %3 of honey.", lived).arg(year, gave, total);
}

QString againstText(const SeasonYield& season, const YearChange& change) {
    const QString other = QString::number(season.beforeYear);
    switch (change.against) {
        case YearAgainst::More:
            return yearSay("It is %1 more than in %2.").arg(change.by, other);
        case YearAgainst::Less:
            return yearSay("It is %1 less than in %2.").arg(change.by, other);
        case YearAgainst::Same:
            return yearSay("It is as much as in %1.").arg(other);
        case YearAgainst::Nothing:
            break;
    }
    return {};
}

void sayAverages(const SeasonYield& season, QStringList& said, QStringList& strong) {
    const auto each = [&](int hives) {
        const QString text = massText(gramsPerHive(sentenceGrams(season.total), hives), season.how);
        strong << text;
        return text;
    };
    const int producing = season.averagedOver();
    const QString standing = QString::number(season.standing);
    if (producing > 0 && season.standing > 0) {
        const QString first = each(producing);
        said << yearSay(
                    "That is %1 per producing hive (%2) and %3 per hive standing on 1 May (%4).")
                    .arg(first, QString::number(producing), each(season.standing), standing);
    } else if (producing > 0) {
        said << yearSay("That is %1 per producing hive (%2).")
                    .arg(each(producing), QString::number(producing));
    } else if (season.standing > 0) {
        said << yearSay("That is %1 per hive standing on 1 May (%2).")
                    .arg(each(season.standing), standing);
    }
    if (!season.producingKnown)
        said << yearSay("How many hives gave it is not known: a part is only noted as a total.");
}

void sayHoney(const SeasonYield& season, QStringList& said, QStringList& strong) {
    if (season.total == Mass()) {
        said << yearSay("No honey was written down in %1.").arg(season.year);
        return;
    }
    const QString total = massText(sentenceGrams(season.total), season.how);
    strong << total;
    const YearChange change = yearChangeOf(season);
    if (season.producing == 0) {
        said << yearSay("In %1 there was %2 of honey, of no hive by name.")
                    .arg(QString::number(season.year), total);
        said << againstText(season, change);
    } else if (!season.producingKnown) {
        said << yearSay("In %1 there was %2 of honey; of %n hives it is known how much.",
                        season.producing)
                    .arg(QString::number(season.year), total);
        said << againstText(season, change);
    } else {
        said << gaveText(season, change, total);
    }
    if (season.runs.size() == 1)
        said << yearSay("It came in one run on %1.").arg(dayAndMonth(season.runs.front().run.on));
    else if (season.runs.size() > 1)
        said << yearSay("It came in %n runs from %1 to %2.", static_cast<int>(season.runs.size()))
                    .arg(dayAndMonth(season.runs.front().run.on),
                         dayAndMonth(season.runs.back().run.on));
    if (season.noted == season.total)
        said << yearSay("It is all noted from paper.");
    else if (season.noted)
        said << yearSay("%1 of it is noted from paper.")
                    .arg(massText(sentenceGrams(*season.noted), season.how));
    if (season.unknown) {
        const QString unknown = massText(sentenceGrams(*season.unknown), season.how);
        strong << unknown;
        said << yearSay("%1 of it has no hive yet.").arg(unknown);
    }
    sayAverages(season, said, strong);
}

void sayColonies(const ColoniesOfYear& colonies, QStringList& said) {
    if (!colonies.standing.empty() || !colonies.came.empty()) {
        const int lost = colonies.lost();
        const bool whole = colonies.wintered;
        if (lost == 0)
            said << (whole ? yearSay("No colony was lost between 1 May and winter.")
                           : yearSay("No colony was lost since 1 May."));
        else if (lost == 1)
            said << (whole ? yearSay("One colony was lost between 1 May and winter.")
                           : yearSay("One colony was lost since 1 May."));
        else
            said << (whole ? yearSay("%n colonies were lost between 1 May and winter.", lost)
                           : yearSay("%n colonies were lost since 1 May.", lost));
    }
    if (!colonies.before || colonies.before->loss.atRisk == 0) return;
    const WinterLoss& winter = colonies.before->loss;
    said << (winter.dead == 0
                 ? yearSay("The winter before took none of %n.", winter.atRisk)
                 : yearSay("The winter before took %1 of %n.", winter.atRisk).arg(winter.dead));
}

}  // namespace

TextBlock seasonSentence(const SeasonYield& season, const ColoniesOfYear* colonies) {
    TextBlock block;
    QStringList said;
    sayHoney(season, said, block.strong);
    if (colonies) sayColonies(*colonies, said);
    said.removeAll(QString());
    block.text = said.join(QLatin1Char(' '));
    return block;
}

}  // namespace combwright
