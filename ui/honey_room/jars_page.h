// Jars and goods: what stands on the shelf by kind and what it costs, empty jars and lids, the
// fillings with what is left of them, and the card of the chosen one: what it took, what the scale
// said, what is held, what was said of it, and where its jars went.
#pragma once

#include "core/places/goods/goods.h"
#include "ui/honey_room/desk_page.h"

namespace combwright {

class JarsPage : public DeskPage {
    Q_OBJECT

  public:
    explicit JarsPage(Session& session, QWidget* parent = nullptr);

    PlaceHead head() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    bool goToRecord(std::string_view table, std::int64_t record) override;
    void readAnew() override;

    const GoodsStock& stock() const { return m_stock; }
    WordsTable& shelf() { return *m_shelf; }
    WordsTable& fillingsTable() { return *m_fillings; }
    /// The filling that deeds are about; the newest where none was chosen.
    std::optional<Id<Bottling>> filling() const;

  protected:
    void fillCard() override;

  private:
    Day today() const { return session().clock().today(); }
    const FillingSheet* chosenSheet() const;
    void addDeeds();
    void fillShelf();
    void fillFillings();
    QString muted(const QString& text) const { return said(text, Tone::Muted); }
    QString warn(const QString& text) const { return said(text, Tone::Warn); }
    QString cardOf(const FillingSheet& sheet) const;
    QString wentOf(const FillingSheet& sheet) const;
    QString emptyCard() const;
    std::vector<WordsCell> shelfCells(const GoodsShelf& shelf) const;
    std::vector<WordsCell> fillingCells(const FillingSheet& sheet) const;
    void withFilling(const std::function<void(Id<Bottling>)>& deed);

    QString lostComplaints() const;

    GoodsStock m_stock;
    std::vector<Complaint> m_open;  ///< complaints nobody closed yet
    WordsTable* m_shelf;
    WordsTable* m_fillings;
};

}  // namespace combwright
