// The middle of the honey room: one load in the extractor, what its signs mean, what helps where it
// does not balance, and what may share a load.
#pragma once

#include <QCheckBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QWidget>
#include <vector>

#include "ui/honey_room/extractor_view.h"

namespace combwright {

class LoadPanel : public QWidget {
    Q_OBJECT

  public:
    explicit LoadPanel(Session& session, QWidget* parent = nullptr);

    /// @param severalRuns  more than one run is open, so that their lots could share a load
    void show(const LoadSheet& sheet, bool severalRuns);
    LoadView& view() { return *m_view; }
    /// Something of the room's beside the legend.
    void addToLegend(QWidget* widget) { m_legendGrid->addWidget(widget, 2, 2, 1, 2); }
    /// How the frames of the load shown felt, and what the letters stand for; none where they were
    /// not felt.
    void setFelt(const std::optional<FeltLoad>& felt) { m_felt = felt; }
    const LoadSheet& sheet() const { return m_sheet; }
    LoadRules rules() const;
    /// That load turns: it is shown as it was laid out, whatever is planned anew meanwhile, until
    /// none does.
    void freeze(std::optional<std::int64_t> number);
    /// A load as it is drawn while it turns.
    struct Frozen {
        SheetLoad load;
        std::optional<FeltLoad> felt;
    };
    std::optional<Frozen> frozen() const;
    /// It turns again.
    void freezeAgain(const std::optional<Frozen>& frozen);
    /// It was written down how that load ran.
    void loadKept(std::int64_t number);
    /// "Load 2", of the load shown; empty without one.
    QString loadName() const;

  Q_SIGNALS:
    void rulesChanged();

  protected:
    void resizeEvent(QResizeEvent*) override;

  private:
    void fill();
    void describe();
    QString heftWords() const;
    void advise();
    void goTo(int step);

    Session& m_session;
    LoadSheet m_sheet;
    std::size_t m_index = 0;
    std::optional<SheetLoad> m_frozen;
    std::optional<LoadAdvice> m_leaveOut, m_addEmpty;
    std::optional<FeltLoad> m_felt;
    std::optional<FeltLoad> m_frozenFelt;
    QGridLayout* m_legendGrid = nullptr;
    QLabel* m_hefts = nullptr;
    QLabel* m_title;
    QLabel* m_about;
    LoadView* m_view;
    QLabel* m_start;
    QLabel* m_end;
    QLabel* m_ring;
    QLabel* m_doubt;
    QWidget* m_legend;
    QLabel* m_advice;
    QPushButton* m_before;
    QPushButton* m_after;
    QPushButton* m_leave;
    QPushButton* m_add;
    QPushButton* m_asPlanned;
    QCheckBox* m_mixLots;
    QCheckBox* m_mixKinds;
};

}  // namespace combwright
