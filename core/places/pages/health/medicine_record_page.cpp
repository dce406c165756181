// The medicine record and the inspector's list: what was bought, given to which colony and disposed
// of, kept for as long as the code of the place asks.
#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/places/health/medicine_record.h"
#include "core/places/pages/health/health_pages.h"
#include "core/places/pages/health/health_words.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString recordSay(const char* text) { return QCoreApplication::translate("health_pages", text); }

Page recordSheet(const Read& file, const QString& title, Day from, Day on) {
    Page page;
    page.title = title;
    page.day = recordSay("%1 to %2").arg(dayText(from), dayText(on));
    if (const auto season = file.first<SeasonInfo>({})) {
        page.keeper = fromUtf8(season->name.text());
        page.invented = season->invented.value_or(false);
    }
    return page;
}

Cell recordCell(const QString& text, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.strong = strong;
    return cell;
}

TextBlock recordNote(const QString& title, const QString& text, bool small = false) {
    TextBlock block;
    block.title = title;
    block.text = text;
    block.small = small;
    return block;
}

QString orNotWritten(const std::string& text) {
    return text.empty() ? recordSay("not written down") : fromUtf8(text);
}

QString amountGiven(const std::optional<Number>& amount, const Medicine& medicine) {
    return amount ? amountText(amount->value(), medicine) : recordSay("not written down");
}

QString keptText(const MedicineRecord& record) {
    return recordSay("To be kept %1 years (%2). %3")
        .arg(QLocale().toString(record.years, 'g', 4), fromUtf8(record.yearsSource), labelIsLaw());
}

TextBlock boughtText(const MedicineEntry& entry) {
    const Medicine& medicine = entry.stock.medicine;
    QStringList parts;
    parts << recordSay("active ingredient: %1").arg(orNotWritten(medicine.active));
    parts << recordSay("batch: %1").arg(orNotWritten(medicine.batch));
    parts << recordSay("use until: %1")
                 .arg(medicine.expires ? dayText(*medicine.expires)
                                       : recordSay("not written down"));
    parts << recordSay("bought %1 of %2, %3")
                 .arg(medicine.boughtOn ? dayText(*medicine.boughtOn)
                                        : recordSay("on a day not written down"),
                      orNotWritten(medicine.supplier), leftText(entry.stock));
    parts << recordSay("withdrawal period: %1").arg(orNotWritten(medicine.withdrawal));
    if (!medicine.prescribedBy.empty())
        parts << recordSay("prescribed by %1").arg(fromUtf8(medicine.prescribedBy));
    parts << recordSay("receipt: %1").arg(orNotWritten(medicine.proof));
    return recordNote(fromUtf8(medicine.name.text()), parts.join(QStringLiteral("; ")));
}

TableBlock givenTable(const std::vector<RecordLine>& lines, bool withMedicine) {
    TableBlock table;
    table.columns = {{recordSay("given"), 1.1, false},  {recordSay("out"), 1.1, false},
                     {recordSay("yard"), 1.0, false},   {recordSay("hive"), 0.6, false},
                     {recordSay("colony"), 1.2, false}, {recordSay("amount"), 0.9, false},
                     {recordSay("supers"), 0.8, false}, {recordSay("withdrawal"), 1.2, false},
                     {recordSay("by"), 0.8, false}};
    if (withMedicine)
        table.columns.insert(table.columns.begin(), {recordSay("medicine"), 1.6, false});
    table.rowMm = 6;
    for (const RecordLine& each : lines) {
        const Treatment& given = each.line.treatment;
        TableRow row;
        row.cells = {recordCell(dayText(given.on)),
                     recordCell(!given.out ? recordSay("in still, or not written down")
                                : *given.out == given.on ? recordSay("in one go")
                                                         : dayText(*given.out)),
                     recordCell(fromUtf8(each.line.yard.name.text())),
                     recordCell(fromUtf8(each.line.hive.mark.text()), true),
                     recordCell(each.colony ? recordSay("since %1").arg(dayText(each.colony->since))
                                            : recordSay("none written down")),
                     recordCell(amountGiven(given.amount, each.line.medicine)),
                     recordCell(!given.supersOn   ? recordSay("not known")
                                : *given.supersOn ? recordSay("on")
                                                  : recordSay("off")),
                     recordCell(fromUtf8(given.withdrawal)),
                     recordCell(fromUtf8(given.by))};
        if (withMedicine)
            row.cells.insert(row.cells.begin(),
                             recordCell(fromUtf8(each.line.medicine.name.text())));
        table.rows.push_back(std::move(row));
    }
    return table;
}

TextBlock disposedText(const MedicineEntry& entry) {
    QStringList lines;
    for (const MedicineDisposal& each : entry.disposed)
        lines << recordSay("%1: %2 disposed of, %3")
                     .arg(dayText(each.on), amountGiven(each.amount, entry.stock.medicine),
                          fromUtf8(each.how.text()));
    return recordNote({}, lines.join(QLatin1Char('\n')));
}

BlanksBlock recordSigned() {
    BlanksBlock block;
    block.labels = {recordSay("seen by"), recordSay("on"), recordSay("signature")};
    block.framed = true;
    return block;
}

TableBlock colonyTable(const InspectedYard& yard) {
    TableBlock table;
    QString title = fromUtf8(yard.yard.name.text());
    title += yard.yard.registration.empty()
                 ? recordSay(", registration not written down")
                 : recordSay(", registration %1").arg(fromUtf8(yard.yard.registration));
    if (!yard.yard.place.empty()) title += QStringLiteral(", ") + fromUtf8(yard.yard.place);
    table.title =
        title +
        recordSay(": %1 hives, %2 colonies")
            .arg(yard.hives.size())
            .arg(std::count_if(yard.hives.begin(), yard.hives.end(),
                               [](const InspectedHive& each) { return each.colony.has_value(); }));
    table.columns = {{recordSay("hive"), 0.6, false},
                     {recordSay("colony"), 2.0, false},
                     {recordSay("last opened"), 1.2, false},
                     {recordSay("held"), 2.4, false}};
    table.rowMm = 6;
    for (const InspectedHive& each : yard.hives) {
        QString colony = recordSay("none written down");
        if (each.colony)
            colony = recordSay("%1, since %2")
                         .arg(choiceText(word(each.colony->origin)), dayText(each.colony->since));
        QStringList holds;
        for (const Hold& hold : each.holds)
            holds << recordSay("%1 since %2").arg(choiceText(word(hold.why)), dayText(hold.since));
        TableRow row;
        row.cells = {recordCell(fromUtf8(each.hive.mark.text()), true), recordCell(colony),
                     recordCell(each.opened ? dayText(*each.opened) : recordSay("never")),
                     recordCell(holds.join(QStringLiteral("; ")), true)};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock findingTable(const std::vector<InspectedFinding>& findings) {
    TableBlock table;
    table.title = recordSay("Pests and signs met or looked for");
    table.columns = {{recordSay("day"), 1.1, false},
                     {recordSay("yard"), 1.0, false},
                     {recordSay("hive"), 0.6, false},
                     {recordSay("what"), 1.4, false},
                     {recordSay("found"), 3.4, false}};
    table.rowMm = 6;
    for (const InspectedFinding& each : findings) {
        QStringList found;
        if (each.finding.what == Pest::Varroa)
            found << miteSampleText(each.sample);
        else if (each.finding.level)
            found << choiceText(word(*each.finding.level));
        found << signsText(each.finding.signs) << fromUtf8(each.finding.note);
        found.removeAll(QString());
        TableRow row;
        row.cells = {recordCell(dayText(each.finding.on)), recordCell(fromUtf8(each.yard)),
                     recordCell(fromUtf8(each.hive), true),
                     recordCell(choiceText(word(each.finding.what))),
                     recordCell(found.join(QStringLiteral("; ")))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

}  // namespace

Page medicineRecordPage(const Read& file, Day on) {
    const MedicineRecord record = medicineRecord(file, on);
    Page page = recordSheet(file, recordSay("Medicine record"), record.from, on);
    page.blocks.push_back(recordNote({}, keptText(record)));
    if (record.medicines.empty())
        page.blocks.push_back(recordNote({}, recordSay("No medicine is written down.")));
    for (const MedicineEntry& each : record.medicines) {
        page.blocks.push_back(boughtText(each));
        if (!each.given.empty())
            page.blocks.push_back(givenTable(each.given, false));
        else
            page.blocks.push_back(recordNote({}, recordSay("Given to no hive.")));
        if (!each.disposed.empty()) page.blocks.push_back(disposedText(each));
    }
    page.blocks.push_back(recordSigned());
    return page;
}

Page inspectorPage(const Read& file, Day on) {
    const InspectorList list = inspectorList(file, on);
    Page page = recordSheet(file, recordSay("For the inspector"), list.from, on);
    TextBlock duty = recordNote({}, reportingDuty());
    duty.caution = true;
    page.blocks.push_back(duty);
    for (const InspectedYard& yard : list.yards) page.blocks.push_back(colonyTable(yard));
    QStringList held;
    for (const auto& [what, hold] : list.held)
        held << recordSay("%1: %2, since %3%4")
                    .arg(
                        fromUtf8(what), choiceText(word(hold.why)), dayText(hold.since),
                        hold.note.empty() ? QString() : QStringLiteral("; ") + fromUtf8(hold.note));
    page.blocks.push_back(
        recordNote(recordSay("Held back beside colonies"),
                   held.isEmpty() ? recordSay("nothing") : held.join(QLatin1Char('\n'))));
    if (list.findings.empty())
        page.blocks.push_back(recordNote({}, recordSay("Nothing was looked for or met in the last "
                                                       "year by what is written down.")));
    else
        page.blocks.push_back(findingTable(list.findings));
    if (!list.given.empty()) {
        TableBlock given = givenTable(list.given, true);
        given.title = recordSay("Treatments");
        page.blocks.push_back(given);
    } else {
        page.blocks.push_back(
            recordNote(recordSay("Treatments"), recordSay("none written down in the last year")));
    }
    page.blocks.push_back(recordNote({}, labelIsLaw(), true));
    page.blocks.push_back(recordSigned());
    return page;
}

}  // namespace combwright
