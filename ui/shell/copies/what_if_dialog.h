// A what-if beside what was done: what differs both ways, what would not go into the season any
// more, and the three ways on. The dialog only says what is wished.
#pragma once

#include <QDialog>
#include <QStringList>

#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

class WhatIfDialog : public QDialog {
    Q_OBJECT

  public:
    enum class Wish { None, Adopt, Drop };
    WhatIfDialog(const Look& look, const QString& title, const Page& differences,
                 const QStringList& conflicts, bool mayWrite, QWidget* parent);
    Wish wish() const { return m_wish; }

  private:
    Wish m_wish = Wish::None;
};

}  // namespace combwright
