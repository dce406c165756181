// The extractor from above with the frames of one load: where each stands, how far off balance the
// load may be at start and end, and what changes when two frames change places.
#pragma once

#include <QWidget>

#include "core/places/load_sheet.h"
#include "ui/drawing/extractor.h"
#include "ui/shell/session.h"

namespace combwright {

class LoadView : public QWidget {
    Q_OBJECT

  public:
    explicit LoadView(Session& session, QWidget* parent = nullptr);
    void show(const SheetLoad& load, double allowedG);
    void clear();
    /// The load as it stands now, after frames changed places.
    const SheetLoad& load() const { return m_load; }
    bool hasLoad() const { return m_hasLoad; }
    bool isChanged() const { return m_changed; }
    QString offsetText() const;

  Q_SIGNALS:
    void changed();

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }

  private:
    ExtractorView view() const;
    QRectF drumBox() const;
    void swapPlaces(int a, int b);
    void speak();

    Session& m_session;
    SheetLoad m_load;
    SheetLoad m_planned;
    double m_allowedG = 0;
    bool m_hasLoad = false;
    bool m_changed = false;
    int m_selected = 1;
    std::optional<int> m_held;  ///< the slot whose frame is in the hand
};

}  // namespace combwright
