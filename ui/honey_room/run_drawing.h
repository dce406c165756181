// The buckets of a run side by side, and below them its balance: bands whose width is mass, from
// the hives in at the left to buckets, cappings and what is missing at the right.
#pragma once

#include <QWidget>
#include <vector>

#include "core/places/run_balance.h"
#include "ui/drawing/balance.h"
#include "ui/drawing/bucket.h"
#include "ui/shell/session.h"

namespace combwright {

class RunDrawing : public QWidget {
    Q_OBJECT

  public:
    explicit RunDrawing(Session& session, QWidget* parent = nullptr);
    void show(const std::optional<RunBalance>& balance);

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    Session& m_session;
    BalanceView m_view;
    bool m_has = false;
};

class BucketRow : public QWidget {
    Q_OBJECT

  public:
    explicit BucketRow(Session& session, QWidget* parent = nullptr);
    void show(const std::vector<Bucket>& buckets, double fullG, double wetLine);

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    struct Drawn {
        BucketView view;
        FigureText mass;
    };
    Session& m_session;
    std::vector<Drawn> m_buckets;
};

}  // namespace combwright
