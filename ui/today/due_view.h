// The due list: a line a trip, opened to its hives, late things by themselves. One line is chosen;
// Enter does what it says, the arrows walk and open.
#pragma once

#include <set>
#include <vector>

#include "core/places/due/due_list.h"
#include "ui/today/line_list.h"
#include "ui/today/wrapped.h"

namespace combwright {

/// What is chosen: a trip, a hive of it, the quieted ones, or one of them.
struct DueLine {
    enum class What { Trip, Hive, Shut, Quieted, Quiet } what = What::Trip;
    std::size_t trip = 0;  ///< of a trip or hive
    std::size_t row = 0;   ///< the hive of a trip; which quieted one
    bool operator==(const DueLine&) const = default;
};

/// What Enter does with a line, in words for its button.
QString dueAction(const DueList& list, const DueLine& line);

class DueView : public LineList {
    Q_OBJECT

  public:
    explicit DueView(Session& session, QWidget* parent = nullptr);

    void show(const DueList& list);
    const DueList& list() const { return m_list; }
    const std::vector<DueLine>& lines() const { return m_lines; }
    const DueLine* current() const;
    QRect currentRect() const override;
    /// Opens or closes the trip, or the quieted ones, of the line.
    void open(bool opened);

    int heightForWidth(int width) const override;
    QSize sizeHint() const override;

  Q_SIGNALS:
    void done(const combwright::DueLine& line);

  protected:
    int rowCount() const override { return static_cast<int>(m_lines.size()); }
    void doCurrent() override;
    void speak() override;
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;

  private:
    struct Laid {
        QRectF row;
        QRectF button;  ///< empty: none
        WrappedText title, note;
        QRectF titleAt, noteAt;
        QString when;
        double whenX = 0;
    };
    std::vector<Laid> layOut(double width, double* height = nullptr) const;
    Laid linePlan(const DueLine& line) const;
    void makeLines();
    bool opens(const DueLine& line) const;
    QString keyOf(const DueLine& line) const;
    void paintLine(QPainter& painter, std::size_t index, const Laid& laid) const;

    DueList m_list;
    std::vector<DueLine> m_lines;
    std::set<QString> m_opened;
    bool m_touched = false;  ///< the person opened or closed one; else today's trips stand open
};

}  // namespace combwright
