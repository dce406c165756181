#include "core/places/pages/yard/yard_story_text.h"

#include <QCoreApplication>
#include <QLocale>
#include <QStringList>

#include "core/places/pages/health/health_words.h"
#include "core/places/pages/yard/queen_words.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/read_back.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString tale(const char* text) { return QCoreApplication::translate("yard_story", text); }

QString storyBoxName(const StoryBox& box) {
    if (!box.mark.empty()) return fromUtf8(box.mark);
    return box.kind.empty() ? tale("a box without a mark")
                            : tale("a %1 without a mark").arg(kindText(box.kind));
}

QString storyBoxNames(const std::vector<StoryBox>& boxes) {
    QStringList names;
    for (const StoryBox& box : boxes) names << storyBoxName(box);
    return names.join(QStringLiteral(", "));
}

/// "M33 with 9 drawn, D33": each box with what was counted in it.
QString boxesWithCounts(const std::vector<StoryBox>& boxes) {
    QStringList names;
    for (const StoryBox& box : boxes)
        names << (box.counts.empty()
                      ? storyBoxName(box)
                      : tale("%1 with %2").arg(storyBoxName(box), boxCountsText(box.counts)));
    return names.join(QStringLiteral(", "));
}

QString placeWord(const StoryEntry& entry, const char* fromHive, const char* other) {
    if (!entry.otherHive.empty()) return tale(fromHive).arg(fromUtf8(entry.otherHive));
    if (!entry.place) return {};
    return tale(other).arg(choiceText(word(*entry.place)));
}

QString colonyText(Origin origin, const std::string& mother) {
    switch (origin) {
        case Origin::Overwintered:
            return tale("overwintered");
        case Origin::Split:
            return mother.empty() ? tale("a split") : tale("a split from %1").arg(fromUtf8(mother));
        case Origin::Swarm:
            return tale("a swarm");
        case Origin::Package:
            return tale("a package");
        case Origin::Nucleus:
            return tale("a nucleus");
        case Origin::NotKnown:
            return tale("where from is not known");
    }
    return {};
}

QString lookSentence(const StoryEntry& entry) {
    QStringList parts;
    if (const QString said = readBack(entry.line); !said.isEmpty()) parts << said;
    if (!entry.boxes.empty()) parts << tale("On: %1.").arg(storyBoxNames(entry.boxes));
    if (!entry.left.empty()) parts << tale("Off: %1.").arg(storyBoxNames(entry.left));
    if (parts.isEmpty()) parts << tale("Opened; nothing written down.");
    for (const LineWas& each : entry.was) {
        parts << (each.why.empty() ? tale("Written anew; it was: “%1”.").arg(fromUtf8(each.line))
                                   : tale("Written anew, because: %1; it was: “%2”.")
                                         .arg(fromUtf8(each.why), fromUtf8(each.line)));
    }
    return parts.join(QLatin1Char(' '));
}

QString planSentence(const StoryEntry& entry) {
    QStringList parts;
    if (!entry.boxes.empty()) parts << tale("take %1").arg(storyBoxNames(entry.boxes));
    if (!entry.left.empty()) parts << tale("leave %1").arg(storyBoxNames(entry.left));
    return tale("Plan for %1: %2.")
        .arg(shortDayText(*entry.forDay), parts.join(QStringLiteral("; ")));
}

QString honeySentence(const StoryEntry& entry) {
    const QString boxes = storyBoxNames(entry.boxes);
    if (!entry.honey)
        return tale("Boxes in run %1: %2. How much is not known yet.")
            .arg(fromUtf8(entry.run), boxes);
    return tale("%1 of honey, %2, in run %3: %4.")
        .arg(massText(static_cast<double>(entry.honey->grams()), entry.how), howWord(entry.how),
             fromUtf8(entry.run), boxes);
}

QString projectSentence(const StoryEntry& entry) {
    const HiveProject& project = *entry.project;
    const QString name = fromUtf8(project.name.text());
    const int pieces = static_cast<int>(project.pieces.value());
    return entry.what == StoryEntry::What::ProjectOn
               ? tale("%1 put on: %2 %3.").arg(name).arg(pieces).arg(word(word(project.what)))
               : tale("%1 taken off.").arg(name);
}

QString holdSentence(const StoryEntry& entry) {
    const bool lifted = entry.what == StoryEntry::What::HoldLifted;
    const QString about = entry.boxes.empty() ? tale("The colony") : storyBoxNames(entry.boxes);
    QString text = lifted ? tale("%1 no longer held back (%2)") : tale("%1 held back: %2");
    text = text.arg(about, choiceText(word(*entry.why)));
    if (!entry.note.empty()) text += QStringLiteral("; ") + fromUtf8(entry.note);
    if (!entry.by.empty())
        text += QStringLiteral("; ") + tale("lifted by %1").arg(fromUtf8(entry.by));
    return text + QLatin1Char('.');
}

QString endSentence(const StoryEntry& entry) {
    QString text = entry.ending ? tale("The colony ended: %1").arg(choiceText(word(*entry.ending)))
                                : tale("The colony ended; why is not known");
    if (!entry.otherHive.empty()) text += tale(", with %1").arg(fromUtf8(entry.otherHive));
    if (!entry.cause.empty()) text += tale("; as the keeper found: %1").arg(fromUtf8(entry.cause));
    if (!entry.note.empty()) text += tale("; noted: %1").arg(fromUtf8(entry.note));
    return text + QLatin1Char('.');
}

QString storyQueen(const StoryEntry& entry) {
    return entry.queen ? queenText(*entry.queen, entry.colour) : tale("not known");
}

QString queenWentSentence(const StoryEntry& entry) {
    const QString how = queenLeftText(entry.queenLeft.value_or(QueenLeft::NotKnown));
    const QString text = tale("The queen %1 (%2)").arg(how, storyQueen(entry));
    if (entry.otherHive.empty()) return text + QLatin1Char('.');
    return text + tale("; she is in %1 since.").arg(fromUtf8(entry.otherHive));
}

QString fedSentence(const StoryEntry& entry) {
    QString text = tale("Fed");
    if (entry.fed && entry.fed->value)
        text = tale("Fed %1").arg(
            massText(static_cast<double>(entry.fed->value->grams()), entry.fed->how));
    if (entry.fedAs) {
        // What counts of syrup and fondant is the sugar in it, and that is what was weighed.
        const bool sugar = *entry.fedAs != FeedKind::Comb && *entry.fedAs != FeedKind::Dry;
        const bool amount = entry.fed && entry.fed->value;
        text += (amount && sugar ? tale(" of sugar as %1") : tale(" as %1"))
                    .arg(choiceText(word(*entry.fedAs)));
    }
    if (entry.packs)
        text += (entry.packs->value() == 1 ? tale(", %1 pack") : tale(", %1 packs"))
                    .arg(entry.packs->value());
    if (!entry.note.empty()) text += QStringLiteral("; ") + fromUtf8(entry.note);
    return text + QLatin1Char('.');
}

QString weighedSentence(const HiveWeighing& weighing) {
    const auto shown = [](const Known<Mass>& mass) {
        return mass.value ? massText(static_cast<double>(mass.value->grams()), mass.how)
                          : tale("not known");
    };
    QStringList parts;
    if (weighing.whole) parts << tale("weighed: %1").arg(shown(*weighing.whole));
    if (weighing.left) parts << tale("weighed at one side: %1").arg(shown(*weighing.left));
    if (weighing.right) parts << tale("at the other: %1").arg(shown(*weighing.right));
    if (parts.isEmpty()) parts << tale("on the scale; no weight written down");
    if (!weighing.note.empty()) parts << fromUtf8(weighing.note);
    return parts.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString foundSentence(const StoryEntry& entry) {
    const Finding& finding = entry.sample->finding;
    QStringList parts{choiceText(word(finding.what))};
    if (finding.what == Pest::Varroa)
        parts << miteSampleText(*entry.sample);
    else if (finding.level)
        parts << choiceText(word(*finding.level));
    if (const QString signs = signsText(finding.signs); !signs.isEmpty()) parts << signs;
    if (!entry.boxes.empty()) parts << tale("in %1").arg(storyBoxNames(entry.boxes));
    if (!finding.note.empty()) parts << fromUtf8(finding.note);
    return parts.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString medicineSentence(const StoryEntry& entry) {
    const Treatment& given = *entry.treatment;
    const QString name = entry.medicine ? fromUtf8(entry.medicine->name.text()) : tale("Medicine");
    if (entry.what == StoryEntry::What::MedicineOut) return tale("%1 out.").arg(name);
    QStringList parts{tale("%1 in").arg(name)};
    if (given.amount && entry.medicine) parts << amountText(given.amount->value(), *entry.medicine);
    if (!given.by.empty()) parts << tale("by %1").arg(fromUtf8(given.by));
    if (given.supersOn) parts << (*given.supersOn ? tale("with supers on") : tale("no supers on"));
    if (!given.note.empty()) parts << fromUtf8(given.note);
    return parts.join(QStringLiteral("; ")) + QLatin1Char('.');
}

QString photoSentence(const Photo& photo) {
    QStringList parts{tale("Photo %1").arg(fromUtf8(photo.name.text()))};
    if (!photo.sheet.empty()) parts << tale("of sheet %1").arg(fromUtf8(photo.sheet));
    if (!photo.note.empty()) parts << fromUtf8(photo.note);
    return parts.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace

QString boxCountsText(const std::vector<BoxCount>& counts) {
    QStringList parts;
    for (const BoxCount& count : counts) {
        QStringList kinds;
        if (count.comb) kinds << choiceText(word(*count.comb));
        for (const Fault& fault : faults())
            if (count.faults.find(fault.letter) != std::string::npos) kinds << faultText(fault);
        parts << QStringLiteral("%1 %2")
                     .arg(count.frames.value())
                     .arg(kinds.join(QStringLiteral(", ")))
                     .trimmed();
    }
    return parts.join(QStringLiteral(", "));
}

QString boxLookSentence(const BoxLook& look) {
    QStringList parts;
    if (look.frames)
        parts << (look.frames->value() == 1 ? tale("%1 frame") : tale("%1 frames"))
                     .arg(look.frames->value());
    if (look.cappedFrames) parts << tale("%1 capped").arg(framesText(*look.cappedFrames));
    if (look.filled && look.filled->value)
        parts
            << tale("%1 % full").arg(QLocale().toString(look.filled->value->value() * 100, 'g', 4));
    if (look.water)
        parts << tale("%1 % water").arg(QLocale().toString(look.water->percent(), 'f', 1));
    if (look.broodIn.value_or(false)) parts << tale("brood in it");
    if (!look.note.empty()) parts << fromUtf8(look.note);
    return parts.join(QStringLiteral(", "));
}

namespace {

QString uncapitalised(const StoryEntry& entry) {
    switch (entry.what) {
        case StoryEntry::What::Look:
            return lookSentence(entry);
        case StoryEntry::What::Began:
            return tale("Set up with %1.").arg(boxesWithCounts(entry.boxes));
        case StoryEntry::What::BoxesOn:
            return tale("%1 on%2.")
                .arg(boxesWithCounts(entry.boxes), placeWord(entry, ", from %1", ", from: %1"));
        case StoryEntry::What::BoxesOff:
            return tale("%1 off%2.")
                .arg(boxesWithCounts(entry.boxes), placeWord(entry, ", onto %1", ", to: %1"));
        case StoryEntry::What::BoxLooked: {
            const QString seen = boxLookSentence(*entry.look);
            return seen.isEmpty() ? tale("%1 looked into.").arg(storyBoxNames(entry.boxes))
                                  : tale("%1: %2.").arg(storyBoxNames(entry.boxes), seen);
        }
        case StoryEntry::What::BoxCounted:
            return tale("%1 counted: %2.")
                .arg(storyBoxNames(entry.boxes), boxCountsText(entry.boxes.front().counts));
        case StoryEntry::What::Planned:
            return planSentence(entry);
        case StoryEntry::What::Honey:
            return honeySentence(entry);
        case StoryEntry::What::Fed:
            return fedSentence(entry);
        case StoryEntry::What::Weighed:
            return weighedSentence(*entry.weighing);
        case StoryEntry::What::Found:
            return foundSentence(entry);
        case StoryEntry::What::MedicineIn:
        case StoryEntry::What::MedicineOut:
            return medicineSentence(entry);
        case StoryEntry::What::ProjectOn:
        case StoryEntry::What::ProjectOff:
            return projectSentence(entry);
        case StoryEntry::What::HeldBack:
        case StoryEntry::What::HoldLifted:
            return holdSentence(entry);
        case StoryEntry::What::ColonyCame:
            if (!entry.otherHive.empty())
                return (entry.fromNucleus
                            ? tale("The colony of %1 came to live here: moved from its nucleus "
                                   "box into a hive of its own.")
                            : tale("The colony of %1 came to live here."))
                    .arg(fromUtf8(entry.otherHive));
            return tale("A colony since then, %1.").arg(colonyText(*entry.origin, entry.mother));
        case StoryEntry::What::ColonyEnded:
            return endSentence(entry);
        case StoryEntry::What::ColonyWent:
            return (entry.fromNucleus
                        ? tale("The colony moved from its nucleus box into a hive of its own, %1; "
                               "the stand stays.")
                        : tale("The colony went to live on %1; the stand stays."))
                .arg(fromUtf8(entry.otherHive));
        case StoryEntry::What::SplitOff:
            return tale("Split: bees of it live in %1.").arg(fromUtf8(entry.otherHive));
        case StoryEntry::What::SwarmCaught:
            return tale("Swarmed; the swarm was hived in %1.").arg(fromUtf8(entry.otherHive));
        case StoryEntry::What::Joined:
            return tale("The colony of %1 was united with it.").arg(fromUtf8(entry.otherHive));
        case StoryEntry::What::HiveMoved:
            return tale("The hive came here from %1.").arg(fromUtf8(entry.otherYard));
        case StoryEntry::What::Relabelled:
            return tale("The hive was called %1 up to then.").arg(fromUtf8(entry.otherHive));
        case StoryEntry::What::QueenCame:
            return tale("Its queen since then: %1.").arg(storyQueen(entry));
        case StoryEntry::What::QueenWent:
            return queenWentSentence(entry);
        case StoryEntry::What::QueenWait:
            return entry.note.empty()
                       ? tale("Waits for a young queen: %1.").arg(queenStepText(*entry.step))
                       : tale("Waits for a young queen: %1; %2.")
                             .arg(queenStepText(*entry.step), fromUtf8(entry.note));
        case StoryEntry::What::QueenWaitOver:
            return tale("No longer waits for a young queen.");
        case StoryEntry::What::Photographed:
            return photoSentence(*entry.photo);
    }
    return {};
}

}  // namespace

QString storySentence(const StoryEntry& entry) {
    const QString said = uncapitalised(entry);
    return said.left(1).toUpper() + said.mid(1);
}

QString storyKind(const StoryEntry& entry) {
    switch (entry.what) {
        case StoryEntry::What::Look:
            switch (entry.looked) {
                case Looked::Opened:
                    return tale("opened");
                case Looked::LidOnly:
                    return tale("lid only");
                case Looked::NotOpened:
                    return tale("not opened");
                case Looked::FoundDead:
                    return tale("found dead");
            }
            return {};
        case StoryEntry::What::Began:
        case StoryEntry::What::BoxesOn:
        case StoryEntry::What::BoxesOff:
        case StoryEntry::What::BoxLooked:
        case StoryEntry::What::BoxCounted:
            return tale("box");
        case StoryEntry::What::Planned:
            return tale("plan");
        case StoryEntry::What::Honey:
            return tale("honey");
        case StoryEntry::What::Fed:
            return tale("fed");
        case StoryEntry::What::Weighed:
            return tale("scale");
        case StoryEntry::What::Found:
            return tale("found");
        case StoryEntry::What::MedicineIn:
        case StoryEntry::What::MedicineOut:
            return tale("medicine");
        case StoryEntry::What::ProjectOn:
        case StoryEntry::What::ProjectOff:
            return tale("comb");
        case StoryEntry::What::HeldBack:
        case StoryEntry::What::HoldLifted:
            return tale("hold");
        case StoryEntry::What::ColonyCame:
        case StoryEntry::What::ColonyEnded:
        case StoryEntry::What::ColonyWent:
        case StoryEntry::What::SplitOff:
        case StoryEntry::What::SwarmCaught:
        case StoryEntry::What::Joined:
            return tale("colony");
        case StoryEntry::What::HiveMoved:
        case StoryEntry::What::Relabelled:
            return tale("stand");
        case StoryEntry::What::QueenCame:
        case StoryEntry::What::QueenWent:
        case StoryEntry::What::QueenWait:
        case StoryEntry::What::QueenWaitOver:
            return tale("queen");
        case StoryEntry::What::Photographed:
            return tale("photo");
    }
    return {};
}

namespace {

/// Who she is, whose daughter, since when, and when she was seen; what is not known is not said.
QString queenOfHead(const HiveHead& head) {
    const QString seen =
        head.queenSeen ? tale("last seen %1").arg(dayText(*head.queenSeen)) : QString();
    if (!head.queen) {
        QString text;
        if (head.queenLeft)
            text = tale("The queen %1 on %2.")
                       .arg(queenLeftText(head.queenLeft->left.value_or(QueenLeft::NotKnown)),
                            dayText(*head.queenLeft->until));
        if (!seen.isEmpty())
            text +=
                (text.isEmpty() ? QString() : QStringLiteral(" ")) + tale("A queen %1.").arg(seen);
        return text;
    }
    QStringList parts{queenHeadText(*head.queen, head.colour)};
    // She who came with the bees is here since they are.
    if (head.colony->since != head.queenSince)
        parts << tale("here since %1").arg(dayText(*head.queenSince));
    if (head.queenMother) parts << tale("daughter of %1").arg(queenShortText(*head.queenMother));
    if (!seen.isEmpty()) parts << seen;
    return parts.join(QStringLiteral("; ")) + QLatin1Char('.');
}

}  // namespace

QString hiveHeadText(const HiveHead& head) {
    if (!head.colony) return tale("Nobody lives here.");
    QStringList lines;
    if (const QString queen = queenOfHead(head); !queen.isEmpty()) lines << queen;
    lines << tale("Colony since %1, %2.")
                 .arg(dayText(head.colony->since), colonyText(head.colony->origin, head.mother));
    if (head.lookFrom)
        lines << tale("Waits for a young queen: look from %1.").arg(dayText(*head.lookFrom));
    return lines.join(QLatin1Char('\n'));
}

QString boxInsideText(const BoxInside& inside) {
    QStringList parts;
    const StoryBox named{inside.box.mark, {}, {}};
    QString first = storyBoxName(named);
    if (inside.kind) first += QStringLiteral(", ") + kindText(inside.kind->name.text());
    parts << first;
    if (inside.onSince) parts << tale("here since %1").arg(dayAndMonth(*inside.onSince));
    if (inside.look) {
        const QString seen = boxLookSentence(*inside.look);
        parts << (seen.isEmpty()
                      ? tale("looked into %1").arg(dayAndMonth(inside.look->on))
                      : tale("looked into %1: %2").arg(dayAndMonth(inside.look->on), seen));
    } else if (!inside.nest) {
        parts << tale("never looked into here");
    }
    for (const Hold& hold : inside.holds)
        parts << tale("held back: %1").arg(choiceText(word(hold.why)));
    if (inside.frames.empty()) parts << tale("its frames were never counted");
    return parts.join(QStringLiteral("; "));
}

}  // namespace combwright
