#include "core/places/pages/revision_text.h"

#include <QCoreApplication>

#include "core/words/words.h"

namespace combwright {
namespace {

QString revisionWord(const char* text) { return QCoreApplication::translate("harvest", text); }

QString deedText(const RunRevision& revision, int times) {
    const QString deed = word(revision.action);
    return times > 1
               ? QCoreApplication::translate("harvest", "%1 (%n times)", nullptr, times).arg(deed)
               : deed;
}

QString revisionText(const QString& run, const RunRevision& revision, int times) {
    const QString deed = deedText(revision, times);
    QString text =
        revision.on
            ? revisionWord("%1, after closing, %2: %3").arg(run, dayText(*revision.on), deed)
            : revisionWord("%1, after closing: %2").arg(run, deed);
    if (!revision.why.empty()) text += revisionWord("; why: %1").arg(fromUtf8(revision.why));
    return text + QLatin1Char('.');
}

}  // namespace

QStringList revisionTexts(const QString& run, const std::vector<RunRevision>& revisions) {
    QStringList lines;
    for (std::size_t first = 0; first < revisions.size();) {
        const RunRevision& each = revisions[first];
        std::size_t last = first;
        while (last < revisions.size() && revisions[last].action == each.action &&
               revisions[last].on == each.on && revisions[last].why == each.why)
            ++last;
        lines << revisionText(run, each, static_cast<int>(last - first));
        first = last;
    }
    return lines;
}

}  // namespace combwright
