#include "ui/yard/health_page.h"

#include <algorithm>

#include "core/places/pages/health/health_words.h"
#include "core/words/words.h"
#include "ui/yard/health_forms.h"
#include "ui/yard/hive_forms.h"

namespace combwright {
namespace {

std::vector<HiveColumn> healthColumns() {
    return {{HealthPage::tr("mites in 100 bees"), 1.35},
            {HealthPage::tr("against the line"), 1.45},
            {HealthPage::tr("what follows"), 1.5},
            {HealthPage::tr("medicine, supers"), 1.7},
            {HealthPage::tr("held, signs"), 1.2}};
}

/// A day of another year is said with it.
QString dayOf(Day day, Day on) {
    return yearOf(day) == yearOf(on) ? shortDayText(day) : dayText(day);
}

HiveCell mitesCell(const HealthRow& row, Day on) {
    HiveCell cell;
    QStringList notes;
    if (const auto& sample = row.mites.sample) {
        cell.text = rateText(*sample->rate);
        cell.how = letter(sample->how);
        notes << HealthPage::tr("%1 %2, %3 of %4")
                     .arg(choiceText(word(sample->finding.method)), dayOf(sample->finding.on, on))
                     .arg(sample->finding.mites->value->value())
                     .arg(sample->bees);
        if (const QString corrected = correctedText(*sample); !corrected.isEmpty())
            notes << corrected;
    } else {
        cell.text = HealthPage::tr("not sampled");
        cell.tone = Tone::Muted;
    }
    if (row.uncounted)
        notes << HealthPage::tr("%1: %2").arg(shortDayText(row.uncounted->finding.on),
                                              miteSampleText(*row.uncounted));
    if (row.droneBrood)
        notes << HealthPage::tr("%1: %2").arg(shortDayText(row.droneBrood->finding.on),
                                              miteSampleText(*row.droneBrood));
    if (row.board)
        notes << HealthPage::tr("%1: %2").arg(dayOf(row.board->finding.on, on),
                                              miteSampleText(*row.board));
    cell.note = notes.join(QLatin1Char('\n'));
    return cell;
}

/// The line itself only where it is another than that of most hives: that stands above them.
HiveCell lineCell(const HealthRow& row, const QString& usual) {
    HiveCell cell;
    const auto standing = row.mites.standing;
    cell.text = miteStandingText(row.mites);
    if (const QString line = miteLineText(row.mites.line); line != usual) cell.note = line;
    if (standing == HiveMites::Standing::NoSample) {
        cell.tone = Tone::Muted;
        // That it was not sampled stands before it.
        if (!row.mites.board) cell.text = HealthPage::tr("nobody knows");
    }
    if (standing == HiveMites::Standing::At || standing == HiveMites::Standing::Over) {
        cell.tone = Tone::Warn;
        cell.strong = true;
    }
    return cell;
}

HiveCell medicineCell(const HealthRow& row, Day on) {
    HiveCell cell;
    QStringList said;
    QStringList notes;
    for (const TreatmentLine& each : row.running) {
        said << HealthPage::tr("%1 since %2")
                    .arg(fromUtf8(each.medicine.name.text()), dayAndMonth(each.treatment.on));
        notes << comesOutText(each, on);
        if (each.dueOut && on > each.dueOut->to) {
            cell.tone = Tone::Warn;
            cell.strong = true;
        }
    }
    if (row.supers) {
        const QString supers = supersBackText(row.supers->line);
        if (said.isEmpty())
            said << supers;
        else
            notes << supers;
    }
    cell.text = said.join(QLatin1Char('\n'));
    cell.note = notes.join(QLatin1Char('\n'));
    return cell;
}

HiveCell heldCell(const HealthRow& row, Day on) {
    HiveCell cell;
    QStringList said;
    for (const Hold& each : row.holds)
        said << HealthPage::tr("held: %1").arg(choiceText(word(each.why)));
    if (row.other) {
        QStringList parts{choiceText(word(row.other->what))};
        if (row.other->level) parts << choiceText(word(*row.other->level));
        if (const QString signs = signsText(row.other->signs); !signs.isEmpty()) parts << signs;
        cell.note = HealthPage::tr("%1: %2").arg(dayOf(row.other->on, on),
                                                 parts.join(QStringLiteral(", ")));
    }
    cell.text = said.join(QLatin1Char('\n'));
    cell.tone = said.isEmpty() ? Tone::Ink : Tone::Warn;
    cell.strong = !said.isEmpty();
    return cell;
}

}  // namespace

HealthPage::HealthPage(Session& session, QWidget* parent)
    : WorkPage(session, QStringLiteral("health"), healthColumns(), parent) {
    addDeed(tr("Treat"), Qt::Key_T, [this] {
        askToTreat(this, this->session(), yard(), hivesAsked(), on());
        table().setFocus();
    });
    addDeed(tr("Take out"), Qt::Key_O, [this] {
        askToTakeOutMedicine(this, this->session(), yard(), hivesAsked(), on());
        table().setFocus();
    });
    addDeed(tr("Found"), Qt::Key_L, [this] { lookedInto(); });
    addDeed(tr("Hold"), Qt::Key_K, [this] { hold(); });
    addDeed(tr("Bought"), Qt::Key_B, [this] {
        askToBuyMedicine(this, this->session(), on());
        table().setFocus();
    });
    addDeed(tr("Disposed"), Qt::Key_D, [this] {
        askToDisposeMedicine(this, this->session(), on());
        table().setFocus();
    });
    addDeed(tr("Own line"), Qt::Key_I, [this] {
        askForMiteLine(this, this->session(), yard(), on());
        table().setFocus();
    });
    addDeed(tr("Phase day"), Qt::Key_P, [this] {
        askForPhaseDay(this, this->session(), yard(), on());
        table().setFocus();
    });
    addDeed(tr("Tables"), Qt::Key_C, [this] {
        askForTables(this, this->session(), on());
        table().setFocus();
    });
    addDeed(tr("All"), Qt::Key_A, [this] { table().tickAll(); });
    addDeed(tr("Stores"), Qt::Key_F, [this] { Q_EMIT pageAsked(Qt::Key_F); });
    addDeed(tr("Board"), Qt::Key_Escape, [this] { Q_EMIT pageAsked(Qt::Key_Escape); });
    table().setAccessibleName(tr("Health of the hives"));
}

const HealthRow* HealthPage::currentRow() const {
    const int at = table().currentRow();
    return at < 0 || at >= static_cast<int>(m_board.rows.size())
               ? nullptr
               : &m_board.rows[static_cast<std::size_t>(at)];
}

void HealthPage::fill() {
    if (!session().hasSeason()) return;
    m_board = healthBoard(session().read(), yard(), on());
    const QString usual = usualLine();
    std::vector<HiveTableRow> rows;
    for (const HealthRow& row : m_board.rows) {
        HiveTableRow line;
        line.hive = row.mites.hive.id;
        line.mark = fromUtf8(row.mites.hive.mark.text());
        HiveCell follows;
        follows.text = miteForecastShort(row.mites);
        if (!row.lives) follows = {tr("no colony"), {}, Tone::Muted};
        line.cells = {mitesCell(row, on()), lineCell(row, usual), follows, medicineCell(row, on()),
                      heldCell(row, on())};
        rows.push_back(std::move(line));
    }
    setAbove(usual.isEmpty() ? QString() : tr("Line in force: %1.").arg(usual));
    table().show(std::move(rows));
    setCard(tr("Medicines"), cardWords());
}

QString HealthPage::usualLine() const {
    QString usual;
    std::ptrdiff_t most = 0;
    for (const HealthRow& row : m_board.rows) {
        const QString line = miteLineText(row.mites.line);
        const auto many = std::count_if(
            m_board.rows.begin(), m_board.rows.end(),
            [&](const HealthRow& each) { return miteLineText(each.mites.line) == line; });
        if (many <= most) continue;
        most = many;
        usual = line;
    }
    return usual;
}

QString HealthPage::cardWords() const {
    QString text = cardHead(tr("Medicines")) + cardWarn(labelIsLaw());
    int shown = 0;
    for (const MedicineStock& each : m_board.medicines) {
        const Medicine& medicine = each.medicine;
        const auto left = each.use.left();
        if (left && *left <= 0 && *left > -1e-9) continue;
        ++shown;
        text += QStringLiteral("<p style='margin:8px 0 0 0'><b>%1</b>, %2")
                    .arg(fromUtf8(medicine.name.text()).toHtmlEscaped(),
                         leftText(each).toHtmlEscaped());
        QStringList label{labelSupersText(medicine.supers)};
        if (const QString span = spanText(medicine.inHiveFrom, medicine.inHiveTo); !span.isEmpty())
            label << tr("%1 in the hive").arg(span);
        if (medicine.waitDays)
            label << tr("%1 to wait").arg(spanText(medicine.waitDays, medicine.waitDays));
        if (!warmthText(medicine).isEmpty()) label << warmthText(medicine);
        text += QStringLiteral("<br>") + cardMuted(label.join(QStringLiteral("; ")));
        if (medicine.expires)
            text += QStringLiteral("<br>") +
                    (each.expired
                         ? cardWarn(tr("was to be used until %1").arg(dayText(*medicine.expires)))
                         : cardMuted(tr("use until %1").arg(dayText(*medicine.expires))));
        text += QStringLiteral("</p>");
    }
    if (shown == 0)
        text += QStringLiteral("<p>%1</p>")
                    .arg((m_board.medicines.empty()
                              ? tr("None is written down yet. B writes one down as it was bought; "
                                   "what you leave out stays unknown.")
                              : tr("All that was bought is used up. B writes down what you buy."))
                             .toHtmlEscaped());
    if (!m_board.treated.empty()) {
        text += cardHead(tr("Boxes that were on"));
        text += cardWarn(tr("No honey of them for people until you clear them."));
        for (const TreatedBox& each : m_board.treated)
            text += QStringLiteral("<br>") + treatedBoxText(each).toHtmlEscaped();
    }
    if (m_board.notSampled > 0) {
        text += cardHead(tr("Not sampled"));
        text += (m_board.notSampled == 1
                     ? tr("1 hive: nobody knows how it stands. L writes a wash down.")
                     : tr("%1 hives: nobody knows how they stand. L writes a wash down.")
                           .arg(m_board.notSampled))
                    .toHtmlEscaped();
    }
    text += QStringLiteral("<p style='margin:8px 0 0 0'>%1</p>")
                .arg(cardMuted(tr("One sample is rough: the colony may stand anywhere between the "
                                  "two figures in brackets. Signs are no diagnosis.")));
    return text;
}

void HealthPage::lookedInto() {
    if (const HealthRow* row = currentRow())
        askForFinding(this, session(), Hive(row->mites.hive), on());
    table().setFocus();
}

void HealthPage::hold() {
    const HealthRow* row = currentRow();
    if (!row) return;
    const Hive hive = row->mites.hive;
    HeldThing thing;
    thing.hive = hive.id;
    thing.name = tr("the colony in %1").arg(fromUtf8(hive.mark.text()));
    const std::vector<Hold> holds = row->holds;
    if (holds.empty())
        askToHoldBack(this, session(), thing, on());
    else
        askToLiftHold(this, session(), holds.front(), thing.name, on());
    table().setFocus();
}

}  // namespace combwright
