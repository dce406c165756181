#include "ui/look/tokens.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>
#include <QPushButton>
#include <vector>

#include "ui/look/style.h"

namespace combwright {

namespace {

std::vector<Look> everyLook() {
    const QFont font(QStringLiteral("DejaVu Sans"), 10);
    return {lookFor(font, false), lookFor(font, true), paperLook(font)};
}

}  // namespace

TEST(TokensTest, PaperHasNoColour) {
    const Look look = paperLook(QFont());
    for (int i = 0; i <= static_cast<int>(Tone::Good); ++i) {
        EXPECT_EQ(look.tone(static_cast<Tone>(i)).hsvSaturation(), 0) << i;
    }
    for (int i = 0; i <= static_cast<int>(Paint::ChalkShadow); ++i) {
        EXPECT_EQ(look.paint(static_cast<Paint>(i)).hsvSaturation(), 0) << i;
    }
}

TEST(TokensTest, EveryToneAndPaintIsInTheTables) {
    for (const auto& look : everyLook()) {
        for (int i = 0; i <= static_cast<int>(Tone::Good); ++i) {
            EXPECT_TRUE(look.tone(static_cast<Tone>(i)).isValid()) << i;
        }
        for (int i = 0; i <= static_cast<int>(Paint::ChalkShadow); ++i) {
            EXPECT_TRUE(look.paint(static_cast<Paint>(i)).isValid()) << i;
        }
    }
}

TEST(TokensTest, DarkIsToldFromThePalette) {
    EXPECT_FALSE(isDark(paletteFor(false)));
    EXPECT_TRUE(isDark(paletteFor(true)));
}

TEST(TokensTest, TypeAndSpaceGrowTogether) {
    QFont font(QStringLiteral("DejaVu Sans"));
    font.setPixelSize(20);
    const Look once = lookFor(font, false), twice = lookFor(font, false, 2.0);
    EXPECT_EQ(once.font(TextSize::Body).pixelSize(), 20);
    EXPECT_EQ(once.font(TextSize::Big).pixelSize(), 40);
    EXPECT_EQ(once.font(TextSize::Note).pixelSize(), 17);
    EXPECT_EQ(twice.font(TextSize::Body).pixelSize(), 40);
    EXPECT_EQ(twice.space(8), 2 * once.space(8));
    EXPECT_EQ(once.space(8), 12);  // 8 at 13.333 px, so 12 at 20
    EXPECT_EQ(lookFor(font, false, 5.0).factor, 2.0);
    EXPECT_EQ(lookFor(font, false, 0.2).factor, 1.0);
}

TEST(StyleTest, NoTokenIsLeftUnfilled) {
    const QString rules = styleSheetFor(lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false));
    EXPECT_FALSE(rules.contains(QLatin1Char('@'))) << rules.toStdString();
    EXPECT_TRUE(rules.contains(QStringLiteral("#0b5c8a"), Qt::CaseInsensitive));
}

TEST(StyleTest, MayBeAppliedAgainWithoutGrowing) {
    auto* application = qobject_cast<QApplication*>(QCoreApplication::instance());
    ASSERT_NE(application, nullptr);
    const Look first = applyLook(*application, false, 1.5);
    const int size = application->font().pixelSize();
    const Look second = applyLook(*application, true, 1.5);
    EXPECT_EQ(application->font().pixelSize(), size);
    EXPECT_EQ(first.space(24), second.space(24));
    EXPECT_TRUE(isDark(application->palette()));
    applyLook(*application, false);
}

TEST(StyleTest, ThePrimaryButtonWearsTheAccent) {
    auto* application = qobject_cast<QApplication*>(QCoreApplication::instance());
    ASSERT_NE(application, nullptr);
    const Look look = applyLook(*application, false);
    QPushButton plain(QStringLiteral("Write")), primary(QStringLiteral("Print"));
    primary.setProperty("primary", true);
    const auto middleLeft = [](QPushButton& button) {
        button.resize(120, 32);
        return button.grab().toImage().pixelColor(6, 16);
    };
    EXPECT_EQ(middleLeft(primary), look.tone(Tone::Accent));
    EXPECT_EQ(middleLeft(plain), look.tone(Tone::Surface));
}

}  // namespace combwright
