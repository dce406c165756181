#include "core/places/questions/candle_questions.h"

#include <QCoreApplication>
#include <algorithm>

#include "core/places/wax_bench/mould_wax.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/wax_ledger.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askCandle(const char* text) { return QCoreApplication::translate("questions", text); }

double wickMm(const Length& length) { return static_cast<double>(length.count()) / 10.0; }

class CandleQuestions {
  public:
    explicit CandleQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        if (row.table == Mould::table)
            if (const auto mould = m_file.find(Id<Mould>{row.id})) aboutMould(*mould);
        // Once, when it is poured; its later steps say nothing new of it.
        if (row.table == Pour::table && row.kind == ChangeKind::Added)
            if (const auto pour = m_file.find(Id<Pour>{row.id})) aboutPour(*pour);
    }

    std::vector<Question> list;

  private:
    void put(Asked asked, const QString& says) { list.push_back({asked, says}); }

    void aboutMould(const Mould& mould) {
        if (mould.gone) return;
        const QString name = fromUtf8(mould.name.text());
        if (!neededFor(mould, 1))
            put(Asked::MouldUnknown,
                askCandle("%1: neither its volume nor its size is written down, so nobody knows "
                          "what a candle takes, and no plan can reckon with it. Weigh a cavity "
                          "full of water: as many grams, as many millilitres.")
                    .arg(name));
        if (volumeAgainstSize(mould) == VolumeAgainstSize::Differs)
            put(Asked::MouldSizesDiffer,
                askCandle("%1: %2 ml was said, and its size gives %3 ml. The volume said is taken; "
                          "is one of them a slip?")
                    .arg(name, QString::number(mould.volume->value(), 'f', 0),
                         QString::number(*volumeBySize(mould), 'f', 0)));
    }

    void aboutPour(const Pour& pour) {
        const auto mould = m_file.find(pour.mould);
        if (!mould) return;
        const QString name = fromUtf8(mould->name.text());
        if (mould->kind && *mould->kind != pour.kind)
            put(Asked::OtherCandle,
                askCandle(
                    "%1 makes %2, and %3 was poured in it. Is the candle or the mould a slip?")
                    .arg(name, fromUtf8(nameOf(m_file, GoodsKind::table, mould->kind->number)),
                         fromUtf8(nameOf(m_file, GoodsKind::table, pour.kind.number))));
        aboutWick(pour, *mould, name);
    }

    void aboutWick(const Pour& pour, const Mould& mould, const QString& name) {
        const auto stocked = wickStocked(m_file);
        const QString wick = fromUtf8(pour.wick);
        // Where no wick is ever written down, none is missed.
        const bool written = std::find(stocked.begin(), stocked.end(), pour.wick) != stocked.end();
        if (!pour.wick.empty() && !stocked.empty() && !written)
            put(Asked::WickNotBought,
                askCandle("%1: wick %2, which nobody bought. Is the size a slip, or was it not "
                          "written down?")
                    .arg(name, wick));
        if (!pour.wickUsed) return;
        const double eachMm = wickMm(*pour.wickUsed) / static_cast<double>(piecesOf(pour));
        const double mostMm =
            mould.wickLength ? wickMm(*mould.wickLength) * wickOverMould : muchWickMm;
        if (eachMm > mostMm) {
            put(Asked::MuchWick, askCandle("%1: %2 of wick for each candle. Is the length a slip?")
                                     .arg(name, shownLength(eachMm).text()));
            return;
        }
        const auto left = written ? wickLeft(m_file, pour.wick, pour.on) : std::nullopt;
        if (left && *left < Length())
            put(Asked::MuchWick,
                askCandle("Of wick %1 more was used than was bought or measured. Measure what is "
                          "on the spool.")
                    .arg(wick));
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> candleQuestions(const Read& file, const RowChange& row) {
    CandleQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
