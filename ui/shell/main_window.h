// The one window: the rail of places at the left, the place at the right under its head, the foot
// below. Without a season it shows the start page.
#pragma once

#include <QMainWindow>
#include <QStackedWidget>
#include <QTimer>
#include <functional>
#include <map>
#include <vector>

#include "ui/shell/file_ways.h"
#include "ui/shell/foot_bar.h"
#include "ui/shell/place.h"
#include "ui/shell/place_head.h"
#include "ui/shell/rail.h"

namespace combwright {

class Finder;
class HeatLine;
class NoticeBar;
class SamplePictures;
class SampleWalk;
class StartPage;
class TimeWays;

class MainWindow : public QMainWindow {
    Q_OBJECT

  public:
    explicit MainWindow(Session& session, QWidget* parent = nullptr);
    ~MainWindow() override;

    /// The places in the order of the rail, all made.
    const std::vector<Place*>& places();
    Place* current() const;
    void goTo(int index);
    void goFor(const GoTo& where);
    Finder& finder() { return *m_finder; }
    /// Under the head, on the screen: where the box that finds anything lies.
    QRect findRoom() const;
    FileWays& files() { return *m_files; }
    TimeWays& time() { return *m_time; }
    HeatLine& heat() { return *m_heat; }
    SampleWalk& walk() { return *m_walk; }
    /// What the places look like in the sample season, for the help.
    SamplePictures& samplePictures() { return *m_samplePictures; }
    /// Keeps what is half typed and the copy, as closing does, but asks nothing: the machine is
    /// going down.
    void endQuietly();
    /// It shows a season beside another window's: closing the season closes it too.
    void standBeside() { m_isBeside = true; }
    /// Shown, unfolded and above the others.
    void comeForward();

  Q_SIGNALS:
    void wentTo(int index);  ///< that place came to the front

  protected:
    void closeEvent(QCloseEvent* event) override;
    void changeEvent(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;
    /// Keys of the window that fields and buttons would keep to themselves.
    bool eventFilter(QObject* watched, QEvent* event) override;

  private:
    /// A place in the rail and under its key. It is made when one goes there, else after the first
    /// frame, one between two events: making them all first would keep the window from standing.
    /// What a place reads of the file when it is made it reads through Session::reading.
    template <class OfKind>
    void addPlace() {
        m_makers.push_back([this]() -> Place* { return new OfKind(m_session, m_stack); });
        nameInRail(OfKind::wordInRail());
    }
    void nameInRail(const QString& word);
    Place& place(int index);
    bool isAnyToMake() const;
    void makeNext();
    QAction* addKey(const QString& name, const QKeySequence& key, std::function<void()> deed);
    void showHead();
    void countWaiting();
    void showSeason();
    /// Today, unless something half typed waits elsewhere.
    void goFirst();
    void showTitle();
    void keepTyped();
    /// Whether it may end: a pot on heat is asked about first.
    bool leavesHeat();
    void addFileKeys();
    void showInAndOut();
    void print();
    void explain();
    /// One step larger or smaller; 0 is the size the desktop has.
    void changeTextSize(int steps);

    Session& m_session;
    FileWays* m_files;
    TimeWays* m_time;
    Finder* m_finder;
    NoticeBar* m_notice;
    bool m_isBeside = false;
    HeatLine* m_heat;  ///< what is on heat, in every place
    SampleWalk* m_walk;
    SamplePictures* m_samplePictures;
    Rail* m_rail;
    QTimer* m_countLater;  ///< what waits is counted once one stops keeping
    PlaceHeadBar* m_head;
    FootBar* m_foot;
    QStackedWidget* m_stack;
    StartPage* m_start;
    std::vector<std::function<Place*()>> m_makers;
    std::vector<Place*> m_places;  ///< null where not made yet
    QTimer* m_makeLater;
    std::map<const Place*, QWidget*> m_controls;  ///< each place's part of the head
    std::map<const Place*, QWidget*>
        m_pageWords;  ///< and the words of its pages, where it has some
};

}  // namespace combwright
