// The wax of the year as a picture one can walk: arrows go from band to band, Enter opens the
// records behind it; where the window is too low or narrow for the picture one line says it all.
#pragma once

#include <QWidget>
#include <utility>
#include <vector>

#include "core/places/wax_bench/wax_flow.h"
#include "core/places/wax_bench/wax_records.h"
#include "ui/drawing/wax_flow.h"
#include "ui/shell/session.h"

namespace combwright {

class FlowBoard : public QWidget {
    Q_OBJECT

  public:
    explicit FlowBoard(Session& session, QWidget* parent = nullptr);
    void show(const WaxFlow& flow, const CandleEvenings* plan);
    const FlowOfWax& drawn() const { return m_drawn; }
    /// The flow in one line.
    QString lineWords() const { return m_line; }
    /// Every band with its words, as the table twin has them.
    struct Band {
        QString part;  ///< "raw", "blocks"
        QString name;
        FigureText figure;
        QString note;
        WaxRecordsOf records;
    };
    const std::vector<Band>& bands() const { return m_bands; }
    int current() const { return m_current; }
    void choose(int index);
    /// Goes to the band these records stand behind; -1 where there is none.
    int choose(const WaxRecordsOf& of);
    /// Only the line is shown.
    bool asLine() const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }
    void setLow(bool low);

  Q_SIGNALS:
    void opened(const combwright::WaxRecordsOf& of);

  protected:
    void paintEvent(QPaintEvent*) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void focusInEvent(QFocusEvent*) override { update(); }
    void focusOutEvent(QFocusEvent*) override { update(); }
    void resizeEvent(QResizeEvent*) override { updateGeometry(); }

  private:
    void addRaw(const WaxFlow& flow);
    void addOn(const WaxFlow& flow);
    void addShades(const WaxFlow& flow);
    void addWants(const WaxFlow& flow, const CandleEvenings& plan);
    void addHeads(const WaxFlow& flow);
    QRectF room() const;
    void speak();

    Session& m_session;
    FlowOfWax m_drawn;
    std::vector<Band> m_bands;
    QString m_line;
    int m_current = 0;
    bool m_low = false;
};

}  // namespace combwright
