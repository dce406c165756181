#include "ui/shell/find/find_keeper.h"

namespace combwright {
namespace {

/// Of a piece between two keystrokes; of the first one, when the box opens.
constexpr int pieceMs = 12;
constexpr int firstPieceMs = 60;
constexpr int restedMs = 400;
/// What is shown is not asked anew at each piece.
constexpr int toldEveryMs = 400;

}  // namespace

FindKeeper::FindKeeper(Session& session, QObject* parent) : QObject(parent), m_session(session) {
    m_later.setSingleShot(true);
    m_later.setInterval(restedMs);
    connect(&m_pieces, &QTimer::timeout, this, &FindKeeper::piece);
    connect(&m_later, &QTimer::timeout, this, &FindKeeper::follow);
    connect(&session, &Session::seasonChanged, this, &FindKeeper::forget);
    connect(&session, &Session::pathChanged, this, &FindKeeper::forget);
    // Until something was looked for once, nothing is gathered.
    connect(&session, &Session::changed, this, [this] {
        if (m_cache) m_later.start();
    });
}

void FindKeeper::forget() {
    m_pieces.stop();
    m_later.stop();
    m_cache.reset();
}

bool FindKeeper::bringUp(int milliseconds) {
    bool whole = true;
    m_session.reading([&] {
        QElapsedTimer watch;
        watch.start();
        whole = m_cache->bringUp(m_session.read(), [&] { return watch.elapsed() >= milliseconds; });
    });
    return whole;
}

void FindKeeper::follow() {
    if (!m_session.hasSeason()) return forget();
    if (!m_cache) {
        // A season to be thrown away, and one looked at for a picture, leave nothing behind.
        const bool kept = m_session.leavesTrace() && !m_session.isSample();
        m_cache = std::make_unique<FindCache>(kept ? FindCache::pathFor(m_session.season().path())
                                                   : std::string(":memory:"));
    }
    if (m_pieces.isActive()) return;
    if (!bringUp(firstPieceMs)) m_pieces.start(0);
}

void FindKeeper::piece() {
    if (!m_session.hasSeason()) return forget();
    const bool whole = bringUp(pieceMs);
    if (whole) m_pieces.stop();
    if (!whole && m_told.isValid() && m_told.elapsed() < toldEveryMs) return;
    m_told.start();
    Q_EMIT cameOn();
}

void FindKeeper::settle() {
    follow();
    if (!m_cache) return;
    m_session.reading([&] { m_cache->bringUp(m_session.read()); });
    m_pieces.stop();
    Q_EMIT cameOn();
}

}  // namespace combwright
