// Bench and goods of the year's account: wax, candles, what went out of the door, comb and boxes.
#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <map>
#include <tuple>

#include "core/model/storeroom/equipment.h"
#include "core/places/season_book/account_sections.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/wax_ledger.h"
#include "core/words/figures.h"
#include "core/words/kind_words.h"
#include "core/words/money_words.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString yearGoodsSay(const char* text, int count = -1) {
    return QCoreApplication::translate("account", text, nullptr, count);
}

double accountGrams(Mass mass) { return static_cast<double>(mass.grams()); }

/// Wax is shown finer than honey.
AccountLine waxAccountLine(const QString& name, double grams, How how) {
    AccountLine line;
    line.name = name;
    line.figure = massRateFigure(grams);
    line.unit = massUnit();
    line.how = how;
    return line;
}

QString knownWax(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle ? waxText(*middle) + QLatin1Char(' ') + QLatin1Char(letter(mass->how))
                  : yearGoodsSay("not weighed");
}

bool inAccount(Day on, int year, Day until) { return yearOf(on) == year && on <= until; }

void addRawWax(const Read& file, AccountSection& section, const WaxYear& wax, Day until) {
    AccountLine raw = waxAccountLine(yearGoodsSay("raw"), accountGrams(wax.raw), How::Weighed);
    int notWeighed = 0;
    for (const WaxBatch& batch : file.all<WaxBatch>()) {
        if (!inAccount(batch.on, wax.year, until)) continue;
        const auto middle = batch.raw ? batch.raw->middle() : std::nullopt;
        notWeighed += !middle;
        if (middle) {
            raw.how = weaker(*raw.how, batch.raw->how);
            note(&raw.working, "wax_raw_g", *middle, "g", batch.name.text());
        }
        raw.records.push_back({batch.on, fromUtf8(batch.name.text()), knownWax(batch.raw),
                               fromUtf8(word(batch.source))});
    }
    if (raw.records.empty()) return;
    if (notWeighed > 0) raw.note = yearGoodsSay("%n of them not weighed", notWeighed);
    note(&raw.working, "wax_in_g", accountGrams(wax.raw), "g", "sum");
    section.lines.push_back(std::move(raw));
}

void addMelt(const Read& file, AccountSection& section, const WaxYear& wax, Day until) {
    AccountLine missing = waxAccountLine(yearGoodsSay("lost in the melt"), 0, How::ByDifference);
    double lost = 0;
    for (const BatchShown& batch : waxBench(file, until).batches) {
        if (!batch.lost || !inAccount(batch.ledger.batch.on, wax.year, until)) continue;
        lost += batch.lost->lostG;
        const QString name = fromUtf8(batch.ledger.batch.name.text());
        missing.records.push_back({batch.ledger.batch.on, name, waxText(batch.lost->lostG),
                                   yearGoodsSay("%1 % of it came out clean")
                                       .arg(QLocale().toString(batch.lost->yield * 100, 'f', 1))});
        note(&missing.working, "wax_lost_g", batch.lost->lostG, "g", name.toStdString());
    }
    if (missing.records.empty()) return;
    missing.figure = massRateFigure(lost);
    missing.note = yearGoodsSay("honey, water and dirt, of batches weighed in and out");
    note(&missing.working, "wax_lost_g", lost, "g", "sum");
    section.lines.push_back(std::move(missing));
}

void addClean(const Read& file, AccountSection& section, const WaxYear& wax, Day until) {
    AccountLine clean =
        waxAccountLine(yearGoodsSay("clean blocks"), accountGrams(wax.clean), How::Weighed);
    clean.strong = true;
    AccountLine brought =
        waxAccountLine(yearGoodsSay("bought or of before"), wax.moved.broughtG, How::Weighed);
    for (const WaxBlock& block : file.all<WaxBlock>()) {
        if (!inAccount(block.on, wax.year, until)) continue;
        AccountLine& line = block.batch ? clean : brought;
        const auto middle = block.mass ? block.mass->middle() : std::nullopt;
        if (middle) {
            line.how = weaker(*line.how, block.mass->how);
            note(&line.working, "wax_block_g", *middle, "g", block.name.text());
        }
        line.records.push_back(
            {block.on, fromUtf8(block.name.text()), knownWax(block.mass), shadeText(block.shade)});
    }
    note(&clean.working, "wax_clean_g", accountGrams(wax.clean), "g", "sum");
    note(&brought.working, "wax_brought_g", wax.moved.broughtG, "g", "sum");
    if (!clean.records.empty()) section.lines.push_back(std::move(clean));
    if (!brought.records.empty()) section.lines.push_back(std::move(brought));
}

QString waxWentText(WaxWent went) {
    switch (went) {
        case WaxWent::Poured:
            return yearGoodsSay("poured into candles");
        case WaxWent::Sold:
            return yearGoodsSay("sold as blocks");
        case WaxWent::Given:
            return yearGoodsSay("given away");
        case WaxWent::Traded:
            return yearGoodsSay("traded for foundation");
        case WaxWent::MeltedAgain:
            return yearGoodsSay("melted again");
        case WaxWent::Lost:
            break;
    }
    return yearGoodsSay("lost");
}

void addWaxUsed(const Read& file, AccountSection& section, int year, Day until) {
    std::map<WaxWent, AccountLine> went;
    std::map<WaxWent, double> grams;
    for (const WaxUse& use :
         file.where<WaxUse>({isFrom("on_day", *makeDay(year, 1, 1)), isUpTo("on_day", until)})) {
        AccountLine& line = went[use.went];
        line.how = line.how ? weaker(*line.how, use.how) : use.how;
        grams[use.went] += accountGrams(use.mass);
        const std::string block = nameOf(file, WaxBlock::table, use.block.number);
        note(&line.working, "wax_used_g", accountGrams(use.mass), "g", block);
        line.records.push_back({use.on, yearGoodsSay("block %1").arg(fromUtf8(block)),
                                waxText(use.mass) + QLatin1Char(' ') + QLatin1Char(letter(use.how)),
                                fromUtf8(use.note)});
    }
    for (auto& [how, line] : went) {
        line.name = waxWentText(how);
        line.figure = massRateFigure(grams[how]);
        line.unit = massUnit();
        note(&line.working, "wax_out_g", grams[how], "g", "sum");
        section.lines.push_back(std::move(line));
    }
}

/// "118 sold, 9 given".
QString outText(const OutTotals& out) {
    QStringList parts;
    const auto add = [&parts](const char* text, std::int64_t many) {
        if (many > 0) parts << yearGoodsSay(text, static_cast<int>(many));
    };
    add("%n given", out.given);
    add("%n kept", out.kept);
    add("%n broken", out.broken);
    add("%n came back", out.cameBack);
    add("%n sold without a price", out.unpriced);
    return parts.join(QStringLiteral(", "));
}

QString howOut(OutHow how) { return fromUtf8(word(how)); }

/// What left the shelf of each kind, the fairs' tables among it.
std::map<std::int64_t, std::vector<AccountRecord>> outRecords(const Read& file,
                                                              const Sales& sales) {
    std::map<std::int64_t, std::vector<AccountRecord>> records;
    const auto count = [](std::int64_t many, OutHow how) {
        return QStringLiteral("%1 %2").arg(many).arg(howOut(how));
    };
    for (const GoingOut& out : file.where<GoingOut>(
             {isFrom("on_day", *makeDay(sales.year, 1, 1)), isUpTo("on_day", sales.until)})) {
        if (!out.kind) continue;
        QStringList said;
        if (out.each) said << yearGoodsSay("%1 each").arg(moneyText(*out.each, sales.currency));
        if (!out.place.empty()) said << fromUtf8(out.place);
        if (!out.note.empty()) said << fromUtf8(out.note);
        records[out.kind->number].push_back(
            {out.on, fromUtf8(nameOf(file, GoodsKind::table, out.kind->number)),
             count(out.count ? out.count->value() : 0, out.how), said.join(QStringLiteral(", "))});
    }
    for (const FairSheet& fair : sales.fairs)
        for (const FairRow& row : fair.rows) {
            const auto add = [&](OutHow how, std::int64_t many) {
                if (many > 0)
                    records[row.kind.id.number].push_back(
                        {fair.fair.on, fromUtf8(row.kind.name.text()), count(many, how),
                         fromUtf8(fair.fair.name.text())});
            };
            add(OutHow::Sold, row.sold.value_or(0));
            add(OutHow::Given, row.line.given ? row.line.given->value() : 0);
            add(OutHow::Broken, row.line.broken ? row.line.broken->value() : 0);
        }
    for (auto& [kind, list] : records)
        std::stable_sort(
            list.begin(), list.end(),
            [](const AccountRecord& a, const AccountRecord& b) { return a.on < b.on; });
    return records;
}

void addBulkOut(const Read& file, AccountSection& section, const Sales& sales) {
    const BulkTotals& bulk = sales.bulk;
    if (!bulk.any) return;
    AccountLine line;
    line.name = yearGoodsSay("honey in bulk");
    line.figure = massFigure(accountGrams(bulk.sold - bulk.cameBack), How::Weighed);
    line.unit = massUnit();
    QStringList about;
    const auto add = [&about](const QString& text, Mass mass) {
        if (mass > Mass()) about << text.arg(massText(accountGrams(mass), How::Weighed));
    };
    add(yearGoodsSay("%1 given"), bulk.given);
    add(yearGoodsSay("%1 kept"), bulk.kept);
    add(yearGoodsSay("%1 spilled"), bulk.broken);
    about << yearGoodsSay("takings %1").arg(moneyText(bulk.takings, sales.currency));
    line.note = about.join(QStringLiteral(", "));
    for (const GoingOut& out : file.where<GoingOut>(
             {isFrom("on_day", *makeDay(sales.year, 1, 1)), isUpTo("on_day", sales.until)})) {
        const auto middle = out.mass ? out.mass->middle() : std::nullopt;
        if (out.kind) continue;
        line.records.push_back({out.on, howOut(out.how),
                                middle ? massText(*middle, out.mass->how) : QStringLiteral("?"),
                                fromUtf8(out.place)});
        if (middle) line.how = line.how ? weaker(*line.how, out.mass->how) : out.mass->how;
    }
    note(&line.working, "bulk_sold", accountGrams(bulk.sold), "g");
    note(&line.working, "bulk_back", accountGrams(bulk.cameBack), "g",
         "what came back is taken off");
    section.lines.push_back(std::move(line));
}

QString retiredText(Retired how) {
    switch (how) {
        case Retired::Melted:
            return yearGoodsSay("melted");
        case Retired::Burnt:
            return yearGoodsSay("burnt");
        case Retired::Sold:
            return yearGoodsSay("sold");
        case Retired::Missing:
            break;
    }
    return yearGoodsSay("found missing");
}

void addCombGone(const Read& file, AccountSection& section, int year, Day until) {
    // By what became of them and their kind; day by day among the records.
    std::map<std::pair<Retired, std::int64_t>, std::map<Day, std::int64_t>> gone;
    for (const Frame& frame : file.where<Frame>(
             {isFrom("retired_on", *makeDay(year, 1, 1)), isUpTo("retired_on", until)}))
        if (frame.retired && frame.retiredOn)
            ++gone[{*frame.retired, frame.kind.number}][*frame.retiredOn];
    for (const auto& [what, byDay] : gone) {
        const auto kind = file.find(Id<FrameKind>{what.second});
        if (!kind) continue;
        AccountLine line;
        std::int64_t many = 0;
        for (const auto& [day, count] : byDay) {
            many += count;
            line.records.push_back(
                {day, retiredText(what.first), framesText(count, *kind), QString()});
        }
        line.name = QStringLiteral("%1, %2").arg(frameKindText(*kind), retiredText(what.first));
        line.figure = QString::number(many);
        line.how = How::Counted;
        note(&line.working, "combs_gone", static_cast<double>(many), "", "day by day");
        section.lines.push_back(std::move(line));
    }
}

void addBoxesGone(const Read& file, AccountSection& section, int year, Day until) {
    AccountLine line;
    line.name = yearGoodsSay("boxes gone");
    for (const BoxMove& move :
         file.where<BoxMove>({isFrom("on_day", *makeDay(year, 1, 1)), isUpTo("on_day", until)})) {
        if (move.toPlace != BoxPlace::Gone) continue;
        const auto box = file.find(move.box);
        const auto kind = box ? file.find(box->kind) : std::nullopt;
        line.records.push_back({move.on, fromUtf8(nameOf(file, Box::table, move.box.number)),
                                kind ? fromUtf8(kind->name.text()) : QString(),
                                box ? fromUtf8(box->note) : QString()});
    }
    if (line.records.empty()) return;
    line.figure = QString::number(line.records.size());
    line.how = How::Counted;
    note(&line.working, "boxes_gone", static_cast<double>(line.records.size()), "");
    section.lines.push_back(std::move(line));
}

void addCounts(const Read& file, AccountSection& section, int year, Day until) {
    std::map<std::int64_t, std::vector<EquipmentCount>> counts;
    for (EquipmentCount& count : file.where<EquipmentCount>(
             {isFrom("on_day", *makeDay(year, 1, 1)), isUpTo("on_day", until)}))
        counts[count.equipment.number].push_back(std::move(count));
    for (auto& [id, list] : counts) {
        const auto thing = file.find(Id<Equipment>{id});
        if (!thing) continue;
        std::stable_sort(
            list.begin(), list.end(),
            [](const EquipmentCount& a, const EquipmentCount& b) { return a.on < b.on; });
        const EquipmentCount& last = list.back();
        AccountLine line;
        line.name = fromUtf8(word(thing->item));
        if (!thing->name.empty()) line.name += QStringLiteral(", ") + fromUtf8(thing->name);
        line.figure = QString::number(last.onHand.value());
        line.how = How::Counted;
        QStringList about{yearGoodsSay("in the shed on %1").arg(dayAndMonth(last.on))};
        if (last.inRepair && last.inRepair->value() > 0)
            about << yearGoodsSay("%n in repair", static_cast<int>(last.inRepair->value()));
        if (last.lent && last.lent->value() > 0)
            about << yearGoodsSay("%n lent", static_cast<int>(last.lent->value()));
        line.note = about.join(QStringLiteral(", "));
        for (const EquipmentCount& each : list) {
            line.records.push_back(
                {each.on, line.name, QString::number(each.onHand.value()), fromUtf8(each.why)});
            note(&line.working, "in_shed", static_cast<double>(each.onHand.value()), "",
                 isoText(each.on));
        }
        section.lines.push_back(std::move(line));
    }
}

}  // namespace

AccountSection waxSection(const Read& file, const WaxYear& wax, Day until) {
    AccountSection section;
    section.id = QStringLiteral("wax");
    section.title = yearGoodsSay("Wax");
    addRawWax(file, section, wax, until);
    addMelt(file, section, wax, until);
    addClean(file, section, wax, until);
    addWaxUsed(file, section, wax.year, until);
    if (section.lines.empty() && wax.moved.openingG <= 0) {
        section.note = yearGoodsSay("No wax is written down for this year.");
        return section;
    }
    Working balance;
    static_cast<void>(waxYear(file, wax.year, until, &balance));
    if (wax.balance) {
        AccountLine left = waxAccountLine(yearGoodsSay("in blocks on %1").arg(dayAndMonth(until)),
                                          wax.balance->inStockG, How::ByDifference);
        left.strong = true;
        left.sums = true;
        left.note = yearGoodsSay("what was there and came less what went");
        note(&left.working, "wax_opening_g", wax.moved.openingG, "g");
        note(&left.working, "wax_cast_g", wax.moved.castG, "g");
        note(&left.working, "wax_brought_g", wax.moved.broughtG, "g");
        note(&left.working, "wax_poured_g", wax.moved.pouredG, "g");
        note(&left.working, "wax_given_g", wax.moved.givenG, "g");
        note(&left.working, "wax_lost_away_g", wax.moved.lostG, "g");
        note(&left.working, "wax_stock_g", wax.balance->inStockG, "g", "in − out");
        section.lines.push_back(std::move(left));
    } else {
        section.note = yearGoodsSay("More went out than there was: a block is not written down.");
    }
    if (wax.per100 && wax.clean > Mass() && wax.crop) {
        AccountLine of;
        of.name = yearGoodsSay("of the honey");
        of.figure =
            QLocale().toString(accountGrams(wax.clean) / accountGrams(*wax.crop) * 100.0, 'f', 1);
        of.unit = QStringLiteral("%");
        of.note = yearGoodsSay("clean blocks of the year to its honey");
        for (const Working::Step& step : balance.steps)
            if (step.what == "wax_per_100_honey" || step.what == "wax_clean_g")
                of.working.steps.push_back(step);
        section.lines.push_back(std::move(of));
    }
    return section;
}

AccountSection candlesSection(const Read& file, int year, Day until) {
    AccountSection section;
    section.id = QStringLiteral("candles");
    section.title = yearGoodsSay("Candles poured");
    struct PouredYear {
        std::int64_t good = 0, failed = 0, seconds = 0;
    };
    std::map<std::int64_t, std::pair<PouredYear, AccountLine>> kinds;
    for (const Pour& pour :
         file.where<Pour>({isFrom("on_day", *makeDay(year, 1, 1)), isUpTo("on_day", until)})) {
        auto& [sum, line] = kinds[pour.kind.number];
        sum.good += pour.good.value();
        sum.failed += pour.failed ? pour.failed->value() : 0;
        sum.seconds += pour.seconds ? pour.seconds->value() : 0;
        note(&line.working, "candle_pieces", static_cast<double>(pour.good.value()), "",
             isoText(pour.on));
        line.records.push_back({pour.on, fromUtf8(nameOf(file, Mould::table, pour.mould.number)),
                                QString::number(pour.good.value()), fromUtf8(pour.note)});
    }
    std::int64_t all = 0;
    for (auto& [id, kind] : kinds) {
        auto& [sum, line] = kind;
        all += sum.good;
        line.name = fromUtf8(nameOf(file, GoodsKind::table, id));
        line.figure = QString::number(sum.good);
        line.how = How::Counted;
        QStringList about;
        if (sum.seconds > 0) about << yearGoodsSay("%n seconds", static_cast<int>(sum.seconds));
        if (sum.failed > 0)
            about << yearGoodsSay("%n failed, back to the pot", static_cast<int>(sum.failed));
        line.note = about.join(QStringLiteral(", "));
        note(&line.working, "candle_pieces", static_cast<double>(sum.good), "", "sum");
        section.lines.push_back(std::move(line));
    }
    if (section.lines.empty())
        section.note = yearGoodsSay("No candle was poured.");
    else if (section.lines.size() > 1) {
        AccountLine sum;
        sum.name = yearGoodsSay("all");
        sum.figure = QString::number(all);
        sum.how = How::Counted;
        sum.strong = true;
        sum.sums = true;
        for (const AccountLine& line : section.lines)
            for (const AccountRecord& record : line.records) sum.records.push_back(record);
        note(&sum.working, "candle_pieces", static_cast<double>(all), "", "sum");
        section.lines.push_back(std::move(sum));
    }
    return section;
}

AccountSection salesSection(const Read& file, const Sales& sales) {
    AccountSection section;
    section.id = QStringLiteral("sales");
    section.title = yearGoodsSay("Out of the door");
    auto records = outRecords(file, sales);
    const auto takings = [&](const OutTotals& out) {
        return yearGoodsSay("takings %1").arg(moneyText(out.takings, sales.currency));
    };
    for (const KindTotals& kind : sales.kinds) {
        AccountLine line;
        line.name = fromUtf8(kind.kind.name.text());
        line.figure = QString::number(kind.out.sold);
        line.unit = yearGoodsSay("sold");
        line.how = How::Counted;
        const QString others = outText(kind.out);
        line.note = others.isEmpty() ? takings(kind.out)
                                     : QStringLiteral("%1; %2").arg(takings(kind.out), others);
        line.records = records[kind.kind.id.number];
        note(&line.working, "goods_sold", static_cast<double>(kind.out.sold), "",
             "at the door and at fairs");
        note(&line.working, "goods_takings", kind.out.takings.whole(), sales.currency,
             "sold · price − paid back");
        section.lines.push_back(std::move(line));
    }
    addBulkOut(file, section, sales);
    if (section.lines.empty()) {
        section.note = yearGoodsSay("Nothing went out by what is written down.");
        return section;
    }
    AccountLine sum;
    sum.name = yearGoodsSay("takings");
    const Money all = sales.all.takings + sales.bulk.takings;
    sum.figure = moneyFigure(all);
    sum.unit = fromUtf8(sales.currency);
    sum.strong = true;
    sum.sums = true;
    const auto unpriced = sales.all.unpriced + sales.bulk.unpriced;
    if (unpriced > 0)
        sum.note = yearGoodsSay("%n sold and no price written down: not in it",
                                static_cast<int>(unpriced));
    for (const AccountLine& line : section.lines)
        for (const AccountRecord& record : line.records) sum.records.push_back(record);
    std::stable_sort(sum.records.begin(), sum.records.end(),
                     [](const AccountRecord& a, const AccountRecord& b) { return a.on < b.on; });
    note(&sum.working, "goods_takings", sales.all.takings.whole(), sales.currency, "goods");
    note(&sum.working, "goods_takings", sales.bulk.takings.whole(), sales.currency, "in bulk");
    note(&sum.working, "goods_takings", all.whole(), sales.currency, "sum");
    section.lines.push_back(std::move(sum));
    return section;
}

AccountSection equipmentSection(const Read& file, int year, Day until) {
    AccountSection section;
    section.id = QStringLiteral("equipment");
    section.title = yearGoodsSay("Comb, boxes and equipment");
    addCombGone(file, section, year, until);
    addBoxesGone(file, section, year, until);
    addCounts(file, section, year, until);
    if (section.lines.empty())
        section.note = yearGoodsSay("No comb or box went, and no stock was taken.");
    return section;
}

}  // namespace combwright
