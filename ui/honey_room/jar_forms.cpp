#include "ui/honey_room/jar_forms.h"

#include <QCoreApplication>
#include <algorithm>
#include <memory>

#include "core/actions/honey/bottlings.h"
#include "core/actions/honey/goods.h"
#include "core/actions/honey/weighed_jars.h"
#include "core/places/goods/goods.h"
#include "core/places/pages/goods/goods_ahead_words.h"
#include "core/places/pages/goods/goods_pages.h"
#include "core/storage/queries/labels.h"
#include "core/words/words.h"
#include "ui/honey_room/goods_fields.h"
#include "ui/honey_room/goods_forms.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString jarWord(const char* text) { return QCoreApplication::translate("jar_forms", text); }

std::optional<Mass> middleOf(const std::optional<Known<Mass>>& mass) {
    const auto middle = mass ? mass->middle() : std::nullopt;
    return middle ? std::optional(Mass::roundedGrams(*middle)) : std::nullopt;
}

std::vector<GoodsKind> filledKinds(const Read& file) {
    std::vector<GoodsKind> kinds;
    for (const GoodsKind& each : file.all<GoodsKind>())
        if (isFilled(each)) kinds.push_back(each);
    return kinds;
}

/// The fields of a filling; what follows of them is said below while one types.
class FillForm {
  public:
    FillForm(QWidget* parent, Session& session, const std::vector<GoodsKind>& kinds, Day on)
        : m_session(session),
          m_on(on),
          m_form(parent, session, jarWord("Fill jars, %1").arg(dayText(on))) {
        m_form.scrollFields();
        m_from = m_form.choice(jarWord("Out of"), "honey");
        offerHoney(m_from, session.read(), on);
        m_jars =
            m_form.line(jarWord("Jars"), "jars", jarWord("29x454 g, 3x227 g; or each below"), 30);
        m_kinds = std::make_unique<KindLines>(m_form, kinds, "jars", jarWord("how many"));
        m_spoiled = m_form.line(jarWord("Broken while filling"), "spoiled",
                                jarWord("2 454 g; may stay empty"));
        m_lost =
            m_form.line(jarWord("Honey lost"), "lost", jarWord("on tank, sieve and spoon: 120 g"));
        m_drawn = m_form.line(jarWord("Or honey drawn"), "drawn",
                              jarWord("where it was weighed instead"));
        m_weighed = m_form.line(jarWord("Weighed, g"), "weighed",
                                jarWord("456, 455.5, 453 of the first kind"));
        m_code = m_form.line(jarWord("Lot code"), "code", QString());
        m_best = m_form.line(jarWord("Best before"), "best_before", QString());
        m_reason = m_form.line(jarWord("On what grounds"), "reason_held",
                               jarWord("only if it is held back"));
        m_note = mayStayEmpty(m_form, jarWord("Note"), "note");
        m_outlook = m_form.say(QStringLiteral(" "));
        m_outlook->setObjectName(QStringLiteral("outlook"));
        m_caution = m_form.caution(QStringLiteral(" "));
        m_caution->setObjectName(QStringLiteral("caution"));
    }

    bool ask(const std::optional<Vessel>& from) {
        if (from) chooseHoney(m_from, *from);
        const auto see = [this] { look(); };
        QObject::connect(m_from, &QComboBox::currentIndexChanged, &m_form, see);
        for (QLineEdit* each : {m_jars, m_spoiled, m_lost, m_drawn, m_code, m_best})
            QObject::connect(each, &QLineEdit::textChanged, &m_form, see);
        m_kinds->whenTyped(&m_form, see);
        look();
        m_form.keepDraft(QStringLiteral("fill-jars"));
        m_form.beginIn(m_from);
        m_form.onAccept([this] { return keep(); });
        return m_form.exec() == QDialog::Accepted;
    }

  private:
    void look() {
        const Read& file = m_session.read();
        const auto vessel = honeyChosen(m_from);
        m_form.showField(m_reason, vessel && !holdsOn(file, *vessel, m_on).empty());
        QStringList said;
        QStringList careful;
        std::optional<Day> best;
        const bool bestRead = readsAs(m_best->text(), m_session.clock().today(), true, best);
        const auto bestByRule = bestBeforeByRule(file, m_on);
        m_best->setPlaceholderText(bestByRule
                                       ? jarWord("by your months: %1").arg(isoOf(*bestByRule))
                                       : jarWord("2029-12-31; may stay empty"));
        if (!best) best = bestByRule;
        if (vessel) {
            const auto rule = codeByRule(file, *vessel, m_on, best);
            const auto byRule = rule ? *rule : std::optional<std::string>{};
            m_code->setPlaceholderText(byRule ? jarWord("by your rule: %1").arg(fromUtf8(*byRule))
                                              : jarWord("typed, by your own rule"));
            const std::string typed = typedWords(m_code);
            if (bestRead)
                said << onTheJarsText(typed.empty() ? byRule : std::optional(typed), best);
            ahead(*vessel, said, careful);
        }
        careful << jarWord("Knives and glass: a jar with a splinter in it is thrown away whole.");
        m_form.sayAgain(m_outlook, said.join(QLatin1Char('\n')));
        m_form.sayAgain(m_caution, careful.join(QLatin1Char('\n')));
    }

    static QString isoOf(Day day) { return QString::fromStdString(isoText(day)); }

    void ahead(const Vessel& vessel, QStringList& said, QStringList& careful) const {
        const Read& file = m_session.read();
        const std::string line = m_kinds->inLine(m_jars);
        std::vector<GoodsAhead> jars;
        if (!line.empty()) {
            const auto meant = readGoods(file, line, "jars");
            if (!meant) {
                careful << sentence(meant.error());
                return;
            }
            jars = aheadOf(*meant);
        }
        if (const std::string broken = typedWords(m_spoiled); !broken.empty())
            if (const auto meant = readGoods(file, broken, "spoiled"))
                for (const GoodsMeant& each : *meant)
                    for (GoodsAhead& jar : jars)
                        if (jar.kind.id == each.kind.id) jar.spoiled = each.count;
        std::optional<Known<Mass>> drawn;
        std::optional<Known<Mass>> lost;
        readsAs(m_drawn->text(), drawn);
        readsAs(m_lost->text(), lost);
        const FillingAhead then =
            fillingAhead(file, vessel, jars, middleOf(drawn), middleOf(lost), m_on);
        if (!jars.empty()) said = fillingAheadText(then) + said;
        careful << fillingAheadCautions(then, m_on);
    }

    bool keep() {
        const auto vessel = honeyChosen(m_from);
        if (!vessel) {
            m_session.tell(jarWord("Choose the bucket or lot it comes out of."), true);
            return false;
        }
        FillJars deed;
        deed.on = m_on;
        deed.bucket = vessel->bucket;
        deed.lot = vessel->lot;
        deed.jars = m_kinds->inLine(m_jars);
        deed.spoiled = typedWords(m_spoiled);
        deed.weighed = typedWords(m_weighed);
        if (!readField(m_session, m_lost, deed.lost) || !readField(m_session, m_drawn, deed.drawn))
            return false;
        deed.code = typedWords(m_code);
        if (!readDayField(m_session, m_best, true, deed.bestBefore)) return false;
        deed.reason = typedWords(m_reason);
        deed.note = typedWords(m_note);
        return m_session.run(deed).has_value();
    }

    Session& m_session;
    Day m_on;
    SmallForm m_form;
    QComboBox* m_from;
    QLineEdit* m_jars;
    std::unique_ptr<KindLines> m_kinds;
    QLineEdit* m_spoiled;
    QLineEdit* m_lost;
    QLineEdit* m_drawn;
    QLineEdit* m_weighed;
    QLineEdit* m_code;
    QLineEdit* m_best;
    QLineEdit* m_reason;
    QLineEdit* m_note;
    QLabel* m_outlook;
    QLabel* m_caution;
};

/// What the scale said of each kind, as it is typed.
QString judgedAsTyped(const Read& file, const std::vector<BottledJars>& before,
                      const std::string& typed, Day on) {
    if (typed.empty()) return {};
    auto lines = before;
    const auto any = readWeighed(file, typed, lines);
    if (!any) return sentence(any.error());
    const auto text = labelTextInForce(file, on);
    QStringList said;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (lines[i].weighed == before[i].weighed && lines[i].mean == before[i].mean) continue;
        FilledJars jars;
        jars.line = lines[i];
        if (const auto kind = file.find(lines[i].kind)) jars.kind = *kind;
        judgeNet(jars, text ? text->region : std::string());
        const QString judged = netJudgedText(jars);
        said << QStringLiteral("%1: %2").arg(
            fromUtf8(jars.kind.name.text()),
            judged.isEmpty() ? jarWord("what it should hold is not written down") : judged);
    }
    return said.join(QLatin1Char('\n'));
}

/// A line of the count, and what it would keep.
struct CountedLine {
    QLineEdit* field;
    std::optional<Id<GoodsKind>> kind;
    std::optional<Id<Bottling>> filling;
    std::string lid;
    bool empties = false;
};

Result<void> keepCount(Season& season, const CountedLine& line, Count count, Day on,
                       const std::string& reason) {
    if (line.empties) {
        CountPacking deed;
        deed.on = on;
        deed.kind = line.kind;
        deed.lid = line.lid;
        deed.counted = count;
        deed.note = reason;
        auto done = perform(season, deed, StepNote{});
        return done ? Result<void>{} : Result<void>(done.error());
    }
    CountGoods deed;
    deed.on = on;
    deed.kind = *line.kind;
    deed.bottling = line.filling;
    deed.count = count;
    deed.reason = reason;
    auto done = perform(season, deed, StepNote{});
    return done ? Result<void>{} : Result<void>(done.error());
}

class CountForm {
  public:
    CountForm(QWidget* parent, Session& session, Day on)
        : m_session(session),
          m_on(on),
          m_form(parent, session, jarWord("Counted, %1").arg(dayText(on))) {
        m_form.scrollFields();
        m_form.say(
            jarWord("Only what is typed is counted; it stands in place of what the books say."));
        const GoodsStock stock = goodsStock(session.read(), on);
        for (const GoodsShelf& shelf : stock.shelves) addShelf(shelf, stock);
        for (const PackingShelf& packing : stock.packing) addPacking(packing);
        m_reason = mayStayEmpty(m_form, jarWord("Where it differs, why"), "reason");
    }
    bool any() const { return !m_lines.empty(); }

    bool ask() {
        m_form.keepDraft(QStringLiteral("count-shelf"));
        m_form.beginIn(m_lines.front().field);
        m_form.onAccept([this] { return keep(); });
        return m_form.exec() == QDialog::Accepted;
    }

  private:
    void addShelf(const GoodsShelf& shelf, const GoodsStock& stock) {
        const QString name = fromUtf8(shelf.kind.name.text());
        const QString books =
            shelf.written ? jarWord("%1 by the books").arg(shelf.left) : jarWord("not known");
        m_lines.push_back({line(name, QStringLiteral("shelf_%1").arg(shelf.kind.id.number), books),
                           shelf.kind.id,
                           std::nullopt,
                           {},
                           false});
        const auto left = std::count_if(shelf.fillings.begin(), shelf.fillings.end(),
                                        [](const FillingLeft& each) { return each.most > 0; });
        if (left < 2) return;
        for (const FillingLeft& each : shelf.fillings) {
            if (each.most <= 0) continue;
            QString code;
            for (const FillingSheet& sheet : stock.fillings)
                if (sheet.bottling.id == each.bottling) code = fromUtf8(sheet.bottling.code.text());
            m_lines.push_back({line(jarWord("%1 of %2").arg(name, code),
                                    QStringLiteral("shelf_%1_%2")
                                        .arg(shelf.kind.id.number)
                                        .arg(each.bottling.number),
                                    jarWord("%1 by the books").arg(fillingLeftText(each))),
                               shelf.kind.id,
                               each.bottling,
                               {},
                               false});
        }
    }

    void addPacking(const PackingShelf& packing) {
        const QString name = packing.kind
                                 ? jarWord("empty %1").arg(fromUtf8(packing.kind->name.text()))
                                 : jarWord("lids %1").arg(fromUtf8(packing.lid));
        m_lines.push_back({line(name, QStringLiteral("empty_%1").arg(m_lines.size()),
                                jarWord("%1 by the books").arg(packing.left)),
                           packing.kind ? std::optional(packing.kind->id) : std::nullopt,
                           std::nullopt, packing.lid, true});
    }

    QLineEdit* line(const QString& label, const QString& name, const QString& books) {
        return m_form.line(label, name.toLatin1().constData(), books);
    }

    bool keep() {
        std::vector<std::pair<const CountedLine*, Count>> typed;
        for (const CountedLine& each : m_lines) {
            std::optional<Count> count;
            if (!readField(m_session, each.field, count)) return false;
            if (count) typed.emplace_back(&each, *count);
        }
        if (typed.empty()) {
            m_session.tell(jarWord("Nothing was typed, so nothing was counted."), true);
            return false;
        }
        return m_session.together([&](Season& season) -> Result<void> {
            for (const auto& [line, count] : typed)
                if (auto done = keepCount(season, *line, count, m_on, typedWords(m_reason)); !done)
                    return done;
            return {};
        });
    }

    Session& m_session;
    Day m_on;
    SmallForm m_form;
    std::vector<CountedLine> m_lines;
    QLineEdit* m_reason;
};

}  // namespace

bool askToFillJars(QWidget* parent, Session& session, const std::optional<Vessel>& from, Day on) {
    auto kinds = filledKinds(session.read());
    if (kinds.empty()) {
        // Into what comes first; what is filled into it is asked right behind.
        if (!askToAddGoods(parent, session, on)) return false;
        kinds = filledKinds(session.read());
    }
    if (kinds.empty()) {
        session.tell(jarWord("No kind of jar is written down yet. N writes one down."), true);
        return false;
    }
    if (honeyStore(session.read(), on).standing.empty()) {
        session.tell(jarWord("No bucket or lot has honey in it."), true);
        return false;
    }
    return FillForm(parent, session, kinds, on).ask(from);
}

bool askToWeighJars(QWidget* parent, Session& session, const std::optional<Id<Bottling>>& filling,
                    Day on) {
    if (fillings(session.read(), on).empty()) {
        session.tell(jarWord("No jar was filled yet."), true);
        return false;
    }
    SmallForm form(parent, session, jarWord("Jars on the scale, %1").arg(dayText(on)));
    auto* of = form.choice(jarWord("Filling"), "filling");
    offerFillings(of, session.read(), on, QString());
    choose(of, filling);
    auto* weighed =
        form.line(jarWord("Honey alone, g"), "weighed", jarWord("456, 455.5; 227 g: 229, 228"), 30);
    form.say(jarWord(
        "Jar by jar, without glass and lid. A label promises what is in it: the mean must reach "
        "it, and a single jar may lack a little."));
    auto* outlook = form.say(QStringLiteral(" "));
    outlook->setObjectName(QStringLiteral("outlook"));
    const auto look = [&] {
        const auto bottling = chosenId<Bottling>(of);
        form.sayAgain(
            outlook,
            bottling ? judgedAsTyped(session.read(),
                                     session.read().where<BottledJars>({is("bottling", *bottling)}),
                                     typedWords(weighed), on)
                     : QString());
    };
    QObject::connect(of, &QComboBox::currentIndexChanged, &form, look);
    QObject::connect(weighed, &QLineEdit::textChanged, &form, look);
    look();
    form.keepDraft(QStringLiteral("weigh-jars"));
    form.beginIn(weighed);
    form.onAccept([&] {
        WeighJars deed;
        deed.on = on;
        const auto bottling = chosenId<Bottling>(of);
        if (!bottling) return false;
        deed.bottling = *bottling;
        deed.weighed = typedWords(weighed);
        return session.run(deed).has_value();
    });
    return form.exec() == QDialog::Accepted;
}

bool askToCountShelf(QWidget* parent, Session& session, Day on) {
    CountForm form(parent, session, on);
    if (form.any()) return form.ask();
    session.tell(jarWord("Nothing to count is written down yet. N writes a kind down."), true);
    return false;
}

}  // namespace combwright
