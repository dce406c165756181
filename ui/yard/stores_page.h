// Stores and room of a yard: what each hive has to live on and how that is known, how long it
// lasts, what it lacks, what room is left and how long nobody looked; beside it the feed on the
// shelf and what to take along.
#pragma once

#include "core/places/stores/stores.h"
#include "core/places/yard/growth.h"
#include "core/places/yard/kit_list.h"
#include "ui/yard/work_page.h"

namespace combwright {

class StoresPage : public WorkPage {
    Q_OBJECT

  public:
    explicit StoresPage(Session& session, QWidget* parent = nullptr);
    const Stores& stores() const { return m_stores; }
    int living() const;

  protected:
    void fill() override;

  private:
    const std::vector<HiveStores>& rows() const;
    void weigh();
    void tare();
    QString cardWords() const;

    Stores m_stores;
    Growth m_growth;
    KitList m_kit;
};

}  // namespace combwright
