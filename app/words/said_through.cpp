#include "app/words/said_through.h"

#include <QRegularExpression>
#include <algorithm>

namespace combwright::words {
namespace {

/// Behind the literal, comment or single character that begins at `at`; `at` where none does.
qsizetype behindToken(const QString& text, qsizetype at) {
    const QChar first = text.at(at);
    if (first == QLatin1Char('"') || first == QLatin1Char('\'')) {
        // A mark between the digits of a number (25'000) opens nothing.
        if (first == QLatin1Char('\'') && at > 0 && text.at(at - 1).isDigit()) return at;
        for (qsizetype next = at + 1; next < text.size(); ++next) {
            if (text.at(next) == QLatin1Char('\\'))
                ++next;
            else if (text.at(next) == first)
                return next + 1;
        }
        return text.size();
    }
    if (first == QLatin1Char('/') && at + 1 < text.size()) {
        if (text.at(at + 1) == QLatin1Char('/')) {
            const qsizetype end = text.indexOf(QLatin1Char('\n'), at);
            return end < 0 ? text.size() : end;
        }
        if (text.at(at + 1) == QLatin1Char('*')) {
            const qsizetype end = text.indexOf(QLatin1String("*/"), at);
            return end < 0 ? text.size() : end + 2;
        }
    }
    return at;
}

bool opens(QChar each) {
    return each == QLatin1Char('(') || each == QLatin1Char('{') || each == QLatin1Char('[');
}
bool closes(QChar each) {
    return each == QLatin1Char(')') || each == QLatin1Char('}') || each == QLatin1Char(']');
}
bool inName(QChar each) { return each.isLetterOrNumber() || each == QLatin1Char('_'); }

struct TextSpan {
    qsizetype from = 0;
    qsizetype to = 0;
};

/// The arguments of the call whose bracket opens at `bracket`; empty where it never closes.
QList<TextSpan> argumentsOf(const QString& text, qsizetype bracket) {
    QList<TextSpan> found;
    TextSpan span{bracket + 1, 0};
    int depth = 0;
    for (qsizetype at = bracket + 1; at < text.size(); ++at) {
        if (const qsizetype behind = behindToken(text, at); behind > at) {
            at = behind - 1;
            continue;
        }
        const QChar each = text.at(at);
        if (depth == 0 && (each == QLatin1Char(',') || closes(each))) {
            span.to = at;
            found << span;
            span.from = at + 1;
            if (closes(each)) return found;
        }
        if (opens(each)) ++depth;
        if (closes(each)) --depth;
    }
    return {};
}

/// Runs of literals that stand beside each other in the span itself or in plain brackets there,
/// not in a call of something else.
QList<TextSpan> literalsIn(const QString& text, TextSpan span) {
    QList<TextSpan> found;
    bool beside = false;
    for (qsizetype at = span.from; at < span.to; ++at) {
        const QChar each = text.at(at);
        if (each.isSpace()) continue;
        const qsizetype behind = behindToken(text, at);
        if (each == QLatin1Char('"')) {
            if (beside)
                found.last().to = behind;
            else
                found << TextSpan{at, behind};
            beside = true;
            at = behind - 1;
            continue;
        }
        if (behind > at) {
            at = behind - 1;
            continue;
        }
        beside = false;
        // A comparison asks, it does not say: key == "swarm" ? … : …
        if (each == QLatin1Char('?'))
            found.removeIf([&](const TextSpan& literal) {
                qsizetype before = literal.from - 1;
                while (before > span.from && text.at(before).isSpace()) --before;
                return text.at(before) == QLatin1Char('=');
            });
        if (opens(each) && at > span.from && inName(text.at(at - 1))) {
            const QList<TextSpan> inner = argumentsOf(text, at);
            if (!inner.isEmpty()) at = inner.last().to;
        }
    }
    return found;
}

QString part(const QString& text, TextSpan span) {
    return text.mid(span.from, span.to - span.from);
}

/// The number in `parameters` of the const char* that `expression` names, or −1.
int parameterIn(const QStringList& parameters, const QString& expression) {
    for (int number = 0; number < parameters.size(); ++number) {
        if (parameters.at(number).isEmpty()) continue;
        const QRegularExpression name(  // clazy:exclude=use-static-qregularexpression
            QStringLiteral("(?<![\\w.>])%1(?!\\w)").arg(parameters.at(number)));
        if (expression.contains(name)) return number;
    }
    return -1;
}

}  // namespace

SaidThrough::SaidThrough(const QList<TreeText>& files) {
    // At the beginning of a line: free, not one of a class.
    static const QRegularExpression declaration(
        QStringLiteral("^\\w[^(){};\\n]*?(\\w+)\\([^(){};]*const char\\* ?[^(){};]*\\)[^(){};]*;"),
        QRegularExpression::MultilineOption);
    QStringList declared;
    for (const TreeText& file : files) {
        if (!file.path.endsWith(QLatin1String(".h"))) continue;
        for (auto found = declaration.globalMatch(file.text); found.hasNext();)
            declared << found.next().captured(1);
    }
    bool more = true;
    while (more) {
        more = false;
        for (const TreeText& file : files) more = learn(file, declared) || more;
    }
}

const QList<SaidArgument>* SaidThrough::find(const QString& path, const QString& name) const {
    if (const auto file = m_ofFile.constFind(path); file != m_ofFile.constEnd())
        if (const auto own = file->constFind(name); own != file->constEnd()) return &*own;
    const auto shared = m_ofHeaders.constFind(name);
    return shared == m_ofHeaders.constEnd() ? nullptr : &*shared;
}

bool SaidThrough::learn(const TreeText& file, const QStringList& declared) {
    // A function, or a lambda with a name, with a text among its parameters, up to its body.
    static const QRegularExpression definition(QStringLiteral(
        "(::)?\\b(\\w+)(?: = \\[[^\\]]*\\])?\\(([^(){};]*const char\\*[^(){};]*)\\)[^(){};]*"
        "\\{"));
    static const QRegularExpression parameter(QStringLiteral("const char\\* ?(?:const )?(\\w+)"));
    static const QRegularExpression call(QStringLiteral("(\\w+)\\("));
    bool learnt = false;
    for (auto found = definition.globalMatch(file.text); found.hasNext();) {
        const auto match = found.next();
        const QString name = match.captured(2);
        // One of a class is called by no other file under its bare name.
        const bool shared = match.capturedLength(1) == 0 && declared.contains(name);
        QStringList parameters;
        for (const QString& each : match.captured(3).split(QLatin1Char(',')))
            parameters << parameter.match(each).captured(1);
        const QList<TextSpan> statements = argumentsOf(file.text, match.capturedEnd() - 1);
        if (statements.isEmpty()) continue;
        const QString body = part(file.text, {match.capturedEnd(), statements.last().to});
        for (auto calls = call.globalMatch(body); calls.hasNext();) {
            const auto called = calls.next();
            const QList<TextSpan> arguments = argumentsOf(body, called.capturedEnd() - 1);
            QList<SaidArgument> said;
            if (called.captured(1) == QLatin1String("translate") && arguments.size() > 1) {
                const QString context = part(body, arguments.at(0)).trimmed();
                if (context.startsWith(QLatin1Char('"')))
                    said << SaidArgument{1, context.mid(1, context.size() - 2),
                                         arguments.size() > 3};
            } else if (const auto* known = find(file.path, called.captured(1))) {
                said = *known;
            }
            for (const SaidArgument& each : said) {
                if (each.argument >= arguments.size()) continue;
                const int number = parameterIn(parameters, part(body, arguments.at(each.argument)));
                if (number < 0) continue;
                SayingFunctions& functions = shared ? m_ofHeaders : m_ofFile[file.path];
                QList<SaidArgument>& list = functions[name];
                const bool there = std::any_of(list.begin(), list.end(), [&](const auto& one) {
                    return one.argument == number && one.context == each.context;
                });
                if (there) continue;
                list << SaidArgument{number, each.context, each.counted};
                learnt = true;
            }
        }
    }
    return learnt;
}

QString SaidThrough::laidOut(const TreeText& file) const {
    static const QRegularExpression call(QStringLiteral("(?<![\\w])(\\w+)\\("));
    struct SaidLiteral {
        TextSpan span;
        const SaidArgument* said;
    };
    QList<SaidLiteral> marks;
    for (auto calls = call.globalMatch(file.text); calls.hasNext();) {
        const auto called = calls.next();
        const auto* said = find(file.path, called.captured(1));
        if (!said) continue;
        const QList<TextSpan> arguments = argumentsOf(file.text, called.capturedEnd() - 1);
        for (const SaidArgument& each : *said)
            if (each.argument < arguments.size())
                for (const TextSpan& literal : literalsIn(file.text, arguments.at(each.argument)))
                    marks << SaidLiteral{literal, &each};
    }
    static const QRegularExpression table(
        QStringLiteral("^(?: *// said: (\\w+)\\n|struct Choices<\\w+>)[^{]*(\\{)"),
        QRegularExpression::MultilineOption);
    // What a refusal says was wanted: an action knows no translator.
    static const QRegularExpression wanted(
        QStringLiteral("(?:\\{\"wanted\",|\\bwanted\\()\\s*(\"(?:[^\"\\\\]|\\\\.)+\")"));
    static const SaidArgument saidWanted{0, QStringLiteral("wanted"), false};
    for (auto all = wanted.globalMatch(file.text); all.hasNext();) {
        const auto match = all.next();
        marks << SaidLiteral{{match.capturedStart(1), match.capturedEnd(1)}, &saidWanted};
    }
    QList<SaidArgument> saidTables;
    for (auto tables = table.globalMatch(file.text); tables.hasNext();) {
        const QString named = tables.next().captured(1);
        saidTables << SaidArgument{0, named.isEmpty() ? QStringLiteral("choices") : named, false};
    }
    qsizetype number = 0;
    for (auto tables = table.globalMatch(file.text); tables.hasNext(); ++number)
        for (const TextSpan& row : argumentsOf(file.text, tables.next().capturedStart(2)))
            for (qsizetype at = row.from; at < row.to; ++at) {
                const qsizetype behind = behindToken(file.text, at);
                if (file.text.at(at) == QLatin1Char('"'))
                    marks << SaidLiteral{{at, behind}, &saidTables.at(number)};
                if (behind > at) at = behind - 1;
            }
    std::sort(marks.begin(), marks.end(),
              [](const SaidLiteral& a, const SaidLiteral& b) { return a.span.from > b.span.from; });
    QString text = file.text;
    for (const SaidLiteral& mark : marks) {
        text.insert(mark.span.to, QLatin1Char(')'));
        text.insert(mark.span.from,
                    QStringLiteral("%1(\"%2\", ")
                        .arg(mark.said->counted ? QStringLiteral("QT_TRANSLATE_N_NOOP")
                                                : QStringLiteral("QT_TRANSLATE_NOOP"),
                             mark.said->context));
    }
    return text;
}

QStringList SaidThrough::handedOn(const TreeText& file) const {
    static const QRegularExpression call(QStringLiteral("(?<![\\w])(\\w+)\\("));
    QStringList found;
    for (auto calls = call.globalMatch(file.text); calls.hasNext();) {
        const auto called = calls.next();
        const auto* said = find(file.path, called.captured(1));
        if (!said) continue;
        const QList<TextSpan> arguments = argumentsOf(file.text, called.capturedEnd() - 1);
        for (const SaidArgument& each : *said) {
            if (each.argument >= arguments.size()) continue;
            const QString argument = part(file.text, arguments.at(each.argument)).simplified();
            if (argument.contains(QLatin1String("const char*")) ||
                argument.contains(QLatin1String("NOOP")) ||
                !literalsIn(file.text, arguments.at(each.argument)).isEmpty())
                continue;
            found << QStringLiteral("%1: %2(%3)").arg(file.path, called.captured(1), argument);
        }
    }
    return found;
}

}  // namespace combwright::words
