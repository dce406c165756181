// Another copy taken in, looked at first: what would come, and of what both copies say something
// the two values side by side with what shall hold. Nothing is written from here.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QPushButton>
#include <QTableWidget>
#include <functional>

#include "core/places/copies/merge_plan.h"
#include "core/places/pages/page.h"
#include "ui/look/tokens.h"

namespace combwright {

class MergeDialog : public QDialog {
    Q_OBJECT

  public:
    /// `planFor` gives the plan with some answers, `pageOf` what is printed of one.
    MergeDialog(const Look& look, std::function<MergePlan(const MergeAnswers&)> planFor,
                std::function<Page(const MergePlan&)> pageOf, QWidget* parent);
    /// With what was chosen last.
    const MergePlan& plan() const { return m_plan; }
    QTableWidget& questions() { return *m_table; }

  protected:
    /// What is in a table takes the keyboard only once it is shown.
    void showEvent(QShowEvent* event) override;

  private:
    void planAnew();
    void fill();
    void choose(const std::string& key, int index);

    Look m_look;
    std::function<MergePlan(const MergeAnswers&)> m_planFor;
    MergeAnswers m_answers;
    MergePlan m_plan;
    QLabel* m_sum;
    QTableWidget* m_table;
    QLabel* m_notes;
    QPushButton* m_take;
};

}  // namespace combwright
