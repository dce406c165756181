#include "ui/common/help_groups.h"

namespace combwright {

QString helpOf(const std::vector<HelpGroup>& groups) {
    QString page;
    for (const HelpGroup& group : groups) {
        page += QStringLiteral("<p style=\"margin-top:10px;margin-bottom:2px\"><b>%1</b></p>")
                    .arg(group.head.toHtmlEscaped());
        page += QStringLiteral("<table cellspacing=\"0\" cellpadding=\"2\" width=\"100%\">");
        for (const HelpLine& line : group.lines) {
            const QString what = line.what.toHtmlEscaped();
            page += line.keys.isEmpty()
                        ? QStringLiteral("<tr><td colspan=\"2\">%1</td></tr>").arg(what)
                        : QStringLiteral("<tr><td width=\"36%\"><b>%1</b></td><td>%2</td></tr>")
                              .arg(line.keys.toHtmlEscaped(), what);
        }
        page += QStringLiteral("</table>");
    }
    return page;
}

}  // namespace combwright
