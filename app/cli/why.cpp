#include "app/cli/why.h"

#include <QJsonObject>
#include <cmath>

#include "core/places/pages/explained_page.h"
#include "core/places/pages/page_text.h"
#include "core/words/words.h"

namespace combwright::cli {

QJsonArray whyArray(const std::vector<Explained>& figures) {
    QJsonArray all;
    for (const Explained& figure : figures) {
        QJsonArray steps;
        for (const Working::Step& step : figure.working.steps) {
            QJsonObject object{{QStringLiteral("what"), fromUtf8(step.what)},
                               {QStringLiteral("value"),
                                std::isfinite(step.value) ? QJsonValue(step.value) : QJsonValue()},
                               {QStringLiteral("unit"), fromUtf8(step.unit)}};
            if (!step.how.empty()) object.insert(QStringLiteral("how"), fromUtf8(step.how));
            if (!step.source.empty())
                object.insert(QStringLiteral("source"), fromUtf8(step.source));
            steps.append(object);
        }
        all.append(QJsonObject{{QStringLiteral("what"), figure.what},
                               {QStringLiteral("answer"), figure.answer},
                               {QStringLiteral("steps"), steps}});
    }
    return all;
}

void printWhy(Context& context, const std::vector<Explained>& figures) {
    if (!figures.empty()) context.streams.out << '\n' << pageText(explainedPage(figures));
}

}  // namespace combwright::cli
