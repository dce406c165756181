// The evenings until the candles are wanted: a row a kind with its moulds, a column an evening, and
// in each field the candles. The number of moulds may be typed to see what would follow; only Enter
// has moulds come or go.
#pragma once

#include <QLineEdit>
#include <QWidget>
#include <vector>

#include "core/places/wax_bench/evening_board.h"
#include "ui/drawing/candle.h"
#include "ui/shell/session.h"

namespace combwright {

class EveningsGrid : public QWidget {
    Q_OBJECT

  public:
    explicit EveningsGrid(Session& session, QWidget* parent = nullptr);
    /// Fields that are being typed in keep what is typed.
    void show(const CandleEvenings& plan, const EveningBoard& board);
    /// Cavities of each kind as they stand in the fields, where they are other than in the file.
    std::vector<CavitiesIf> typed() const;
    /// What is typed and not kept is let go.
    void forget();
    /// The field of a kind; none for one there is not.
    QLineEdit* field(std::size_t row) const;
    std::size_t rows() const { return m_fields.size(); }
    const EveningBoard& board() const { return m_board; }
    /// What a row says, in words.
    QString rowWords(std::size_t row) const;
    /// "48 of 60" and what it says below; the last evening's count.
    struct Ends {
        QString finish;
        QString byMoulds;
        QString note;
        bool missing = false;
    };
    Ends ends(std::size_t row) const;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return {0, sizeHint().height()}; }

  Q_SIGNALS:
    void typedChanged();
    /// Enter in a field.
    void entered(combwright::Id<combwright::GoodsKind> kind, qlonglong cavities);

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override {
        place();
        // Wider, the evenings stand beside their words and need less height.
        updateGeometry();
    }
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    struct Laid;
    Laid lay() const;
    bool eveningsBelow() const;
    double wordsHigh() const;
    int rowHeight(std::size_t row) const;
    int headHigh() const;
    void place();
    void makeFields();
    void paintDays(QPainter& painter, const Laid& laid, double y) const;
    void paintColumns(QPainter& painter, const Laid& laid) const;
    void paintRow(QPainter& painter, const Laid& laid, std::size_t row) const;

    Session& m_session;
    CandleEvenings m_plan;
    EveningBoard m_board;
    std::vector<QLineEdit*> m_fields;
    std::vector<Id<GoodsKind>> m_kinds;
    bool m_filling = false;
};

}  // namespace combwright
