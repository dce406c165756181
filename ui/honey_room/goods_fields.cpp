#include "ui/honey_room/goods_fields.h"

#include <QCoreApplication>

#include "core/places/goods/bottlings.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString goodsField(const char* text) { return QCoreApplication::translate("goods_fields", text); }

/// Buckets as their number, lots below nothing: one combo box holds both.
qlonglong numberOf(const Vessel& vessel) {
    if (vessel.bucket) return static_cast<qlonglong>(vessel.bucket->number);
    return vessel.lot ? -static_cast<qlonglong>(vessel.lot->number) : 0;
}

}  // namespace

void offerHoney(QComboBox* box, const Read& file, Day on) {
    for (const StoredHoney& honey : honeyStore(file, on).standing) {
        const QString name = fromUtf8(honey.view.name);
        const VesselLedger& ledger = honey.view.ledger;
        box->addItem(ledger.left ? QStringLiteral("%1, %2").arg(
                                       name, massKnown(static_cast<double>(ledger.left->grams()),
                                                       ledger.leftHow))
                                 : goodsField("%1, not weighed").arg(name),
                     numberOf(honey.view.vessel));
    }
}

std::optional<Vessel> honeyChosen(const QComboBox* box) {
    const qlonglong number = box->currentData().toLongLong();
    if (number > 0) return Vessel{Id<Bucket>{number}, std::nullopt};
    if (number < 0) return Vessel{std::nullopt, Id<Lot>{-number}};
    return std::nullopt;
}

void chooseHoney(QComboBox* box, const Vessel& vessel) {
    const int at = box->findData(numberOf(vessel));
    if (at >= 0) box->setCurrentIndex(at);
}

void offerFillings(QComboBox* box, const Read& file, Day on, const QString& none) {
    if (!none.isEmpty()) box->addItem(none, 0);
    for (const FillingSheet& sheet : fillings(file, on))
        box->addItem(QStringLiteral("%1, %2").arg(fromUtf8(sheet.bottling.code.text()),
                                                  shortDayText(sheet.bottling.on, on)),
                     static_cast<qlonglong>(sheet.bottling.id.number));
}

KindLines::KindLines(SmallForm& form, const std::vector<GoodsKind>& kinds, const char* name,
                     const QString& example, bool noted)
    : m_kinds(kinds) {
    for (const GoodsKind& kind : kinds) {
        m_fields.push_back(form.line(fromUtf8(kind.name.text()),
                                     QStringLiteral("%1_%2")
                                         .arg(QLatin1String(name))
                                         .arg(kind.id.number)
                                         .toLatin1()
                                         .constData(),
                                     example));
        if (!noted) continue;
        m_notes.push_back(form.say(QString()));
        m_notes.back()->setObjectName(QStringLiteral("note_%1").arg(kind.id.number));
    }
}

void KindLines::note(SmallForm& form, std::size_t at, const QString& text) const {
    if (at >= m_notes.size()) return;
    if (m_notes[at]->text() != text) form.sayAgain(m_notes[at], text);
    m_fields[at]->setAccessibleDescription(text);
}

std::string KindLines::inLine(const QLineEdit* before) const {
    std::string line = before ? typedWords(before) : std::string();
    for (std::size_t i = 0; i < m_fields.size(); ++i) {
        const std::string typed = typedWords(m_fields[i]);
        if (typed.empty()) continue;
        if (!line.empty()) line += ", ";
        line += withKind(typed, m_kinds[i].id);
    }
    return line;
}

void KindLines::whenTyped(QWidget* context, const std::function<void()>& look) const {
    for (QLineEdit* field : m_fields)
        QObject::connect(field, &QLineEdit::textChanged, context, look);
}

std::string withKind(const std::string& typed, Id<GoodsKind> kind) {
    const std::size_t end = std::min(typed.find_first_not_of("0123456789"), typed.size());
    return typed.substr(0, end) + " #" + std::to_string(kind.number) + typed.substr(end);
}

std::vector<GoodsAhead> aheadOf(const std::vector<GoodsMeant>& meant) {
    std::vector<GoodsAhead> ahead;
    for (const GoodsMeant& each : meant) {
        GoodsAhead goods;
        goods.kind = each.kind;
        goods.count = each.count;
        goods.each = each.each;
        ahead.push_back(goods);
    }
    return ahead;
}

QLineEdit* mayStayEmpty(SmallForm& form, const QString& label, const char* name) {
    return form.line(label, name, goodsField("may stay empty"));
}

}  // namespace combwright
