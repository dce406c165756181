#include "ui/wax_bench/evenings_grid.h"

#include <QIntValidator>
#include <QKeyEvent>
#include <QLocale>
#include <QPainter>
#include <algorithm>

#include "core/words/figures.h"
#include "core/words/typed_words.h"
#include "core/words/wax_figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"
#include "ui/drawing/strokes.h"
#include "ui/wax_bench/wax_choices.h"

namespace combwright {
namespace {

// px at the base font
constexpr int gridWords = 206;
constexpr int gridLast = 100;
constexpr int gridEnd = 172;
constexpr int gridField = 38;
constexpr double leastColumn = 20.0;
/// Narrower evenings than that stand below the words.
constexpr double besideColumn = 26.0;

CandleView::Shape shapeOf(CandleForm form) {
    switch (form) {
        case CandleForm::Domed:
            return CandleView::Shape::Domed;
        case CandleForm::Taper:
            return CandleView::Shape::Taper;
        case CandleForm::Pillar:
            return CandleView::Shape::Pillar;
    }
    return CandleView::Shape::Domed;
}

CandleView::State stateOf(EveningCandles::State state) {
    switch (state) {
        case EveningCandles::State::Done:
            return CandleView::State::Done;
        case EveningCandles::State::Planned:
            return CandleView::State::Planned;
        case EveningCandles::State::NoWax:
            return CandleView::State::NoWax;
    }
    return CandleView::State::Planned;
}

std::optional<BandFill> waxOf(const std::string& shade) {
    if (shade == word(WaxShade::Light)) return BandFill::WaxLight;
    if (shade == word(WaxShade::Mid)) return BandFill::WaxMid;
    if (shade == word(WaxShade::Dark)) return BandFill::WaxDark;
    return std::nullopt;
}

QString wholeText(std::int64_t number) { return QString::number(number); }

/// "Mon 15".
QString dayHead(Day day) {
    const QDate date = QDate::fromString(fromUtf8(isoText(day)), Qt::ISODate);
    return dayShown(date, "ddd d");
}

QString monthHead(Day day) {
    const QDate date = QDate::fromString(fromUtf8(isoText(day)), Qt::ISODate);
    return QLocale().standaloneMonthName(date.month());
}

}  // namespace

struct EveningsGrid::Laid {
    /// No room for the evenings beside the words: they stand below them, row by row.
    bool below = false;
    double words = 0;  ///< height of a row's words, where the evenings are below them
    double left = 0, column = 0, last = 0, end = 0;
    std::vector<double> rowTop;
    double head = 0, bottom = 0;
};

EveningsGrid::EveningsGrid(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("evenings"));
    setAccessibleName(tr("Evenings"));
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    connect(&session, &Session::lookChanged, this, [this] {
        place();
        updateGeometry();
        update();
    });
}

void EveningsGrid::makeFields() {
    std::vector<Id<GoodsKind>> kinds;
    for (const EveningRow& row : m_board.rows) kinds.push_back(m_plan.kinds[row.kind].kind.id);
    if (kinds == m_kinds) return;
    for (QLineEdit* each : m_fields) each->deleteLater();
    m_fields.clear();
    m_kinds = kinds;
    QWidget* before = nullptr;
    for (std::size_t n = 0; n < kinds.size(); ++n) {
        auto* field = new QLineEdit(this);
        field->setObjectName(QStringLiteral("cavities_%1").arg(n));
        field->setAlignment(Qt::AlignRight);
        field->setValidator(new QIntValidator(0, 9999, field));
        // Units and figures are asked by keys that a line of text has for itself.
        field->setProperty("commands", true);
        field->installEventFilter(this);
        connect(field, &QLineEdit::textEdited, this, [this] {
            if (!m_filling) Q_EMIT typedChanged();
        });
        field->QWidget::show();
        if (before) setTabOrder(before, field);
        before = field;
        m_fields.push_back(field);
    }
}

void EveningsGrid::show(const CandleEvenings& plan, const EveningBoard& board) {
    m_plan = plan;
    m_board = board;
    m_filling = true;
    makeFields();
    for (std::size_t n = 0; n < m_fields.size(); ++n) {
        const EveningRow& row = m_board.rows[n];
        const QString kept = wholeText(row.cavitiesInFile);
        QLineEdit* field = m_fields[n];
        const QString before = field->property("kept").toString();
        // What is typed stays; what is not follows the file.
        if (field->text() == before || field->text() == kept || before.isNull())
            field->setText(kept);
        field->setProperty("kept", kept);
        const QString name = fromUtf8(m_plan.kinds[row.kind].kind.name.text());
        field->setAccessibleName(tr("%1: cavities of its moulds").arg(name));
        field->setAccessibleDescription(
            tr("%1 Type another number to see what would follow; Enter has moulds come or go, Esc "
               "lets it be.")
                .arg(rowWords(n)));
    }
    m_filling = false;
    QStringList all;
    for (std::size_t n = 0; n < m_board.rows.size(); ++n) all << rowWords(n);
    setAccessibleDescription(all.join(QLatin1Char(' ')));
    place();
    updateGeometry();
    update();
}

std::vector<CavitiesIf> EveningsGrid::typed() const {
    std::vector<CavitiesIf> all;
    for (std::size_t n = 0; n < m_fields.size(); ++n) {
        const QString text = m_fields[n]->text();
        if (text == m_fields[n]->property("kept").toString() || text.isEmpty()) continue;
        all.push_back({m_kinds[n], text.toLongLong()});
    }
    return all;
}

void EveningsGrid::forget() {
    for (QLineEdit* field : m_fields) field->setText(field->property("kept").toString());
}

QLineEdit* EveningsGrid::field(std::size_t row) const {
    return row < m_fields.size() ? m_fields[row] : nullptr;
}

EveningsGrid::Ends EveningsGrid::ends(std::size_t at) const {
    const EveningRow& row = m_board.rows[at];
    Ends ends;
    ends.finish = wholeText(row.finish);
    ends.byMoulds = tr("%1 of %2").arg(row.byMoulds).arg(row.wanted);
    if (!row.want) {
        ends.missing = true;
        ends.note = tr("what one weighs nobody knows");
        return ends;
    }
    if (row.missing > 0) {
        ends.missing = true;
        ends.note = !row.cavitiesToAdd ? tr("%1 short: no evening").arg(row.missing)
                    : *row.cavitiesToAdd == 1
                        ? tr("%1 short: one mould more").arg(row.missing)
                        : tr("%1 short: %2 moulds more").arg(row.missing).arg(*row.cavitiesToAdd);
        return ends;
    }
    const std::int64_t evenings = row.evenings.value_or(0);
    ends.note = evenings == 1 ? tr("1 evening") : tr("%1 evenings").arg(evenings);
    if (row.byWax < row.wanted) ends.note += tr("; wax for %1").arg(row.byWax);
    return ends;
}

QString EveningsGrid::rowWords(std::size_t at) const {
    const EveningRow& row = m_board.rows[at];
    const Ends said = ends(at);
    QStringList parts;
    for (std::size_t n = 0; n < row.cells.size(); ++n)
        for (const EveningCandles& each : row.cells[n])
            parts << tr("%1 %2 %3%4")
                         .arg(dayHead(m_board.columns[n].day))
                         .arg(each.count)
                         .arg(spoken(stateOf(each.state)),
                              each.shade.empty() ? QString()
                                                 : QLatin1Char(' ') + shadeText(each.shade));
    return tr("%1: %2 by the moulds, %3; %4 to finish. %5.")
        .arg(fromUtf8(m_plan.kinds[row.kind].kind.name.text()), said.byMoulds, said.note,
             said.finish, parts.join(QStringLiteral(", ")));
}

bool EveningsGrid::eveningsBelow() const {
    const Look& look = m_session.look();
    const auto many = static_cast<double>(std::max<std::size_t>(m_board.columns.size(), 1));
    return (width() - look.px(gridWords + gridLast + gridEnd)) / many < look.px(besideColumn);
}

double EveningsGrid::wordsHigh() const {
    const Look& look = m_session.look();
    return lineStep(look.font(TextSize::Body, true)) + lineStep(look.font(TextSize::Note)) +
           look.px(12.0);
}

int EveningsGrid::rowHeight(std::size_t row) const {
    const Look& look = m_session.look();
    const double candle = ::combwright::candleSize(shapeOf(m_board.rows[row].form), look).height();
    if (!eveningsBelow()) return static_cast<int>(std::max(wordsHigh(), candle + look.px(14.0)));
    // The days stand over the first row; so far from it they stand over the others again.
    const double days = row == 0 ? 0.0 : lineStep(look.font(TextSize::Note));
    return static_cast<int>(wordsHigh() + days + candle + look.px(10.0));
}

int EveningsGrid::headHigh() const {
    const Look& look = m_session.look();
    const double title = look.px(8.0) + 2.3 * lineStep(look.font(TextSize::Head, true));
    return static_cast<int>(eveningsBelow() ? title + 2.4 * lineStep(look.font(TextSize::Note))
                                            : title);
}

QSize EveningsGrid::sizeHint() const {
    int high = headHigh();
    for (std::size_t n = 0; n < m_board.rows.size(); ++n) high += rowHeight(n);
    return {width(), high + m_session.look().space(4)};
}

EveningsGrid::Laid EveningsGrid::lay() const {
    const Look& look = m_session.look();
    Laid laid;
    laid.below = eveningsBelow();
    laid.end = width() - look.px(gridEnd);
    laid.left = laid.below ? 0.0 : look.px(gridWords);
    laid.last = laid.below ? width() : laid.end - look.px(gridLast);
    laid.words = laid.below ? wordsHigh() : 0.0;
    const auto many = static_cast<double>(std::max<std::size_t>(m_board.columns.size(), 1));
    laid.column = std::max((laid.last - laid.left) / many, 1.0);
    laid.column = std::min(laid.column, look.px(76.0));
    laid.head = headHigh();
    double y = laid.head;
    for (std::size_t n = 0; n < m_board.rows.size(); ++n) {
        laid.rowTop.push_back(y);
        y += rowHeight(n);
    }
    laid.bottom = y;
    return laid;
}

void EveningsGrid::place() {
    const Look& look = m_session.look();
    const Laid laid = lay();
    for (std::size_t n = 0; n < m_fields.size() && n < laid.rowTop.size(); ++n) {
        const int high = look.target();
        const int words = laid.below ? static_cast<int>(laid.words) : rowHeight(n);
        const int y = static_cast<int>(laid.rowTop[n]) + words - high - look.space(8);
        m_fields[n]->setFont(look.font(TextSize::Body));
        m_fields[n]->setGeometry(static_cast<int>(look.px(106.0)), y,
                                 static_cast<int>(look.px(gridField)), high);
    }
}

void EveningsGrid::paintDays(QPainter& painter, const Laid& laid, double y) const {
    const Look& look = m_session.look();
    const bool narrow = laid.column < look.px(45.0);
    for (std::size_t n = 0; n < m_board.columns.size(); ++n) {
        if (laid.column < look.px(leastColumn) && n % 2 != 0) continue;
        const EveningColumn& column = m_board.columns[n];
        const double middle = laid.left + (static_cast<double>(n) + 0.5) * laid.column;
        paintText(painter, {middle, y},
                  narrow ? QString::number(dayOfMonth(column.day)) : dayHead(column.day),
                  look.font(TextSize::Note, column.finishing),
                  look.tone(column.past ? Tone::Muted : Tone::Ink), Qt::AlignHCenter);
    }
}

void EveningsGrid::paintColumns(QPainter& painter, const Laid& laid) const {
    const Look& look = m_session.look();
    const double small = lineStep(look.font(TextSize::Note));
    const double monthY = look.px(4.0) + small + (laid.below ? laid.head - 2.6 * small : 0.0);
    const double dayY = monthY + small * 1.35;
    QString month;
    for (std::size_t n = 0; n < m_board.columns.size(); ++n) {
        const EveningColumn& column = m_board.columns[n];
        const double x = laid.left + static_cast<double>(n) * laid.column;
        const QString of = monthHead(column.day);
        const bool begins = of != month;
        painter.setPen(plainPen(look.tone(begins ? Tone::Line : Tone::Hairline), 1.0));
        const double top = begins ? monthY - small + look.px(2.0) : monthY + look.px(3.0);
        if (!laid.below) painter.drawLine(QPointF(x, top), QPointF(x, laid.bottom));
        if (begins)
            paintText(painter, {x + look.px(4.0), monthY}, of, look.font(TextSize::Note),
                      look.tone(Tone::Muted));
        month = of;
        if (column.finishing)
            paintText(painter, {x + laid.column / 2.0, dayY + small}, tr("finish"),
                      look.font(TextSize::Letter), look.tone(Tone::Muted), Qt::AlignHCenter);
    }
    paintDays(painter, laid, dayY);
    if (laid.below) return;
    painter.setPen(plainPen(look.tone(Tone::Line), 1.0));
    painter.drawLine(QPointF(laid.last, look.px(4.0)), QPointF(laid.last, laid.bottom));
    painter.setPen(plainPen(look.tone(Tone::Hairline), 1.0));
    painter.drawLine(QPointF(laid.end, monthY), QPointF(laid.end, laid.bottom));
    const double middle = (laid.last + laid.end) / 2.0;
    paintText(painter, {middle, monthY}, tr("last evening"), look.font(TextSize::Note),
              look.tone(Tone::Muted), Qt::AlignHCenter);
    paintText(painter, {middle, dayY},
              m_board.last ? tr("%1, finish").arg(dayHead(*m_board.last)) : tr("none free"),
              look.font(TextSize::Note, true), look.tone(Tone::Ink), Qt::AlignHCenter);
    paintText(painter, {laid.end + look.px(14.0), dayY}, tr("by the moulds"),
              look.font(TextSize::Note), look.tone(Tone::Muted));
}

void EveningsGrid::paintRow(QPainter& painter, const Laid& laid, std::size_t at) const {
    const Look& look = m_session.look();
    const EveningRow& row = m_board.rows[at];
    const CandlesWantedShown& kind = m_plan.kinds[row.kind];
    const double top = laid.rowTop[at], bottom = top + rowHeight(at);
    const double noteY = (laid.below ? top + laid.words : bottom) - look.px(7.0);
    const double nameY = noteY - lineStep(look.font(TextSize::Note)) * 1.05;
    QString name = candlesText(kind.kind.name.text(), 2);
    if (!name.isEmpty()) name.front() = name.front().toUpper();
    const double words = look.px(100.0);
    paintText(painter, {0, nameY}, fitted(name, look.font(TextSize::Body, true), words),
              look.font(TextSize::Body, true), look.tone(Tone::Ink));
    QString under =
        kind.massG ? tr("%1 g").arg(QLocale().toString(*kind.massG, 'f', 0)) : tr("? g");
    if (!kind.wick.empty()) under += tr(", wick %1").arg(fromUtf8(kind.wick));
    paintText(painter, {0, noteY}, fitted(under, look.font(TextSize::Note), words),
              look.font(TextSize::Note), look.tone(Tone::Muted));
    paintText(painter, {look.px(106.0 + gridField + 6.0), noteY - look.px(2.0)}, tr("moulds"),
              look.font(TextSize::Note), look.tone(Tone::Muted));
    painter.setPen(plainPen(look.tone(Tone::Hairline), 1.0));
    painter.drawLine(QPointF(0, bottom), QPointF(width(), bottom));
    if (laid.below && at > 0)
        paintDays(painter, laid, top + laid.words + lineStep(look.font(TextSize::Note)) * 0.8);
    const double edge = look.px(3.0);
    for (std::size_t n = 0; n < row.cells.size(); ++n) {
        std::vector<CandleView> candles;
        for (const EveningCandles& each : row.cells[n])
            for (std::int64_t many = 0; many < std::min<std::int64_t>(each.count, 200); ++many)
                candles.push_back({shapeOf(row.form), stateOf(each.state), waxOf(each.shade)});
        const QRectF box(laid.left + static_cast<double>(n) * laid.column + edge, top,
                         laid.column - 2 * edge, bottom - top - look.px(5.0));
        paintCandles(painter, box, candles, look);
    }
    const Ends said = ends(at);
    const double middle = (laid.last + laid.end) / 2.0;
    if (!laid.below) {
        paintText(painter, {middle, nameY}, said.finish, look.font(TextSize::Body, true),
                  look.tone(Tone::Ink), Qt::AlignHCenter);
        paintText(painter, {middle, noteY}, tr("trim, wick, label"), look.font(TextSize::Note),
                  look.tone(Tone::Muted), Qt::AlignHCenter);
    }
    const double x = laid.end + (laid.below ? 0.0 : look.px(14.0));
    const double room = width() - x;
    const Tone tone = said.missing ? Tone::Warn : Tone::Good;
    paintLine(
        painter, {x, nameY},
        {{wholeText(row.byMoulds), true, tone}, {tr(" of %1").arg(row.wanted), false, Tone::Muted}},
        TextSize::Head, look);
    paintText(painter, {x, noteY}, fitted(said.note, look.font(TextSize::Note), room),
              look.font(TextSize::Note), look.tone(said.missing ? Tone::Warn : Tone::Muted));
}

void EveningsGrid::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Laid laid = lay();
    painter.setPen(plainPen(look.tone(Tone::Ink), look.px(1.5)));
    painter.drawLine(QPointF(0, 1), QPointF(width(), 1));
    const double titleRoom = (laid.below ? width() : laid.left) - look.px(8.0);
    const double titleY = look.px(5.0) + lineStep(look.font(TextSize::Head, true)) * 0.85;
    const QFont titleFont = look.font(TextSize::Head, true);
    const QString whatFor = fromUtf8(m_plan.date.whatFor);
    QString title = whatFor.isEmpty() ? tr("Evenings to %1").arg(dayAndMonth(m_plan.date.by))
                                      : tr("Evenings to the %1").arg(whatFor);
    if (!whatFor.isEmpty() && textWidth(title, titleFont) > titleRoom)
        title = tr("To the %1", "evenings").arg(whatFor);
    paintText(painter, {0, titleY}, fitted(title, titleFont, titleRoom), titleFont,
              look.tone(Tone::Ink));
    const QString days =
        m_board.weekdays.empty() ? tr("no evening is free: E says which are")
        : laid.below && m_board.last
            ? tr("%1; last evening %2, finish")
                  .arg(weekdaysAsSpoken(fromUtf8(m_board.weekdays)), dayHead(*m_board.last))
            : weekdaysAsSpoken(fromUtf8(m_board.weekdays));
    paintText(painter, {0, titleY + lineStep(look.font(TextSize::Note)) * 1.1},
              fitted(days, look.font(TextSize::Note), titleRoom), look.font(TextSize::Note),
              look.tone(Tone::Muted));
    paintColumns(painter, laid);
    for (std::size_t n = 0; n < m_board.rows.size(); ++n) paintRow(painter, laid, n);
}

bool EveningsGrid::eventFilter(QObject* watched, QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        // A field of digits has no use for letters: they stay keys of the place.
        const auto* key = static_cast<QKeyEvent*>(event);
        const bool letter = key->key() >= Qt::Key_A && key->key() <= Qt::Key_Z &&
                            (key->modifiers() & ~Qt::ShiftModifier) == Qt::NoModifier;
        if (letter) event->ignore();
        return letter || QWidget::eventFilter(watched, event);
    }
    if (event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    auto* field = qobject_cast<QLineEdit*>(watched);
    const auto at = std::find(m_fields.begin(), m_fields.end(), field);
    if (at == m_fields.end()) return QWidget::eventFilter(watched, event);
    const auto n = static_cast<std::size_t>(at - m_fields.begin());
    const int key = static_cast<QKeyEvent*>(event)->key();
    switch (key) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (!field->text().isEmpty()) Q_EMIT entered(m_kinds[n], field->text().toLongLong());
            return true;
        case Qt::Key_Escape:
            field->setText(field->property("kept").toString());
            field->selectAll();
            Q_EMIT typedChanged();
            return true;
        case Qt::Key_Down:
        case Qt::Key_Up: {
            const bool down = key == Qt::Key_Down;
            if (down && n + 1 < m_fields.size()) m_fields[n + 1]->setFocus();
            if (!down && n > 0) m_fields[n - 1]->setFocus();
            if (QLineEdit* now = this->field(down ? n + 1 : n - 1); now && now->hasFocus())
                now->selectAll();
            return true;
        }
        default:
            return QWidget::eventFilter(watched, event);
    }
}

}  // namespace combwright
