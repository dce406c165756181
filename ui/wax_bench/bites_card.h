// What bites first: wax, moulds, each wick, as a bar of what there is against what is needed; what
// this wax gives with the shades apart or mixed, and what one thing more would change.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/wax_bench/evening_board.h"
#include "ui/shell/session.h"

namespace combwright {

class BitesCard : public QWidget {
    Q_OBJECT

  public:
    explicit BitesCard(Session& session, QWidget* parent = nullptr);
    void show(const CandleEvenings& plan);
    /// One limit as it is shown.
    struct Line {
        QString name;
        QString have, need, unit;
        QString verdict;  ///< "short 2.87"
        QString note;
        double share = 1;  ///< of what is needed
        bool isShort = false;
    };
    const std::vector<Line>& lines() const { return m_lines; }
    /// The words at the left and below, plain.
    const QStringList& said() const { return m_said; }
    const QString& oneMore() const { return m_oneMore; }
    QString words() const;
    int heightForWidth(int width) const override;
    bool hasHeightForWidth() const override { return true; }
    QSize sizeHint() const override { return {width(), heightForWidth(width())}; }
    QSize minimumSizeHint() const override { return {0, heightForWidth(width())}; }

  protected:
    void paintEvent(QPaintEvent*) override;
    void resizeEvent(QResizeEvent*) override { updateGeometry(); }

  private:
    QString countsOf(const std::vector<std::int64_t>& counts) const;
    void sayOneMore(const CandleEvenings& plan);
    bool barsBelow(int width) const;
    double leftWidth(int width) const;
    double leftHeight(int width) const;
    bool saidInOneLine(qsizetype n, int width) const;
    double saidHeight(qsizetype n, int width) const;

    Session& m_session;
    std::vector<Line> m_lines;
    QStringList m_said;  ///< muted and bold in turn
    QString m_oneMore;
};

}  // namespace combwright
