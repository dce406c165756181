#include "ui/honey_room/fair_forms.h"

#include <QCoreApplication>
#include <algorithm>
#include <memory>

#include "core/actions/honey/fair_counted.h"
#include "core/actions/honey/fairs.h"
#include "core/places/pages/goods/goods_ahead_words.h"
#include "core/words/words.h"
#include "ui/honey_room/goods_fields.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString fairWord(const char* text) { return QCoreApplication::translate("fair_forms", text); }

class PackForm {
  public:
    PackForm(QWidget* parent, Session& session, const std::vector<GoodsKind>& kinds, Day on)
        : m_session(session),
          m_kinds(kinds),
          m_on(on),
          m_form(parent, session, fairWord("Pack for a fair, %1").arg(dayText(on))) {
        m_form.scrollFields();
        m_name = m_form.line(fairWord("Fair"), "fair_name", fairWord("Advent market"), 30);
        m_day = m_form.line(fairWord("Its day"), "fair_day", fairWord("left empty: today"));
        m_place = mayStayEmpty(m_form, fairWord("Place"), "place");
        m_change = m_form.line(fairWord("Change in the cash box"), "change", fairWord("100"));
        m_before = m_form.say(QStringLiteral(" "));
        m_before->setObjectName(QStringLiteral("before"));
        m_lines = std::make_unique<KindLines>(m_form, kinds, "packed", fairWord("how many"), true);
        m_reason = m_form.line(fairWord("On what grounds"), "reason_held",
                               fairWord("only if it is held back"));
        m_note = mayStayEmpty(m_form, fairWord("Note"), "note");
        m_caution = m_form.caution(QStringLiteral(" "));
        m_caution->setObjectName(QStringLiteral("caution"));
    }

    /// One that is packed already gets more.
    void begin(const Fair& fair) {
        m_name->setText(fromUtf8(fair.name.text()));
        m_day->setText(QString::fromStdString(isoText(fair.on)));
        m_place->setText(fromUtf8(fair.place));
    }

    std::optional<Id<Fair>> ask() {
        const auto see = [this] { look(); };
        for (QLineEdit* each : {m_name, m_day})
            QObject::connect(each, &QLineEdit::textChanged, &m_form, see);
        m_lines->whenTyped(&m_form, see);
        look();
        m_form.keepDraft(QStringLiteral("pack-fair"));
        m_form.onAccept([this] { return keep(); });
        if (m_form.exec() != QDialog::Accepted) return std::nullopt;
        return m_kept;
    }

  private:
    void look() {
        std::optional<Day> day;
        readsAs(m_day->text(), m_session.clock().today(), true, day);
        const FairOffers offers =
            fairOffers(m_session.read(), typedWords(m_name), day.value_or(m_on));
        for (std::size_t i = 0; i < m_kinds.size(); ++i) {
            QString text = fairWord("none on the shelf");
            for (const FairOffer& each : offers.kinds)
                if (each.shelf.kind.id == m_kinds[i].id) text = fairOfferText(each);
            m_lines->note(m_form, i, text);
        }
        QStringList said;
        if (offers.open)
            said << fairWord("It is packed already; what is typed goes into the box too.");
        if (offers.before)
            said << fairWord("Last time: %1, %2.")
                        .arg(fromUtf8(offers.before->name.text()), dayText(offers.before->on));
        QStringList ranOut;
        for (const FairOffer& each : offers.kinds)
            if (each.ranOutBefore) ranOut << fromUtf8(each.shelf.kind.name.text());
        if (!ranOut.isEmpty())
            said << fairWord("Ran out then, so take more: %1.")
                        .arg(ranOut.join(QStringLiteral(", ")));
        m_form.sayAgain(m_before, said.join(QLatin1Char(' ')));
        m_form.sayAgain(m_caution, cautions(offers).join(QLatin1Char('\n')));
    }

    QStringList cautions(const FairOffers& offers) const {
        QStringList careful;
        const std::string line = m_lines->inLine();
        if (line.empty()) return careful;
        const auto meant = readGoods(m_session.read(), line, "goods");
        if (!meant) return {sentence(meant.error())};
        for (const GoodsMeant& each : *meant) {
            const auto offer = std::find_if(
                offers.kinds.begin(), offers.kinds.end(),
                [&](const FairOffer& one) { return one.shelf.kind.id == each.kind.id; });
            const std::int64_t there = offer == offers.kinds.end() ? 0 : offer->shelf.left;
            if (each.count > there)
                careful << fairWord("%1: only %2 stand on the shelf.")
                               .arg(fromUtf8(each.kind.name.text()))
                               .arg(there);
        }
        return careful;
    }

    bool keep() {
        PackFair deed;
        deed.on = m_on;
        const auto name = Name::of(typedWords(m_name));
        if (!name) {
            m_session.tell(fairWord("Write what the fair is called."), true);
            m_name->setFocus();
            return false;
        }
        deed.fair = *name;
        if (!readDayField(m_session, m_day, true, deed.fairDay)) return false;
        deed.place = typedWords(m_place);
        if (!readField(m_session, m_change, deed.change)) return false;
        deed.goods = m_lines->inLine();
        deed.reason = typedWords(m_reason);
        deed.note = typedWords(m_note);
        m_kept = m_session.run(deed);
        return m_kept.has_value();
    }

    Session& m_session;
    std::vector<GoodsKind> m_kinds;
    Day m_on;
    SmallForm m_form;
    std::unique_ptr<KindLines> m_lines;
    QLineEdit* m_name;
    QLineEdit* m_day;
    QLineEdit* m_place;
    QLineEdit* m_change;
    QLineEdit* m_reason;
    QLineEdit* m_note;
    QLabel* m_before;
    QLabel* m_caution;
    std::optional<Id<Fair>> m_kept;
};

/// One line a kind, and behind it at once what that makes.
class HomeForm {
  public:
    HomeForm(QWidget* parent, Session& session, const FairSheet& sheet, Day on)
        : m_session(session),
          m_fair(sheet.fair),
          m_on(on),
          m_form(parent, session, fairWord("Home from %1").arg(fromUtf8(sheet.fair.name.text()))) {
        m_form.scrollFields();
        m_form.say(
            fairWord("Only what came home is typed, 0 where none did; broken and given away "
                     "behind it. The rest was sold."));
        for (std::size_t i = 0; i < sheet.rows.size(); ++i) addRow(sheet.rows[i], i);
        m_cash = m_form.line(fairWord("In the cash box at night"), "cash",
                             fairWord("counted; may stay empty"));
        m_note = mayStayEmpty(m_form, fairWord("Wished for, and what to know"), "note");
        m_sum = m_form.say(QStringLiteral(" "));
        m_sum->setObjectName(QStringLiteral("sum"));
    }

    bool ask() {
        const auto see = [this] { look(); };
        for (const Row& row : m_rows)
            QObject::connect(row.field, &QLineEdit::textChanged, &m_form, see);
        QObject::connect(m_cash, &QLineEdit::textChanged, &m_form, see);
        look();
        m_form.keepDraft(QStringLiteral("fair-home %1").arg(m_fair.id.number));
        m_form.onAccept([this] { return keep(); });
        return m_form.exec() == QDialog::Accepted;
    }

  private:
    struct Row {
        QLineEdit* field;
        QLabel* sold;
    };

    void addRow(const FairRow& row, std::size_t at) {
        QString label = fairWord("%1, %2 packed")
                            .arg(fromUtf8(row.kind.name.text()))
                            .arg(row.line.packed.value());
        if (!row.code.empty()) label += QStringLiteral(", ") + fromUtf8(row.code);
        auto* field = m_form.line(label, QStringLiteral("home_%1").arg(at).toLatin1().constData(),
                                  fairWord("9, 2 broken, 1 given"), 24);
        auto* sold = m_form.say(QString());
        sold->setObjectName(QStringLiteral("sold_%1").arg(at));
        m_rows.push_back({field, sold});
    }

    std::vector<std::string> typed() const {
        std::vector<std::string> home;
        for (const Row& row : m_rows) home.push_back(typedWords(row.field));
        return home;
    }

    void look() {
        std::optional<Money> cash;
        readsAs(m_cash->text(), cash);
        const FairCounted counted = fairCounted(m_session.read(), m_fair, typed(), cash);
        for (std::size_t i = 0; i < m_rows.size() && i < counted.sheet.rows.size(); ++i) {
            const auto& refused = counted.refused[i];
            const FairRow& row = counted.sheet.rows[i];
            QPalette palette = m_rows[i].sold->palette();
            palette.setColor(QPalette::WindowText,
                             m_session.look().tone(refused ? Tone::Warn : Tone::Ink));
            m_rows[i].sold->setPalette(palette);
            m_form.sayAgain(m_rows[i].sold, refused ? sentence(*refused)
                                            : row.sold
                                                ? fairRowSoldText(row, counted.sheet.currency)
                                                : QString());
        }
        m_form.sayAgain(m_sum, fairSumText(counted.sheet).join(QLatin1Char('\n')));
    }

    bool keep() {
        FairHome deed;
        deed.on = m_on;
        deed.fair = m_fair.id;
        for (const Row& row : m_rows) {
            const std::string home = typedWords(row.field);
            if (home.empty()) {
                m_session.tell(fairWord("%1: how many came home? 0 where none did.")
                                   .arg(row.field->accessibleName()),
                               true);
                row.field->setFocus();
                return false;
            }
            deed.home += (deed.home.empty() ? "" : "; ") + home;
        }
        if (!readField(m_session, m_cash, deed.cash)) return false;
        deed.note = typedWords(m_note);
        return m_session.run(deed).has_value();
    }

    Session& m_session;
    Fair m_fair;
    Day m_on;
    SmallForm m_form;
    std::vector<Row> m_rows;
    QLineEdit* m_cash;
    QLineEdit* m_note;
    QLabel* m_sum;
};

}  // namespace

std::optional<Id<Fair>> askToPackFair(QWidget* parent, Session& session,
                                      const std::optional<Id<Fair>>& fair, Day on) {
    std::vector<GoodsKind> kinds;
    for (const FairOffer& each : fairOffers(session.read(), {}, on).kinds)
        kinds.push_back(each.shelf.kind);
    if (kinds.empty()) {
        session.tell(
            fairWord("Nothing stands on the shelf to pack. Fill jars or count candles first."),
            true);
        return std::nullopt;
    }
    PackForm form(parent, session, kinds, on);
    const auto open = session.read().find(fair);
    if (open && !open->closed && open->on >= on) form.begin(*open);
    return form.ask();
}

bool askForFairHome(QWidget* parent, Session& session, Id<Fair> id, Day on) {
    const auto fair = session.read().find(id);
    if (!fair) return false;
    if (fair->closed) {
        session.tell(fairWord("%1 is over and counted. P packs for the next one.")
                         .arg(fromUtf8(fair->name.text())),
                     true);
        return false;
    }
    const FairSheet sheet = fairSheet(session.read(), *fair);
    if (sheet.rows.empty()) {
        session.tell(fairWord("Nothing is packed for it yet. P packs."), true);
        return false;
    }
    return HomeForm(parent, session, sheet, on).ask();
}

}  // namespace combwright
