#include "ui/honey_room/vessel_picture.h"

#include <QLocale>
#include <QPainter>

#include "core/places/pages/vessel_words.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/drawing/lettering.h"

namespace combwright {
namespace {

constexpr int pictureHeight = 84;

}  // namespace

VesselPicture::VesselPicture(Session& session, QWidget* parent)
    : QWidget(parent), m_session(session) {
    setObjectName(QStringLiteral("vessel_picture"));
    connect(&session, &Session::lookChanged, this, &VesselPicture::sizes);
    sizes();
}

void VesselPicture::sizes() {
    setFixedHeight(m_session.look().space(pictureHeight));
    update();
}

void VesselPicture::show(const StoredHoney& honey, Day on) {
    m_bucket = BucketView();
    m_bucket.name = fromUtf8(honey.view.name);
    m_bucket.level = honey.level;
    if (honey.view.water) m_bucket.water = QLocale().toString(honey.view.water->percent, 'f', 1);
    m_bucket.lidded = honey.view.lidded.value_or(false);
    const auto lacks = honey.lacks(on);
    m_bucket.doNotBottle = !honey.view.empty() && !lacks.empty();
    m_beside.clear();
    m_beside << m_bucket.name;
    const VesselLedger& ledger = honey.view.ledger;
    if (ledger.empty) {
        m_tone = Tone::Muted;
        m_beside << tr("empty");
    } else {
        if (ledger.left) {
            const auto left = static_cast<double>(ledger.left->grams());
            m_beside << (honey.view.holds
                             ? tr("%1 of the %2 it holds")
                                   .arg(massKnown(left, ledger.leftHow),
                                        massText(static_cast<double>(honey.view.holds->grams()),
                                                 How::Weighed))
                             : massKnown(left, ledger.leftHow));
        } else {
            m_beside << tr("nobody knows how much");
        }
        const bool held = !honey.view.held.empty();
        m_tone = held ? Tone::Bad : lacks.empty() ? Tone::Good : Tone::Warn;
        m_beside << (held            ? tr("held back")
                     : lacks.empty() ? tr("ready to be bottled")
                                     : tr("not ready yet"));
    }
    setAccessibleName(spoken(m_bucket));
    update();
}

void VesselPicture::paintEvent(QPaintEvent*) {
    const Look& look = m_session.look();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box(0, -bucketCaretRoom(look), look.px(80.0),
                     height() + bucketCaretRoom(look) - look.px(2.0));
    paintBucket(painter, box, m_bucket, look);
    const double left = box.right() + look.px(12.0);
    const double room = width() - left;
    double base = look.px(22.0);
    for (int i = 0; i < m_beside.size(); ++i) {
        const QFont font = i == 0 ? look.font(TextSize::Head, true)
                                  : look.font(TextSize::Body, i == m_beside.size() - 1);
        paintText(painter, {left, base}, fitted(m_beside[i], font, room), font,
                  look.tone(i > 0 && i == m_beside.size() - 1 ? m_tone : Tone::Ink));
        base += lineStep(font) * 1.15;
    }
}

}  // namespace combwright
