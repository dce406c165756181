#include "core/places/pages/trace/trace_page.h"

#include <QCoreApplication>
#include <QLocale>

#include "core/places/pages/honey_room/room_paper.h"
#include "core/places/pages/revision_text.h"
#include "core/places/pages/trace/comb_trace_page.h"
#include "core/places/pages/trace/trace_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString tracePhrase(const char* text) { return QCoreApplication::translate("trace", text); }

TextBlock traceText(const QString& title, const QStringList& lines, bool caution = false) {
    TextBlock block;
    block.title = title;
    block.text = lines.join(QLatin1Char('\n'));
    block.caution = caution;
    return block;
}

Cell traceCell(const QString& text, const QString& second = {}, bool strong = false) {
    Cell cell;
    cell.text = text;
    cell.second = second;
    cell.strong = strong;
    return cell;
}

Cell traceMass(const std::optional<Mass>& mass, How how) {
    if (!mass) return traceCell(tracePhrase("not known"));
    // As fine as it was kept, so that the lines add up under anybody's pencil.
    Cell cell = traceCell(massTold(*mass));
    cell.how = how;
    return cell;
}

QString tracePercent(const std::optional<double>& part) {
    if (!part) return tracePhrase("not known");
    return QLocale().toString(*part * 100.0, 'f', 1);
}

/// Where one row is about all of it, the share of the whole says nothing new.
TableBlock vesselsTable(const QString& title, const std::vector<TracedVessel>& vessels) {
    TableBlock table;
    table.title = title;
    table.columns = {{tracePhrase("bucket or lot"), 2.2, false},
                     {tracePhrase("since"), 1.2, false},
                     {tracePhrase("came into it, %1").arg(massUnit()), 1.2, true},
                     {tracePhrase("of that asked for, %1").arg(massUnit()), 1.4, true},
                     {tracePhrase("share, %"), 0.8, true},
                     {tracePhrase("in it still, %1").arg(massUnit()), 1.2, true}};
    for (const TracedVessel& each : vessels) {
        TableRow row;
        row.cells = {traceCell(fromUtf8(each.name), {}, true),
                     traceCell(dayText(each.on)),
                     traceMass(each.in, each.how),
                     traceMass(each.ofIt, each.how),
                     traceCell(tracePercent(each.part)),
                     traceCell(each.left ? massTold(*each.left) : tracePhrase("not known"))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

QString jarsText(const TracedJars& jars) {
    return tracePhrase("%1 × %2 filled, %3 out, %4 on the shelf by the books")
        .arg(jars.filled)
        .arg(fromUtf8(jars.kind))
        .arg(jars.gone)
        .arg(jars.left);
}

TableBlock fillingsTable(const std::vector<TracedFilling>& fillings) {
    TableBlock table;
    table.title = tracePhrase("Jars, and who has them");
    table.columns = {{tracePhrase("code"), 1.1, false},
                     {tracePhrase("filled"), 1.3, false},
                     {tracePhrase("honey asked for, %1").arg(massUnit()), 1.2, true},
                     {tracePhrase("what became of them"), 4.4, false}};
    for (const TracedFilling& each : fillings) {
        TableRow head;
        head.group = true;
        QStringList jars;
        for (const TracedJars& kind : each.jars) jars << jarsText(kind);
        head.cells = {
            traceCell(fromUtf8(each.bottling.code.text()), {}, true),
            traceCell(dayText(each.bottling.on), tracePhrase("from %1").arg(fromUtf8(each.from))),
            traceMass(each.ofIt, How::Counted), traceCell(jars.join(QStringLiteral("; ")))};
        table.rows.push_back(std::move(head));
        for (const TracedOut& out : each.out) {
            TableRow row;
            row.cells = {traceCell({}), traceCell(shortDayText(out.on, each.bottling.on)),
                         traceCell({}), traceCell(tracedOutText(out))};
            table.rows.push_back(std::move(row));
        }
        for (const Complaint& complaint : each.complaints) {
            TableRow row;
            QString said = tracePhrase("complaint: %1").arg(fromUtf8(complaint.what.text()));
            if (!complaint.who.empty()) said += QStringLiteral(", ") + fromUtf8(complaint.who);
            row.cells = {traceCell({}), traceCell(shortDayText(complaint.on, each.bottling.on)),
                         traceCell({}), traceCell(said, fromUtf8(complaint.became), true)};
            table.rows.push_back(std::move(row));
        }
    }
    return table;
}

TableBlock bulkTable(const std::vector<TracedBulk>& bulk) {
    TableBlock table;
    table.title = tracePhrase("In bulk");
    table.columns = {{tracePhrase("out of"), 2, false},
                     {tracePhrase("day"), 1.2, false},
                     {tracePhrase("what became of it"), 4, false},
                     {tracePhrase("share, %"), 0.8, true}};
    for (const TracedBulk& each : bulk) {
        TableRow row;
        row.cells = {traceCell(fromUtf8(each.from), {}, true), traceCell(dayText(each.out.on)),
                     traceCell(tracedOutText(each.out)), traceCell(tracePercent(each.part))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock blendsTable(const TraceBack& back) {
    TableBlock table;
    table.title = tracePhrase("What went together");
    table.columns = {{tracePhrase("lot"), 1.6, false},
                     {tracePhrase("day"), 1.2, false},
                     {tracePhrase("out of"), 2.4, false},
                     {massUnit(), 1, true}};
    for (const TraceBlend& blend : back.blends)
        for (std::size_t i = 0; i < blend.parts.size(); ++i) {
            TableRow row;
            row.cells = {traceCell(i == 0 ? fromUtf8(blend.lot.name.text()) : QString(), {}, true),
                         traceCell(i == 0 ? dayText(blend.lot.on) : QString()),
                         traceCell(fromUtf8(blend.names[i])),
                         traceMass(blend.parts[i].mass, blend.parts[i].how)};
            table.rows.push_back(std::move(row));
        }
    return table;
}

TableBlock sourcesTable(const TraceBack& back) {
    TableBlock table;
    table.title = tracePhrase("Where it came from");
    table.columns = {{tracePhrase("bucket or lot"), 2.4, false},
                     {massUnit(), 1, true},
                     {tracePhrase("share, %"), 0.8, true}};
    for (const TraceSource& each : back.sources) {
        TableRow row;
        row.cells = {traceCell(fromUtf8(each.name), {}, true), traceMass(each.mass, each.how),
                     traceCell(tracePercent(each.part))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock hivesTable(const TraceRun& run) {
    TableBlock table;
    table.title =
        tracePhrase("%1, %2: hives").arg(fromUtf8(run.run.name.text()), dayText(run.run.on));
    if (!run.yard.empty())
        table.title =
            tracePhrase("%1, %2, %3: hives")
                .arg(fromUtf8(run.run.name.text()), fromUtf8(run.yard), dayText(run.run.on));
    table.columns = {{tracePhrase("hive"), 1.2, false},
                     {massUnit(), 1, true},
                     {tracePhrase("share of the run, %"), 1, true}};
    if (run.revised)
        table.columns.push_back({tracePhrase("when it was closed, %1").arg(massUnit()), 1.4, true});
    for (const TraceHive& each : run.hives) {
        TableRow row;
        row.cells = {traceCell(each.hive ? fromUtf8(each.mark) : tracePhrase("hive not known"), {},
                               each.hive.has_value()),
                     traceMass(each.mass, each.how), traceCell(tracePercent(each.part))};
        if (run.revised)
            row.cells.push_back(each.atClosing ? traceCell(massTold(*each.atClosing))
                                               : traceCell(tracePhrase("the same")));
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock tracedBoxesTable(const TraceRun& run) {
    TableBlock table;
    table.title = tracePhrase("%1: boxes").arg(fromUtf8(run.run.name.text()));
    table.columns = {{tracePhrase("box"), 1.2, false},
                     {tracePhrase("hive"), 1, false},
                     {tracePhrase("stood there since"), 1.4, false},
                     {tracePhrase("came off"), 1.4, false}};
    for (const TraceBox& each : run.boxes) {
        TableRow row;
        row.cells = {traceCell(fromUtf8(each.mark), {}, true),
                     traceCell(each.hive.empty() ? tracePhrase("not known") : fromUtf8(each.hive)),
                     traceCell(each.on ? dayText(*each.on) : tracePhrase("not known")),
                     traceCell(each.off  ? dayText(*each.off)
                               : each.on ? tracePhrase("not written down")
                                         : tracePhrase("not known"))};
        table.rows.push_back(std::move(row));
    }
    return table;
}

TableBlock medicinesTable(const TraceRun& run) {
    TableBlock table;
    table.title =
        tracePhrase("%1: given to its hives in the year before").arg(fromUtf8(run.run.name.text()));
    table.columns = {{tracePhrase("hive"), 0.8, false},
                     {tracePhrase("medicine"), 1.6, false},
                     {tracePhrase("given"), 1.2, false},
                     {tracePhrase("out"), 1.2, false},
                     {tracePhrase("boxes"), 2.2, false}};
    for (const TraceMedicine& each : run.medicines) {
        const Treatment& given = each.line.treatment;
        TableRow row;
        row.cells = {traceCell(fromUtf8(each.hive), {}, true),
                     traceCell(fromUtf8(each.line.medicine.name.text()),
                               fromUtf8(each.line.medicine.active)),
                     traceCell(dayText(given.on)),
                     traceCell(given.out ? dayText(*given.out) : tracePhrase("not written down")),
                     traceCell(traceBoxesOnText(each), {}, each.boxesOn > 0)};
        table.rows.push_back(std::move(row));
    }
    return table;
}

void addForward(const TraceForward& forward, bool ofHoney, Page& page) {
    if (forward.starts.empty())
        page.blocks.emplace_back(traceText(
            {}, {tracePhrase("None of its honey is in a bucket that was written down.")}));
    if (!forward.fillings.empty()) page.blocks.emplace_back(fillingsTable(forward.fillings));
    if (!forward.bulk.empty()) page.blocks.emplace_back(bulkTable(forward.bulk));
    if (!forward.starts.empty() && forward.fillings.empty() && forward.bulk.empty())
        page.blocks.emplace_back(traceText(
            {}, {tracePhrase("None of it was filled into jars, and none went out in bulk.")}));
    if (!forward.starts.empty())
        page.blocks.emplace_back(
            vesselsTable(ofHoney ? tracePhrase("It is in") : tracePhrase("Its honey went into"),
                         forward.starts));
    if (!forward.lots.empty())
        page.blocks.emplace_back(vesselsTable(tracePhrase("And from there into"), forward.lots));
}

void addBack(const TraceBack& back, Page& page) {
    page.blocks.emplace_back(sourcesTable(back));
    if (!back.blends.empty()) page.blocks.emplace_back(blendsTable(back));
    for (const TraceRun& run : back.runs) {
        if (!run.hives.empty()) page.blocks.emplace_back(hivesTable(run));
        const QStringList revised = revisionTexts(fromUtf8(run.run.name.text()), run.revisions);
        if (run.revised)
            page.blocks.emplace_back(traceText(
                tracePhrase("%1 was revised").arg(fromUtf8(run.run.name.text())), revised));
        if (!run.boxes.empty()) page.blocks.emplace_back(tracedBoxesTable(run));
        if (!run.medicines.empty())
            page.blocks.emplace_back(medicinesTable(run));
        else
            page.blocks.emplace_back(traceText(
                {}, {tracePhrase("%1: no treatment of its hives is written down in the year "
                                 "before it.")
                         .arg(fromUtf8(run.run.name.text()))}));
    }
}

}  // namespace

Page tracePage(const Read& file, const Trace& traced) {
    Page page =
        roomPaper(file, tracePhrase("Trace of %1").arg(fromUtf8(traced.name)), dayText(traced.on));
    QStringList held;
    for (const TraceHold& each : traced.holds) held << traceHoldText(each);
    if (!held.isEmpty())
        page.blocks.emplace_back(
            traceText(tracePhrase("Held back: none of it goes out"), held, true));
    if (const QString treated = treatedShareText(traced.treated); !treated.isEmpty())
        page.blocks.emplace_back(traceText({}, {treated}, true));
    if (traced.comb)
        addCombTrace(*traced.comb, traced.on, page);
    else
        addForward(traced.forward, traced.back.has_value(), page);
    if (traced.back) addBack(*traced.back, page);
    QStringList unknown;
    for (const TraceUnknown& each : traced.unknown) unknown << traceGapText(each);
    if (traced.comb) unknown << combGapTexts(*traced.comb);
    page.blocks.emplace_back(traceText(
        tracePhrase("What cannot be known"),
        unknown.isEmpty() ? QStringList{tracePhrase("Nothing is missing in the records asked.")}
                          : unknown));
    QStringList kept;
    for (const KeptSheet& each : traced.kept) kept << dayText(each.on);
    if (!kept.isEmpty())
        page.blocks.emplace_back(
            traceText({}, {tracePhrase("Kept as it was printed on: %1. What reads otherwise today "
                                       "was put right since.")
                               .arg(kept.join(QStringLiteral("; ")))}));
    page.letters = lettersOf(page);
    return page;
}

Page newestTracePage(const Read& file, Day on) {
    const auto of = newestTraced(file, on);
    const auto traced = of ? trace(file, *of, on) : std::nullopt;
    if (traced) return tracePage(file, *traced);
    Page page = roomPaper(file, tracePhrase("Trace"), dayText(on));
    page.blocks.emplace_back(traceText({}, {tracePhrase("No honey is written down yet.")}));
    return page;
}

Page keptSheetPage(const Read& file, const KeptSheet& sheet) {
    Page page = roomPaper(file,
                          tracePhrase("%1 of %2, as it was printed")
                              .arg(word(sheet.sheet.text()), fromUtf8(sheet.subject.text())),
                          dayText(sheet.on));
    page.blocks.emplace_back(traceText({}, {fromUtf8(sheet.text)}));
    return page;
}

}  // namespace combwright
