// "Explain this number": every figure of a place, and for the chosen one its inputs, formulas,
// units and sources, line by line.
#pragma once

#include <QDialog>
#include <QListWidget>
#include <QTableWidget>
#include <vector>

#include "core/places/explain/explained.h"
#include "ui/look/tokens.h"

namespace combwright {

class ExplainDialog : public QDialog {
    Q_OBJECT

  public:
    ExplainDialog(QWidget* parent, const Look& look, const QString& place,
                  std::vector<Explained> figures);

    const QTableWidget& steps() const { return *m_steps; }
    QListWidget& figures() { return *m_list; }

  private:
    void choose(int row);

    std::vector<Explained> m_figures;
    QListWidget* m_list;
    QTableWidget* m_steps;
};

/// Shows it until it is closed by Esc or Enter.
void showExplained(QWidget* parent, const Look& look, const QString& place,
                   const std::vector<Explained>& figures);

}  // namespace combwright
