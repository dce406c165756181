// The window is killed while somebody types, at any moment, again and again. Every line that was
// kept is in the season, none twice and none half; of the line being typed at most the last two
// seconds are lost. The typist is a process of its own (tests/support/desktop_main.cpp).
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QApplication>
#include <QElapsedTimer>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryDir>
#include <random>

#include "core/places/yard/yard_sheet.h"
#include "core/storage/audit.h"
#include "core/storage/queries/yards.h"
#include "tests/support/support.h"
#include "tests/support/typist.h"
#include "tests/trust/campaign.h"
#include "ui/shell/drafts.h"

namespace combwright {
namespace {

constexpr int lostAtMostMs = 2000;

class KilledTyping : public test::SeasonTest {
  protected:
    void begin(int n) {
        m_name = "season-" + std::to_string(n) + ".combwright";
        auto season = Season::create(path(m_name.c_str()), clock);
        ASSERT_TRUE(season);
        playAll(*season,
                R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hives","on":"2027-04-10","yard":"Hill","marks":"H1-H)" +
                    std::to_string(test::typistHives) +
                    R"(","boxes":"deep","origin":"overwintered"}
)");
    }

    struct Said {
        int kept = 0;           ///< lines
        int letters = 0;        ///< of the line after them, said long enough before the end
        bool finished = false;  ///< it came to its end before
    };
    /// Types until it is killed, so long after its first letter.
    Said typeFor(int ms) const {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        environment.insert(QLatin1String(test::typistSeason), season());
        environment.insert(QLatin1String(test::typistState), m_state.path());
        environment.insert(QLatin1String(test::typistGoesOn), QStringLiteral("1"));
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        QProcess typist;
        typist.setProcessEnvironment(environment);
        typist.start(QApplication::applicationFilePath(), QStringList());
        Said said;
        std::vector<std::pair<qint64, int>> letters;  // of this line, and when they were said
        QElapsedTimer sinceFirst;
        const auto hear = [&] {
            while (typist.canReadLine()) {
                const QList<QByteArray> words = typist.readLine().trimmed().split(' ');
                if (!sinceFirst.isValid()) sinceFirst.start();
                if (words.front() == "kept") {
                    said.kept = words.back().toInt();
                    letters.clear();
                } else {
                    letters.emplace_back(sinceFirst.elapsed(), words.back().toInt());
                }
            }
        };
        while (typist.state() != QProcess::NotRunning &&
               (!sinceFirst.isValid() || sinceFirst.elapsed() < ms)) {
            typist.waitForReadyRead(5);
            hear();
        }
        const qint64 end = sinceFirst.isValid() ? sinceFirst.elapsed() : 0;
        typist.kill();
        EXPECT_TRUE(typist.waitForFinished(20'000));
        said.finished = typist.exitStatus() == QProcess::NormalExit;
        EXPECT_TRUE(!said.finished || typist.exitCode() == 0) << typist.exitCode();
        hear();  // said, and not heard before the kill
        for (const auto& [at, count] : letters)
            if (at <= end - lostAtMostMs) said.letters = count;
        return said;
    }
    QString season() const { return QString::fromStdString(path(m_name.c_str())); }
    YardSheet sheet() const {
        const Season season = Season::open(path(m_name.c_str()), clock);
        EXPECT_THAT(audit(season.read()), testing::IsEmpty());
        return yardSheet(season.read(), openYards(season.read()).front().id, clock.today());
    }
    /// The one half-typed line that would be offered again; empty where there is none.
    std::string draft() const {
        Drafts drafts;
        EXPECT_EQ(drafts.open(season(), m_state.filePath(QStringLiteral("combwright/drafts"))),
                  QString());
        const auto rows = drafts.rows();
        EXPECT_LE(rows.size(), 1U);
        return rows.empty() ? std::string()
                            : drafts.of(rows.front().first).at(rows.front().second).toStdString();
    }

    std::string m_name;
    QTemporaryDir m_state;
};

TEST_F(KilledTyping, LosesNoKeptLineAndTwoSecondsOfTheOneInHand) {
    std::mt19937 random(test::campaignSeed());
    const std::string whole = test::typedLine;
    const auto lineMs = static_cast<unsigned>(whole.size()) * test::msPerLetter;
    long killed = 0;
    long withDraft = 0;
    long kept = 0;
    const int kills = test::isLongCampaign() ? 200 : 8;
    for (int n = 0; n < kills; ++n) {
        begin(n);
        const int ms = static_cast<int>(random() % (2 * lineMs));
        const Said said = typeFor(ms);
        SCOPED_TRACE("killed after " + std::to_string(ms) + " ms, kept " +
                     std::to_string(said.kept) + ", " + std::to_string(said.letters) + " letters");
        killed += !said.finished;
        kept += said.kept;
        const YardSheet found = sheet();
        EXPECT_GE(found.opened, said.kept);
        EXPECT_LE(found.opened, said.kept + 1);
        for (int row = 0; row < found.opened; ++row) {
            ASSERT_TRUE(found.rows[static_cast<std::size_t>(row)].today);
            EXPECT_EQ(found.rows[static_cast<std::size_t>(row)].today->line, whole);
        }
        const std::string offered = draft();
        withDraft += !offered.empty();
        if (HasFailure()) return;
        // Killed between keeping a line and saying so: whose draft it is cannot be told.
        if (found.opened > said.kept) continue;
        EXPECT_EQ(whole.substr(0, offered.size()), offered) << "what was typed, and nothing else";
        EXPECT_GE(static_cast<int>(offered.size()), said.letters);
        if (HasFailure()) return;
    }
    EXPECT_GT(killed, kills / 2);
    EXPECT_GT(withDraft, 0);
    test::report("windows killed while typing", killed);
    test::report("lines kept before", kept);
    test::report("half-typed lines offered again", withDraft);
}

}  // namespace
}  // namespace combwright
