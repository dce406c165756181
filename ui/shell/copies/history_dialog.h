// The history in words: the days on which something was written down, under each its steps, and
// what can be done from a point of it. The dialog only says what is wished.
#pragma once

#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTreeWidget>
#include <optional>
#include <vector>

#include "core/places/copies/history_steps.h"
#include "ui/look/tokens.h"

namespace combwright {

class HistoryDialog : public QDialog {
    Q_OBJECT

  public:
    /// So many are listed; the command line lists all.
    static constexpr std::size_t mostSteps = 1000;
    enum class Wish {
        None,
        AsItStood,
        Differences,
        TwoDays,
        Print,
        PlanWhatIf,
        SettleWhatIf,
        TakeInCopy
    };

    HistoryDialog(const Look& look, const std::vector<HistoryStep>& steps, bool mayWrite,
                  QWidget* parent);
    Wish wish() const { return m_wish; }
    /// The step at the cursor; on a day the last of that day.
    std::optional<std::int64_t> chosenStep() const;
    std::optional<Day> chosenDay() const;
    QTreeWidget& list() { return *m_list; }

  private:
    void fill(const Look& look);
    void choose();
    QPushButton* addWish(const QString& text, const QString& name, Wish wish);

    std::vector<HistoryStep> m_steps;
    Wish m_wish = Wish::None;
    QTreeWidget* m_list;
    QLabel* m_about;
    std::vector<QPushButton*> m_ofStep;  ///< need a step to begin from
};

}  // namespace combwright
