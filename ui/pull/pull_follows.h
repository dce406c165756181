// What follows from the limits: honey with its range, boards, loads, the day as a bar, buckets,
// jars, what is to be carried and fed. Words and figures come from core; here they are set.
#pragma once

#include <QLabel>
#include <QWidget>
#include <optional>

#include "core/places/pull/pull_sheet.h"
#include "ui/pull/day_bar.h"
#include "ui/shell/session.h"

namespace combwright {

class PullFollows : public QWidget {
    Q_OBJECT

  public:
    explicit PullFollows(Session& session, QWidget* parent = nullptr);
    void show(const PullSheet& sheet, const std::optional<KeptPull>& kept);

  private:
    QString row(const QString& what, const QString& beside, const QString& value,
                const QString& under = {}) const;
    QString honeyRows(const PullSheet& sheet, const std::optional<KeptPull>& kept) const;
    QString carryRows(const PullSheet& sheet) const;
    QString boardRows(const PullSheet& sheet) const;
    QString hungryText(const PullSheet& sheet) const;

    Session& m_session;
    QLabel* m_top;
    DayBar* m_bar;
    QLabel* m_rest;
};

}  // namespace combwright
