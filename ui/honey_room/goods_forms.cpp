#include "ui/honey_room/goods_forms.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/actions/honey/bottlings.h"
#include "core/actions/honey/goods.h"
#include "core/catalogue/honey_tables.h"
#include "core/places/goods/goods.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/words/figures.h"
#include "core/words/words.h"
#include "ui/honey_room/goods_fields.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString goodsWord(const char* text) { return QCoreApplication::translate("goods_forms", text); }

/// As it is typed again: with a point, whatever the country.
QString priceTyped(Money price) { return QString::number(price.whole(), 'f', 2); }

/// Names of lids that kinds take or that were bought, each once.
QStringList lidNames(const Read& file, Day on) {
    QStringList names;
    for (const GoodsKind& each : file.all<GoodsKind>())
        if (!each.lid.empty()) names << fromUtf8(each.lid);
    for (const PackingShelf& each : packingShelf(file, on))
        if (!each.kind) names << fromUtf8(each.lid);
    names.removeDuplicates();
    return names;
}

/// A usual jar fills the fields that are still empty.
void offerSizes(SmallForm& form, QLineEdit* name, QLineEdit* net) {
    auto* size = form.choice(goodsWord("A usual size"), "size");
    size->addItem(goodsWord("none of these"), QString());
    for (const PublishedJarSize& each : publishedJarSizes())
        if (each.vessel == "jar" || each.vessel == "jug")
            size->addItem(fromUtf8(each.label), fromUtf8(each.id));
    QObject::connect(size, &QComboBox::activated, &form, [size, name, net] {
        const auto* jar = findJarSize(size->currentData().toString().toStdString());
        if (!jar) return;
        const QString portion = shownPortion(jar->netG).text();
        net->setText(portion);
        if (name->text().trimmed().isEmpty()) name->setText(goodsWord("%1 jar").arg(portion));
    });
}

}  // namespace

bool askToAddGoods(QWidget* parent, Session& session, Day on) {
    SmallForm form(parent, session, goodsWord("A new kind of goods"));
    form.scrollFields();
    auto* name = form.line(goodsWord("Name"), "name", goodsWord("454 g jar, skep candle"), 30);
    auto* what = form.choice(goodsWord("What"), "what");
    addChoices<GoodsWhat>(what, QString());
    auto* net = form.line(goodsWord("Honey or wax in one"), "net", goodsWord("454 g"));
    offerSizes(form, name, net);
    auto* brim = form.line(goodsWord("Its glass holds, ml to the brim"), "brim",
                           goodsWord("343; may stay empty"));
    auto* empty =
        form.line(goodsWord("Glass and lid weigh"), "empty", goodsWord("210 g; may stay empty"));
    auto* lid = form.line(goodsWord("Which lid fits"), "lid", goodsWord("63 mm; may stay empty"));
    auto* price = form.line(goodsWord("Price of one"), "price", goodsWord("may stay empty"));
    auto* note = mayStayEmpty(form, goodsWord("Note"), "note");
    form.fitWith(what, [&] {
        const auto kind = chosen<GoodsWhat>(what);
        const bool filled = kind == GoodsWhat::Jar || kind == GoodsWhat::Other;
        for (QLineEdit* each : {brim, empty, lid}) form.showField(each, filled);
    });
    form.keepDraft(QStringLiteral("add-goods"));
    form.beginIn(name);
    form.onAccept([&] {
        AddGoods deed;
        deed.on = on;
        const auto called = Name::of(typedWords(name));
        if (!called) {
            session.tell(goodsWord("Write what it is called, \"454 g jar\"."), true);
            name->setFocus();
            return false;
        }
        deed.kind = *called;
        deed.what = chosen<GoodsWhat>(what);
        if (!readField(session, net, deed.net) || !readField(session, brim, deed.brim) ||
            !readField(session, empty, deed.empty) || !readField(session, price, deed.price))
            return false;
        deed.lid = typedWords(lid);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askForPrices(QWidget* parent, Session& session, Day on) {
    const auto kinds = session.read().all<GoodsKind>();
    if (kinds.empty()) {
        session.tell(goodsWord("No kind of goods is written down yet. N writes one down."), true);
        return false;
    }
    SmallForm form(parent, session, goodsWord("Prices from %1").arg(dayText(on)));
    form.scrollFields();
    const QString sign = fromUtf8(currencyOf(session.read()));
    auto* currency = form.line(goodsWord("Sign behind prices"), "currency",
                               goodsWord("€, £, $; may stay empty"));
    currency->setText(sign);
    std::vector<QLineEdit*> fields;
    for (const GoodsKind& kind : kinds) {
        fields.push_back(
            form.line(fromUtf8(kind.name.text()),
                      QStringLiteral("price_%1").arg(kind.id.number).toLatin1().constData(),
                      goodsWord("no price yet")));
        if (kind.price) fields.back()->setText(priceTyped(*kind.price));
    }
    form.say(goodsWord("What was sold before keeps its price."));
    form.keepDraft(QStringLiteral("set-prices"));
    form.beginIn(fields.front());
    form.onAccept([&] {
        SetPrices deed;
        deed.on = on;
        for (std::size_t i = 0; i < kinds.size(); ++i) {
            std::optional<Money> price;
            if (!readField(session, fields[i], price)) return false;
            if (!price || price == kinds[i].price) continue;
            deed.prices += (deed.prices.empty() ? "#" : ", #") +
                           std::to_string(kinds[i].id.number) + " " +
                           priceTyped(*price).toStdString();
        }
        if (typedWords(currency) != sign.toStdString()) deed.currency = typedWords(currency);
        if (deed.prices.empty() && deed.currency.empty()) {
            session.tell(goodsWord("No price was changed."), true);
            return false;
        }
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToBuyPacking(QWidget* parent, Session& session, Day on) {
    const Read& file = session.read();
    SmallForm form(parent, session, goodsWord("Jars and lids bought, %1").arg(dayText(on)));
    QStringList there;
    for (const PackingShelf& each : packingShelf(file, on)) there << packingText(each);
    form.say(there.isEmpty() ? goodsWord("None are written down yet.")
                             : there.join(QLatin1Char('\n')));
    auto* what = form.choice(goodsWord("What"), "what");
    for (const GoodsKind& kind : file.all<GoodsKind>())
        if (isFilled(kind))
            what->addItem(goodsWord("empty %1").arg(fromUtf8(kind.name.text())),
                          static_cast<qlonglong>(kind.id.number));
    const int firstLid = what->count();
    for (const QString& lid : lidNames(file, on)) what->addItem(goodsWord("lids %1").arg(lid), -1);
    what->addItem(goodsWord("other lids"), -2);
    auto* other = form.line(goodsWord("Which lids"), "lid", goodsWord("63 mm"));
    auto* bought = form.line(goodsWord("How many"), "bought", goodsWord("200"));
    auto* from = mayStayEmpty(form, goodsWord("Supplier"), "supplier");
    auto* note = mayStayEmpty(form, goodsWord("Note"), "note");
    form.fitWith(what, [&] { form.showField(other, what->currentData().toInt() == -2); });
    const QStringList lids = lidNames(file, on);
    form.keepDraft(QStringLiteral("buy-packing"));
    form.beginIn(what);
    form.onAccept([&] {
        BuyPacking deed;
        deed.on = on;
        deed.kind = chosenId<GoodsKind>(what);
        const int number = what->currentData().toInt();
        if (number == -1) deed.lid = lids[what->currentIndex() - firstLid].toStdString();
        if (number == -2) deed.lid = typedWords(other);
        std::optional<Count> many;
        if (!readField(session, bought, many)) return false;
        if (!many) {
            session.tell(goodsWord("Write how many came."), true);
            bought->setFocus();
            return false;
        }
        deed.bought = *many;
        deed.supplier = typedWords(from);
        deed.note = typedWords(note);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

}  // namespace combwright
