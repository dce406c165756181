// Which frame hangs in which box, in the units shown and with rows as high as their words.
#include "ui/storeroom/fit_dialog.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "tests/ui/storeroom/form_hands.h"

namespace combwright {
namespace {

using testing::HasSubstr;
using testing::Not;

class Fit : public test::FormTest {
  protected:
    void TearDown() override {
        session.setUnits(Units::Metric);
        FormTest::TearDown();
    }
    static std::string note(const FitDialog& dialog) {
        return dialog.findChild<QLabel*>(QStringLiteral("fit_note"))->text().toStdString();
    }
};

TEST_F(Fit, SpeaksInTheUnitsShown) {
    EXPECT_THAT(note(FitDialog(session)), HasSubstr("6\u00a0mm"));
    session.setUnits(Units::UsCustomary);
    const FitDialog dialog(session);
    EXPECT_THAT(note(dialog), HasSubstr("0.24\u00a0in"));
    EXPECT_THAT(note(dialog), HasSubstr("0.51\u00a0in"));
    EXPECT_THAT(note(dialog), Not(HasSubstr("mm")));
}

TEST_F(Fit, ARowIsAsHighAsItsWords) {
    FitDialog dialog(session);
    dialog.show();
    QTest::qWait(50);
    const QFontMetrics letters(dialog.table().font());
    for (int row = 0; row < dialog.table().rowCount(); ++row) {
        int lines = 1;
        for (int column = 0; column < dialog.table().columnCount(); ++column) {
            const auto* item = dialog.table().item(row, column);
            if (!item) continue;
            int wide = 0;
            for (int n = 0; n < dialog.table().columnSpan(row, column); ++n)
                wide += dialog.table().columnWidth(column + n);
            const QRect words = letters.boundingRect(QRect(0, 0, std::max(wide - 12, 1), 10000),
                                                     Qt::TextWordWrap, item->text());
            lines = std::max(lines, words.height() / letters.lineSpacing() + 1);
        }
        EXPECT_LE(dialog.table().rowHeight(row), (lines + 1) * letters.lineSpacing() + 12)
            << dialog.table().item(row, 0)->text().toStdString();
    }
}

}  // namespace
}  // namespace combwright
