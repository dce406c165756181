#include "ui/print/print_dialog.h"

#include <QPrintPreviewDialog>
#include <QPrinter>

#include "ui/print/page_painter.h"

namespace combwright {

void printWithPreview(QWidget* parent, const Page& page, const Look& look) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(page.title);
    printer.setPageMargins(QMarginsF(15, 14, 15, 12), QPageLayout::Millimeter);
    QPrintPreviewDialog preview(&printer, parent);
    preview.setWindowTitle(page.title);
    QObject::connect(&preview, &QPrintPreviewDialog::paintRequested, &preview,
                     [&](QPrinter* target) { paintPage(*target, page, look.base); });
    preview.exec();
}

}  // namespace combwright
