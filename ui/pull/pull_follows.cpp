#include "ui/pull/pull_follows.h"

#include <QVBoxLayout>
#include <cmath>

#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QLabel* followsLabel(const char* name, QWidget* parent) {
    auto* label = new QLabel(parent);
    label->setObjectName(QLatin1String(name));
    label->setWordWrap(true);
    label->setTextFormat(Qt::RichText);
    label->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    return label;
}

/// "Hill 7, Creek 5" of the yards something is taken from.
template <class Number>
QString perYard(const PullSheet& sheet, Number number) {
    QStringList yards;
    for (const PullYardRow& yard : sheet.yards)
        if (yard.taken > 0)
            yards << QStringLiteral("%1 %2").arg(fromUtf8(yard.yard.name.text())).arg(number(yard));
    return yards.size() > 1 ? yards.join(QStringLiteral(", ")) : QString();
}

}  // namespace

PullFollows::PullFollows(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(2);
    m_top = followsLabel("follows", this);
    m_bar = new DayBar(session, this);
    m_rest = followsLabel("follows_after", this);
    column->addWidget(m_top);
    column->addWidget(m_bar);
    column->addWidget(m_rest);
}

QString PullFollows::row(const QString& what, const QString& beside, const QString& value,
                         const QString& under) const {
    const QString muted = m_session.look().tone(Tone::Muted).name();
    QString whole = value;
    whole.replace(QLatin1Char(' '), QStringLiteral("&nbsp;"));
    QString html =
        QStringLiteral("<tr><td>%1</td><td align='right'><b>%2</b></td></tr>").arg(what, whole);
    QStringList below;
    if (!beside.isEmpty()) below << beside;
    if (!under.isEmpty()) below << under;
    if (!below.isEmpty())
        html += QStringLiteral("<tr><td colspan='2'><small style='color:%1'>%2</small></td></tr>")
                    .arg(muted, below.join(QStringLiteral(" · ")));
    return html;
}

QString PullFollows::honeyRows(const PullSheet& sheet, const std::optional<KeptPull>& kept) const {
    const double low = std::max(0.0, sheet.honey.grams - sheet.honey.spreadG);
    QStringList under;
    if (const QString sum = honeySumText(sheet); !sum.isEmpty())
        under << tr("%1; frames × fill × a full one.").arg(sum);
    if (sheet.taken > 0 || !sheet.proven)
        under << (sheet.proven
                      ? tr("%1; no choice takes more, proven.").arg(boxesCounted(sheet.taken))
                      : tr("%1; not proven the best, at most %2 more.")
                            .arg(boxesCounted(sheet.taken),
                                 massText(sheet.boundG - sheet.honey.grams, How::Weighed)));
    under << tr("<b>As of today:</b> what the bees bring or eat until then is not in it.");
    QString html = row(
        tr("Honey"),
        sheet.taken > 0 ? tr("%1 to %2")
                              .arg(massFigure(low, How::ByEye),
                                   massFigure(sheet.honey.grams + sheet.honey.spreadG, How::ByEye))
                        : QString(),
        massText(sheet.honey.grams, How::ByEye), under.join(QLatin1Char(' ')));
    if (kept) {
        const QString tone = m_session.look()
                                 .tone(kept->done()                                ? Tone::Ink
                                       : asKept(sheet, *kept) || kept->brought > 0 ? Tone::Good
                                                                                   : Tone::Warn)
                                 .name();
        html += QStringLiteral("<tr><td colspan='2'><b style='color:%1'>%2</b></td></tr>")
                    .arg(tone, tr("Plan %1").arg(keptText(sheet, *kept)));
    }
    return html;
}

QString PullFollows::carryRows(const PullSheet& sheet) const {
    if (sheet.taken == 0) return {};
    QStringList under;
    if (sheet.grossUnknown > 0)
        under << tr("%1 of unknown weight besides.").arg(boxesCounted(sheet.grossUnknown));
    if (sheet.overLift > 0)
        under << QStringLiteral("<b style='color:%1'>%2</b> %3")
                     .arg(m_session.look().tone(Tone::Warn).name(),
                          tr("%1 may weigh over %2.")
                              .arg(boxesCounted(sheet.overLift), liftLimitText()),
                          liftCaution());
    return row(tr("To carry"), tr("honey and wood, assumed"),
               massText(sheet.gross.grams, How::Assumed), under.join(QLatin1Char(' ')));
}

QString PullFollows::boardRows(const PullSheet& sheet) const {
    if (sheet.taken == 0) return {};
    const QString when =
        sheet.boardsIn && !sheet.boardsFor.empty() ? shortDayText(*sheet.boardsIn) : tr("none");
    return row(tr("Clearer boards in"), when == tr("none") ? QString() : tr("at dusk"), when,
               boardsText(sheet));
}

QString PullFollows::hungryText(const PullSheet& sheet) const {
    QStringList names;
    double sum = 0;
    for (const PullYardRow& yard : sheet.yards)
        for (const PullHiveRow& hive : yard.hives)
            if (hive.shortG > 0 && !hive.boxes.empty()) {
                sum += hive.shortG;
                names << QStringLiteral("%1 %2").arg(fromUtf8(hive.hive.mark.text()),
                                                     massFigure(hive.shortG, How::ByEye));
            }
    if (names.isEmpty()) return {};
    return row(tr("To feed"), names.join(QStringLiteral(", ")), massText(sum, How::ByEye));
}

void PullFollows::show(const PullSheet& sheet, const std::optional<KeptPull>& kept) {
    const QString table = QStringLiteral("<table width='100%' cellspacing='3'>");
    QString top = table + honeyRows(sheet, kept) + carryRows(sheet) + boardRows(sheet);
    QString rest = table;
    if (sheet.day && sheet.taken > 0) {
        const DayPlan& day = *sheet.day;
        QStringList loads;
        const QString lots = perYard(sheet, [](const PullYardRow& yard) { return yard.loads; });
        if (!lots.isEmpty()) loads << lots;
        if (day.loadsIfMixed != day.loads) loads << tr("%1 if mixed").arg(day.loadsIfMixed);
        top += row(tr("Loads"), loads.join(QStringLiteral("; ")), QString::number(day.loads));
        top += row(tr("Day"), tr("one uncaps while it spins"), hoursText(day.dayMin));
        rest += QStringLiteral("<tr><td colspan='2'><small style='color:%1'>%2</small></td></tr>")
                    .arg(m_session.look().tone(Tone::Muted).name(), bottleneckText(day));
        QStringList buckets;
        const QString lotBuckets =
            perYard(sheet, [](const PullYardRow& yard) { return yard.buckets; });
        if (!lotBuckets.isEmpty()) buckets << lotBuckets;
        buckets << tr("spare %1").arg(day.bucketsWithSpare - day.buckets);
        rest += row(tr("Buckets"), buckets.join(QStringLiteral(", ")),
                    QString::number(day.bucketsWithSpare));
        rest += row(tr("Jars %1").arg(shownPortion(sheet.jarG).text()),
                    perYard(sheet, [](const PullYardRow& yard) { return yard.jars; }),
                    QString::number(sheet.jars));
    }
    rest += hungryText(sheet);
    m_top->setText(top + QStringLiteral("</table>"));
    m_bar->show(sheet);
    m_rest->setText(rest + QStringLiteral("</table>"));
}

}  // namespace combwright
