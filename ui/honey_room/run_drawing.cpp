#include "ui/honey_room/run_drawing.h"

#include <QLocale>
#include <QPainter>
#include <algorithm>
#include <map>

#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

FigureText kilogramFigure(double grams, How how) {
    return {massFigure(grams, how), QStringLiteral("kg"), letter(how)};
}

}  // namespace

RunDrawing::RunDrawing(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setAccessibleName(tr("Balance of the run"));
    connect(&session, &Session::lookChanged, this, [this] { update(); });
}

void RunDrawing::show(const std::optional<RunBalance>& balance) {
    m_view = {};
    m_has = balance && balance->outOfBoxesG && !balance->boxes.empty();
    if (!m_has) {
        setAccessibleDescription(tr("The balance is drawn when boxes were weighed full and wet."));
        update();
        return;
    }
    // One band a hive, in the order the boxes came; those without a hive together at the end.
    std::vector<std::pair<std::string, double>> in;
    double unknown = 0;
    for (const RunBoxLine& box : balance->boxes) {
        if (box.hive.empty()) {
            unknown += box.offG.value_or(0);
            continue;
        }
        auto found = std::find_if(in.begin(), in.end(),
                                  [&](const auto& each) { return each.first == box.hive; });
        if (found == in.end()) found = in.insert(in.end(), {box.hive, 0.0});
        found->second += box.offG.value_or(0);
    }
    for (const auto& [hive, grams] : in)
        m_view.in.push_back(
            {fromUtf8(hive), grams, kilogramFigure(grams, How::Weighed), BandFill::Honey, {}});
    if (unknown > 0)
        m_view.in.push_back(
            {tr("no tag"), unknown, kilogramFigure(unknown, How::Weighed), BandFill::Unknown, {}});
    const auto buckets = static_cast<double>(balance->buckets.grams());
    m_view.out.push_back({tr("buckets"),
                          buckets,
                          kilogramFigure(buckets, balance->bucketsHow),
                          BandFill::Honey,
                          {}});
    if (balance->cappings) {
        const auto cappings = static_cast<double>(balance->cappings->grams());
        m_view.out.push_back({tr("wet cappings"),
                              cappings,
                              kilogramFigure(cappings, How::Weighed),
                              BandFill::Cappings,
                              {}});
    }
    if (balance->unaccountedG && *balance->unaccountedG > 0)
        m_view.out.push_back(
            {tr("missing"), *balance->unaccountedG,
             kilogramFigure(*balance->unaccountedG, How::ByDifference), BandFill::Missing,
             tr("%1 %").arg(QLocale().toString(
                 100.0 * *balance->unaccountedG / *balance->outOfBoxesG, 'f', 1))});
    m_view.total = kilogramFigure(*balance->outOfBoxesG, How::Weighed);
    setAccessibleDescription(spoken(m_view));
    update();
}

void RunDrawing::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = m_session.look();
    if (m_has) return paintBalance(painter, QRectF(rect()), m_view, look);
    painter.setPen(look.tone(Tone::Muted));
    painter.setFont(look.font(TextSize::Note));
    painter.drawText(rect(), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                     tr("The balance is drawn when boxes were weighed full and wet."));
}

BucketRow::BucketRow(Session& session, QWidget* parent) : QWidget(parent), m_session(session) {
    setAccessibleName(tr("Buckets"));
    connect(&session, &Session::lookChanged, this, [this] { update(); });
}

void BucketRow::show(const std::vector<Bucket>& buckets, double fullG, double wetLine) {
    m_buckets.clear();
    QStringList said;
    for (const Bucket& bucket : buckets) {
        Drawn drawn;
        drawn.view.name = fromUtf8(bucket.mark.text());
        const auto net = bucket.net ? bucket.net->middle() : std::nullopt;
        if (net) {
            drawn.view.level = std::min(1.0, *net / fullG * 0.92);
            drawn.mass = kilogramFigure(*net, bucket.net->how);
        }
        if (bucket.water) {
            drawn.view.water = QLocale().toString(bucket.water->percent(), 'f', 1);
            drawn.view.doNotBottle = bucket.water->percent() > wetLine;
        }
        drawn.view.lidded = bucket.lidded.value_or(false);
        said << spoken(drawn.view);
        m_buckets.push_back(std::move(drawn));
    }
    setAccessibleDescription(said.join(QLatin1Char(' ')));
    update();
}

void BucketRow::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Look& look = m_session.look();
    if (m_buckets.empty()) {
        painter.setPen(look.tone(Tone::Muted));
        painter.setFont(look.font(TextSize::Note));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignTop | Qt::TextWordWrap,
                         tr("No bucket filled yet: type B1 13.0 17.2"));
        return;
    }
    const double wide = look.space(72);
    const double high = look.space(92);
    const int perRow = std::max(1, static_cast<int>(width() / wide));
    for (std::size_t i = 0; i < m_buckets.size(); ++i) {
        const int row = static_cast<int>(i) / perRow;
        const QRectF cell((static_cast<int>(i) % perRow) * wide, row * high, wide, high);
        paintBucket(painter, QRectF(cell.x() + 6, cell.y() + 4, look.space(56), look.space(48)),
                    m_buckets[i].view, look);
        painter.setPen(look.tone(Tone::Ink));
        painter.setFont(look.font(TextSize::Note, true));
        painter.drawText(QRectF(cell.x(), cell.y() + look.space(54), wide - 6, look.space(15)),
                         Qt::AlignCenter, m_buckets[i].view.name);
        FigureStyle style;
        style.size = TextSize::Note;
        const FigureText& mass = m_buckets[i].mass;
        const double room = measureFigures({mass}, style, look).width();
        paintFigure(painter, QPointF(cell.x() + (wide - 6 - room) / 2, cell.y() + look.space(80)),
                    mass.figure, mass.unit, mass.how, style, look);
    }
}

}  // namespace combwright
