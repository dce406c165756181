// Two days of the season put beside each other: what came, went and changed between them, in words.
// The days are typed as they are typed everywhere.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>
#include <functional>
#include <optional>

#include "core/places/pages/page.h"
#include "core/units/day.h"
#include "ui/look/tokens.h"

namespace combwright {

class TwoDaysDialog : public QDialog {
    Q_OBJECT

  public:
    /// What differs from one day to a later one; nothing where that could not be found out, which
    /// was then told.
    using Between = std::function<std::optional<Page>(Day from, Day to)>;
    TwoDaysDialog(const Look& look, Day from, Day today, Between between, QWidget* parent);

  private:
    /// Reads both days, the earlier first whichever was typed where, and shows what differs.
    void compare();
    void print();

    Look m_look;
    Day m_today;
    Between m_between;
    QLineEdit* m_from;
    QLineEdit* m_to;
    QLabel* m_says;
    QPlainTextEdit* m_text;
    QPushButton* m_print;
    std::optional<Page> m_page;
};

}  // namespace combwright
