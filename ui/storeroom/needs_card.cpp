#include "ui/storeroom/needs_card.h"

#include <QCoreApplication>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "core/words/kind_words.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"

namespace combwright {
namespace {

constexpr double cardEdge = 14.0;  // px at the base font
constexpr double cardRowGap = 6.0;

QString needWord(const char* text) { return QCoreApplication::translate("needs", text); }

FigureText counted(std::int64_t figure, bool plus = false) {
    return {(plus ? QStringLiteral("+ ") : QString()) + QString::number(figure), {}, 0};
}

/// What is short, told as it is known: a number, its upper end, or nothing to say.
FigureText shortFigure(const std::optional<std::int64_t>& known, std::int64_t atMost) {
    if (known) return counted(*known);
    return {needWord("up to %1").arg(static_cast<qlonglong>(atMost)), {}, '?'};
}

void addPart(std::vector<NeedsLine>& lines, const QString& what, std::int64_t figure, bool plus,
             const QString& note = {}) {
    if (figure != 0) lines.push_back({NeedsLine::Kind::Part, what, note, counted(figure, plus)});
}

void addFrames(std::vector<NeedsLine>& lines, const FrameNeed& need) {
    QString kind = frameKindText(need.kind);
    kind.front() = kind.front().toUpper();
    lines.push_back({NeedsLine::Kind::Head,
                     kind,
                     needWord("%1 places").arg(static_cast<qlonglong>(need.frames.need)),
                     {}});
    addPart(lines, needWord("drawn"), need.use[FrameUse::Drawn], false);
    addPart(lines, needWord("on foundation"), need.use[FrameUse::Foundation], true);
    addPart(lines, needWord("to refit, bare"), need.use[FrameUse::Bare], true);
    addPart(lines, needWord("to repair"), need.use[FrameUse::Repairable], true);
    const std::int64_t usable = need.frames.usable();
    lines.push_back({NeedsLine::Kind::Sum, needWord("usable"), {}, counted(usable)});
    addPart(lines, needWord("held back, not usable"), need.use[FrameUse::Held], false);
    if (need.boxesNotCounted > 0)
        lines.push_back({NeedsLine::Kind::Part,
                         needWord("boxes nobody counted"),
                         {},
                         counted(need.boxesNotCounted),
                         Tone::Warn});
    const auto buy = need.frames.afterRepairs();
    const std::int64_t most = need.frames.afterRepairsAtMost;
    if (most > 0)
        lines.push_back(
            {NeedsLine::Kind::Part, needWord("frames to buy"),
             need.packs ? needWord("%1 packs").arg(static_cast<qlonglong>(*need.packs)) : QString(),
             shortFigure(buy, most), Tone::Warn});
    if (need.sheets > 0)
        lines.push_back({NeedsLine::Kind::Part, needWord("sheets of foundation"),
                         need.sheetsThere
                             ? needWord("%1 there").arg(static_cast<qlonglong>(*need.sheetsThere))
                             : needWord("none counted"),
                         counted(need.sheets)});
}

void addShort(std::vector<NeedsLine>& lines, const QString& what, const Shortage& shortage,
              const QString& note = {}) {
    if (shortage.nowAtMost == 0) return;
    QString repairs = note;
    if (shortage.inRepair > 0)
        repairs =
            needWord("%1 after repairs").arg(static_cast<qlonglong>(shortage.afterRepairsAtMost));
    lines.push_back({NeedsLine::Kind::Part, what, repairs,
                     shortFigure(shortage.now(), shortage.nowAtMost), Tone::Warn});
}

QString gapWordsOf(PlanGap gap) {
    switch (gap) {
        case PlanGap::Plan:
            return needWord(
                "Say what you mean to run next season: splits, supers for each colony, "
                "spare. Then this says what is short.");
        case PlanGap::Splits:
            return needWord("How many splits is not in the plan.");
        case PlanGap::FramesPerSuper:
            return needWord("How many frames hang in a super is not in the plan.");
        case PlanGap::SuperFrame:
            return needWord("Which frame that super takes is not known.");
        case PlanGap::FramesPerSplit:
            return needWord("How many frames a split gets is not in the plan.");
        case PlanGap::BroodFrame:
            return needWord("Which frame that brood box takes is not known.");
    }
    return {};
}

}  // namespace

std::vector<NeedsLine> needsLines(const NextSeason& next) {
    std::vector<NeedsLine> lines;
    if (!next.frames.empty()) addFrames(lines, next.frames.front());
    std::vector<NeedsLine> missing;
    for (const BoxNeed& need : next.boxes)
        addShort(missing, kindText(need.kind.name.text()), need.boxes);
    for (const ItemNeed& need : next.pieces)
        addShort(missing, word(word(need.plan.item)), need.pieces);
    if (!missing.empty()) {
        lines.push_back({NeedsLine::Kind::Head, needWord("Short"), {}, {}});
        lines.insert(lines.end(), missing.begin(), missing.end());
    } else if (next.plan) {
        lines.push_back(
            {NeedsLine::Kind::Words, needWord("No box and no piece is short."), {}, {}});
    }
    for (std::size_t i = 1; i < next.frames.size(); ++i) addFrames(lines, next.frames[i]);
    if (next.cull && next.cull->target > 0) {
        lines.push_back({NeedsLine::Kind::Head, needWord("Brood comb to take out"), {}, {}});
        lines.push_back({NeedsLine::Kind::Part, needWord("the oldest"),
                         next.cull->yearUnknown > 0
                             ? needWord("%1 of unknown year")
                                   .arg(static_cast<qlonglong>(next.cull->yearUnknown))
                             : QString(),
                         counted(next.cull->target)});
    }
    for (const PlanGap gap : next.gaps)
        lines.push_back({NeedsLine::Kind::Words, gapWordsOf(gap), {}, {}});
    return lines;
}

NeedsHead needsHead(const NextSeason& next) {
    if (next.frames.empty()) return {};
    const FrameNeed& need = next.frames.front();
    const std::int64_t usable = need.frames.usable();
    return {{needWord("%1 of %2")
                 .arg(static_cast<qlonglong>(std::min(usable, need.frames.need)))
                 .arg(static_cast<qlonglong>(need.frames.need)),
             {},
             0},
            needWord("frames usable\nfor next season")};
}

NeedsCard::NeedsCard(Session& session, QWidget* parent) : QFrame(parent), m_session(session) {
    setObjectName(QStringLiteral("needs_card"));
    setProperty("card", true);
    setAccessibleName(tr("Next season"));
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Minimum);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    connect(&session, &Session::lookChanged, this, [this] { updateGeometry(); });
}

void NeedsCard::show(const NextSeason& next) {
    m_lines = needsLines(next);
    m_lines.insert(m_lines.begin(), {NeedsLine::Kind::Head,
                                     QString::number(next.year),
                                     next.plan ? needWord("%1 colonies, %2 splits")
                                                     .arg(static_cast<qlonglong>(next.colonies))
                                                     .arg(static_cast<qlonglong>(next.splits))
                                               : needWord("not planned yet"),
                                     {}});
    QStringList said;
    for (const NeedsLine& each : m_lines)
        said << QStringLiteral("%1 %2 %3")
                    .arg(each.what, each.note, spoken(each.figure))
                    .simplified();
    setAccessibleDescription(said.join(QStringLiteral(". ")));
    updateGeometry();
    update();
}

double NeedsCard::lineHeight(const NeedsLine& line, double width) const {
    const Look& look = m_session.look();
    const double step = lineStep(look.font(TextSize::Body)) + look.px(3.0);
    if (line.kind == NeedsLine::Kind::Head)
        return lineStep(look.font(TextSize::Head, true)) + look.px(cardRowGap + 4.0);
    if (line.kind == NeedsLine::Kind::Sum) return step + look.px(cardRowGap);
    if (line.kind == NeedsLine::Kind::Words)
        return QFontMetricsF(look.font(TextSize::Note))
                   .boundingRect(QRectF(0, 0, width, 1e6), Qt::TextWordWrap, line.what)
                   .height() +
               look.px(cardRowGap);
    return step;
}

int NeedsCard::heightForWidth(int width) const {
    const double edge = m_session.look().px(cardEdge);
    double height = 2 * edge;
    for (const NeedsLine& each : m_lines)
        height += lineHeight(each, static_cast<double>(width) - 2 * edge);
    return static_cast<int>(std::ceil(height));
}

QSize NeedsCard::minimumSizeHint() const {
    const int least = m_session.look().space(200);
    return {least, heightForWidth(std::max(width(), least))};
}

void NeedsCard::paintEvent(QPaintEvent* event) {
    QFrame::paintEvent(event);
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double edge = look.px(cardEdge);
    const double left = edge;
    const double right = width() - edge;
    double y = edge;
    for (const NeedsLine& each : m_lines) {
        const double height = lineHeight(each, right - left);
        const bool head = each.kind == NeedsLine::Kind::Head;
        const bool sum = each.kind == NeedsLine::Kind::Sum;
        if (each.kind == NeedsLine::Kind::Words) {
            painter.setFont(look.font(TextSize::Note));
            painter.setPen(look.tone(Tone::Muted));
            painter.drawText(QRectF(left, y, right - left, height), Qt::TextWordWrap, each.what);
            y += height;
            continue;
        }
        const double base = y + height - look.px(head ? 7.0 : sum ? 8.0 : 5.0);
        FigureStyle style;
        style.bold = true;
        style.tone = each.tone;
        const double figure =
            each.figure.figure.isEmpty()
                ? 0.0
                : measureFigures({each.figure}, style, look).width() + look.px(8.0);
        const QFont font = look.font(head ? TextSize::Head : TextSize::Body, head);
        const QString what = fitted(each.what, font, right - left - figure);
        paintText(painter, {left, base}, what, font, look.tone(Tone::Ink));
        const double noteLeft = left + textWidth(what, font) + look.px(8.0);
        const QFont note = look.font(TextSize::Note);
        if (!each.note.isEmpty())
            paintText(painter, {head ? right : noteLeft, base},
                      fitted(each.note, note, right - figure - noteLeft), note,
                      look.tone(Tone::Muted), head ? Qt::AlignRight : Qt::AlignLeft);
        if (figure > 0)
            paintFigure(painter, {right, base}, each.figure.figure, each.figure.unit,
                        each.figure.how, style, look, Qt::AlignRight);
        painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.2)));
        if (head) painter.drawLine(QPointF(left, y + height - 2), QPointF(right, y + height - 2));
        if (sum) {
            const double above = y + look.px(1.0);
            painter.drawLine(QPointF(left, above), QPointF(right, above));
            const double wide = look.px(36.0);
            for (const double down : {3.0, 5.0})
                painter.drawLine(QPointF(right - wide, base + look.px(down)),
                                 QPointF(right, base + look.px(down)));
        }
        y += height;
    }
}

}  // namespace combwright
