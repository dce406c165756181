// What the pad asks and reads back, in words.
#include <QCoreApplication>

#include "core/words/figures.h"
#include "core/words/pad_line.h"
#include "core/words/room_line.h"

namespace combwright {
namespace {

QString askTr(const char* text) { return QCoreApplication::translate("pad_line", text); }

/// "9 M14, 10 M12, 0 no peg": what may be typed, and what it is.
QString amongText(const PadAsk& ask) {
    QStringList parts;
    for (const PadBox& each : ask.among)
        parts << QStringLiteral("%1 %2").arg(each.peg).arg(each.mark);
    return parts.join(QStringLiteral("  "));
}

}  // namespace

QString notSpunText(const PadBox& box) {
    return box.unspun == 1
               ? askTr("1 frame of %1 is not spun").arg(calledText(box))
               : askTr("%1 frames of %2 are not spun").arg(box.unspun).arg(calledText(box));
}

QString padMassText(const Known<Mass>& mass) {
    if (!mass.value) return askTr("unknown");
    return ShownFigure{massTold(*mass.value), massUnit()}.text();
}

QString calledText(const PadBox& box) {
    if (box.peg == 0 || !box.known) return box.mark;
    return askTr("%1 on peg %2").arg(box.mark).arg(box.peg);
}

QString askedText(const PadAsk& ask) {
    switch (ask.what) {
        case PadAsk::What::Nothing:
            return {};
        case PadAsk::What::Full:
            if (ask.box.peg == 0) return askTr("Box without a peg, %1").arg(massUnit());
            if (ask.box.stray)
                return askTr("Peg %1, which no box carries: full, %2")
                    .arg(ask.box.peg)
                    .arg(massUnit());
            return askTr("%1 full, %2").arg(calledText(ask.box), massUnit());
        case PadAsk::What::Wet:
            return askTr("%1 wet, %2").arg(calledText(ask.box), massUnit());
        case PadAsk::What::StillWet:
            return askTr("%1: %2 wet, when it weighed %3 full?")
                .arg(calledText(ask.box), padMassText(*ask.mass),
                     padMassText({ask.box.gross, std::nullopt, How::Weighed}));
        case PadAsk::What::NotSpun:
            return askTr("%1: is %2 its wet weight?")
                .arg(notSpunText(ask.box), padMassText(*ask.mass));
        case PadAsk::What::StillFull:
            return askTr("%1: %2 full, no more than an empty box?")
                .arg(calledText(ask.box), padMassText(*ask.mass));
        case PadAsk::What::Stray:
            return askTr("No box carries peg %1: %2 full, a box nobody knows?")
                .arg(ask.box.peg)
                .arg(padMassText(*ask.mass));
        case PadAsk::What::OverBrim:
            return askTr("Bucket %1: %2, when a bucket holds %3?")
                .arg(ask.bucket)
                .arg(padMassText(*ask.mass), padMassText({ask.most, std::nullopt, How::Weighed}));
        case PadAsk::What::Frames:
            return askTr("%1: how many frames?").arg(calledText(ask.box));
        case PadAsk::What::BucketMass:
            return askTr("Bucket %1, %2").arg(ask.bucket).arg(massUnit());
        case PadAsk::What::BucketWater:
            return askTr("Bucket %1, water %").arg(ask.bucket);
        case PadAsk::What::Cappings:
            return askTr("Cappings tub, %1").arg(massUnit());
        case PadAsk::What::Scrapings:
            return askTr("Scrapings, %1").arg(massUnit());
        case PadAsk::What::AsideBox:
        case PadAsk::What::AsideWhy:
        case PadAsk::What::Settle:
        case PadAsk::What::RunEmpty:
        case PadAsk::What::Close:
            return ask.about;
    }
    return {};
}

QString leftText(const PadAsk& ask) {
    // Of what is put as "1 frame of M05: what became of it?" the subject stands first.
    const QString subject = ask.about.section(QLatin1Char(':'), 0, 0);
    switch (ask.what) {
        case PadAsk::What::Nothing:
            return askTr("Nothing was asked.");
        case PadAsk::What::Full:
            return askTr("%1: not weighed.").arg(calledText(ask.box));
        case PadAsk::What::Wet:
            return askTr("%1: wet weight left as it is.").arg(calledText(ask.box));
        case PadAsk::What::StillWet:
        case PadAsk::What::NotSpun:
        case PadAsk::What::StillFull:
        case PadAsk::What::Stray:
            return askTr("%1: %2 was not kept.").arg(calledText(ask.box), padMassText(*ask.mass));
        case PadAsk::What::OverBrim:
            return askTr("Bucket %1: %2 was not kept.").arg(ask.bucket).arg(padMassText(*ask.mass));
        case PadAsk::What::Frames:
            return askTr("%1: how many frames it has stays unknown.").arg(calledText(ask.box));
        case PadAsk::What::BucketMass:
            return askTr("Bucket %1: left as it is.").arg(ask.bucket);
        case PadAsk::What::BucketWater:
            return askTr("Bucket %1: water left as it is.").arg(ask.bucket);
        case PadAsk::What::Cappings:
            return askTr("Cappings tub: left as it is.");
        case PadAsk::What::Scrapings:
            return askTr("Scrapings: left as they are.");
        case PadAsk::What::AsideBox:
            return askTr("Set aside: of which box stays unknown.");
        case PadAsk::What::AsideWhy:
            return askTr("Why it was set aside stays open.");
        case PadAsk::What::Settle:
            return askTr("%1: it lies there still.").arg(subject);
        case PadAsk::What::RunEmpty:
            return askTr("Not started.");
        case PadAsk::What::Close:
            return askTr("The day stays open.");
    }
    return {};
}

QString answersText(const PadAsk& ask) {
    switch (ask.what) {
        case PadAsk::What::Nothing:
            return {};
        case PadAsk::What::Full:
            return askTr(
                "Enter alone leaves it unknown, a point and Enter take it back; water behind a "
                "stroke: "
                "21.4/17.2");
        case PadAsk::What::Wet:
            return ask.box.spun ? askTr("a point and Enter take it back")
                                : askTr("a number near its full weight puts that right");
        case PadAsk::What::StillWet:
        case PadAsk::What::NotSpun:
        case PadAsk::What::StillFull:
        case PadAsk::What::OverBrim:
            return askTr("Enter again keeps it, another number puts it right");
        case PadAsk::What::Stray:
            return askTr(
                "Enter again takes it as a box nobody knows, another peg begins anew, a point and "
                "Enter take it back");
        case PadAsk::What::BucketMass:
        case PadAsk::What::BucketWater:
        case PadAsk::What::Frames:
            return askTr("Enter alone leaves it");
        case PadAsk::What::Cappings:
        case PadAsk::What::Scrapings:
            return askTr("a point and Enter take it back");
        case PadAsk::What::AsideBox:
            return askTr("%1, Enter leaves it unknown").arg(amongText(ask));
        case PadAsk::What::AsideWhy:
            return askTr(
                "1 not empty  2 broke  3 brood  4 granulated  5 unripe  6 other, Enter leaves it");
        case PadAsk::What::Settle:
            return askTr(
                "1 spun again  2 given back  3 put away  4 melted  5 fed back, Enter leaves it");
        case PadAsk::What::RunEmpty:
            return askTr("/ and Enter: they are run empty; Enter or + again: start all the same");
        case PadAsk::What::Close:
            return askTr("+ closes the day, Enter leaves it open");
    }
    return {};
}

QString weighedText(const PadBox& box, const Known<Mass>& mass, bool wet) {
    QString text =
        (wet ? askTr("%1, %2 wet") : askTr("%1, %2 full")).arg(calledText(box), padMassText(mass));
    const auto& was = wet ? box.wet : box.gross;
    if (was) text += askTr("; was %1").arg(massTold(*was));
    return text;
}

}  // namespace combwright
