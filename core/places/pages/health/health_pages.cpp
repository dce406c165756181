#include "core/places/pages/health/health_pages.h"

#include <QCoreApplication>

#include "core/places/pages/health/health_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString healthPage(const char* text) { return QCoreApplication::translate("health_pages", text); }

Page healthSheet(const Read& file, const QString& title, Day on) {
    Page page;
    page.title = title;
    page.day = dayText(on);
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

TextBlock healthNote(const QString& text, bool caution = false) {
    TextBlock block;
    block.text = text;
    block.caution = caution;
    block.small = !caution;
    return block;
}

Cell healthCell(const QString& text, const QString& second = {}, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.second = second;
    cell.strong = strong;
    return cell;
}

TableBlock mitesTable(const std::vector<HiveMites>& hives, const QString& yard) {
    TableBlock table;
    table.title = yard;
    table.columns = {{healthPage("hive"), 0.6, false},
                     {healthPage("sampled"), 1.0, false},
                     {healthPage("found"), 2.6, false},
                     {healthPage("stands"), 1.6, false},
                     {healthPage("what follows"), 2.4, false}};
    for (const HiveMites& each : hives) {
        if (fromUtf8(each.yard.name.text()) != yard) continue;
        const MiteSample* shown = each.sample            ? &*each.sample
                                  : each.samples.empty() ? nullptr
                                                         : &each.samples.front();
        TableRow row;
        Cell found = healthCell(shown ? miteSampleText(*shown) : QString(),
                                shown ? correctedText(*shown) : QString());
        if (shown && shown->rate) found.how = shown->how;
        const bool over =
            each.standing == HiveMites::Standing::Over || each.standing == HiveMites::Standing::At;
        row.cells = {healthCell(fromUtf8(each.hive.mark.text()), {}, true),
                     healthCell(shown ? dayText(shown->finding.on) : healthPage("never")), found,
                     healthCell(miteStandingText(each), {}, over || each.board),
                     healthCell(miteForecastText(each))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

/// What the table of one row a hive has no room for.
QStringList alsoFound(const HiveMites& mites) {
    QStringList parts;
    for (const MiteSample& each : mites.alsoSeen) {
        const bool shown = !mites.sample && !mites.samples.empty() &&
                           mites.samples.front().finding.id == each.finding.id;
        if (!shown) parts << miteSampleText(each) + QStringLiteral(", ") + dayText(each.finding.on);
    }
    for (const Finding& each : mites.otherPests) parts << otherPestText(each);
    return parts;
}

TextBlock alsoBlock(const std::vector<HiveMites>& hives, const QString& yard) {
    QStringList lines;
    for (const HiveMites& each : hives) {
        const QStringList parts = alsoFound(each);
        if (fromUtf8(each.yard.name.text()) == yard && !parts.isEmpty())
            lines << fromUtf8(each.hive.mark.text()) + QStringLiteral(": ") +
                         parts.join(QStringLiteral("; "));
    }
    TextBlock block;
    block.title = healthPage("Also found");
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

TableBlock stockTable(const std::vector<MedicineStock>& stocks, std::optional<double> warmthC) {
    TableBlock table;
    table.title = healthPage("Medicines");
    table.columns = {{healthPage("medicine"), 1.6, false},
                     {healthPage("left"), 1.6, false},
                     {healthPage("label, as you wrote it down"), 2.4, false},
                     {healthPage("published, to be held against your label"), 2.4, false}};
    for (const MedicineStock& each : stocks) {
        const Medicine& medicine = each.medicine;
        QStringList label{labelSupersText(medicine.supers)};
        const QString span = spanText(medicine.inHiveFrom, medicine.inHiveTo);
        label << (span.isEmpty() ? healthPage("days in the hive: not written down")
                                 : healthPage("%1 in the hive").arg(span));
        if (medicine.waitDays)
            label << healthPage("%1 to wait").arg(spanText(medicine.waitDays, medicine.waitDays));
        if (!warmthText(medicine).isEmpty()) label << warmthText(medicine);
        if (!medicine.withdrawal.empty())
            label << healthPage("withdrawal: %1").arg(fromUtf8(medicine.withdrawal));
        if (warmthC) {
            if (const auto window = suits(medicine, *warmthC)) label << windowText(*window);
            if (const auto window = suitsPublished(each, *warmthC))
                label << publishedWindowText(*window);
        }
        QString until;
        if (medicine.expires)
            until =
                (each.expired ? healthPage("was to be used until %1") : healthPage("use until %1"))
                    .arg(dayText(*medicine.expires));
        TableRow row;
        row.cells = {healthCell(fromUtf8(medicine.name.text()), fromUtf8(medicine.active), true),
                     healthCell(leftText(each), until),
                     healthCell(label.join(QStringLiteral("; "))), healthCell(publishedText(each))};
        row.cells[1].strong = each.expired;
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock runningTable(const std::vector<TreatmentLine>& lines, Day on, const QString& title) {
    TableBlock table;
    table.title = title;
    table.columns = {{healthPage("yard"), 1.0, false},      {healthPage("hive"), 0.6, false},
                     {healthPage("medicine"), 1.6, false},  {healthPage("since"), 1.0, false},
                     {healthPage("comes out"), 2.2, false}, {healthPage("supers"), 1.6, false}};
    for (const TreatmentLine& each : lines) {
        TableRow row;
        row.cells = {healthCell(fromUtf8(each.yard.name.text())),
                     healthCell(fromUtf8(each.hive.mark.text()), {}, true),
                     healthCell(fromUtf8(each.medicine.name.text())),
                     healthCell(shortDayText(each.treatment.on)),
                     healthCell(comesOutText(each, on)),
                     healthCell(supersBackText(each))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

QString supersThenText(const TreatmentLine& line) {
    if (line.boxWasOn) return healthPage("a box of this lot was on");
    if (!line.treatment.supersOn) return healthPage("supers: not known");
    return *line.treatment.supersOn ? healthPage("supers on, none of this lot")
                                    : healthPage("supers off");
}

TableBlock behindTable(const std::vector<TreatmentLine>& lines, Day on) {
    TableBlock table;
    table.title = healthPage("Hives of this lot");
    table.columns = {{healthPage("hive"), 0.6, false},
                     {healthPage("medicine"), 1.6, false},
                     {healthPage("active ingredient"), 1.4, false},
                     {healthPage("given"), 1.0, false},
                     {healthPage("out"), 1.8, false},
                     {healthPage("supers"), 1.8, false}};
    for (const TreatmentLine& each : lines) {
        TableRow row;
        row.cells = {healthCell(fromUtf8(each.hive.mark.text()), {}, true),
                     healthCell(fromUtf8(each.medicine.name.text())),
                     healthCell(fromUtf8(each.medicine.active)),
                     healthCell(dayText(each.treatment.on)),
                     healthCell(comesOutText(each, on)),
                     healthCell(supersThenText(each), {}, each.boxWasOn)};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TextBlock treatedText(const std::vector<TreatedBox>& boxes) {
    TextBlock block;
    block.title = healthPage("Boxes that were on: no honey for people until you clear them");
    QStringList lines;
    for (const TreatedBox& each : boxes) lines << treatedBoxText(each);
    block.text = lines.join(QLatin1Char('\n'));
    return block;
}

}  // namespace

Page mitesPage(const Read& file, const std::vector<HiveMites>& hives, Day on) {
    Page page = healthSheet(file, healthPage("Mites"), on);
    QStringList yards;
    for (const HiveMites& each : hives)
        if (!yards.contains(fromUtf8(each.yard.name.text())))
            yards << fromUtf8(each.yard.name.text());
    if (yards.isEmpty()) page.blocks.push_back(healthNote(healthPage("No hive stands there.")));
    for (const QString& yard : yards) {
        page.blocks.push_back(mitesTable(hives, yard));
        if (TextBlock also = alsoBlock(hives, yard); !also.text.isEmpty())
            page.blocks.push_back(std::move(also));
        for (const HiveMites& each : hives)
            if (fromUtf8(each.yard.name.text()) == yard) {
                page.blocks.push_back(healthNote(miteLineText(each.line, true)));
                break;
            }
    }
    page.blocks.push_back(healthNote(
        healthPage("One sample is rough: the colony may stand anywhere between the two figures, "
                   "and mites clump, so the truth is wider still. A board's fall is held against "
                   "the season and never turned into mites on bees.")));
    page.letters = lettersOf(page);
    return page;
}

Page treatmentsPage(const Read& file, std::optional<Id<Yard>> yard, Day on,
                    std::optional<double> warmthC) {
    Page page = healthSheet(file, healthPage("Medicines and treatments"), on);
    page.blocks.push_back(healthNote(labelIsLaw(), true));
    const auto stocks = medicinesOn(file, on);
    const auto running = runningTreatments(file, yard, on);
    const auto treated = treatedBoxes(file, on);
    if (stocks.empty())
        page.blocks.push_back(healthNote(healthPage("No medicine is written down.")));
    if (!stocks.empty()) page.blocks.push_back(stockTable(stocks, warmthC));
    if (running.empty()) page.blocks.push_back(healthNote(healthPage("No medicine is in a hive.")));
    if (!running.empty())
        page.blocks.push_back(runningTable(running, on, healthPage("In the hives")));
    if (const auto waiting = waitingTreatments(file, yard, on); !waiting.empty())
        page.blocks.push_back(runningTable(waiting, on, healthPage("Out, and supers wait still")));
    if (const auto early = supersTooEarlyIn(file, yard, on); !early.empty()) {
        QStringList lines;
        for (const SuperTooEarly& each : early) lines << tooEarlyText(each);
        TextBlock block = healthNote(lines.join(QLatin1Char('\n')), true);
        block.title = healthPage("Supers on too early: their honey is not for people");
        page.blocks.push_back(std::move(block));
    }
    if (!treated.empty()) page.blocks.push_back(treatedText(treated));
    return page;
}

Page lotTreatmentsPage(const Read& file, Id<Extraction> id) {
    const auto run = file.find(id);
    if (!run) return {};
    Page page = healthSheet(
        file, healthPage("Treatments behind %1").arg(fromUtf8(run->name.text())), run->on);
    const auto treated = treatedInRun(file, id);
    if (!treated.empty()) {
        TextBlock block = treatedText(treated);
        block.caution = true;
        page.blocks.push_back(block);
    }
    const auto behind = treatmentsBehind(file, id);
    if (behind.empty())
        page.blocks.push_back(healthNote(
            healthPage("No treatment of its hives is written down in the year before it.")));
    else
        page.blocks.push_back(behindTable(behind, run->on));
    page.blocks.push_back(healthNote(labelIsLaw()));
    return page;
}

}  // namespace combwright
