// What each place looks like at work, for the help: painted by the program itself on the invented
// season, in the language, the colours and the text size of the moment. The season is told script
// by script between two events, so that the page it is for is read and scrolled meanwhile.
#pragma once

#include <QObject>
#include <QPixmap>
#include <QTimer>
#include <map>
#include <memory>
#include <optional>
#include <vector>

#include "core/actions/demo_season.h"
#include "ui/shell/session.h"

namespace combwright {

class MainWindow;
class Place;

class SamplePictures : public QObject {
    Q_OBJECT

  public:
    SamplePictures(Session& session, QObject* parent);
    ~SamplePictures() override;

    /// The picture, where it was painted already as things look now; else it is painted soon and
    /// `painted` says so.
    std::optional<QPixmap> of(const Place& place);
    /// Nobody looks any more: what is not painted yet is not painted.
    void letBe();
    /// What it shows, for who does not see it; empty of a place that has none.
    static QString saidOf(const Place& place);
    /// Under it: that it is invented, and of which day.
    static QString captionOf(const Place& place);
    /// The season they are painted on, for who else walks through it.
    DemoShelf& shelf() { return m_shelf; }

  Q_SIGNALS:
    void painted();  ///< one more

  private:
    struct AsItLooks {
        bool dark = false;
        double factor = 1.0;
        Units units = Units::Metric;
        bool operator==(const AsItLooks&) const = default;
    };
    void goOn();
    /// One thing that cannot be parted, of those it takes; whether there are more to come.
    bool oneStep(const QMetaObject* kind);
    void openTold(DemoUntil until);

    Session& m_session;
    DemoShelf m_shelf;
    QTimer m_next;
    std::vector<const QMetaObject*> m_asked;
    // The season they are painted on and its window, which nobody sees; kept while the help is
    // open, for the next picture is often of the same day.
    std::optional<DemoUntil> m_opened;
    std::unique_ptr<Session> m_sample;
    std::unique_ptr<MainWindow> m_window;
    std::map<const QMetaObject*, QPixmap> m_done;
    AsItLooks m_as;  ///< what is done
};

}  // namespace combwright
