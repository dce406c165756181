// Writes a copy of the tree's sources in which every sentence that is said is written out for
// lupdate: what goes through a file's own short function for it (said_through.h), and the names in
// the trade's tables. Nothing of it is compiled. With --unmarked it lists the calls whose texts it
// cannot see, for looking after by hand.
#include <QDir>
#include <QDirIterator>
#include <QFile>
#include <QTextStream>
#include <algorithm>

#include "app/words/said_through.h"

namespace {

using combwright::words::SaidThrough;
using combwright::words::TreeText;

QString readText(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

bool writeText(const QString& path, const QString& text) {
    QDir().mkpath(path.section(QLatin1Char('/'), 0, -2));
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text.toUtf8()) >= 0;
}

/// The cells of a line of a table; a cell in quotes may hold commas.
QStringList cellsOf(const QString& line) {
    QStringList cells{QString()};
    bool quoted = false;
    for (const QChar each : line) {
        if (each == QLatin1Char('"'))
            quoted = !quoted;
        else if (each == QLatin1Char(',') && !quoted)
            cells << QString();
        else
            cells.last() += each;
    }
    return cells;
}

/// The tables whose words are shown, and in which columns they stand.
struct ShownColumn {
    const char* table;
    const char* column;
};
constexpr ShownColumn shownColumns[] = {
    {"label_words", "says"},        {"box_kinds", "common_name"},  {"frame_kinds", "common_name"},
    {"mite_thresholds", "edition"}, {"mite_thresholds", "region"}, {"season_phases", "edition"},
    {"season_phases", "region"}};

QString tablesLaidOut(const QString& root) {
    QStringList lines;
    for (const auto& [table, column] : shownColumns) {
        const QStringList rows =
            readText(QStringLiteral("%1/resources/trade/%2.csv").arg(root, QLatin1String(table)))
                .split(QLatin1Char('\n'), Qt::SkipEmptyParts);
        qsizetype at = -1;
        for (const QString& row : rows) {
            if (row.startsWith(QLatin1Char('#'))) continue;
            const QStringList cells = cellsOf(row);
            if (at < 0) {
                at = cells.indexOf(QLatin1String(column));
                continue;
            }
            const QString word = cells.value(at);
            const QString line = QStringLiteral("QT_TRANSLATE_NOOP(\"tables\", \"%1\")").arg(word);
            if (!word.isEmpty() && !lines.contains(line)) lines << line;
        }
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace

int main(int count, char** given) {
    QTextStream out(stdout);
    if (count < 3) {
        out << "words_laid_out TREE FOLDER | words_laid_out TREE --unmarked\n";
        return 2;
    }
    const QString root = QString::fromLocal8Bit(given[1]);
    const QString to = QString::fromLocal8Bit(given[2]);
    QList<TreeText> files;
    for (const char* layer : {"core", "ui", "app"}) {
        QDirIterator each(root + QLatin1Char('/') + QLatin1String(layer),
                          {QStringLiteral("*.cpp"), QStringLiteral("*.h")}, QDir::Files,
                          QDirIterator::Subdirectories);
        while (each.hasNext()) {
            const QString path = each.next();
            files << TreeText{path.mid(root.size() + 1), readText(path)};
        }
    }
    // The order of a folder is no order; the list that comes of this is kept in the tree.
    std::sort(files.begin(), files.end(),
              [](const TreeText& a, const TreeText& b) { return a.path < b.path; });
    const SaidThrough through(files);
    if (to == QLatin1String("--unmarked")) {
        for (const TreeText& file : files)
            for (const QString& line : through.handedOn(file)) out << line << '\n';
        return 0;
    }
    QDir(to).removeRecursively();
    bool written = true;
    for (const TreeText& file : files)
        written = writeText(to + QLatin1Char('/') + file.path, through.laidOut(file)) && written;
    written = writeText(to + QStringLiteral("/core/tables.cpp"), tablesLaidOut(root)) && written;
    return written ? 0 : 1;
}
