#include "ui/print/print_dialog.h"

#include <QAction>
#include <QCheckBox>
#include <QComboBox>
#include <QCoreApplication>
#include <QFileDialog>
#include <QGuiApplication>
#include <QLabel>
#include <QLocale>
#include <QMainWindow>
#include <QMessageBox>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QRegularExpression>
#include <QScreen>
#include <QToolBar>

#include "core/words/units.h"
#include "ui/print/label_painter.h"
#include "ui/print/page_painter.h"

namespace combwright {
namespace {

QString printWord(const char* text) { return QCoreApplication::translate("print", text); }

/// The paper chosen last, while the program runs.
/// None until somebody chose.
std::optional<QPageSize>& paperTaken() {
    static std::optional<QPageSize> paper;
    return paper;
}
QPageSize chosenPaper() { return paperTaken().value_or(usualPaper()); }

/// Whether the type is large, likewise.
bool& largeChosen() {
    static bool large = false;
    return large;
}
double chosenZoom() { return largeChosen() ? largeType : 1.0; }

/// The title as a file may be called everywhere: "Yard sheet, Mill Lane.pdf".
QString fileNameOf(QString title) {
    title.replace(QStringLiteral(": "), QStringLiteral(", "));
    static const QRegularExpression refused(QStringLiteral("[\\\\/:*?\"<>|]"));
    return title.replace(refused, QStringLiteral("-")) + QStringLiteral(".pdf");
}

/// On the paper that was chosen; labels on the one they are bought on, to its very edge.
void layOnPaper(QPrinter& printer, const Page& page) {
    const LabelsBlock* labels = labelsOf(page);
    printer.setFullPage(labels != nullptr);
    if (!labels) {
        printer.setPageOrientation(orientationOf(page));
        printer.setPageSize(chosenPaper());
        printer.setPageMargins(QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter);
        return;
    }
    printer.setPageOrientation(QPageLayout::Portrait);
    printer.setPageSize(
        QPageSize(labels->paper == QLatin1String("Letter") ? QPageSize::Letter : QPageSize::A4));
    printer.setPageMargins(QMarginsF());
}

void savePdf(QWidget* parent, const Page& page, const Look& look) {
    const QString path = QFileDialog::getSaveFileName(
        parent, printWord("Save as PDF"), fileNameOf(page.title), printWord("PDF (*.pdf)"));
    if (path.isEmpty()) return;
    const QString wrong = writePdf(page, path, look.base, chosenPaper(), chosenZoom());
    if (!wrong.isEmpty())
        QMessageBox::warning(
            parent, page.title,
            printWord("%1 cannot be written: %2. Choose another place.").arg(path, wrong));
    else
        parent->setWindowTitle(printWord("%1, saved as %2").arg(page.title, path));
}

}  // namespace

QPageSize usualPaper() {
    return QPageSize(shownUnits() == Units::UsCustomary ||
                             QLocale::system().measurementSystem() == QLocale::ImperialUSSystem
                         ? QPageSize::Letter
                         : QPageSize::A4);
}

std::optional<QPageSize> paperNamed(const QString& name) {
    if (name == QLatin1String("a4")) return QPageSize(QPageSize::A4);
    if (name == QLatin1String("letter")) return QPageSize(QPageSize::Letter);
    return std::nullopt;
}

void printWithPreview(QWidget* parent, const Page& page, const Look& look) {
    printWithPreview(
        parent, {page.title}, [&](int) { return std::optional(page); }, look);
}

void printWithPreview(QWidget* parent, const QStringList& titles,
                      const std::function<std::optional<Page>(int)>& pageOf, const Look& look) {
    std::optional<Page> first = pageOf(0);
    if (!first) return;
    Page page = *std::move(first);
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(page.title);
    layOnPaper(printer, page);
    QPrintPreviewDialog preview(&printer, parent);
    preview.setWindowTitle(page.title);
    if (const QScreen* screen = parent ? parent->screen() : QGuiApplication::primaryScreen())
        preview.resize(screen->availableSize() * 9 / 10);
    QObject::connect(&preview, &QPrintPreviewDialog::paintRequested, &preview,
                     [&](QPrinter* target) { paintPage(*target, page, look.base, chosenZoom()); });
    if (auto* shown = preview.findChild<QPrintPreviewWidget*>()) shown->fitToWidth();
    auto* usual = preview.findChild<QToolBar*>();
    auto* inside = preview.findChild<QMainWindow*>();
    if (usual && inside) {
        // In a row of their own before the usual one, which is cut where the window is narrow.
        auto* bar = new QToolBar(inside);
        bar->setObjectName(QStringLiteral("print_bar"));
        bar->setMovable(false);
        inside->insertToolBar(usual, bar);
        inside->insertToolBarBreak(usual);
        // Its first action fits the width, its last one prints.
        const QList<QAction*> actions = usual->actions();
        if (!actions.isEmpty() && actions.first()->isCheckable()) actions.first()->trigger();
        auto* print = new QPushButton(printWord("Print…"), bar);
        print->setObjectName(QStringLiteral("print_now"));
        print->setEnabled(!actions.isEmpty());
        if (!actions.isEmpty())
            QObject::connect(print, &QPushButton::clicked, actions.last(), &QAction::trigger);
        bar->addWidget(print);
        auto* paper = new QComboBox(bar);
        paper->setObjectName(QStringLiteral("paper"));
        paper->setAccessibleName(printWord("Paper"));
        paper->addItem(QStringLiteral("A4"), QStringLiteral("a4"));
        paper->addItem(QStringLiteral("Letter"), QStringLiteral("letter"));
        paper->setCurrentIndex(printer.pageLayout().pageSize().id() == QPageSize::Letter ? 1 : 0);
        paper->setEnabled(!labelsOf(page));
        // The box itself by value: it lives on after this block, our name for it does not.
        QObject::connect(paper, &QComboBox::activated, &preview, [&, paper](int index) {
            paperTaken() = *paperNamed(paper->itemData(index).toString());
            printer.setPageSize(chosenPaper());
            if (auto* shown = preview.findChild<QPrintPreviewWidget*>()) shown->updatePreview();
        });
        auto* pdf = new QPushButton(printWord("Save as PDF…"), bar);
        pdf->setObjectName(QStringLiteral("save_pdf"));
        QObject::connect(pdf, &QPushButton::clicked, &preview,
                         [&] { savePdf(&preview, page, look); });
        bar->addWidget(pdf);
        bar->addWidget(paper);
        auto* large = new QCheckBox(printWord("&Large type"), bar);
        large->setObjectName(QStringLiteral("large_type"));
        large->setChecked(largeChosen());
        QObject::connect(large, &QCheckBox::toggled, &preview, [&](bool on) {
            largeChosen() = on;
            if (auto* shown = preview.findChild<QPrintPreviewWidget*>()) shown->updatePreview();
        });
        bar->addWidget(large);
        if (titles.size() > 1) {
            auto* sheet = new QComboBox(bar);
            sheet->setObjectName(QStringLiteral("sheet"));
            sheet->setAccessibleName(printWord("Sheet"));
            sheet->addItems(titles);
            QObject::connect(sheet, &QComboBox::activated, &preview, [&, paper](int index) {
                std::optional<Page> other = pageOf(index);
                if (!other) return;
                page = *std::move(other);
                layOnPaper(printer, page);
                paper->setEnabled(!labelsOf(page));
                paper->setCurrentIndex(
                    printer.pageLayout().pageSize().id() == QPageSize::Letter ? 1 : 0);
                preview.setWindowTitle(page.title);
                printer.setDocName(page.title);
                if (auto* shown = preview.findChild<QPrintPreviewWidget*>()) shown->updatePreview();
            });
            bar->addWidget(sheet);
        }
    }
    preview.exec();
}

}  // namespace combwright
