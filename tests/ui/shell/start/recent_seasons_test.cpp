#include "ui/shell/start/recent_seasons.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

namespace combwright {
namespace {

class Recent : public testing::Test {
  protected:
    QString file(const QString& name, bool made = true) const {
        const QString path = folder.filePath(name);
        QFile out(path);
        if (made) {
            EXPECT_TRUE(out.open(QIODevice::WriteOnly));
        }
        return path;
    }
    RecentSeasons recent() const {
        return RecentSeasons(folder.filePath(QStringLiteral("choices.ini")));
    }
    QTemporaryDir folder;
    const Day today = *parseDay("2027-06-09");
};

TEST_F(Recent, AreListedNewestFirstAndOnce) {
    auto seasons = recent();
    EXPECT_TRUE(seasons.list().empty());
    const QString a = file(QString::fromUtf8("Bienen, ä \"1\".combwright"));
    const QString b = file(QStringLiteral("b.combwright"), false);
    seasons.add(a, QString::fromUtf8("Hügel"), today - days(1));
    seasons.add(b, {}, today - days(1));
    seasons.add(a, QString::fromUtf8("Hügel"), today);
    auto another = recent();
    const auto list = another.list();
    ASSERT_EQ(list.size(), 2U);
    EXPECT_EQ(list[0].path, a);
    EXPECT_EQ(list[0].name, QString::fromUtf8("Hügel"));
    EXPECT_EQ(list[0].opened, today);
    EXPECT_TRUE(list[0].there);
    EXPECT_EQ(list[1].path, b);
    EXPECT_FALSE(list[1].there);
}

TEST_F(Recent, RemembersEightAndIsCleared) {
    auto seasons = recent();
    for (int n = 0; n < 12; ++n)
        seasons.add(file(QStringLiteral("%1.combwright").arg(n)), {}, today);
    auto list = seasons.list();
    ASSERT_EQ(list.size(), 8U);
    EXPECT_TRUE(list.front().path.endsWith(QStringLiteral("/11.combwright")));
    seasons.remove(list.front().path);
    EXPECT_EQ(seasons.list().size(), 7U);
    EXPECT_TRUE(seasons.list().front().path.endsWith(QStringLiteral("/10.combwright")));
    seasons.clear();
    EXPECT_TRUE(recent().list().empty());
}

}  // namespace
}  // namespace combwright
