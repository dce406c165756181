#include "core/places/questions/vessel_questions.h"

#include <QCoreApplication>
#include <QLocale>
#include <algorithm>
#include <cmath>

#include "core/places/honey/vessel.h"
#include "core/storage/queries/constants.h"
#include "core/words/figures.h"
#include "core/words/words.h"

namespace combwright {
namespace {

QString askVessel(const char* text) { return QCoreApplication::translate("questions", text); }

QString waterAsked(double percent) {
    return QLocale().toString(percent, 'f', 1) + QStringLiteral(" %");
}

class VesselQuestions {
  public:
    explicit VesselQuestions(const Read& file) : m_file(file) {}

    void about(const RowChange& row) {
        aboutRow<WaterReading>(row, &VesselQuestions::aboutReading);
        aboutRow<HoneyStep>(row, &VesselQuestions::aboutStep);
        aboutRow<HoneyLeft>(row, &VesselQuestions::aboutLeft);
        aboutRow<Lot>(row, &VesselQuestions::aboutLot);
    }

    std::vector<Question> list;

  private:
    template <class Record>
    void aboutRow(const RowChange& row, void (VesselQuestions::*question)(const Record&)) {
        if (row.table != Record::table) return;
        if (const auto record = m_file.find(Id<Record>{row.id})) (this->*question)(*record);
    }

    template <class Record>
    QString nameOfIts(const Record& record) const {
        return fromUtf8(nameOf(m_file, vesselOf(record)));
    }

    void aboutReading(const WaterReading& reading) {
        const QString name = nameOfIts(reading);
        const auto read = waterAsRead(shownBy(reading));
        if (read && (*read < 13.0 || *read > 21.0))
            list.push_back({Asked::WaterUnusual,
                            askVessel("%1 with %2 of water: honey has 13 to 21. Read the scale "
                                      "again; was it the Brix one?")
                                .arg(name, waterAsked(*read))});
        if (read && awaitsCorrection(reading)) aboutWarmth(reading, name, *read);
        if (read && !reading.temperature && !reading.compensates.has_value())
            list.push_back({Asked::WarmthNotSaid,
                            askVessel("%1: how warm was the sample, or does the instrument correct "
                                      "for that itself? At another warmth than 20 °C it reads "
                                      "wrong, about 0.1 points a degree.")
                                .arg(name)});
        if (reading.calibrated && *reading.calibrated + days(calibrationGoodDays) < reading.on)
            list.push_back({Asked::CalibratedLongAgo,
                            askVessel("%1: the instrument was last checked %2. Check it before you "
                                      "go by it.")
                                .arg(name, dayText(*reading.calibrated))});
    }

    void aboutWarmth(const WaterReading& reading, const QString& name, double read) {
        const auto at20 = waterAtTwenty(shownBy(reading));
        const QString warm = shownTemperature(reading.temperature->celsius()).text();
        if (!at20) {
            list.push_back({Asked::NotCorrected,
                            askVessel("%1: read at %2 and not corrected; corrected it is beyond "
                                      "the published table. Read it again nearer to 20 °C.")
                                .arg(name, warm)});
            return;
        }
        if (*at20 > read)
            list.push_back({Asked::ReadsTooDry,
                            askVessel("%1 reads TOO DRY: the sample was %2 and nothing was "
                                      "corrected. There is about %3 of water in it, not %4. Take "
                                      "the correction, or read again at 20 °C, before it is "
                                      "filled.")
                                .arg(name, warm, waterAsked(*at20), waterAsked(read))});
        else
            list.push_back({Asked::NotCorrected,
                            askVessel("%1: read at %2 and not corrected. At 20 °C that would be "
                                      "%3, not %4. It stays as read until you take the correction.")
                                .arg(name, warm, waterAsked(*at20), waterAsked(read))});
    }

    void aboutStep(const HoneyStep& step) {
        const VesselView view = vesselView(m_file, vesselOf(step), step.on);
        if (!view.heat.damage || view.heat.heat == HeatClass::Gentle) return;
        list.push_back(
            {Asked::WarmedMuch,
             (view.heat.heat == HeatClass::Harsh
                  ? askVessel(
                        "%1: so much warmth is harsh, %2 to %3 mg/kg of HMF in all and %4 % of "
                        "the invertase left. Is the time a slip?")
                  : askVessel(
                        "%1: so much warmth is noticeable, %2 to %3 mg/kg of HMF in all and %4 "
                        "% of the invertase left."))
                 .arg(fromUtf8(view.name), QLocale().toString(view.heat.damage->hmfLow, 'f', 1),
                      QLocale().toString(view.heat.damage->hmfHigh, 'f', 1),
                      QLocale().toString(view.heat.damage->invertaseLeftShare * 100, 'f', 0))});
    }

    /// A little stays on spoon and wall; more than the keeper's share is asked about.
    void aboutLeft(const HoneyLeft& left) {
        const VesselLedger ledger = vesselLedger(m_file, vesselOf(left), left.on);
        if (!ledger.in || ledger.entries.empty()) return;
        std::optional<Mass> gone;
        for (const VesselEntry& entry : ledger.entries)
            if (entry.event == VesselEvent::Weighed && entry.on == left.on && entry.change)
                gone = -*entry.change;
        const double share = constantOr(m_file, "unaccounted_share", {}, left.on, 0.02);
        const double allowed = static_cast<double>(ledger.in->grams()) * share;
        if (!gone || std::abs(static_cast<double>(gone->grams())) <= allowed) return;
        const QString mass = massText(std::abs(static_cast<double>(gone->grams())), How::Weighed);
        list.push_back(
            {Asked::HoneyMissing,
             (*gone > Mass() ? askVessel("%1: %2 less than was written down. Was some drawn and "
                                         "not written?")
                             : askVessel("%1: %2 more than was written down. Was some put back, or "
                                         "a weight a slip?"))
                 .arg(nameOfIts(left), mass)});
    }

    void aboutLot(const Lot& lot) {
        const Vessel vessel{std::nullopt, lot.id};
        const auto water = waterInUse(m_file, vessel, lot.on);
        if (water && water->has(WaterDoubt::WetterThanShown))
            list.push_back({Asked::BlendWetter,
                            askVessel("%1: cold honey that nobody corrected is in it. It shows %2, "
                                      "and has rather %3. Read the blend at 20 °C before it is "
                                      "filled.")
                                .arg(fromUtf8(lot.name.text()), waterAsked(water->percent),
                                     waterAsked(water->wettestPercent()))});
    }

    const Read& m_file;
};

}  // namespace

std::vector<Question> vesselQuestions(const Read& file, const RowChange& row) {
    VesselQuestions questions(file);
    questions.about(row);
    return std::move(questions.list);
}

}  // namespace combwright
