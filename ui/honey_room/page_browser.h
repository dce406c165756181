// A page of print read on the screen: its words and tables as text that wraps, scrolls by keyboard
// and is read out; what it prints to is the same page.
#pragma once

#include <QTextBrowser>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

class PageBrowser : public QTextBrowser {
    Q_OBJECT

  public:
    explicit PageBrowser(QWidget* parent);
    void show(const Page& page, const Look& look);
};

/// Text, ticks and tables of a page as rich text; what is drawn on paper only is left to the paper.
QString richTextOf(const Page& page, const Look& look);

}  // namespace combwright
