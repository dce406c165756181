// Ctrl+K: one box over all there is. It asks the season's words, the days, and what the window
// itself offers, and goes where one chooses. It remembers where one was sent last.
#pragma once

#include <QObject>
#include <QPointer>
#include <memory>

#include "ui/shell/find/find_deeds.h"
#include "ui/shell/find/find_keeper.h"
#include "ui/shell/find/find_line.h"

namespace combwright {

class FindBox;
struct FindGroup;
struct FindHit;

class Finder : public QObject {
    Q_OBJECT

  public:
    Finder(MainWindow& window, Session& session);
    ~Finder() override;

    /// Opens the box under the head; the place and what is half typed there wait behind it.
    void open();
    /// While it is open.
    FindBox* box() const;
    FindKeeper& keeper() { return m_keeper; }
    /// What is found by what was typed; where one was last, by nothing.
    FindLines linesFor(const QString& typed);

  private:
    void ask();
    void addDay(FindLines& lines, Day day);
    void addRecords(FindLines& lines, const FindGroup& group);
    FindLine lineOf(const FindHit& hit);
    void goTo(const FindHit& hit);
    void chosen(const FindLine& line);
    void remember(const FindLine& line);

    MainWindow& m_window;
    Session& m_session;
    FindKeeper m_keeper;
    QPointer<FindBox> m_box;
    std::unique_ptr<FindDeeds> m_deeds;
    FindLines m_lately;
};

}  // namespace combwright
