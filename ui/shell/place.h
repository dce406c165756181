// A place of the window: what is to be done there, its head, its keys and the sheets it pins to its
// wall. The shell knows places only by this.
#pragma once

#include <QCoreApplication>
#include <QWidget>
#include <cstdint>
#include <functional>
#include <string_view>
#include <utility>
#include <vector>

#include "core/places/due/due_item.h"
#include "core/places/explain/explained.h"
#include "core/places/pages/page.h"
#include "ui/drawing/figure.h"
#include "ui/shell/session.h"

namespace combwright {

struct PlaceHead {
    QString title;
    QString under;                     ///< where, what day, in which state
    FigureText big;                    ///< the one big number
    TextSize bigSize = TextSize::Big;  ///< a clock is read across a room
    Tone bigTone = Tone::Ink;
    QString bigNote;  ///< what it is, two short lines at most
    QString action;   ///< the one thing to do next
    QString actionKey;
};

struct KeyHint {
    QString key;
    QString what;
};

/// The key that prints, as it is written on a button.
inline QString printKeyText() { return QCoreApplication::translate("keys", "Ctrl+P"); }

/// Something this place prints: a name for the command line, and the page.
struct PrintSheet {
    QString id;
    QString title;
    std::function<Page()> page;
};

/// Where a thing is done, for a place that sends one there.
struct GoTo {
    /// Of the yard: its stacks, what follows of mites and medicines, what it has to live on, or a
    /// hive's story, where its queen and what is waited for stand. Of the honey room: the day's
    /// extracting (Board too), honey in buckets and lots, jars, the fair.
    enum class Page { Board, Health, Stores, Story, Honey, Jars, Fair };
    DueWhere where = DueWhere::Yard;
    std::optional<Id<Yard>> yard = std::nullopt;
    std::optional<Id<Hive>> hive = std::nullopt;
    std::optional<Day> on = std::nullopt;  ///< today, when left out
    bool sheet = false;                    ///< of the yard, its sheet
    Page page = Page::Board;
    /// Records by table and number: the place goes to the first it lists.
    std::vector<std::pair<std::string_view, std::int64_t>> records = {};
};

/// A page of a place, for who is sent there by its word.
struct PlacePage {
    QString word;
    GoTo where;
    const QWidget* shows = nullptr;  ///< what stands on it; none where that is made when opened
};

class Place : public QWidget {
    Q_OBJECT

  public:
    Place(Session& session, QWidget* parent = nullptr) : QWidget(parent), m_session(session) {}

    virtual QString railWord() const = 0;
    virtual PlaceHead head() const = 0;
    virtual std::vector<KeyHint> hints() const { return {}; }
    virtual std::vector<PrintSheet> sheets() const { return {}; }
    /// Every figure this place shows now, with how it came about; the first is the one the person
    /// is at. Reckoned anew when asked, so not for painting.
    virtual std::vector<Explained> explained() const { return {}; }
    /// What this place is for, on one page.
    virtual QString help() const = 0;
    /// How many things wait here, for the number at the place's name; asked when the place is not
    /// in front too. Throws StorageError.
    virtual int waiting() const { return 0; }
    /// Does the one thing to do next.
    virtual void act() {}
    /// Takes back a decision of this place that is no deed yet, as Ctrl+Z does a deed; false where
    /// there is none.
    virtual bool takeBack() { return false; }
    /// Reads everything anew, and puts it in the units that are shown now. A file that cannot be
    /// read is told, and what was shown stays.
    void reload() {
        m_session.reading([this] { readAnew(); });
    }
    /// Keeps what is half typed; called before the place is left or the program ends.
    virtual void keepTyped() {}
    /// Whether a half-typed line of that sheet and row is this place's: the window opens with it.
    virtual bool resumes(const QString& /*sheet*/, const QString& /*row*/) const { return false; }
    /// The window opens with a half-typed line of this place: shows what it was typed about.
    virtual void resume(const QString& /*sheet*/, const QString& /*row*/) {}
    /// Where the person is: the yard, the hive, the day; none of them where the place has none.
    virtual GoTo at() const { return {}; }
    /// Shows what one was sent here for.
    virtual void goFor(const GoTo& /*where*/) {}
    /// The place of such work.
    virtual std::optional<DueWhere> worksAt() const { return std::nullopt; }
    /// Waits until what is reckoned in the background is shown: for pictures, prints and tests.
    virtual void settle() {}
    /// The words of its pages, beside the title; may be none.
    virtual QWidget* pageWords() { return nullptr; }
    /// A widget for the head, beside the words under the title; may be none.
    virtual QWidget* headControls() { return nullptr; }

  Q_SIGNALS:
    void headChanged();
    void printAsked();  ///< the place's first sheet, with preview
    void goAsked(const combwright::GoTo& where);

  protected:
    /// What reload does; throws StorageError.
    virtual void readAnew() = 0;
    Session& session() const { return m_session; }
    const Look& look() const { return m_session.look(); }

  private:
    Session& m_session;
};

}  // namespace combwright
