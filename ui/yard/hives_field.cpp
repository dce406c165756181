#include "ui/yard/hives_field.h"

#include <QCoreApplication>

#include "core/words/words.h"
#include "ui/shell/form_reading.h"

namespace combwright {
namespace {

QString hivesWord(const char* text) { return QCoreApplication::translate("hives_field", text); }

/// More of them are counted only: a title is one line.
constexpr std::size_t mostMarksInTitle = 6;

}  // namespace

HivesField::HivesField(SmallForm& form, Session& session, HivesDeed deed, HivesAsked asked,
                       const Yard& yard, Day on)
    : m_form(form),
      m_session(session),
      m_deed(std::move(deed)),
      m_asked(std::move(asked)),
      m_yard(fromUtf8(yard.name.text())),
      m_on(on),
      m_line(form.line(hivesWord("Hives"), "hives", hivesWord("H1, H3; or all"), 30)) {
    m_line->setText(m_asked.marks);
}

std::string HivesField::typed() const { return typedWords(m_line); }

bool HivesField::saysAll() const {
    return m_line->text().simplified().compare(QLatin1String("all"), Qt::CaseInsensitive) == 0;
}

QString HivesField::noneNamed() {
    return hivesWord("No hive is named. Write marks, or \"all\" for every hive of the yard.");
}

bool HivesField::demand() const {
    if (!typed().empty()) return true;
    m_session.tell(noneNamed(), true);
    m_line->setFocus();
    return false;
}

void HivesField::entitle(const Result<std::vector<Hive>>& meant) const {
    const QString day = dayText(m_on);
    if (typed().empty() || !meant)
        return m_form.setWindowTitle(hivesWord("%1: no hive named, %2").arg(m_deed.alone, day));
    QStringList marks;
    for (const Hive& hive : *meant) marks << fromUtf8(hive.mark.text());
    QString which;
    if (marks.size() == 1)
        which = marks.front();
    else if (saysAll())
        which = hivesWord("all %1 hives of %2").arg(marks.size()).arg(m_yard);
    else if (meant->size() <= mostMarksInTitle)
        which = hivesWord("%1 hives (%2)").arg(marks.size()).arg(marks.join(QStringLiteral(", ")));
    else
        which = hivesWord("%1 hives").arg(marks.size());
    m_form.setWindowTitle(QStringLiteral("%1 %2, %3").arg(m_deed.ofHives, which, day));
}

void HivesField::keepTicks() const {
    if (m_asked.ticked) m_line->setText(m_asked.marks);
}

}  // namespace combwright
