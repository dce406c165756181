// Health of a yard: what was found in each hive and how little that is, the line in force and whose
// it is, what is in and when it comes out, what is held; beside it the medicines and what is left.
#pragma once

#include "core/places/health/health_board.h"
#include "ui/yard/work_page.h"

namespace combwright {

class HealthPage : public WorkPage {
    Q_OBJECT

  public:
    explicit HealthPage(Session& session, QWidget* parent = nullptr);
    const HealthBoard& board() const { return m_board; }

  protected:
    void fill() override;

  private:
    const HealthRow* currentRow() const;
    void lookedInto();
    void hold();
    QString cardWords() const;
    /// The line most hives stand against.
    QString usualLine() const;

    HealthBoard m_board;
};

}  // namespace combwright
