// The command line run in the test's own process: what was typed goes in, exit code and both
// streams come out.
#pragma once

#include <gtest/gtest.h>

#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QString>
#include <QStringList>
#include <QTextStream>
#include <ostream>
#include <string>
#include <string_view>

#include "app/cli/command.h"
#include "tests/support/support.h"

namespace combwright::test {

struct CliAnswer {
    int exit = -1;
    QString out;
    QString err;

    /// The one JSON value of a stream; null where it is not exactly one.
    static QJsonDocument json(const QString& text) {
        return QJsonDocument::fromJson(text.toUtf8());
    }
    QJsonObject object() const { return json(out).object(); }
    QJsonArray array() const { return json(out).array(); }
    QJsonObject refused() const {
        return json(err).object().value(QLatin1String("refused")).toObject();
    }
    std::string code() const {
        return refused().value(QLatin1String("code")).toString().toStdString();
    }
    std::string field() const {
        return refused().value(QLatin1String("field")).toString().toStdString();
    }
};

/// So that a failed expectation shows what the program said.
inline std::ostream& operator<<(std::ostream& stream, const CliAnswer& answer) {
    return stream << "exit " << answer.exit << "\nout: " << answer.out.toStdString()
                  << "\nerr: " << answer.err.toStdString();
}

inline QString qt(std::string_view text) {
    return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

/// A season file in a folder of its own, and the program to use on it.
class CliTest : public SeasonTest {
  protected:
    CliAnswer cli(const QStringList& words, std::string_view input = {}) const {
        QString given = qt(input);
        CliAnswer answer;
        QTextStream in(&given, QIODevice::ReadOnly);
        QTextStream out(&answer.out, QIODevice::WriteOnly);
        QTextStream err(&answer.err, QIODevice::WriteOnly);
        answer.exit = cli::run(words, {in, out, err}, clock);
        out.flush();
        err.flush();
        return answer;
    }
    /// COMMAND on the season file, with more words behind it.
    CliAnswer on(const char* command, const QStringList& more = {},
                 std::string_view input = {}) const {
        return cli(QStringList{QLatin1String(command), file()} + more, input);
    }
    QString file(const char* name = "season.combwright") const { return qt(path(name)); }
    /// The file's records as text, and how many steps its journal has.
    std::string dump(const char* name = "season.combwright") const {
        return Season::open(path(name), clock, Database::Mode::ReadOnly).dump();
    }
    std::size_t steps(const char* name = "season.combwright") const {
        return Season::open(path(name), clock, Database::Mode::ReadOnly).history().size();
    }
    void makeSeason() const { ASSERT_EQ(on("new").exit, cli::Done); }
};

}  // namespace combwright::test
