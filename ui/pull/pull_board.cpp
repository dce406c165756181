#include "ui/pull/pull_board.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <algorithm>

#include "core/places/pages/pull/pull_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

constexpr double pullPxPerMm = 0.283;
constexpr int pullCellWidth = 148;
constexpr int yardHeadHeight = 34;
/// What a box is drawn as where nobody recorded how high it is: a medium.
constexpr double unknownHeightMm = 168.3;
/// The nest is only hinted at below its excluder.
constexpr double nestHeightMm = 84;

FigureText massFigureText(const std::optional<Reckoned>& honey) {
    if (!honey) return {};
    return {massFigure(honey->grams, honey->how), massUnit(), letter(honey->how)};
}

Tone toneOf(const PullBoxRow& row) {
    if (row.verdict == PullVerdict::Take) return row.hold ? Tone::Bad : Tone::Good;
    if (row.refused()) return Tone::Bad;
    return row.verdict == PullVerdict::LookFirst ? Tone::Warn : Tone::Ink;
}

BoxVerdict verdictOf(const PullHiveRow& hive, const PullBoxRow& row) {
    BoxVerdict verdict;
    verdict.word = verdictText(row);
    verdict.tone = toneOf(row);
    // What is refused is not weighed out against anything.
    if (!row.refused() || row.forced) verdict.figure = massFigureText(row.honey);
    if (row.box.mark.empty()) verdict.beside = PullBoard::tr("no mark");
    verdict.reason = reasonText(hive, row);
    if (row.verdict == PullVerdict::Take && row.overLift)
        verdict.reason = verdict.reason.isEmpty()
                             ? PullBoard::tr("heavy: lift with two")
                             : PullBoard::tr("%1; lift with two").arg(verdict.reason);
    return verdict;
}

/// Off its hive with its peg: it stands over the others until the stack is seen again.
BoxView broughtView(const BroughtBox& row) {
    BoxView box;
    if (row.box) box.mark = fromUtf8(row.box->mark);
    box.heightMm =
        row.kind && row.kind->outerHeight ? row.kind->outerHeight->mm() : unknownHeightMm;
    box.take = true;
    box.peg = QString::number(row.peg.number.value());
    BoxVerdict verdict;
    verdict.word = PullBoard::tr("brought");
    verdict.tone = Tone::Muted;
    box.verdict = verdict;
    return box;
}

/// Where a super of the hive is drawn: over it stand those brought.
std::size_t drawnAt(const PullHiveRow& hive, int box) {
    return hive.brought.size() + static_cast<std::size_t>(box);
}

}  // namespace

PullBoard::PullBoard(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setFocusPolicy(Qt::StrongFocus);
    setObjectName(QStringLiteral("pull_board"));
    setAccessibleName(tr("Supers that could come off"));
    connect(&session, &Session::lookChanged, this,
            [this] { setMinimumHeight(heightForWidth(width())); });
}

void PullBoard::show(const PullSheet& sheet, const Clearers& boards) {
    m_boards = boards;
    const PullHiveRow* before = currentHive();
    const auto hive = before ? std::optional(before->hive.id) : std::nullopt;
    m_sheet = sheet;
    const Laid laid = layOut(std::max(width(), 1));
    m_hive = std::clamp(m_hive, 0, std::max(0, static_cast<int>(laid.hives.size()) - 1));
    // Yards change places with what is taken; the cursor stays with its hive.
    for (std::size_t i = 0; hive && i < laid.hives.size(); ++i)
        if (m_sheet.yards[laid.hives[i].yard].hives[laid.hives[i].hive].hive.id == *hive)
            m_hive = static_cast<int>(i);
    setMinimumHeight(heightForWidth(width()));
    speak();
    update();
    Q_EMIT currentChanged();
}

StackView PullBoard::stackOf(const PullHiveRow& hive) const {
    StackView stack;
    stack.name = fromUtf8(hive.hive.mark.text());
    stack.lid = false;
    for (const BroughtBox& row : hive.brought) stack.boxes.push_back(broughtView(row));
    for (const PullBoxRow& row : hive.boxes) {
        BoxView box;
        box.mark = fromUtf8(row.box.mark);
        box.heightMm =
            row.kind && row.kind->outerHeight ? row.kind->outerHeight->mm() : unknownHeightMm;
        box.take = row.verdict == PullVerdict::Take;
        box.verdict = verdictOf(hive, row);
        box.lookedInto = row.look.has_value();
        if (row.look) {
            box.words = {boxLookText(row).section(QStringLiteral(", "), 0, 0)};
            if (row.look->filled && row.look->filled->value)
                box.filled = row.look->filled->value->value();
        }
        stack.boxes.push_back(box);
    }
    BoxView nest;
    nest.mark = fromUtf8(hive.hive.mark.text());
    nest.heightMm = nestHeightMm;
    nest.brood = true;
    nest.excluderBelow = false;
    nest.words = {hive.nest ? tr("nest %1").arg(massText(hive.nest->grams, hive.nest->how))
                            : tr("nest ?")};
    for (const ClearerIn& each : m_boards.in)
        if (each.board.hive == hive.hive.id)
            nest.words << (each.state == ClearerIn::State::Clearing
                               ? tr("board in, out by %1").arg(dayAndMonth(each.outBy))
                           : each.state == ClearerIn::State::Due ? tr("board: out today")
                                                                 : tr("board overdue"));
    if (!stack.boxes.empty()) stack.boxes.back().excluderBelow = true;
    stack.boxes.push_back(nest);
    return stack;
}

PullBoard::Laid PullBoard::layOut(int width) const {
    const Look& look = m_session.look();
    const int perRow = std::max(1, width / look.space(pullCellWidth));
    const double cell = static_cast<double>(width) / perRow;
    const double scale = look.px(pullPxPerMm);
    Laid laid;
    double y = 0;
    for (std::size_t yard = 0; yard < m_sheet.yards.size(); ++yard) {
        laid.yardHeads.emplace_back(yard, QRectF(0, y, width, look.space(yardHeadHeight)));
        y += look.space(yardHeadHeight);
        const auto& hives = m_sheet.yards[yard].hives;
        for (std::size_t first = 0; first < hives.size();
             first += static_cast<std::size_t>(perRow)) {
            const std::size_t end =
                std::min(hives.size(), first + static_cast<std::size_t>(perRow));
            double tallest = look.space(60);
            for (std::size_t i = first; i < end; ++i)
                tallest = std::max(tallest, stackHeight(stackOf(hives[i]), scale, look));
            for (std::size_t i = first; i < end; ++i)
                laid.hives.push_back({yard, i,
                                      QRectF(cell * static_cast<double>(i - first), y, cell,
                                             tallest + look.space(4))});
            y += tallest + look.space(16);
        }
    }
    laid.height = y;
    return laid;
}

int PullBoard::heightForWidth(int width) const {
    return static_cast<int>(layOut(std::max(width, 1)).height) + 4;
}

void PullBoard::resizeEvent(QResizeEvent*) { setMinimumHeight(heightForWidth(width())); }

QRectF PullBoard::stackRect(const HiveCell& cell) const {
    return cell.cell.adjusted(0, 0, 0, -m_session.look().space(4));
}

StackLayout PullBoard::stackLayout(const HiveCell& cell) const {
    return layoutStack(stackRect(cell), stackOf(m_sheet.yards[cell.yard].hives[cell.hive]),
                       m_session.look(), m_session.look().px(pullPxPerMm));
}

QString PullBoard::yardText(const PullYardRow& yard) const {
    QStringList parts;
    const double need = yard.hives.empty() ? 0 : yard.hives.front().needG;
    if (need > 0) parts << tr("needs %1 a hive for winter").arg(massText(need, How::ByEye));
    parts << (yard.taken > 0 ? tr("%1 to take, about %2")
                                   .arg(boxesCounted(yard.taken), massText(yard.honeyG, How::ByEye))
                             : tr("nothing to take"));
    return parts.join(QStringLiteral(" · "));
}

void PullBoard::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Laid laid = layOut(width());
    for (const auto& [index, box] : laid.yardHeads) {
        const PullYardRow& yard = m_sheet.yards[index];
        if (index > 0) {
            painter.setPen(look.tone(Tone::Hairline));
            painter.drawLine(box.topLeft(), box.topRight());
        }
        painter.setFont(look.font(TextSize::Head, true));
        painter.setPen(look.tone(Tone::Ink));
        const QString name = fromUtf8(yard.yard.name.text());
        painter.drawText(box, Qt::AlignVCenter | Qt::AlignLeft, name);
        const double after = painter.fontMetrics().horizontalAdvance(name) + look.space(10);
        painter.setFont(look.font(TextSize::Note));
        painter.setPen(look.tone(Tone::Muted));
        painter.drawText(
            box.adjusted(after, 0, 0, 0), Qt::AlignVCenter | Qt::AlignLeft,
            fitted(yardText(yard), painter.font(), std::max(1.0, box.width() - after)));
    }
    for (std::size_t i = 0; i < laid.hives.size(); ++i) {
        const HiveCell& cell = laid.hives[i];
        StackView stack = stackOf(m_sheet.yards[cell.yard].hives[cell.hive]);
        for (BoxView& box : stack.boxes)
            if (box.verdict)
                box.verdict->reason = fitted(box.verdict->reason, look.font(TextSize::Note),
                                             cell.cell.width() - stackLeftRoom(look) - look.px(12));
        if (static_cast<int>(i) == m_hive) {
            const auto regions = stackLayout(cell).regions;
            const std::size_t at = drawnAt(m_sheet.yards[cell.yard].hives[cell.hive], m_box);
            if (at < regions.size()) {
                painter.setPen(QPen(look.tone(Tone::Accent), hasFocus() ? 2 : 1));
                painter.setBrush(look.tone(Tone::Surface));
                // As wide as what is said over the box.
                QRectF ring = regions[at].adjusted(-6, 0, 10, 2);
                if (const auto& verdict = stack.boxes[at].verdict)
                    ring.setRight(std::max(
                        ring.right(), ring.left() + 6 + verdictWidth(*verdict, look) + look.px(6)));
                painter.drawRoundedRect(ring, look.corner(), look.corner());
            }
        }
        paintStack(painter, stackRect(cell), stack, look, look.px(pullPxPerMm));
    }
}

QRect PullBoard::currentRect() const {
    const Laid laid = layOut(std::max(width(), 1));
    if (m_hive < 0 || m_hive >= static_cast<int>(laid.hives.size())) return {};
    const HiveCell& cell = laid.hives[static_cast<std::size_t>(m_hive)];
    const auto regions = stackLayout(cell).regions;
    const std::size_t at = drawnAt(m_sheet.yards[cell.yard].hives[cell.hive], m_box);
    if (m_box < 0 || at >= regions.size()) return cell.cell.toRect();
    QRect rect = regions[at].toRect();
    // The first row of a yard shows under which name it stands.
    if (cell.hive == 0)
        rect.setTop(std::max(
            0, static_cast<int>(cell.cell.top()) - m_session.look().space(yardHeadHeight)));
    return rect;
}

const PullHiveRow* PullBoard::currentHive() const {
    const Laid laid = layOut(std::max(width(), 1));
    if (m_hive < 0 || m_hive >= static_cast<int>(laid.hives.size())) return nullptr;
    const HiveCell& cell = laid.hives[static_cast<std::size_t>(m_hive)];
    return &m_sheet.yards[cell.yard].hives[cell.hive];
}

const PullBoxRow* PullBoard::current() const {
    const PullHiveRow* hive = currentHive();
    if (!hive || m_box < 0 || m_box >= static_cast<int>(hive->boxes.size())) return nullptr;
    return &hive->boxes[static_cast<std::size_t>(m_box)];
}

void PullBoard::moveTo(int hive, int box) {
    const Laid laid = layOut(std::max(width(), 1));
    if (laid.hives.empty()) return;
    m_hive = std::clamp(hive, 0, static_cast<int>(laid.hives.size()) - 1);
    const PullHiveRow* row = currentHive();
    m_box = std::clamp(box, 0, std::max(0, static_cast<int>(row->boxes.size()) - 1));
    speak();
    update();
    Q_EMIT currentChanged();
}

bool PullBoard::choose(Id<Box> box) {
    const Laid laid = layOut(std::max(width(), 1));
    for (std::size_t i = 0; i < laid.hives.size(); ++i) {
        const PullHiveRow& hive = m_sheet.yards[laid.hives[i].yard].hives[laid.hives[i].hive];
        for (std::size_t j = 0; j < hive.boxes.size(); ++j) {
            if (hive.boxes[j].box.id != box) continue;
            moveTo(static_cast<int>(i), static_cast<int>(j));
            return true;
        }
    }
    return false;
}

void PullBoard::speak() {
    const PullHiveRow* hive = currentHive();
    setAccessibleDescription(hive ? spoken(stackOf(*hive)) : QString());
}

void PullBoard::keyPressEvent(QKeyEvent* event) {
    const PullBoxRow* box = current();
    switch (event->key()) {
        case Qt::Key_Left:
            return moveTo(m_hive - 1, m_box);
        case Qt::Key_Right:
            return moveTo(m_hive + 1, m_box);
        case Qt::Key_Up:
            return moveTo(m_hive, m_box - 1);
        case Qt::Key_Down:
            return moveTo(m_hive, m_box + 1);
        case Qt::Key_T:
            if (box) Q_EMIT decided(box->box.id.number, PullVerdict::Take);
            return;
        case Qt::Key_L:
            if (box) Q_EMIT decided(box->box.id.number, PullVerdict::Leave);
            return;
        case Qt::Key_K:
            if (box) Q_EMIT decided(box->box.id.number, PullVerdict::LookFirst);
            return;
        case Qt::Key_Backspace:
        case Qt::Key_Delete:
            if (box) Q_EMIT decisionTakenBack(box->box.id.number);
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (box) return Q_EMIT pegAsked({});
            break;
        case Qt::Key_B:
            if (currentHive()) Q_EMIT boardAsked();
            return;
        case Qt::Key_I:
            return Q_EMIT boardsInAsked();
        case Qt::Key_O:
            return Q_EMIT boardsOutAsked();
        default:
            break;
    }
    const QString typed = event->text();
    const bool isDigit =
        typed.size() == 1 && typed.front().isDigit() && typed != QLatin1String("0");
    if (box && isDigit && !(event->modifiers() & ~Qt::KeypadModifier))
        return Q_EMIT pegAsked(typed);
    QWidget::keyPressEvent(event);
}

void PullBoard::mousePressEvent(QMouseEvent* event) {
    const Laid laid = layOut(width());
    for (std::size_t i = 0; i < laid.hives.size(); ++i) {
        if (!laid.hives[i].cell.contains(event->position())) continue;
        const auto regions = stackLayout(laid.hives[i]).regions;
        const auto over = static_cast<int>(
            m_sheet.yards[laid.hives[i].yard].hives[laid.hives[i].hive].brought.size());
        for (std::size_t box = 0; box < regions.size(); ++box)
            if (regions[box].contains(event->position()))
                return moveTo(static_cast<int>(i), static_cast<int>(box) - over);
        return moveTo(static_cast<int>(i), 0);
    }
}

}  // namespace combwright
