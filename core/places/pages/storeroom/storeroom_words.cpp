#include "core/places/pages/storeroom/storeroom_words.h"

#include <QCoreApplication>
#include <QRegularExpression>
#include <QStringList>
#include <set>

#include "core/model/season_info.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString storeWord(const char* text) { return QCoreApplication::translate("storeroom", text); }

}  // namespace

QString itemText(EquipmentItem item) {
    return choiceText(Choices<EquipmentItem>::words[static_cast<std::size_t>(item)]);
}

QString itemText(EquipmentItem item, const std::string& name,
                 const std::optional<FrameKind>& frame) {
    QStringList parts{itemText(item)};
    if (!name.empty()) parts << fromUtf8(name);
    if (frame) parts << frameText(*frame);
    return parts.join(QStringLiteral(", "));
}

QString frameText(const FrameKind& frame) {
    const QString name = kindText(frame.name.text());
    const qsizetype bracket = name.indexOf(QStringLiteral(" ("));
    return bracket > 20 ? name.left(bracket) : name;
}

KindNames::KindNames(const Read& file) {
    std::set<std::string> families;
    std::set<QString> begins;
    std::set<Id<BoxKind>> kinds;
    for (const Box& box : file.where<Box>({})) kinds.insert(box.kind);
    for (const Id<BoxKind>& id : kinds)
        if (const auto kind = file.find(std::optional(id))) {
            const QString name = kindText(kind->name.text());
            const auto end = name.indexOf(QLatin1String("-frame "));
            families.insert(kind->family);
            static const QRegularExpression german(QStringLiteral("^\\d+er "));
            begins.insert(end > 0 ? name.left(end + 7) : german.match(name).captured());
        }
    if (families.size() == 1) m_family = *families.begin();
    if (begins.size() == 1) m_boxBegin = *begins.begin();
}

QString KindNames::frames(const FrameKind& kind, std::int64_t many) const {
    if (kind.family.empty() || m_family != kind.family) return frameText(kind);
    QString name = frameKindText(kind);
    if (many == 1 && name.endsWith(QLatin1String(" frames"))) name.chop(1);
    return name;
}

QString KindNames::box(const QString& name) const {
    return !m_boxBegin.isEmpty() && name.startsWith(m_boxBegin) ? name.mid(m_boxBegin.size())
                                                                : name;
}

QString KindNames::item(EquipmentItem item, const std::string& name,
                        const std::optional<FrameKind>& frame) const {
    const QString words = itemText(item, name, {});
    return frame ? words + QStringLiteral(", ") + frames(*frame) : words;
}

QString shortText(const Shortage& line, bool afterRepairs) {
    const std::int64_t most = afterRepairs ? line.afterRepairsAtMost : line.nowAtMost;
    return afterRepairs
               ? (line.afterRepairs() ? QString::number(most) : storeWord("at most %1").arg(most))
               : (line.now() ? QString::number(most) : storeWord("at most %1").arg(most));
}

QString countText(const std::optional<std::int64_t>& count) {
    return count ? QString::number(*count) : storeWord("not counted");
}

QString useText(FrameUse use) {
    switch (use) {
        case FrameUse::Drawn:
            return storeWord("drawn");
        case FrameUse::Foundation:
            return storeWord("foundation");
        case FrameUse::Bare:
            return storeWord("bare");
        case FrameUse::Repairable:
            return storeWord("to repair");
        case FrameUse::Held:
            return storeWord("held");
        case FrameUse::Lost:
            return storeWord("to melt or burn");
        case FrameUse::Unknown:
            return storeWord("comb not known");
    }
    return {};
}

QString usesText(const UseCounts& uses) {
    QStringList parts;
    for (const FrameUse use :
         {FrameUse::Drawn, FrameUse::Foundation, FrameUse::Bare, FrameUse::Repairable,
          FrameUse::Held, FrameUse::Lost, FrameUse::Unknown})
        if (uses[use] > 0) parts << QStringLiteral("%1 %2").arg(uses[use]).arg(useText(use));
    return parts.join(QStringLiteral(", "));
}

QString usesOnPaper(const UseCounts& uses) {
    QStringList parts = usesText(uses).split(QStringLiteral(", "));
    for (QString& part : parts) part.replace(QLatin1Char(' '), QChar::Nbsp);
    return parts.join(QStringLiteral(", "));
}

QString gapText(PlanGap gap, int year) {
    switch (gap) {
        case PlanGap::Plan:
            return storeWord(
                       "Nobody planned %1 yet. Say how many supers for each colony, of which kind, "
                       "and how many splits; then this says what is short.")
                .arg(year);
        case PlanGap::Splits:
            return storeWord(
                "How many splits is not said: what splits need is not in it. Say 0 where there are "
                "to be none.");
        case PlanGap::FramesPerSuper:
            return storeWord(
                "How many frames hang in a super is not known: frames are not in it. Enter frames "
                "a super.");
        case PlanGap::SuperFrame:
            return storeWord(
                "Which frame the super takes is not known: its frames are not in it. Choose a kind "
                "of super with a frame.");
        case PlanGap::FramesPerSplit:
            return storeWord(
                "How many frames a split gets is not known: its frames are not in it. Enter frames "
                "a split.");
        case PlanGap::BroodFrame:
            return storeWord(
                "Which frame the brood box takes is not known: its frames are not in it. Choose a "
                "kind of brood box with a frame.");
    }
    return {};
}

Page storeroomPage(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = dayText(on);
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

}  // namespace combwright
