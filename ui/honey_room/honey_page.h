// Honey: what stands in buckets and lots, and what each lacks to be bottled. A row a bucket or lot;
// beside it all that is known of the one that is chosen, with every doubt said plainly.
#pragma once

#include "core/places/honey/honey_store.h"
#include "ui/common/deed_desk.h"
#include "ui/honey_room/room_page.h"
#include "ui/honey_room/vessel_picture.h"

namespace combwright {

class HoneyPage : public RoomPage {
    Q_OBJECT

  public:
    HoneyPage(Session& session, QWidget* parent);

    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    bool press(int key) override { return m_desk->press(key); }
    bool goToRecord(std::string_view table, std::int64_t record) override;
    void readAnew() override;

    WordsTable& table() { return *m_table; }
    QString cardText() const { return m_desk->cardText(); }
    /// The bucket or lot one is at; none where nothing stands there.
    const StoredHoney* current() const;
    void choose(const Vessel& vessel);

  private:
    /// What is asked of the bucket or lot one is at next.
    enum class Next { Nothing, Read, TakeCorrection, Blend };
    Next next() const;
    void addDeeds();
    /// A form about the one chosen; told where there is none.
    void about(const std::function<void(const VesselView&)>& form);
    void takeCorrection();
    void showTraceOf();
    void showEmptied();
    void fillTable();
    void fillCard();
    QString cardOf(const StoredHoney& honey) const;
    QString limitsCard(const StoredHoney& honey) const;
    QString historyCard(const StoredHoney& honey) const;
    std::vector<const StoredHoney*> shown() const;

    DeedDesk* m_desk;
    WordsTable* m_table;
    VesselPicture* m_picture;
    HoneyStore m_store;
    bool m_emptiedToo = false;
};

}  // namespace combwright
