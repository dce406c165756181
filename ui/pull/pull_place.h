// Pull: which boxes do I bring in, and what is left for winter. The supers with their verdicts at
// the left; at the right the limits as plain fields, and what follows from them as one types.
#pragma once

#include <QFutureWatcher>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>

#include "core/places/pull_sheet.h"
#include "ui/pull/pull_board.h"
#include "ui/shell/place.h"

namespace combwright {

class PullPlace : public Place {
    Q_OBJECT

  public:
    explicit PullPlace(Session& session, QWidget* parent = nullptr);
    ~PullPlace() override;

    QString railWord() const override { return tr("Pull"); }
    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    QString help() const override;
    void act() override;
    void reload() override;
    QWidget* headControls() override { return nullptr; }
    void settle() override;

    const PullSheet& sheet() const { return m_sheet; }
    PullBoard& board() { return *m_board; }

  protected:
    void focusInEvent(QFocusEvent*) override { m_board->setFocus(); }

  private:
    struct LimitField {
        const char* key;
        QLineEdit* edit;
    };
    QLineEdit* addLimit(QWidget* card, const QString& label, const char* key, const QString& unit);
    void takeLimits();
    void fillLimits();
    void reckon();
    void show(PullSheet sheet);
    void fillFollows();
    void fillBox();
    QString limitText(const char* key) const;

    PullBoard* m_board;
    QScrollArea* m_scroll;
    QLabel* m_empty;
    QLabel* m_follows;
    QLabel* m_box;
    std::vector<LimitField> m_limitFields;
    PlanLimits m_limits;
    bool m_limitsKnown = false;
    PullForced m_forced;
    PullSheet m_sheet;
    QFutureWatcher<PullSheet> m_watcher;
};

}  // namespace combwright
