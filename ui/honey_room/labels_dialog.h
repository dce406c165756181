// Labels of a filling on sheets one buys: the sheet drawn as it will be printed, the first label
// put where the used up ones end, by arrow keys; what must not be forgotten beside it.
#pragma once

#include <QComboBox>
#include <QDialog>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>

#include "core/places/goods/label_sheet.h"
#include "ui/shell/session.h"

namespace combwright {

/// The first sheet, small: every cell, the labels in them, and the one to begin with framed.
class LabelCells : public QWidget {
    Q_OBJECT

  public:
    LabelCells(Session& session, QWidget* parent);
    /// `empty` is every cell of the grid; `labels` what is printed, where there is any.
    void show(const LabelSheet& empty, const std::optional<LabelSheet>& labels);
    int start() const { return m_start; }
    void setStart(int cell);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

  Q_SIGNALS:
    void startChosen(int cell);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;

  private:
    double scale() const;
    QRectF cellRect(int cell) const;
    int cells() const { return m_empty.grid.columns * m_empty.grid.rows; }
    void choose(int cell);

    Session& m_session;
    LabelSheet m_empty;
    std::optional<LabelSheet> m_labels;
    int m_start = 1;
};

class LabelsDialog : public QDialog {
    Q_OBJECT

  public:
    LabelsDialog(QWidget* parent, Session& session, Id<Bottling> filling, Day on);
    LabelCells& cells() { return *m_cells; }
    /// The sheet as it would be printed; nothing where it cannot be, which is said.
    const std::optional<LabelSheet>& sheet() const { return m_sheet; }

  private:
    QWidget* buildFields();
    void offerGrids();
    void look();
    void sayReminders();
    void measured();
    void askForWords();
    void print();
    void calibrate();
    void say(const QString& text, bool bad);
    LabelsAsked asked() const;
    std::string grid() const { return m_grid->currentData().toString().toStdString(); }

    Session& m_session;
    Id<Bottling> m_filling;
    Day m_on;
    std::optional<LabelSheet> m_sheet;
    LabelCells* m_cells;
    QComboBox* m_grid;
    QComboBox* m_kind;
    QLineEdit* m_count;
    QLabel* m_where;
    QLineEdit* m_right;
    QLineEdit* m_down;
    QPushButton* m_offset;
    QPushButton* m_calibrate;
    QPushButton* m_words;
    QLabel* m_reminders;
    QScrollArea* m_remind;
    QLabel* m_said;
    QPushButton* m_print;
    QPushButton* m_close;
};

void showLabels(QWidget* parent, Session& session, Id<Bottling> filling, Day on);
/// What stands on every label from a day on; whether it was kept.
bool askForLabelWords(QWidget* parent, Session& session, Day on);

}  // namespace combwright
