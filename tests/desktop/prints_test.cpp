// Sheets printed from the command line: of a file that cannot be read there is none.
#include "app/desktop/prints.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QFile>
#include <QProcess>

#include "tests/support/support.h"
#include "ui/look/style.h"

namespace combwright {
namespace {

class Prints : public test::SeasonTest {
  protected:
    void SetUp() override {
        {
            Season season = newSeason();
            playAll(season,
                    R"({"do":"add-yard","on":"2027-04-01","yard_name":"Hill","usual_super":"medium"}
{"do":"add-hive","on":"2027-04-10","yard":"Hill","mark":"H1","boxes":"deep D1","origin":"overwintered"}
)");
        }
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        session.leaveNoTrace();
        ASSERT_TRUE(session.open(QString::fromStdString(path())));
    }
    QString pdf() const { return QString::fromStdString(path("out.pdf")); }
    int print(const char* sheet = "yard-sheet") {
        MainWindow window(session);
        return desktop::printSheet(window, QLatin1String(sheet), pdf(), QPageSize(QPageSize::A4),
                                   1.0, session);
    }

    Session session{clock};
};

TEST_F(Prints, ASheet) {
    EXPECT_EQ(print(), 0);
    EXPECT_TRUE(QFile::exists(pdf()));
}

TEST_F(Prints, TheKeysThereAre) {
    EXPECT_EQ(print("keys"), 0);
    QProcess reading;
    reading.start(QStringLiteral("pdftotext"),
                  {QStringLiteral("-layout"), pdf(), QStringLiteral("-")});
    ASSERT_TRUE(reading.waitForFinished(60'000));
    const std::string words = reading.readAllStandardOutput().simplified().toStdString();
    for (const char* each : {"Ctrl+K Find anything", "Ctrl+7 Season book", "F1 About this place"})
        EXPECT_NE(words.find(each), std::string::npos) << each << " in " << words;
}

TEST_F(Prints, NothingOfAFileThatCannotBeRead) {
    Database::open(path(), Database::Mode::ReadWrite).run("UPDATE hive SET since = 'no day'");
    EXPECT_EQ(print(), 3);
    EXPECT_FALSE(QFile::exists(pdf()));
}

}  // namespace
}  // namespace combwright
