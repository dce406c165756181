#include "core/places/pages/revision_text.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString revisionWord(const char* text) { return QCoreApplication::translate("harvest", text); }

}  // namespace

QString revisionText(const QString& run, const RunRevision& revision) {
    const QString deed = word(revision.action);
    QString text =
        revision.on
            ? revisionWord("%1, after closing, %2: %3").arg(run, dayText(*revision.on), deed)
            : revisionWord("%1, after closing: %2").arg(run, deed);
    if (!revision.why.empty()) text += revisionWord("; why: %1").arg(fromUtf8(revision.why));
    return text + QLatin1Char('.');
}

}  // namespace combwright
