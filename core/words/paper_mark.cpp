#include "core/words/paper_mark.h"

namespace combwright {
namespace {

QString& heldPaperMark() {
    static QString mark;
    return mark;
}

}  // namespace

const QString& paperMark() { return heldPaperMark(); }

void setPaperMark(const QString& mark) { heldPaperMark() = mark; }

}  // namespace combwright
