#include "ui/drawing/figure.h"

#include <QCoreApplication>
#include <algorithm>

namespace combwright {

namespace {

const QChar thinSpace(0x2009);

/// Words of this file, where the translators' tools find them.
struct FigureTexts {
    Q_DECLARE_TR_FUNCTIONS(combwright::Figure)
};

/// Where the whole part ends: before the first decimal point or comma that stands between digits.
qsizetype wholeEnd(const QString& figure) {
    for (qsizetype i = 1; i + 1 < figure.size(); ++i) {
        const bool mark = figure[i] == QLatin1Char('.') || figure[i] == QLatin1Char(',');
        if (mark && figure[i - 1].isDigit() && figure[i + 1].isDigit()) return i;
    }
    return figure.size();
}

struct FigureParts {
    TextLine whole, fraction, unit, letter;
};

FigureParts partsOf(const FigureText& text, const FigureStyle& style) {
    FigureParts parts;
    if (text.how == '?' && text.figure.isEmpty()) {
        // Unknown stands where the number would, so that nobody takes the gap for nought.
        parts.whole = {{QStringLiteral("?"), true, style.tone, false, false, style.over}};
        return parts;
    }
    if (text.figure.isEmpty()) return parts;
    const auto end = wholeEnd(text.figure);
    parts.whole = {{text.figure.left(end), style.bold, style.tone, false, false, style.over}};
    if (end < text.figure.size()) {
        parts.fraction = {{text.figure.mid(end), style.bold, style.tone, false, false, style.over}};
    }
    if (!text.unit.isEmpty()) {
        parts.unit = {{thinSpace + text.unit, false, style.unitTone, false, false, style.over}};
    }
    if (text.how != 0) {
        const QString letter = thinSpace + QString(QLatin1Char(text.how));
        parts.letter = {{letter, true, style.unitTone, false, true, style.over}};
    }
    return parts;
}

}  // namespace

TextLine joined(TextLine first, const TextLine& second) {
    first.insert(first.end(), second.begin(), second.end());
    return first;
}

TextLine figureRuns(const FigureText& figure, const FigureStyle& style) {
    const auto parts = partsOf(figure, style);
    return joined(joined(joined(parts.whole, parts.fraction), parts.unit), parts.letter);
}

FigureColumns measureFigures(const std::vector<FigureText>& figures, const FigureStyle& style,
                             const Look& look) {
    FigureColumns columns;
    for (const auto& figure : figures) {
        const auto parts = partsOf(figure, style);
        const auto widen = [&](double& column, const TextLine& line) {
            column = std::max(column, lineWidth(line, style.size, look));
        };
        widen(columns.whole, parts.whole);
        widen(columns.fraction, parts.fraction);
        widen(columns.unit, parts.unit);
        widen(columns.letter, parts.letter);
    }
    return columns;
}

void paintFigure(QPainter& painter, QPointF at, const FigureText& figure,
                 const FigureColumns& columns, const FigureStyle& style, const Look& look) {
    const auto parts = partsOf(figure, style);
    const double edge = at.x() + columns.whole;
    const double unit = edge + columns.fraction;
    paintLine(painter, {edge, at.y()}, parts.whole, style.size, look, Qt::AlignRight);
    paintLine(painter, {edge, at.y()}, parts.fraction, style.size, look);
    paintLine(painter, {unit, at.y()}, parts.unit, style.size, look);
    paintLine(painter, {unit + columns.unit, at.y()}, parts.letter, style.size, look);
}

double paintFigure(QPainter& painter, QPointF at, const QString& figure, const QString& unit,
                   char how, const FigureStyle& style, const Look& look, Qt::Alignment align) {
    return paintLine(painter, at, figureRuns({figure, unit, how}, style), style.size, look, align);
}

QString howWord(char how) {
    switch (how) {
        case 'w':
            return FigureTexts::tr("weighed");
        case 'c':
            return FigureTexts::tr("counted");
        case 'e':
            return FigureTexts::tr("by eye");
        case 'd':
            return FigureTexts::tr("by difference");
        case 'a':
            return FigureTexts::tr("assumed");
        case '?':
            return FigureTexts::tr("unknown");
        default:
            return {};
    }
}

QString spoken(const FigureText& figure) {
    QStringList words;
    for (const auto& word : {figure.figure, figure.unit, howWord(figure.how)}) {
        if (!word.isEmpty()) words << word;
    }
    return words.join(QLatin1Char(' '));
}

}  // namespace combwright
