#include "core/places/pages/goods/label_pages.h"

#include <QCoreApplication>
#include <QDate>
#include <QLocale>
#include <functional>

#include "core/exchange/qr_code.h"
#include "core/places/pages/honey_room/room_paper.h"
#include "core/words/paper_mark.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString labelPhrase(const char* text) { return QCoreApplication::translate("labels", text); }

LabelsBlock blockOf(const LabelSheet& sheet) {
    LabelsBlock block;
    block.paper = fromUtf8(sheet.grid.paper);
    block.paperWidthMm = sheet.paper.widthMm;
    block.paperHeightMm = sheet.paper.heightMm;
    block.cellWidthMm = sheet.grid.cellWidthMm;
    block.cellHeightMm = sheet.grid.cellHeightMm;
    block.round = sheet.grid.round;
    block.sheets.resize(static_cast<std::size_t>(sheet.sheets));
    for (const LabelAt& each : sheet.placed)
        block.sheets[static_cast<std::size_t>(each.sheet)].push_back(
            {each.leftMm, each.topMm, each.label, {}});
    return block;
}

QString bestBeforeText(Day day) {
    const QDate date(yearOf(day), static_cast<int>(monthOf(day)),
                     static_cast<int>(dayOfMonth(day)));
    return labelPhrase("best before %1").arg(QLocale().toString(date, labelPhrase("d MMM yyyy")));
}

LabelDrawn drawn(const JarLabel& label) {
    LabelDrawn drawn;
    drawn.head = labelHead(label);
    drawn.net = labelNet(label);
    const auto add = [&](const std::string& line) {
        if (!line.empty()) drawn.lines << fromUtf8(line);
    };
    // So that none of a what-if is stuck on a jar.
    if (!paperMark().isEmpty()) drawn.lines << paperMark();
    add(label.more);
    add(label.producer);
    add(label.address);
    if (!label.origin.empty()) drawn.lines << labelPhrase("origin: %1").arg(fromUtf8(label.origin));
    drawn.lines << labelPhrase("lot %1").arg(fromUtf8(label.code));
    if (label.bestBefore) drawn.lines << bestBeforeText(*label.bestBefore);
    drawn.caution = infantCaution();
    if (const auto code = qrCode(label.code)) drawn.qr = {code->side, code->dark, qrRim};
    return drawn;
}

/// Of the newest filling, where there is one.
Page ofNewest(const Read& file, Day on, const QString& title,
              const std::function<Page(const LabelSheet&)>& page) {
    if (const auto filling = newestFilling(file, on)) {
        const auto sheet =
            labelSheet(file, {.bottling = *filling, .grid = usualLabelGrid(file, on)}, on);
        if (sheet) return page(*sheet);
    }
    Page none = roomPaper(file, title, dayText(on));
    TextBlock block;
    block.text = labelPhrase("No jar was filled yet.");
    none.blocks.emplace_back(std::move(block));
    return none;
}

QString stateText(LabelWordState state) {
    switch (state) {
        case LabelWordState::There:
            return labelPhrase("on the label");
        case LabelWordState::Lacks:
            return labelPhrase("not on the label");
        case LabelWordState::Yours:
            return labelPhrase("for you to see to");
    }
    return {};
}

QString whenText(const std::string& when) {
    if (when == "always") return labelPhrase("always");
    if (when == "sold") return labelPhrase("where it is sold");
    if (when == "trade") return labelPhrase("sold to a business");
    if (when == "kept") return labelPhrase("for your own books");
    if (when == "voluntary") return labelPhrase("if wished");
    return fromUtf8(when);
}

}  // namespace

QString labelHead(const JarLabel& label) {
    return label.flower.empty() ? labelPhrase("Honey")
                                : labelPhrase("%1 honey").arg(fromUtf8(label.flower));
}

QString labelNet(const JarLabel& label) {
    if (!label.net) return {};
    const QString metric = labelPhrase("%1 g").arg(label.net->grams());
    if (!label.ounces) return metric;
    return labelPhrase("%1 oz (%2)").arg(QLocale().toString(*label.ounces, 'f', 1), metric);
}

Page labelsPage(const LabelSheet& sheet) {
    Page page;
    page.title = labelPhrase("Labels of %1").arg(fromUtf8(sheet.bottling.code.text()));
    LabelsBlock block = blockOf(sheet);
    for (const JarLabel& label : sheet.labels) block.labels.push_back(drawn(label));
    page.blocks.emplace_back(std::move(block));
    return page;
}

Page labelCalibrationPage(const LabelSheet& empty) {
    Page page;
    page.title = labelPhrase("Where the printer puts labels: %1").arg(fromUtf8(empty.grid.id));
    LabelsBlock block = blockOf(empty);
    block.outlines = true;
    for (auto& sheet : block.sheets)
        for (std::size_t i = 0; i < sheet.size(); ++i) sheet[i].corner = QString::number(i + 1);
    block.about = QStringList{
        page.title,
        labelPhrase("Print on plain paper at full size, not fitted to the page. Hold it against a "
                    "sheet of labels and a window."),
        labelPhrase("Where the edges lie to the right of the labels, or below them, measure by how "
                    "many mm and tell it: right %1 mm and down %2 mm are taken back already.")
            .arg(QLocale().toString(empty.rightMm, 'f', 1),
                 QLocale().toString(empty.downMm, 'f', 1))};
    page.blocks.emplace_back(std::move(block));
    return page;
}

Page labelWordsPage(const Read& file, const LabelSheet& sheet, Day on) {
    Page page = roomPaper(
        file,
        labelPhrase("Before labels of %1 are stuck on").arg(fromUtf8(sheet.bottling.code.text())),
        dayText(on));
    TextBlock caution;
    caution.caution = true;
    caution.text = labelPhrase(
        "Honey is not for babies under 12 months, not even cooked or baked: "
        "spores in it can make them gravely ill. It stands on every label.");
    page.blocks.emplace_back(std::move(caution));
    TableBlock table;
    table.title = labelPhrase(
        "What the table reminds of; check your own rules, this is no legal "
        "advice");
    table.columns = {{labelPhrase("when"), 1.2, false},
                     {labelPhrase("what"), 4, false},
                     {labelPhrase("here"), 1.2, false},
                     {labelPhrase("printed where"), 2.4, false}};
    for (const LabelReminder& each : sheet.reminders) {
        TableRow row;
        row.cells.resize(4);
        row.cells[0].text = whenText(each.word.when);
        row.cells[1].text = tableText(each.word.says);
        row.cells[2].text = stateText(each.state);
        row.cells[2].strong = each.state == LabelWordState::Lacks;
        row.cells[3].text = fromUtf8(each.word.source);
        row.cells[3].muted = true;
        table.rows.push_back(std::move(row));
    }
    page.blocks.emplace_back(std::move(table));
    TextBlock told;
    QStringList lines;
    if (!sheet.textSet)
        lines << labelPhrase("Nobody wrote down what stands on your labels yet (set-labels).");
    if (!sheet.flowerGrounds.empty())
        lines << labelPhrase("The flower is your own statement: %1")
                     .arg(fromUtf8(sheet.flowerGrounds));
    lines << labelPhrase("%1 labels on %2 of %3, from cell %4")
                 .arg(sheet.placed.size())
                 .arg(sheet.sheets)
                 .arg(fromUtf8(sheet.grid.id))
                 .arg(sheet.placed.empty() ? 1 : sheet.placed.front().cell);
    told.text = lines.join(QLatin1Char('\n'));
    page.blocks.emplace_back(std::move(told));
    return page;
}

Page newestLabelsPage(const Read& file, Day on) {
    return ofNewest(file, on, labelPhrase("Labels"),
                    [](const LabelSheet& sheet) { return labelsPage(sheet); });
}

Page newestLabelWordsPage(const Read& file, Day on) {
    return ofNewest(file, on, labelPhrase("Before labels are stuck on"),
                    [&](const LabelSheet& sheet) { return labelWordsPage(file, sheet, on); });
}

Page usualCalibrationPage(const Read& file, Day on) {
    const auto empty = emptyLabelSheet(file, usualLabelGrid(file, on), on);
    return empty ? labelCalibrationPage(*empty)
                 : roomPaper(file, labelPhrase("Labels"), dayText(on));
}

}  // namespace combwright
