// The sheets of the invented season as they come out of the printer: their words read back out of
// the PDF and held against what was looked at and accepted, and their first page's greys against
// its picture. Accept new ones, after looking at them, with COMBWRIGHT_ACCEPT=1 in the environment.
#include <gtest/gtest.h>

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QImage>
#include <QProcess>
#include <cmath>

#include "app/desktop/prints.h"
#include "core/actions/demo_season.h"
#include "core/places/trace/trace.h"
#include "tests/support/support.h"
#include "ui/look/style.h"
#include "ui/print/page_painter.h"

namespace combwright {
namespace {

constexpr const char* acceptedFolder = COMBWRIGHT_SOURCE_DIR "/tests/fixtures/golden/prints/";

bool accepting() { return qEnvironmentVariableIntValue("COMBWRIGHT_ACCEPT") == 1; }

QByteArray outputOf(const QString& program, const QStringList& arguments) {
    QProcess run;
    run.start(program, arguments);
    EXPECT_TRUE(run.waitForFinished(60'000)) << program.toStdString();
    EXPECT_EQ(run.exitCode(), 0) << run.readAllStandardError().toStdString();
    return run.readAllStandardOutput();
}

/// Blanks between columns depend on the width of letters; the words and their order do not.
QByteArray wordsOf(const QByteArray& text) {
    QByteArray words;
    for (const QByteArray& line : text.split('\n'))
        if (const QByteArray tidy = line.simplified(); !tidy.isEmpty()) words += tidy + '\n';
    return words;
}

/// Share of the picture's points that are a good deal lighter or darker in the other.
double differs(const QImage& a, const QImage& b) {
    if (a.size() != b.size()) return 1;
    qint64 far = 0;
    for (int y = 0; y < a.height(); ++y)
        for (int x = 0; x < a.width(); ++x)
            far += std::abs(qGray(a.pixel(x, y)) - qGray(b.pixel(x, y))) > 64;
    return static_cast<double>(far) / (static_cast<double>(a.width()) * a.height());
}

class PrintedSeason : public test::SeasonTest {
  protected:
    void SetUp() override {
        clock.set(isoText(demoSeasonDay()));
        ASSERT_TRUE(makeDemoSeason(path("demo.combwright"), clock));
        session.setLook(applyLook(*qobject_cast<QApplication*>(QApplication::instance()), false));
        session.leaveNoTrace();
        ASSERT_TRUE(session.open(QString::fromStdString(path("demo.combwright"))));
    }
    QString print(const QString& sheet, QPageSize::PageSizeId paper = QPageSize::A4,
                  double zoom = 1) {
        QString pdf = QString::fromStdString(path(qPrintable(sheet + QStringLiteral(".pdf"))));
        MainWindow window(session);
        EXPECT_EQ(desktop::printSheet(window, sheet, pdf, QPageSize(paper), zoom, session), 0);
        return pdf;
    }
    static QByteArray textIn(const QString& pdf) {
        return outputOf(QStringLiteral("pdftotext"),
                        {QStringLiteral("-layout"), pdf, QStringLiteral("-")});
    }
    static int sheetsIn(const QString& pdf) { return static_cast<int>(textIn(pdf).count('\f')); }

    Session session{clock};
};

TEST_F(PrintedSeason, SheetsAreAsAccepted) {
    for (const char* id : {"harvest-summary", "season-strip", "medicine-record", "colonies",
                           "order-list", "winter-to-do", "candle-plan", "honey-store", "sales"}) {
        SCOPED_TRACE(id);
        const QString sheet = QString::fromLatin1(id);
        const QString pdf = print(sheet);
        QFile file(pdf);
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_TRUE(file.readAll().contains("pdfaid")) << "PDF/A says so of itself";
        const QByteArray words = wordsOf(textIn(pdf));
        EXPECT_TRUE(words.contains("page 1 of "));
        EXPECT_TRUE(words.contains("invented sample season"));
        const QString accepted = QString::fromLatin1(acceptedFolder) + sheet;
        const QString picture = QString::fromStdString(path(qPrintable(sheet)));
        outputOf(QStringLiteral("pdftoppm"),
                 {QStringLiteral("-png"), QStringLiteral("-gray"), QStringLiteral("-r"),
                  QStringLiteral("36"), QStringLiteral("-f"), QStringLiteral("1"),
                  QStringLiteral("-singlefile"), pdf, picture});
        const QString png = picture + QStringLiteral(".png");
        if (accepting()) {
            QDir().mkpath(QString::fromLatin1(acceptedFolder));
            QFile text(accepted + QStringLiteral(".txt"));
            ASSERT_TRUE(text.open(QIODevice::WriteOnly));
            text.write(words);
            QFile::remove(accepted + QStringLiteral(".png"));
            ASSERT_TRUE(QFile::copy(png, accepted + QStringLiteral(".png")));
            continue;
        }
        QFile text(accepted + QStringLiteral(".txt"));
        ASSERT_TRUE(text.open(QIODevice::ReadOnly));
        EXPECT_EQ(words.toStdString(), text.readAll().toStdString());
        EXPECT_LT(differs(QImage(png), QImage(accepted + QStringLiteral(".png"))), 0.02);
    }
    EXPECT_FALSE(accepting()) << "accepted anew; run again without COMBWRIGHT_ACCEPT";
}

TEST_F(PrintedSeason, TheBinderListsWhatItBindsAndWhereItBegins) {
    const QString pdf = print(QStringLiteral("binder"));
    const QByteArray text = textIn(pdf);
    const int sheets = sheetsIn(pdf);
    EXPECT_GT(sheets, 12);
    const QList<QByteArray> pages = text.split('\f');
    EXPECT_TRUE(pages.front().contains("Season binder 2027"));
    int listed = 0;
    for (const QByteArray& line : pages.front().split('\n')) {
        const QByteArray tidy = line.simplified();
        const qsizetype at = tidy.lastIndexOf(' ');
        bool number = false;
        const int begins = tidy.mid(at + 1).toInt(&number);
        if (!number || begins < 2 || begins > sheets || tidy.contains("page 1 of")) continue;
        ++listed;
        // The sheet of that number says the title the list has.
        const QByteArray sheet = pages.at(begins - 1).simplified();
        EXPECT_TRUE(sheet.contains("page " + QByteArray::number(begins) + " of " +
                                   QByteArray::number(sheets)))
            << tidy.toStdString();
        EXPECT_TRUE(sheet.contains(tidy.split(' ').front())) << tidy.toStdString();
    }
    EXPECT_GE(listed, 15);
}

TEST_F(PrintedSeason, TheBinderHasItsContentsAtTheSideAndEveryTrace) {
    const QString pdf = print(QStringLiteral("binder"));
    const QByteArray text = textIn(pdf);
    const QByteArray contents = outputOf(QStringLiteral("pdftohtml"),
                                         {QStringLiteral("-xml"), QStringLiteral("-i"),
                                          QStringLiteral("-stdout"), QStringLiteral("-q"), pdf});
    const qsizetype at = contents.indexOf("<outline>");
    ASSERT_GE(at, 0);
    const QByteArray outline = contents.mid(at);
    for (const char* title : {"Season binder 2027", "Harvest summary 2027", "Season strip 2027"})
        EXPECT_TRUE(outline.contains(title)) << title;
    // Each filling, and each run no jar of which was filled.
    const Read& file = session.read();
    const std::vector<TraceOf> traces = tracedOfYear(file, 2027, session.clock().today());
    ASSERT_GT(traces.size(), 1U);
    for (const TraceOf& each : traces) {
        const QByteArray title = "Trace of " + QByteArray::fromStdString(traceSubject(file, each));
        EXPECT_TRUE(outline.contains(title)) << title.toStdString();
        EXPECT_TRUE(text.contains(title)) << title.toStdString();
    }
    // What makes it fit to be archived is still there.
    QFile written(pdf);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    const QByteArray bytes = written.readAll();
    for (const char* each : {"pdfaid", "/OutputIntents", "/Metadata", "/PageMode /UseOutlines"})
        EXPECT_TRUE(bytes.contains(each)) << each;
    EXPECT_FALSE(bytes.contains("/ObjStm")) << "PDF/A-1 has no objects in streams";
    EXPECT_TRUE(bytes.startsWith("%PDF-1.4"));
}

TEST_F(PrintedSeason, TheHarvestSummaryIsOneSheetOnEitherPaper) {
    const QString sheet = QStringLiteral("harvest-summary");
    EXPECT_EQ(sheetsIn(print(sheet)), 1);
    EXPECT_EQ(sheetsIn(print(sheet, QPageSize::Letter)), 1);
    EXPECT_LE(sheetsIn(print(sheet, QPageSize::A4, largeType)), 2);
}

TEST_F(PrintedSeason, TheWallStripLiesOnItsLongSide) {
    const QString sheet = QStringLiteral("season-strip");
    for (const QPageSize::PageSizeId paper : {QPageSize::A4, QPageSize::Letter}) {
        const QByteArray about = outputOf(QStringLiteral("pdfinfo"), {print(sheet, paper)});
        const QByteArray size = about.mid(about.indexOf("Page size:")).split('\n').front();
        const QList<QByteArray> numbers = size.simplified().split(' ');
        ASSERT_GT(numbers.size(), 4) << about.toStdString();
        EXPECT_GT(numbers[2].toDouble(), numbers[4].toDouble()) << size.toStdString();
    }
}

TEST_F(PrintedSeason, NothingFallsOffTheOtherPaperInLargeType) {
    const QString sheet = QStringLiteral("harvest-summary");
    const QByteArray words = wordsOf(textIn(print(sheet, QPageSize::Letter, largeType)));
    EXPECT_TRUE(words.contains("page 1 of "));
    // What stands on the last row stands there too.
    EXPECT_TRUE(words.contains("ML12"));
}

}  // namespace
}  // namespace combwright
