#include "core/places/season_book/account_sections.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <map>

#include "core/words/words.h"

namespace combwright {
namespace {

QString accountSay(const char* text, int count = -1) {
    return QCoreApplication::translate("account", text, nullptr, count);
}

AccountLine colonyCountLine(const QString& name, std::size_t count, bool strong = false) {
    AccountLine line;
    line.name = name;
    line.figure = QString::number(count);
    line.strong = strong;
    line.how = How::Counted;
    return line;
}

QString plusText(std::size_t count) { return QStringLiteral("+ %1").arg(count); }
QString minusText(std::size_t count) { return QStringLiteral("− %1").arg(count); }

QString percentText(double share) {
    return accountSay("%1 %").arg(QLocale().toString(share * 100, 'f', 1));
}

AccountRecord livingRecord(const ColonyThere& there) {
    AccountRecord record;
    record.on = there.colony.since;
    record.what = fromUtf8(there.hive.mark.text());
    record.amount = fromUtf8(word(there.colony.origin));
    record.note = there.mother.empty() ? fromUtf8(there.colony.note)
                                       : accountSay("from %1").arg(fromUtf8(there.mother));
    return record;
}

AccountRecord goneRecord(const ColonyGone& gone) {
    AccountRecord record;
    record.on = gone.colony.ended;
    record.what = fromUtf8(gone.hive.mark.text());
    record.amount =
        gone.colony.ending ? fromUtf8(word(*gone.colony.ending)) : accountSay("why is not known");
    if (!gone.into.empty()) record.note = accountSay("with %1").arg(fromUtf8(gone.into));
    if (!gone.cause.empty()) record.note = fromUtf8(gone.cause);
    return record;
}

/// The names of a line's colonies, as many as a line holds.
QString namedIn(const std::vector<AccountRecord>& records) {
    constexpr std::size_t most = 6;
    QStringList names;
    for (std::size_t i = 0; i < std::min(records.size(), most); ++i) names << records[i].what;
    const QString all = names.join(QStringLiteral(", "));
    return records.size() > most
               ? accountSay("%1 and %n more", static_cast<int>(records.size() - most)).arg(all)
               : all;
}

QString originName(Origin origin) {
    switch (origin) {
        case Origin::Split:
            return accountSay("made by splits");
        case Origin::Swarm:
            return accountSay("swarms hived");
        case Origin::Package:
            return accountSay("packages");
        case Origin::Nucleus:
            return accountSay("nuclei");
        case Origin::Overwintered:
            return accountSay("overwintered, written down since");
        case Origin::NotKnown:
            break;
    }
    return accountSay("came, from where is not known");
}

QString endingName(const std::optional<Ending>& ending) {
    if (!ending) return accountSay("lost, why is not known");
    switch (*ending) {
        case Ending::United:
            return accountSay("united");
        case Ending::Sold:
            return accountSay("sold");
        case Ending::WinterLoss:
            return accountSay("lost: winter loss");
        case Ending::Queenless:
            return accountSay("lost: queenless");
        case Ending::Absconded:
            return accountSay("lost: absconded");
        case Ending::DestroyedForDisease:
            return accountSay("lost: destroyed for disease");
        case Ending::Other:
            break;
    }
    return accountSay("lost: other");
}

void addCame(AccountSection& section, const ColoniesOfYear& colonies) {
    std::map<Origin, std::vector<AccountRecord>> came;
    for (const ColonyThere& there : colonies.came)
        came[there.colony.origin].push_back(livingRecord(there));
    for (auto& [origin, records] : came) {
        AccountLine line = colonyCountLine(originName(origin), records.size());
        line.figure = plusText(records.size());
        line.how.reset();
        line.note = namedIn(records);
        note(&line.working, "colonies_came", static_cast<double>(records.size()), "",
             line.note.toStdString());
        line.records = std::move(records);
        section.lines.push_back(std::move(line));
    }
}

void addLeft(AccountSection& section, const ColoniesOfYear& colonies) {
    std::map<std::optional<Ending>, std::vector<AccountRecord>> left;
    for (const ColonyGone& gone : colonies.left)
        left[gone.colony.ending].push_back(goneRecord(gone));
    const auto add = [&](const QString& name, std::vector<AccountRecord> records) {
        AccountLine line = colonyCountLine(name, records.size());
        line.figure = minusText(records.size());
        line.how.reset();
        line.note = namedIn(records);
        if (records.size() == 1 && !records.front().note.isEmpty())
            line.note += QStringLiteral(", ") + records.front().note;
        note(&line.working, "colonies_left", static_cast<double>(records.size()), "",
             line.note.toStdString());
        line.records = std::move(records);
        section.lines.push_back(std::move(line));
    };
    // United and sold first: those were not lost.
    for (const Ending ending : {Ending::United, Ending::Sold})
        if (const auto found = left.find(ending); found != left.end()) {
            add(endingName(ending), std::move(found->second));
            left.erase(found);
        }
    for (auto& [ending, records] : left) add(endingName(ending), std::move(records));
    if (colonies.foundDead.empty()) return;
    std::vector<AccountRecord> found;
    for (const ColonyThere& dead : colonies.foundDead) found.push_back(livingRecord(dead));
    add(accountSay("found dead, its end is not written down"), std::move(found));
}

void addWinter(AccountSection& section, const WinterYear& winter) {
    const WinterLoss& loss = winter.loss;
    const QString from = dayText(loss.from);
    const QString to = dayText(loss.to);
    AccountLine head;
    head.name = loss.lasts ? accountSay("The winter since %1").arg(from)
                           : accountSay("The winter from %1 to %2").arg(from, to);
    head.strong = true;
    if (loss.lasts) head.note = accountSay("up to %1").arg(to);
    if (!loss.loss) {
        head.note = accountSay("no colony was written down at its start, so no loss can be told");
        section.lines.push_back(std::move(head));
        return;
    }
    head.figure = accountSay("%1 of %2").arg(loss.dead).arg(loss.atRisk);
    head.how = How::Counted;
    for (const ColonyGone& dead : winter.dead) head.records.push_back(goneRecord(dead));
    note(&head.working, "colonies_at_risk", loss.atRisk, "");
    note(&head.working, "colonies_dead", loss.dead, "", namedIn(head.records).toStdString());
    if (!head.records.empty()) head.note = namedIn(head.records);
    const std::vector<AccountRecord> dead = head.records;
    section.lines.push_back(std::move(head));
    std::vector<YardLoss> yards;
    for (const auto& [name, of] : loss.yards) {
        yards.push_back(of);
        AccountLine line;
        line.name = QStringLiteral("   ") + fromUtf8(name);
        line.figure = accountSay("%1 of %2").arg(of.dead).arg(of.atRisk);
        line.note = percentText(static_cast<double>(of.dead) / static_cast<double>(of.atRisk));
        note(&line.working, "colonies_at_risk", static_cast<double>(of.atRisk), "");
        note(&line.working, "colonies_dead", static_cast<double>(of.dead), "");
        for (const ColonyGone& gone : winter.dead)
            if (gone.yard == name) line.records.push_back(goneRecord(gone));
        section.lines.push_back(std::move(line));
    }
    AccountLine total;
    total.name = accountSay("of all colonies together");
    total.figure = percentText(loss.loss->totalShare);
    total.note = accountSay("%1 to %2 by chance alone")
                     .arg(percentText(loss.loss->total.low), percentText(loss.loss->total.high));
    total.strong = true;
    AccountLine mean;
    mean.name = accountSay("mean of the yards");
    mean.figure = percentText(loss.loss->meanShare);
    mean.strong = true;
    mean.sums = true;
    Working working;
    static_cast<void>(colonyLoss(yards, &working));
    for (const Working::Step& step : working.steps)
        if (step.what != "loss_mean_share") total.working.steps.push_back(step);
    for (const auto& [name, of] : loss.yards) {
        note(&mean.working, "colonies_dead", static_cast<double>(of.dead), "", name);
        note(&mean.working, "colonies_at_risk", static_cast<double>(of.atRisk), "", name);
    }
    mean.working.steps.push_back(working.steps.back());
    total.records = dead;
    mean.records = dead;
    section.lines.push_back(std::move(total));
    section.lines.push_back(std::move(mean));
    if (winter.soldOrUnited.empty()) return;
    AccountLine neither;
    neither.name = accountSay("sold or united meanwhile, counted neither way");
    neither.figure = QString::number(winter.soldOrUnited.size());
    for (const ColonyGone& gone : winter.soldOrUnited) neither.records.push_back(goneRecord(gone));
    note(&neither.working, "colonies_left", static_cast<double>(winter.soldOrUnited.size()), "");
    section.lines.push_back(std::move(neither));
}

}  // namespace

AccountSection coloniesSection(const ColoniesOfYear& colonies) {
    AccountSection section;
    section.id = QStringLiteral("colonies");
    section.title = accountSay("Colonies through the year");
    if (!colonies.begun) {
        section.note = accountSay("The account begins on 1 May.");
        return section;
    }
    if (colonies.standing.empty() && colonies.came.empty()) {
        section.note = accountSay("No colony is written down for this year.");
        return section;
    }
    AccountLine standing = colonyCountLine(accountSay("on 1 May"), colonies.standing.size(), true);
    for (const ColonyThere& there : colonies.standing)
        standing.records.push_back(livingRecord(there));
    note(&standing.working, "colonies_standing", static_cast<double>(colonies.standing.size()), "",
         "since ≤ 1 May < end");
    section.lines.push_back(std::move(standing));
    addCame(section, colonies);
    addLeft(section, colonies);
    AccountLine end =
        colonyCountLine(colonies.wintered ? accountSay("into winter")
                                          : accountSay("on %1").arg(dayText(colonies.to)),
                        colonies.there.size(), true);
    end.sums = true;
    for (const ColonyThere& there : colonies.there) end.records.push_back(livingRecord(there));
    note(&end.working, "colonies_standing", static_cast<double>(colonies.standing.size()), "");
    note(&end.working, "colonies_came", static_cast<double>(colonies.came.size()), "");
    note(&end.working, "colonies_left",
         static_cast<double>(colonies.left.size() + colonies.foundDead.size()), "");
    note(&end.working, "colonies_there", static_cast<double>(colonies.there.size()), "",
         "standing + came − left");
    section.lines.push_back(std::move(end));
    if (colonies.wintered)
        section.note = accountSay("Winter begins on %1 here; what ends after it is the winter's.")
                           .arg(dayText(colonies.to));
    return section;
}

AccountSection winterSection(const ColoniesOfYear& colonies, int year) {
    AccountSection section;
    section.id = QStringLiteral("winter-losses");
    section.title = accountSay("Winter losses");
    if (colonies.before) addWinter(section, *colonies.before);
    if (colonies.after) addWinter(section, *colonies.after);
    if (section.lines.empty()) {
        section.note = accountSay("No winter before or after %1 is written down yet.").arg(year);
        return section;
    }
    section.note = accountSay(
        "At risk is what lived when the winter began and was neither sold nor united. Of all "
        "together: dead ÷ at risk, which large yards decide, with the 95 % interval of so few "
        "colonies; those of one yard fare alike, so the truth is wider still. The mean of the "
        "yards counts each yard's own share alike. A survey's average loss is the mean over many "
        "keepers, so only "
        "the first of the two goes beside its total.");
    return section;
}

std::vector<AccountSection> accountSections(const Read& file, AccountPart part, int year,
                                            Day today) {
    if (part == AccountPart::Colonies) {
        const ColoniesOfYear colonies = coloniesOfYear(file, year, today);
        return {coloniesSection(colonies), winterSection(colonies, year)};
    }
    const OneState still(file);
    if (part == AccountPart::Years)
        return {cropYearsSection(file, today), colonyYearsSection(file, today)};
    const Day until = std::min(today, *makeDay(year, 12, 31));
    return {waxSection(file, waxYear(file, year, until), until), candlesSection(file, year, until),
            salesSection(file, sales(file, year, today)), equipmentSection(file, year, until),
            shortSection(file, year, today)};
}

QString accountFigure(const AccountLine& line) {
    QString text = line.figure;
    if (!line.unit.isEmpty()) text += QLatin1Char(' ') + line.unit;
    if (line.how) text += QStringLiteral(" %1").arg(QLatin1Char(letter(*line.how)));
    return text;
}

Explained explainedLine(const AccountSection& section, const AccountLine& line) {
    return {QStringLiteral("%1: %2").arg(section.title, line.name.trimmed()), accountFigure(line),
            line.working};
}

}  // namespace combwright
