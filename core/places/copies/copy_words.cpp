#include "core/places/copies/copy_words.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString copySay(const char* text) { return QCoreApplication::translate("copies", text); }

}  // namespace

QString copyTitle(const CopyMark& mark) {
    if (mark.kind == CopyKind::AsItStood) return copySay("As it stood on %1").arg(dayText(mark.on));
    if (mark.name.empty()) return copySay("What-if of %1").arg(dayText(mark.on));
    return copySay("What-if: %1").arg(fromUtf8(mark.name));
}

QString copySentence(const CopyMark& mark) {
    const QString of = fromUtf8(mark.ofFile);
    if (mark.kind == CopyKind::AsItStood)
        return copySay("This is %1 as it was recorded up to the end of %2, for reading only.")
            .arg(of, dayText(mark.on));
    if (mark.name.empty())
        return copySay(
                   "This is a what-if, a copy of %1 to plan in since %2. What stands in it was "
                   "planned, not done.")
            .arg(of, dayText(mark.on));
    return copySay(
               "This is the what-if “%3”, a copy of %1 to plan in since %2. What stands in it was "
               "planned, not done.")
        .arg(of, dayText(mark.on), fromUtf8(mark.name));
}

}  // namespace combwright
