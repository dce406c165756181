#include "ui/shell/help/sample_pictures.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/words/words.h"
#include "ui/honey_room/honey_room_place.h"
#include "ui/pull/pull_place.h"
#include "ui/season_book/season_book_place.h"
#include "ui/shell/main_window.h"
#include "ui/storeroom/storeroom_place.h"
#include "ui/today/today_place.h"
#include "ui/wax_bench/wax_bench_place.h"
#include "ui/yard/yard_place.h"

namespace combwright {
namespace {

constexpr QSize pictureSize{1280, 800};
/// A page is shown before its picture is begun, and between two scripts there is time for a key.
constexpr int pictureBeginsMs = 60;
constexpr int pictureGoesOnMs = 10;

/// When a place has most to show.
struct SamplePicture {
    const QMetaObject* kind;
    DemoUntil until;
    QString says;
};

std::optional<SamplePicture> samplePicture(const QMetaObject* kind) {
    const SamplePicture all[] = {
        {&TodayPlace::staticMetaObject, DemoUntil::JuneVisit,
         SamplePictures::tr("The place Today: above the year with its months, what was done "
                            "filled and what is due open; below at the left the trips that are "
                            "due, one of them opened to its hives with why; at the right what "
                            "was left half done.")},
        {&YardPlace::staticMetaObject, DemoUntil::JuneVisit,
         SamplePictures::tr("The place Yard: twelve hives in walking order, each drawn as its "
                            "stack of boxes from the floor up, with the marks and what is in "
                            "them; at the right the story of the chosen hive.")},
        {&PullPlace::staticMetaObject, DemoUntil::PullPlan,
         SamplePictures::tr("The place Pull: over each hive its supers with the verdict take, "
                            "leave or look first; below the frames of the chosen box, at the "
                            "right the limits and what follows from them.")},
        {&HoneyRoomPlace::staticMetaObject, DemoUntil::HoneyRoom,
         SamplePictures::tr("The place Honey room: the boxes that wait, the extractor with the "
                            "load that goes into it, and the buckets with what ran into "
                            "them.")},
        {&WaxBenchPlace::staticMetaObject, DemoUntil::Whole,
         SamplePictures::tr("The place Wax bench: bands from the left to the right for the wax "
                            "of the year, from raw wax to blocks and candles; below the "
                            "evenings and the moulds they need.")},
        {&StoreroomPlace::staticMetaObject, DemoUntil::Whole,
         SamplePictures::tr("The place Storeroom: at the left the counts, in the middle each "
                            "box of a shelf as a row of its frames laid out small, below the box "
                            "on the bench that is judged, and the freezer.")},
        {&SeasonBookPlace::staticMetaObject, DemoUntil::Whole,
         SamplePictures::tr("The place Season book: the year in one sentence, the honey as it "
                            "came in along a line of days, and which hive gave how much.")}};
    for (const SamplePicture& each : all)
        if (each.kind == kind) return each;
    return std::nullopt;
}

}  // namespace

SamplePictures::SamplePictures(Session& session, QObject* parent)
    : QObject(parent), m_session(session), m_shelf(session.machineClock()) {
    m_next.setSingleShot(true);
    connect(&m_next, &QTimer::timeout, this, &SamplePictures::goOn);
}

SamplePictures::~SamplePictures() = default;

QString SamplePictures::saidOf(const Place& place) {
    const auto picture = samplePicture(place.metaObject());
    return picture ? picture->says : QString();
}

QString SamplePictures::captionOf(const Place& place) {
    const auto picture = samplePicture(place.metaObject());
    return picture ? tr("The invented sample season on %1").arg(dayText(demoDay(picture->until)))
                   : QString();
}

std::optional<QPixmap> SamplePictures::of(const Place& place) {
    const AsItLooks now{m_session.look().dark, m_session.look().factor, shownUnits()};
    if (now != m_as) {
        m_done.clear();
        letBe();
        m_as = now;
    }
    const QMetaObject* kind = place.metaObject();
    if (const auto found = m_done.find(kind); found != m_done.end()) return found->second;
    if (!samplePicture(kind)) return std::nullopt;
    // What is looked at now comes first.
    std::erase(m_asked, kind);
    m_asked.insert(m_asked.begin(), kind);
    if (!m_next.isActive()) m_next.start(pictureBeginsMs);
    return std::nullopt;
}

void SamplePictures::letBe() {
    m_asked.clear();
    m_window.reset();
    m_sample.reset();
    m_opened.reset();
}

void SamplePictures::goOn() {
    if (m_asked.empty()) return;
    const QMetaObject* kind = m_asked.front();
    if (!oneStep(kind)) std::erase(m_asked, kind);
    if (!m_asked.empty()) m_next.start(pictureGoesOnMs);
}

bool SamplePictures::oneStep(const QMetaObject* kind) {
    const DemoUntil until = samplePicture(kind)->until;
    // Where the disk is full there are no pictures; the words stand.
    if (!m_shelf.isTold(until)) return m_session.tellOn(m_shelf);
    if (m_opened != until) {
        openTold(until);
        return m_opened == until;
    }
    if (!m_window) {
        m_window = std::make_unique<MainWindow>(*m_sample);
        m_window->setAttribute(Qt::WA_DontShowOnScreen);
        m_window->setAttribute(Qt::WA_ShowWithoutActivating);
        m_window->resize(pictureSize);
        m_window->show();
        return true;
    }
    const auto& places = m_window->places();
    const auto place = std::find_if(places.begin(), places.end(), [kind](const Place* each) {
        return each->metaObject() == kind;
    });
    m_window->goTo(static_cast<int>(place - places.begin()));
    (*place)->settle();
    // Each round lets one more of the nested layouts settle; no key is taken meanwhile.
    for (int n = 0; n < 6; ++n)
        for (const QEvent::Type each : {QEvent::LayoutRequest, QEvent::Resize})
            QCoreApplication::sendPostedEvents(nullptr, each);
    m_done[kind] = m_window->grab();
    Q_EMIT painted();
    return false;
}

void SamplePictures::openTold(DemoUntil until) {
    m_window.reset();
    m_opened.reset();
    m_sample = std::make_unique<Session>(m_session.machineClock());
    m_sample->leaveNoTrace();
    m_sample->setLook(m_session.look());
    if (m_sample->exploreSample(m_shelf, until))
        m_opened = until;
    else
        m_session.tell(m_sample->lastTold(), true);
    // The other season's mark is not this one's.
    m_session.markPapers();
}

}  // namespace combwright
