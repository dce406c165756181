#include "core/places/questions/hive_goods_questions.h"

#include <QCoreApplication>
#include <QStringList>
#include <algorithm>

#include "core/places/storeroom/comb_projects.h"
#include "core/storage/queries/goods_shelf.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askGoods(const char* text) { return QCoreApplication::translate("questions", text); }

class HiveGoodsQuestions {
  public:
    explicit HiveGoodsQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        aboutRow<HiveProject>(row, &HiveGoodsQuestions::aboutProject);
        aboutRow<PropolisMove>(row, &HiveGoodsQuestions::aboutPropolis);
        aboutRow<GoingOut>(row, &HiveGoodsQuestions::aboutOut);
        aboutRow<FairLine>(row, &HiveGoodsQuestions::aboutPacked);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (HiveGoodsQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    void aboutProject(const HiveProject& project) {
        if (!project.putOn || project.starter || project.off || project.what == ProjectWhat::Other)
            return;
        put(Asked::NoStarter,
            askGoods("%1: put on without a starter by what is written down. Bees build bare glass "
                     "across, or not at all. Was the starter not written down?")
                .arg(fromUtf8(project.name.text())));
    }

    void aboutPropolis(const PropolisMove& move) {
        const auto mass = move.mass ? move.mass->middle() : std::nullopt;
        const bool came = move.went == PropolisWent::Scraped || move.went == PropolisWent::Trapped;
        if (!mass || !came) return;
        const auto colonies =
            move.hive ? std::size_t{1}
                      : m_file.where<Colony>({isUnknown("ended"), isUpTo("since", move.on)}).size();
        const double most =
            std::max(muchPropolisG, mostPropolisOfColonyG * static_cast<double>(colonies));
        if (*mass <= most) return;
        put(Asked::MuchScraped,
            askGoods("%1 of propolis at once; a colony gives some 50 to 300 g in a year. Are these "
                     "grams, and not kilograms?")
                .arg(massText(*mass, How::Weighed)));
    }

    void aboutOut(const GoingOut& out) {
        const bool toPeople = out.how == OutHow::Sold || out.how == OutHow::Given;
        if (toPeople && out.kind && !out.bottling) aboutComb(*out.kind, out.on);
    }

    void aboutPacked(const FairLine& line) {
        const auto fair = m_file.find(line.fair);
        if (fair && !line.bottling && !line.home) aboutComb(line.kind, fair->on);
    }

    /// Nobody writes down of which set a comb jar was; where fewer are left than hung beside a
    /// medicine, some of those went.
    void aboutComb(Id<GoodsKind> id, Day on) {
        const auto kind = m_file.find(id);
        if (!kind) return;
        const auto treated = treatedComb(m_file, id, on);
        if (treated.empty()) return;
        std::int64_t jars = 0;
        QStringList sets;
        for (const CombProject& each : treated) {
            jars += each.project.good ? each.project.good->value() : 0;
            sets << fromUtf8(each.project.name.text());
        }
        const std::int64_t gone =
            jars - std::max<std::int64_t>(goodsShelf(m_file, *kind, on).left, 0);
        if (gone <= 0) return;
        put(Asked::TreatedComb,
            askGoods("%1: at least %2 of those that went are of a set that was treated while on "
                     "(%3). They are not for people unless the label says so: leave them out, or "
                     "call them back.")
                .arg(fromUtf8(kind->name.text()), QString::number(gone),
                     sets.join(QStringLiteral(", "))));
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> hiveGoodsQuestions(const Read& file, const RowChange& row) {
    HiveGoodsQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
