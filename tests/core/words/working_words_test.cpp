// Every step the trade notes has a label, and its value is shown in the units the person chose.
#include "core/words/working_words.h"

#include <gtest/gtest.h>

#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>

#include "core/words/units.h"

namespace combwright {
namespace {

TEST(Steps, EachKeyNotedInTradeHasALabel) {
    static const QRegularExpression noted(QStringLiteral("note\\(\\w+, \"(\\w+)\""));
    int found = 0;
    QDirIterator files(QStringLiteral(COMBWRIGHT_SOURCE_DIR "/core"), {QStringLiteral("*.cpp")},
                       QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        auto matches = noted.globalMatch(QString::fromUtf8(file.readAll()));
        while (matches.hasNext()) {
            const auto key = matches.next().captured(1).toStdString();
            EXPECT_TRUE(hasStepWord(key)) << key << " in " << file.fileName().toStdString();
            ++found;
        }
    }
    EXPECT_GT(found, 40);
}

TEST(Steps, ShowMoreDigitsThanAScreenWould) {
    EXPECT_EQ(stepValue({"honey_g", 1360.4, "g", {}, {}}), QStringLiteral("1.360 kg"));
    EXPECT_EQ(stepValue({"honey_g", 850, "g", {}, {}}), QStringLiteral("850 g"));
    EXPECT_EQ(stepValue({"left_filled", 0.85, "", {}, {}}), QStringLiteral("0.85"));
    EXPECT_EQ(stepValue({"refractive_index", 1.4915, "", {}, {}}), QStringLiteral("1.4915"));
    const UnitsWhile us(Units::UsCustomary);
    EXPECT_EQ(stepValue({"honey_g", 1360.4, "g", {}, {}}), QStringLiteral("2.999 lb"));
    EXPECT_EQ(stepValue({"temperature_c", 20, "°C", {}, {}}), QStringLiteral("68.0 °F"));
}

}  // namespace
}  // namespace combwright
