#include "ui/common/figure_delegate.h"

#include <gtest/gtest.h>

#include <QImage>
#include <QPainter>
#include <QStandardItemModel>

namespace combwright {

namespace {

Look delegateLook() { return lookFor(QFont(QStringLiteral("DejaVu Sans"), 10), false); }

void fillDelegateModel(QStandardItemModel& model) {
    for (const auto& figure :
         {FigureText{"1234.5", "kg", 'w'}, FigureText{"7", "hives", 'c'}, FigureText{}}) {
        auto* item = new QStandardItem;
        item->setData(QVariant::fromValue(figure), figureRole);
        model.appendRow(item);
    }
}

QImage paintedCell(const FigureDelegate& delegate, const QModelIndex& index) {
    QImage image(200, 32, QImage::Format_RGB32);
    image.fill(Qt::white);
    QPainter painter(&image);
    QStyleOptionViewItem option;
    option.rect = image.rect();
    delegate.paint(&painter, option, index);
    return image;
}

}  // namespace

TEST(FigureDelegateTest, MeasuresTheWholeColumn) {
    QStandardItemModel model;
    fillDelegateModel(model);
    FigureDelegate delegate(delegateLook());
    delegate.measure(model, 0);
    const auto first = measureFigures({{"1234.5", "kg", 'w'}}, {}, delegateLook());
    const auto second = measureFigures({{"7", "hives", 'c'}}, {}, delegateLook());
    EXPECT_DOUBLE_EQ(delegate.columns().whole, first.whole);
    EXPECT_DOUBLE_EQ(delegate.columns().unit, second.unit);
    const QSize size = delegate.sizeHint({}, model.index(1, 0));
    EXPECT_GE(size.width(), delegate.columns().width());
    EXPECT_GE(size.height(), delegateLook().target());
}

TEST(FigureDelegateTest, PaintsTheFigureAndNothingForNothing) {
    QStandardItemModel model;
    fillDelegateModel(model);
    FigureDelegate delegate(delegateLook());
    delegate.measure(model, 0);
    EXPECT_NE(paintedCell(delegate, model.index(0, 0)), paintedCell(delegate, model.index(2, 0)));
    EXPECT_NE(paintedCell(delegate, model.index(0, 0)), paintedCell(delegate, model.index(1, 0)));
}

TEST(FigureDelegateTest, SpeaksTheFigure) {
    const FigureDelegate delegate(delegateLook());
    const QVariant held = QVariant::fromValue(FigureText{"7", "hives", 'c'});
    EXPECT_EQ(delegate.displayText(held, QLocale::c()), QLatin1String("7 hives counted"));
    EXPECT_EQ(delegate.displayText("plain", QLocale::c()), QLatin1String("plain"));
}

}  // namespace combwright
