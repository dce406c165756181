#include "ui/honey_room/vessel_picture.h"

#include <QLocale>
#include <QPainter>

#include "core/words/figures.h"
#include "core/words/words.h"

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
    m_amount.clear();
    const VesselLedger& ledger = honey.view.ledger;
    if (ledger.empty) {
        m_tone = Tone::Muted;
        m_state = tr("empty");
    } else {
        if (ledger.left) {
            m_amount.push_back(
                {massText(static_cast<double>(ledger.left->grams()), ledger.leftHow)});
            TextRun how{QString(QLatin1Char(letter(ledger.leftHow))), true};
            how.raised = true;
            m_amount.push_back(how);
            if (honey.view.holds)
                m_amount.push_back(
                    {tr(" of the %1 it holds")
                         .arg(massText(static_cast<double>(honey.view.holds->grams()),
                                       How::Weighed))});
        } else {
            m_amount.push_back({tr("nobody knows how much")});
        }
        const bool held = !honey.view.held.empty();
        m_tone = held ? Tone::Bad : lacks.empty() ? Tone::Good : Tone::Warn;
        m_state = held            ? tr("held back")
                  : lacks.empty() ? tr("ready to be bottled")
                                  : tr("not ready yet");
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
    const QFont head = look.font(TextSize::Head, true);
    const QFont bold = look.font(TextSize::Body, true);
    const double step = lineStep(bold) * 1.15;
    double base = look.px(22.0);
    paintText(painter, {left, base}, fitted(m_bucket.name, head, room), head, look.tone(Tone::Ink));
    base += lineStep(head) * 1.15;
    if (!m_amount.empty()) {
        paintLine(painter, {left, base}, m_amount, TextSize::Body, look);
        base += step;
    }
    paintText(painter, {left, base}, fitted(m_state, bold, room), bold, look.tone(m_tone));
}

}  // namespace combwright
