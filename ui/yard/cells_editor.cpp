#include "ui/yard/cells_editor.h"

#include <QPainter>
#include <algorithm>

#include "core/words/read_back.h"
#include "core/words/shorthand.h"
#include "core/words/words.h"

namespace combwright {

CellsEditor::CellsEditor(Session& session, const QString& hive, QObject* keys, QWidget* parent)
    : QWidget(parent), m_session(session), m_back(new QLabel(this)) {
    setObjectName(QStringLiteral("cells"));
    setAutoFillBackground(true);
    const Look& look = session.look();
    m_fields.reserve(sheetCells().size());
    for (const SheetCell cell : sheetCells()) {
        auto* head = new QLabel(cellHead(cell), this);
        head->setFont(look.font(TextSize::Note));
        auto* edit = new QLineEdit(this);
        edit->setObjectName(QStringLiteral("cell_%1").arg(static_cast<int>(cell)));
        edit->setAccessibleName(tr("%1, %2").arg(hive, cellHead(cell)));
        edit->setAccessibleDescription(cellExample(cell));
        edit->setToolTip(cellExample(cell));
        edit->setFont(look.font(TextSize::Body));
        edit->setTextMargins(0, 0, 0, 0);
        edit->installEventFilter(keys);
        m_fields.push_back({cell, head, edit});
    }
    for (Field& field : m_fields)
        connect(field.edit, &QLineEdit::textEdited, this, [this, &field] { typed(field); });
    m_back->setFont(look.font(TextSize::Note));
    m_back->setTextFormat(Qt::PlainText);
    m_back->setWordWrap(true);
    m_back->setObjectName(QStringLiteral("cells_back"));
    setFocusProxy(m_fields.front().edit);
}

void CellsEditor::setLine(const QString& line) {
    // The view fills its editors again on every change; what is half typed must live through it.
    if (m_edited && line == this->line()) return;
    m_line = readShorthand(line.toStdString());
    m_edited = false;
    for (Field& field : m_fields) {
        field.edit->setText(cellText(m_line, field.cell));
        field.bad = false;
    }
    sayBack();
    update();
}

void CellsEditor::setOffer(const QString& offer) {
    m_offer = offer;
    sayBack();
}

void CellsEditor::sayBack() {
    const bool offers = !m_edited && m_line == SheetLine{} && !m_offer.isEmpty();
    m_back->setText(firstBad() ? badWhy() : offers ? m_offer : readBack(m_line));
}

void CellsEditor::reset(const QString& line) {
    m_edited = false;
    setLine(line);
}

QString CellsEditor::line() const { return fromUtf8(writeShorthand(m_line)); }

void CellsEditor::typed(Field& field) {
    m_edited = true;
    const auto changed = withCell(m_line, field.cell, field.edit->text());
    field.bad = !changed;
    if (changed) m_line = *changed;
    sayBack();
    update();
    Q_EMIT edited();
}

QLineEdit* CellsEditor::firstBad() const {
    for (const Field& field : m_fields)
        if (field.bad) return field.edit;
    return nullptr;
}

QString CellsEditor::badWhy() const {
    for (const Field& field : m_fields)
        if (field.bad)
            return tr("%1: \"%2\" is not understood. Write %3.")
                .arg(cellHead(field.cell), field.edit->text(), cellExample(field.cell));
    return {};
}

bool CellsEditor::step(bool forward) {
    for (std::size_t i = 0; i < m_fields.size(); ++i) {
        if (!m_fields[i].edit->hasFocus()) continue;
        const std::size_t next = forward ? i + 1 : i - 1;
        if (next >= m_fields.size()) return false;
        m_fields[next].edit->setFocus(forward ? Qt::TabFocusReason : Qt::BacktabFocusReason);
        m_fields[next].edit->selectAll();
        return true;
    }
    return false;
}

int CellsEditor::widthOf(const Field& field) const {
    const Look& look = m_session.look();
    const int least = field.cell == SheetCell::Note ? 150 : field.cell == SheetCell::Wash ? 72 : 52;
    return std::max(look.space(least), field.head->sizeHint().width());
}

int CellsEditor::layOut(int width, bool move) const {
    const Look& look = m_session.look();
    const int gap = look.space(8);
    const int high = std::max(look.target(), m_fields.front().edit->sizeHint().height());
    const int head = m_fields.front().head->sizeHint().height();
    int x = gap;
    int y = look.space(4);
    for (const Field& field : m_fields) {
        int wide = widthOf(field);
        if (x > gap && x + wide > width - gap) {
            x = gap;
            y += head + high + look.space(4);
        }
        // The note takes what is left of its line.
        if (field.cell == SheetCell::Note) wide = std::max(wide, width - gap - x);
        if (move) {
            field.head->setGeometry(x, y, wide, head);
            field.edit->setGeometry(x, y + head, wide, high);
        }
        x += wide + gap;
    }
    y += head + high + look.space(4);
    // Two lines of what was understood stand below, whatever it is, so that nothing jumps.
    const int back = 2 * QFontMetrics(m_back->font()).lineSpacing();
    if (move) m_back->setGeometry(gap, y, std::max(width - 2 * gap, 10), back);
    return y + back + look.space(4);
}

int CellsEditor::heightFor(int width) const { return layOut(width, false); }

void CellsEditor::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = m_session.look();
    painter.fillRect(rect(), look.tone(Tone::Selection));
    painter.setPen(QPen(look.tone(Tone::Bad), 2));
    for (const Field& field : m_fields)
        if (field.bad) {
            const QRect edge = field.edit->geometry();
            painter.drawLine(edge.left(), edge.bottom() + 2, edge.right(), edge.bottom() + 2);
        }
}

}  // namespace combwright
