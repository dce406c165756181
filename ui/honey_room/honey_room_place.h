// Honey room: what goes in the extractor next, and who gave what. From left to right as the room
// is: boxes waiting, the extractor, buckets; below, the line one types and the run's balance.
// Beside that day stand pages of what becomes of the honey.
#pragma once

#include <QCheckBox>
#include <QComboBox>
#include <QGridLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QStackedWidget>
#include <QTableWidget>
#include <QTimer>
#include <QVBoxLayout>
#include <utility>
#include <vector>

#include "core/model/honey/extraction.h"
#include "core/places/honey_room/run_balance.h"
#include "ui/honey_room/bucket_view.h"
#include "ui/honey_room/key_button.h"
#include "ui/honey_room/learned_line.h"
#include "ui/honey_room/load_panel.h"
#include "ui/honey_room/room_entry.h"
#include "ui/honey_room/room_page.h"
#include "ui/honey_room/run_view.h"
#include "ui/honey_room/spin_desk.h"
#include "ui/honey_room/waiting_view.h"
#include "ui/shell/page_words.h"
#include "ui/shell/place.h"

namespace combwright {

class HoneyRoomPlace : public Place {
    Q_OBJECT

  public:
    explicit HoneyRoomPlace(Session& session, QWidget* parent = nullptr);

    static QString wordInRail() { return tr("Honey room"); }
    QString railWord() const override { return wordInRail(); }
    std::optional<DueWhere> worksAt() const override { return DueWhere::HoneyRoom; }
    bool resumes(const QString& sheet, const QString& row) const override;
    PlaceHead head() const override;
    int waiting() const override;
    std::vector<KeyHint> hints() const override;
    std::vector<PrintSheet> sheets() const override;
    std::vector<Explained> explained() const override;
    QString help() const override;
    void act() override;
    bool takeBack() override;
    void goFor(const GoTo& where) override;
    QWidget* pageWords() override { return m_words; }
    QWidget* headControls() override { return m_runs; }

    /// Shows a page of the room: Board is the day's extracting.
    void openPage(GoTo::Page opens);
    /// All of them with their words, in the order of the row.
    std::vector<std::pair<GoTo::Page, QString>> pages() const;
    std::vector<PlacePage> pagesToGo() const;
    /// The one shown; none while it is the day's extracting.
    RoomPage* page() const;

    std::optional<Id<Extraction>> run() const { return m_run; }
    LoadView& loadView() { return m_load->view(); }
    WaitingView& waiting() { return *m_waiting; }
    BucketBoard& buckets() { return *m_buckets; }
    RunView& balance() { return *m_balanceView; }
    QTableWidget& table() { return *m_table; }
    RoomEntry& entry() { return *m_entry; }
    SpinDesk& spinDesk() { return *m_spin; }
    /// The form that enters a day or closes it.
    void closeDay();

  protected:
    void readAnew() override;
    void focusInEvent(QFocusEvent*) override;
    void resizeEvent(QResizeEvent*) override { arrange(); }
    void keyPressEvent(QKeyEvent* event) override;

  private:
    void buildPages();
    void addPage(GoTo::Page opens, const QString& word, Qt::Key letter, RoomPage* page);
    void turnTo(GoTo::Page opens);
    PlaceHead headOfExtracting() const;
    std::vector<KeyHint> hintsOfExtracting() const;
    std::vector<PrintSheet> sheetsOfExtracting() const;
    std::vector<Explained> explainedOfExtracting() const;
    QString helpOfExtracting() const;
    void actOfExtracting();
    bool takeBackInRoom();
    void readExtracting();
    QWidget* buildCaution();
    QWidget* buildWaiting();
    QWidget* buildBuckets();
    QWidget* buildStrip();
    void connectAll();
    void sizes();
    void arrange();
    /// Brings a part of the room into sight.
    void follow(const QWidget* widget, const QRect& part);
    QString dayAndRoom(const Extraction& run) const;
    void fillRuns();
    void fillStrip();
    void fillPile();
    void fillGate();
    void fillDay();
    void feel(const QString& letters, bool done);
    void layFelt(LoadSheet& sheet, bool proven);
    void keepLetters(const QString& letters);
    void fillCaution();
    void fillWaiting();
    void fillBuckets();
    void fillBalance();
    void fillTable(const RoomBoxes& room);
    void targetBox(std::optional<bool> wet = std::nullopt, bool byHand = false);
    void afterWeighing(const EntryTarget& done);
    void showTable(bool shown);
    void takeOut();
    void connectPad();
    std::optional<HeldLoad> loadShown() const;
    QString turningWords(const SpinShown& shown) const;
    void startOrQuiet();
    void takeBackOnce();
    bool takeLoadBack();
    void writtenAgain(const Change& change);
    std::int64_t lastStep() const;
    bool clockIsLast() const;
    void plus();
    void spun(Ran ran);
    bool keepLoad(const SpinDesk::Taken& taken, Ran ran);
    void stoppedAfterAll();
    void openGate();
    void setAside(std::optional<Id<ExtractionBox>> box = std::nullopt);
    std::vector<PadBox> boxesAtHand() const;
    void askOfPile();
    void closeByPad();
    void showNextRun();
    void seeCautions();
    bool cautionsSeen() const;
    PlaceHead headOfSpin(PlaceHead head) const;
    void runMeant(Id<Extraction> run);
    void showSpin();
    void restoreSpin();
    QString pileText(const SetAside& aside) const;
    std::vector<SetAside> pile() const;
    std::vector<Id<Extraction>> runsForLoads() const;
    std::vector<LoadSheet> loadsToPrint() const;
    bool isOpen() const { return m_open; }
    QString muted(const QString& text) const;

    /// A page and the word it is opened by; none: the day's extracting.
    struct PageSlot {
        GoTo::Page opens = GoTo::Page::Board;
        QString word;
        RoomPage* page = nullptr;
    };
    std::vector<PageSlot> m_slots;
    QStackedWidget* m_pages = nullptr;
    QWidget* m_extract = nullptr;
    PageWords* m_words = nullptr;
    QComboBox* m_runs;
    QWidget* m_cautionLine = nullptr;
    QLabel* m_caution = nullptr;
    QLabel* m_empty = nullptr;
    QScrollArea* m_scroll = nullptr;
    QWidget* m_room = nullptr;
    QGridLayout* m_grid = nullptr;
    QWidget* m_left = nullptr;
    QLabel* m_waitingTitle = nullptr;
    QLabel* m_extractBy = nullptr;
    WaitingView* m_waiting = nullptr;
    QTableWidget* m_table = nullptr;
    QLabel* m_waitingFoot = nullptr;
    LoadPanel* m_load = nullptr;
    QWidget* m_right = nullptr;
    QVBoxLayout* m_rightColumn = nullptr;
    QLabel* m_bucketTitle = nullptr;
    BucketBoard* m_buckets = nullptr;
    QLabel* m_bucketFoot = nullptr;
    QWidget* m_strip = nullptr;
    QWidget* m_stripButtons = nullptr;
    KeyButton* m_pegKeys = nullptr;
    KeyButton* m_bucketKeys = nullptr;
    KeyButton* m_spun = nullptr;
    KeyButton* m_walked = nullptr;
    KeyButton* m_aside = nullptr;
    KeyButton* m_closeDay = nullptr;
    RoomEntry* m_entry = nullptr;
    SpinDesk* m_spin = nullptr;
    QCheckBox* m_bell = nullptr;
    QWidget* m_gatePart = nullptr;
    QWidget* m_gateBar = nullptr;
    QLabel* m_gate = nullptr;
    QLabel* m_day = nullptr;
    QLabel* m_pile = nullptr;
    QPushButton* m_settle = nullptr;
    RunView* m_balanceView = nullptr;
    LearnedLine* m_learned = nullptr;

    std::optional<Id<Extraction>> m_run;
    bool m_open = false;
    std::optional<RunBalance> m_balance;  ///< of the run chosen
    std::optional<RunBalance> m_shown;    ///< the one drawn at the foot
    /// A load written down in this room, and what the room was at before: taken back, all of that
    /// comes back with it.
    struct KeptLoad {
        std::int64_t step = 0;  ///< of the journal
        SpinDesk::Taken taken;
        bool held = false;  ///< its clock ran, or had been quieted
        QString letters, turningLetters;
        std::optional<LoadPanel::Frozen> drawn;
        std::optional<std::int64_t> clockMark;
    };
    bool lastIsLoad() const;
    std::vector<KeptLoad> m_keptLoads;
    bool tooSoon();
    bool otherLotAsked();
    void spunByKey(Ran ran);
    std::optional<std::int64_t> m_keptAt;      ///< of the last entry, steady ms
    std::optional<std::int64_t> m_lotAskedAt;  ///< that the drum holds another lot, steady ms
    std::optional<std::int64_t> m_soonAsked;   ///< the load asked about
    QString m_letters;                         ///< how the frames of the load to be filled felt
    QString m_turningLetters;                  ///< of the load that turns
    QTimer m_proof;                            ///< the full search, once nobody types
    std::optional<std::int64_t> m_clockMark;   ///< the last step when the clock was started
};

}  // namespace combwright
