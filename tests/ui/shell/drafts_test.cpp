// Lines half typed: held within a second, one small file a season, gone when kept, and never in
// anybody's way.
#include "ui/shell/drafts.h"

#include <gtest/gtest.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>
#include <QTest>

#include "ui/shell/sheet_drafts.h"

namespace combwright {
namespace {

class DraftsTest : public testing::Test {
  protected:
    void SetUp() override {
        ASSERT_TRUE(folder.isValid());
        QFile season(seasonPath());
        ASSERT_TRUE(season.open(QIODevice::WriteOnly));
    }
    QString seasonPath() const { return folder.filePath(QStringLiteral("a.combwright")); }
    QString drafts() const { return folder.filePath(QStringLiteral("state/drafts")); }
    QString draftFile() const {
        return Drafts::fileFor(drafts(), QFileInfo(seasonPath()).canonicalFilePath());
    }
    void writeFile(const QByteArray& bytes) const {
        QDir().mkpath(drafts());
        QFile file(draftFile());
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(bytes);
    }

    QTemporaryDir folder;
    const QString sheet = QStringLiteral("yard-sheet 1 2027-06-09");
    const QString row = QStringLiteral("hive 4");
    const QString text = QString::fromUtf8("e b7 \"müde\"");
};

TEST_F(DraftsTest, AreWrittenWithinASecondAndReadByTheNext) {
    Drafts first;
    EXPECT_EQ(first.open(seasonPath(), drafts()), QString());
    first.hold(sheet, row, text);
    EXPECT_FALSE(QFile::exists(draftFile())) << "not for every key";
    EXPECT_TRUE(
        QTest::qWaitFor([&] { return QFile::exists(draftFile()); }, Drafts::writtenAfterMs + 1000));

    Drafts next;
    EXPECT_EQ(next.open(seasonPath(), drafts()), QString());
    const std::map<QString, QString> found{{row, text}};
    EXPECT_EQ(next.of(sheet), found);
    EXPECT_TRUE(next.of(QStringLiteral("another sheet")).empty());
    EXPECT_FALSE(QFile(draftFile()).permissions() &
                 (QFile::ReadGroup | QFile::WriteGroup | QFile::ReadOther | QFile::WriteOther));
}

TEST_F(DraftsTest, LeaveNoFileWhenAllAreKept) {
    Drafts store;
    store.open(seasonPath(), drafts());
    store.hold(sheet, row, text);
    store.flush();
    ASSERT_TRUE(QFile::exists(draftFile()));
    store.drop(sheet, row);
    EXPECT_FALSE(QFile::exists(draftFile())) << "at once, or it is offered again after a crash";
}

TEST_F(DraftsTest, OfOneSeasonAreNotThoseOfAnother) {
    const QString other = folder.filePath(QStringLiteral("b.combwright"));
    ASSERT_TRUE(QFile::copy(seasonPath(), other));
    Drafts store;
    store.open(seasonPath(), drafts());
    store.hold(sheet, row, text);
    EXPECT_EQ(store.open(other, drafts()), QString());
    EXPECT_TRUE(store.of(sheet).empty());
    store.open(seasonPath(), drafts());
    EXPECT_EQ(store.of(sheet).size(), 1U);
    // By a link it is the same season.
    const QString link = folder.filePath(QStringLiteral("link.combwright"));
    ASSERT_TRUE(QFile::link(seasonPath(), link));
    store.open(link, drafts());
    EXPECT_EQ(store.of(sheet).size(), 1U);
}

TEST_F(DraftsTest, GoAlongWhenTheSeasonGoesOnElsewhere) {
    const QString other = folder.filePath(QStringLiteral("b.combwright"));
    ASSERT_TRUE(QFile::copy(seasonPath(), other));
    Drafts store;
    store.open(seasonPath(), drafts());
    store.hold(sheet, row, text);
    store.flush();
    store.follow(other);
    EXPECT_FALSE(QFile::exists(draftFile()));
    Drafts next;
    next.open(other, drafts());
    EXPECT_EQ(next.of(sheet).size(), 1U);
}

TEST_F(DraftsTest, ThatAreDamagedArePutAwayWithAWord) {
    const QByteArray season =
        QFileInfo(seasonPath()).canonicalFilePath().toUtf8().replace('"', "\\\"");
    const QByteArray damaged[] = {"",
                                  "half a {\"line",
                                  "[1, 2]",
                                  R"({"season":"/somewhere/else","lines":[]})",
                                  "{\"season\":\"" + season + "\",\"lines\":[{\"sheet\":1}]}",
                                  QByteArray(2'000'000, ' ')};
    for (const QByteArray& bytes : damaged) {
        writeFile(bytes);
        Drafts store;
        EXPECT_FALSE(store.open(seasonPath(), drafts()).isEmpty()) << bytes.left(40).toStdString();
        EXPECT_TRUE(store.of(sheet).empty());
        EXPECT_FALSE(QFile::exists(draftFile()));
    }
}

TEST_F(DraftsTest, AreDoneWithoutWhereTheyCannotBeWritten) {
    // Where the folder should be there is a file.
    QFile blocked(folder.filePath(QStringLiteral("state")));
    ASSERT_TRUE(blocked.open(QIODevice::WriteOnly));
    Drafts store;
    EXPECT_EQ(store.open(seasonPath(), drafts()), QString());
    store.hold(sheet, row, text);
    store.flush();
    EXPECT_EQ(store.of(sheet).size(), 1U);
    // Without a season nothing is held at all.
    store.open({});
    store.hold(sheet, row, text);
    EXPECT_TRUE(store.of(sheet).empty());
}

TEST_F(DraftsTest, LieInTheStateFolder) {
    const QByteArray before = qgetenv("XDG_STATE_HOME");
    qputenv("XDG_STATE_HOME", "/some/state");
    EXPECT_EQ(Drafts::defaultFolder(), QStringLiteral("/some/state/combwright/drafts"));
    qputenv("XDG_STATE_HOME", "not/absolute");
    EXPECT_EQ(Drafts::defaultFolder(),
              QDir::homePath() + QStringLiteral("/.local/state/combwright/drafts"));
    qputenv("XDG_STATE_HOME", before);
}

TEST_F(DraftsTest, OfferARowUntilItIsTypedInKeptOrDiscarded) {
    Drafts store;
    store.open(seasonPath(), drafts());
    for (const char* each : {"hive 1", "hive 2", "hive 3"})
        store.hold(sheet, QLatin1String(each), text);
    SheetDrafts rows;
    rows.show(store, sheet);
    EXPECT_EQ(rows.offered(QStringLiteral("hive 1")), text);
    // A look into the line is no answer to the offer.
    rows.typed(QStringLiteral("hive 1"), {}, {});
    EXPECT_EQ(rows.offered(QStringLiteral("hive 1")), text);
    rows.typed(QStringLiteral("hive 1"), QStringLiteral("x"), {});
    EXPECT_EQ(rows.offered(QStringLiteral("hive 1")), QString());
    EXPECT_EQ(store.of(sheet).at(QStringLiteral("hive 1")), QStringLiteral("x"));
    // Typed back to what is kept there is nothing to hold.
    rows.typed(QStringLiteral("hive 1"), QStringLiteral("e"), QStringLiteral("e"));
    EXPECT_EQ(store.of(sheet).count(QStringLiteral("hive 1")), 0U);
    rows.drop(QStringLiteral("hive 2"));
    EXPECT_EQ(rows.offered(QStringLiteral("hive 2")), QString());
    EXPECT_EQ(store.of(sheet).size(), 1U);
}

}  // namespace
}  // namespace combwright
