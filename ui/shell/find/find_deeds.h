// What the window itself offers to be found: its places and their pages, what can be done, the keys
// it knows and its help. Gathered from the live widgets each time something is looked for, so that
// nothing here has to be told of a new button.
#pragma once

#include <QPointer>
#include <string>
#include <vector>

#include "ui/shell/find/find_line.h"
#include "ui/shell/main_window.h"

namespace combwright {

class FindDeeds {
  public:
    FindDeeds(MainWindow& window, Session& session);

    /// Each at most so many, those first whose title begins so.
    FindLines places(const std::vector<std::string>& words, std::size_t most) const;
    FindLines deeds(const std::vector<std::string>& words, std::size_t most) const;
    FindLines help(const std::vector<std::string>& words, std::size_t most) const;
    /// The line of a place, by its number in the rail.
    FindLine place(int index) const;

  private:
    struct Offer {
        FindLine line;
        std::vector<std::string> titleWords;
        std::vector<std::string> otherWords;
    };
    using Offers = std::vector<Offer>;

    static FindLines matching(const Offers& offers, const std::vector<std::string>& words,
                              std::size_t most);
    void add(Offers& to, FindLine line, const QString& other = {}) const;
    void gatherPlaces();
    void gatherWindow();
    void gatherPlace(int index);
    void gatherHelp(int index);

    MainWindow* m_window;
    Session* m_session;
    Offers m_places;
    Offers m_deeds;
    Offers m_help;
};

}  // namespace combwright
