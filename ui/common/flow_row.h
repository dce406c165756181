// Buttons beside each other that go on in the next line where the width ends, so that a narrow card
// or large type never cuts one off.
#pragma once

#include <QLayout>
#include <QList>

namespace combwright {

class FlowRow : public QLayout {
    Q_OBJECT

  public:
    explicit FlowRow(QWidget* parent, int gap);
    ~FlowRow() override;

    void addItem(QLayoutItem* item) override { m_items.append(item); }
    int count() const override { return static_cast<int>(m_items.size()); }
    QLayoutItem* itemAt(int index) const override { return m_items.value(index); }
    QLayoutItem* takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return layOut(QRect(0, 0, width, 0), false); }
    QSize sizeHint() const override { return minimumSize(); }
    QSize minimumSize() const override;
    void setGeometry(const QRect& rect) override;

  private:
    int layOut(const QRect& rect, bool move) const;

    QList<QLayoutItem*> m_items;
    int m_gap;
};

}  // namespace combwright
