// The extractor from above with the frames of one load: where each stands, how far off balance the
// load may be at start and end, and what changes when two frames change places. What is changed
// here is only a view until the load is spun.
#pragma once

#include <QWidget>

#include "core/places/honey_room/load_sheet.h"
#include "ui/drawing/extractor.h"
#include "ui/shell/session.h"

namespace combwright {

/// 'h', 'm' or 'l'.
QChar heftLetter(FrameHeft heft);

class LoadView : public QWidget {
    Q_OBJECT

  public:
    explicit LoadView(Session& session, QWidget* parent = nullptr);
    /// Shows a load as planned. Where the same load was shown before, frames that changed places
    /// stay where they were put.
    void show(const SheetLoad& load, const LoadSheet& sheet);
    /// Shows what was advised in the place of the plan.
    void take(const SheetLoad& advised);
    void putBack();
    void clear();
    /// Where the turning mark of the drum is, degrees; none while it stands.
    void setMarker(std::optional<double> degrees) {
        if (m_marker == degrees) return;
        m_marker = degrees;
        update();
    }
    /// The load as it stands now, after frames changed places.
    const SheetLoad& load() const { return m_load; }
    const SheetLoad& planned() const { return m_planned; }
    bool hasLoad() const { return m_hasLoad; }
    bool isChanged() const;
    int selected() const { return m_selected; }
    std::optional<int> held() const { return m_held; }

  Q_SIGNALS:
    void changed();
    void leaveOutAsked();
    void addEmptyAsked();
    void otherLoadAsked(int step);
    void slotChosen(const QRect& where);  ///< by hand: it is to be in sight
    void setAsideAsked(combwright::Id<combwright::ExtractionBox> box);  ///< of the slot chosen

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent*) override {
        update();
        Q_EMIT slotChosen(slotRect());
    }
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    ExtractorView view() const;
    QRectF drumBox() const;
    /// About where the slot chosen and its words are.
    QRect slotRect() const;
    void swapPlaces(int a, int b);
    bool outOfPlace(std::size_t slot) const;
    QString slotText(int slot) const;
    void speak();

    Session& m_session;
    SheetLoad m_load;
    SheetLoad m_planned;  ///< as planned, or as advised since
    SheetLoad m_base;     ///< as planned
    double m_ringG = 0;
    bool m_ringRan = false;
    bool m_hasLoad = false;
    int m_selected = 1;
    std::optional<double> m_marker;
    std::optional<int> m_held;  ///< the slot whose frame is in the hand
};

}  // namespace combwright
