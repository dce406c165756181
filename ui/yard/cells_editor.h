// A row of the yard sheet as cells, for those who would rather fill in fields than learn marks. The
// cells wrap to as many lines as the width needs; what is typed in them is the same line, and a
// cell that cannot be meant keeps its text and says why.
#pragma once

#include <QLabel>
#include <QLineEdit>
#include <QWidget>
#include <vector>

#include "core/words/sheet_cells.h"
#include "ui/shell/session.h"

namespace combwright {

class CellsEditor : public QWidget {
    Q_OBJECT

  public:
    CellsEditor(Session& session, const QString& hive, QObject* keys, QWidget* parent);

    /// Fills the cells from a line; what is half typed stays where the line is the one it gives.
    void setLine(const QString& line);
    /// The same, and what is half typed is gone.
    void reset(const QString& line);
    /// What was typed before and not kept, said below while the cells are empty.
    void setOffer(const QString& offer);
    /// The line the cells give; cells that cannot be meant are left as the line had them.
    QString line() const;
    /// The cell that cannot be meant, if there is one.
    QLineEdit* firstBad() const;
    /// What may be typed in that cell.
    QString badWhy() const;
    /// Puts the cursor into the cell beside the one that has it; false at either end.
    bool step(bool forward);
    int heightFor(int width) const;

  Q_SIGNALS:
    void edited();

  protected:
    void resizeEvent(QResizeEvent*) override { layOut(width(), true); }
    void paintEvent(QPaintEvent*) override;

  private:
    struct Field {
        SheetCell cell;
        QLabel* head;
        QLineEdit* edit;
        bool bad = false;
    };
    void typed(Field& field);
    void sayBack();
    int layOut(int width, bool move) const;
    int widthOf(const Field& field) const;

    Session& m_session;
    std::vector<Field> m_fields;
    SheetLine m_line;
    QLabel* m_back;
    QString m_offer;
    bool m_edited = false;
};

}  // namespace combwright
