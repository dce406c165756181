// Keeps the words of the open season at hand for the one who looks for something. They are gathered
// when something is first looked for and follow every change from then on, in pieces so short that
// typing goes on meanwhile.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QTimer>
#include <memory>

#include "core/storage/find/find_cache.h"
#include "ui/shell/session.h"

namespace combwright {

class FindKeeper : public QObject {
    Q_OBJECT

  public:
    explicit FindKeeper(Session& session, QObject* parent = nullptr);

    /// Begins or goes on bringing it up to the season; what takes longer than a moment is done
    /// between other things.
    void follow();
    /// Nothing before follow(), and without a season.
    FindCache* cache() { return m_cache.get(); }
    /// Still gathering: what is found is not all there is.
    bool isGathering() const { return m_pieces.isActive(); }
    /// Waits until all of the season is in it.
    void settle();

  Q_SIGNALS:
    void cameOn();  ///< more of the season is in it

  private:
    void forget();
    void piece();
    bool bringUp(int milliseconds);

    Session& m_session;
    std::unique_ptr<FindCache> m_cache;
    QTimer m_pieces;
    QElapsedTimer m_told;
    QTimer m_later;  ///< what was just kept is read once the hand rests
};

}  // namespace combwright
