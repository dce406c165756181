#include "ui/yard/board_deeds.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/actions/boxes/box_list.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/kind_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString deedWord(const char* text) { return QCoreApplication::translate("board_deeds", text); }

/// "M43 2" is M43 and place 2; a place counts from 1 at the floor, as one counts boxes.
std::optional<Count> takePlace(QStringList& words) {
    if (words.size() < 2) return std::nullopt;
    bool whole = false;
    const int place = words.back().toInt(&whole);
    if (!whole || place < 1) return std::nullopt;
    words.removeLast();
    return Count(place - 1);
}

std::optional<Hive> openHiveOf(const Read& file, Id<Yard> yard, const QString& mark) {
    for (const Hive& hive : openHives(file, yard))
        if (fromUtf8(hive.mark.text()).compare(mark, Qt::CaseInsensitive) == 0) return hive;
    return std::nullopt;
}

/// A hive of the same yard by its mark alone, of another yard by mark and yard.
std::variant<Hive, QString> meantHive(const Read& file, const QString& typed, Id<Yard> yard,
                                      Day on) {
    const QStringList parts = typed.split(QLatin1Char(','));
    NameQuery query{.name = parts.front().trimmed().toStdString(), .on = on};
    if (parts.size() > 1)
        query.yard = parts[1].trimmed().toStdString();
    else if (auto near = openHiveOf(file, yard, parts.front().trimmed()))
        return *std::move(near);
    const auto found = findNamed(file, Hive::table, query);
    if (!found) return sentence(found.error());
    return *file.find(Id<Hive>{*found});
}

}  // namespace

QString calledBox(const Read& file, const Box& box) {
    if (!box.mark.empty()) return fromUtf8(box.mark);
    const auto kind = file.find(box.kind);
    return deedWord("the %1 without a mark").arg(kind ? kindText(kind->name.text()) : QString());
}

QString nextToPutOn(const Read& file, const Yard& yard, Day on) {
    if (!yard.usualSuper) return {};
    for (const Box& box : boxesReady(file, *yard.usualSuper))
        if (box.since <= on && !box.mark.empty()) return fromUtf8(box.mark);
    return {};
}

MeantMove meantPutOn(const Read& file, const QString& typed, const Hive& hive, Day on) {
    QStringList words = typed.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.isEmpty())
        return deedWord("Which box? Write its mark, or a kind: medium, deep, shallow.");
    const auto place = takePlace(words);
    const std::string name = words.join(QLatin1Char(' ')).toStdString();
    MoveBox move{
        .on = on, .box = {}, .to = BoxPlace::OnHive, .hive = hive.id, .level = place, .stack = {}};
    if (const auto found = findNamed(file, Box::table, NameQuery{.name = name, .on = on})) {
        move.box = Id<Box>{*found};
        return move;
    }
    const auto kind = boxKindTyped(file, name);
    if (!kind && kind.error().code == Code::Ambiguous) return sentence(kind.error());
    if (!kind)
        return deedWord("No box and no kind of box is called \"%1\". N brings new boxes in.")
            .arg(fromUtf8(name));
    for (const Box& box : boxesReady(file, kind->id)) {
        if (box.since > on) continue;
        move.box = box.id;
        return move;
    }
    return deedWord(
               "No %1 is written down as standing ready in the storeroom. N brings new boxes "
               "in.")
        .arg(kindText(kind->name.text()));
}

MeantMove meantTakeOff(const QString& typed, const Box& box, Day on) {
    MoveBox move{
        .on = on, .box = box.id, .to = BoxPlace::Storeroom, .hive = {}, .level = {}, .stack = {}};
    QString rest = typed.simplified();
    for (const BoxPlace place :
         {BoxPlace::Cleared, BoxPlace::Waiting, BoxPlace::Wet, BoxPlace::Storeroom,
          BoxPlace::Freezer, BoxPlace::Lent, BoxPlace::Gone}) {
        const QString name = choiceText(word(place));
        const bool whole = rest.compare(name, Qt::CaseInsensitive) == 0;
        if (!whole && !rest.startsWith(name + QLatin1Char(' '), Qt::CaseInsensitive)) continue;
        move.to = place;
        rest = rest.mid(name.size()).trimmed();
        break;
    }
    move.stack = rest.toStdString();
    return move;
}

MeantMove meantMove(const Read& file, const QString& typed, const Box& box, Day on) {
    const auto own = file.find(box.hive);
    if (!own) return deedWord("This box stands on no hive.");
    QStringList words = typed.simplified().split(QLatin1Char(' '), Qt::SkipEmptyParts);
    if (words.isEmpty())
        return deedWord("Where to? Write a hive, a place counted from the floor, or both: ML4 2.");
    MoveBox move{
        .on = on, .box = box.id, .to = BoxPlace::OnHive, .hive = own->id, .level = {}, .stack = {}};
    bool number = false;
    const int alone = words.front().toInt(&number);
    if (words.size() == 1 && number && !openHiveOf(file, own->yard, words.front())) {
        if (alone < 1)
            return deedWord("Places count from 1 at the floor; \"%1\" is none.").arg(words.front());
        move.level = Count(alone - 1);
        return move;
    }
    move.level = takePlace(words);
    auto hive = meantHive(file, words.join(QLatin1Char(' ')), own->yard, on);
    if (auto* why = std::get_if<QString>(&hive)) return *why;
    move.hive = std::get<Hive>(hive).id;
    return move;
}

QString saidBack(const Read& file, const MeantMove& meant) {
    if (const auto* why = std::get_if<QString>(&meant)) return *why;
    const MoveBox& move = std::get<MoveBox>(meant);
    const auto box = file.find(move.box);
    const QString what = box ? calledBox(file, *box) : QString();
    if (!move.hive) {
        const QString place = choiceText(word(move.to));
        return move.stack.empty()
                   ? deedWord("%1 goes to: %2.").arg(what, place)
                   : deedWord("%1 goes to: %2, %3.").arg(what, place, fromUtf8(move.stack));
    }
    const auto hive = file.find(*move.hive);
    const QString onto = hive ? fromUtf8(hive->mark.text()) : QString();
    // A box that stands on a hive already is not in the store: say where it comes from.
    const auto from = box && box->hive != move.hive ? file.find(box->hive) : std::nullopt;
    QString said = move.level ? deedWord("%1 onto %2, place %3 from the floor")
                                    .arg(what, onto)
                                    .arg(move.level->value() + 1)
                              : deedWord("%1 onto %2, on top").arg(what, onto);
    if (from) said += deedWord(", from %1").arg(fromUtf8(from->mark.text()));
    return said + QLatin1Char('.');
}

}  // namespace combwright
