// What a trace says in sentences, and above all what it cannot say.
#pragma once

#include <QString>

#include "core/places/trace/trace.h"

namespace combwright {

QString traceGapText(const TraceUnknown& gap);
/// "treated while on, since 6 Aug 2027: box H1a"
QString traceHoldText(const TraceHold& held);
/// "perhaps: 1 of 7 boxes behind it was on while a medicine was in"; empty where none was.
QString treatedShareText(const TreatedShare& treated);
/// "3 of them were on, of 7 boxes", "no box of it was on".
QString traceBoxesOnText(const TraceMedicine& medicine);
/// "sold 12 454 g jar, Market, to Ann", and at which fair.
QString tracedOutText(const TracedOut& out);

}  // namespace combwright
