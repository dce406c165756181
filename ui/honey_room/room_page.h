// A page of the honey room beside the day's extracting: what stands in buckets and lots, what is in
// jars, what goes to a fair. The place shows one at a time and hands the window's questions on.
#pragma once

#include <QWidget>
#include <cstdint>
#include <string_view>

#include "ui/shell/place.h"

namespace combwright {

class RoomPage : public QWidget {
    Q_OBJECT

  public:
    RoomPage(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {}

    /// What stands in the place's head while this page is shown.
    virtual PlaceHead head() const = 0;
    virtual std::vector<KeyHint> hints() const { return {}; }
    /// What of this page is printed, the sheet one is at first.
    virtual std::vector<PrintSheet> sheets() const { return {}; }
    virtual std::vector<Explained> explained() const { return {}; }
    virtual QString help() const = 0;
    /// Does the one thing to do next.
    virtual void act() {}
    /// Does what a key stands for; whether it stands for anything.
    virtual bool press(int key) = 0;
    /// Goes to the row of a record; false where the page does not list it.
    virtual bool goToRecord(std::string_view /*table*/, std::int64_t /*record*/) { return false; }
    /// Reads everything anew; throws StorageError.
    virtual void readAnew() = 0;

  Q_SIGNALS:
    void headChanged();

  protected:
    Session& session() const { return m_session; }
    const Look& look() const { return m_session.look(); }

  private:
    Session& m_session;
};

}  // namespace combwright
