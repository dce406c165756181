// Frames set aside in the honey room: whose they are, why, and what became of them.
#include <algorithm>
#include <set>

#include "core/actions/honey_room/asides.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/runs.h"
#include "core/words/words.h"
#include "ui/honey_room/honey_room_place.h"

namespace combwright {

std::vector<SetAside> HoneyRoomPlace::pile() const {
    if (!m_run) return {};
    auto rows = session().read().where<SetAside>({is("extraction", *m_run)});
    std::erase_if(rows, [](const SetAside& row) { return row.became.has_value(); });
    return rows;
}

QString HoneyRoomPlace::pileText(const SetAside& aside) const {
    const auto entry = session().read().find(aside.box);
    const auto many = aside.frames.value();
    QString text = many == 1 ? tr("1 frame") : tr("%1 frames").arg(many);
    text += entry ? tr(" of %1").arg(fromUtf8(calledInRun(session().read(), *entry)))
                  : tr(" of a box nobody knows");
    if (aside.why)
        text += QStringLiteral(", ") +
                word(Choices<AsideWhy>::words[static_cast<std::size_t>(*aside.why)]);
    return text;
}

/// Whose frames are at hand: of the load shown, and of the one that came out of the drum last. By
/// peg, those without one last.
std::vector<PadBox> HoneyRoomPlace::boxesAtHand() const {
    const Read& file = session().read();
    std::set<std::int64_t> entries;
    if (m_load->view().hasLoad())
        for (const auto& place : m_load->view().load().places)
            if (place && !place->emptied) entries.insert(place->entry.number);
    std::optional<SpinLoad> last;
    for (SpinLoad& each :
         file.where<SpinLoad>({is("extraction", *m_run), is("on_day", session().clock().today())}))
        last = std::move(each);
    if (last && !m_spin->load())
        for (const LoadBox& each : file.where<LoadBox>({is("load", last->id)}))
            entries.insert(each.box.number);
    std::vector<PadBox> boxes;
    for (const RoomBox& each : m_waiting->boxes()) {
        if (!each.entry || !entries.contains(each.entry->id.number)) continue;
        PadBox box;
        box.peg = static_cast<int>(each.peg.value_or(each.pegWas.value_or(0)));
        box.mark = fromUtf8(each.mark);
        box.known = each.box.has_value();
        box.row = each.entry->id.number;
        boxes.push_back(std::move(box));
    }
    std::stable_sort(boxes.begin(), boxes.end(), [](const PadBox& a, const PadBox& b) {
        return std::pair(a.peg == 0, a.peg) < std::pair(b.peg == 0, b.peg);
    });
    return boxes;
}

void HoneyRoomPlace::setAside(std::optional<Id<ExtractionBox>> box) {
    if (!m_run || !m_open)
        return session().tell(tr("Nothing is open: weigh a box, and its lot opens by itself."),
                              true);
    PutAside put;
    put.on = session().clock().today();
    put.run = *m_run;
    // Of the box at hand, where that is one; of several it is asked, for nobody else can tell.
    const auto among = box ? std::vector<PadBox>() : boxesAtHand();
    put.box = box;
    if (among.size() == 1) put.box = Id<ExtractionBox>{among.front().row};
    std::optional<Id<SetAside>> made;
    m_entry->pad().trail().during(QStringLiteral("aside"), [&] {
        made = session().run(put);
        if (!made) return false;
        const auto aside = session().read().find(*made);
        const QString said = tr("Set aside: %1").arg(pileText(*aside));
        m_entry->pad().trail().call(said);
        session().tell(said + QLatin1Char('.'));
        return true;
    });
    if (!made) return;
    if (among.size() > 1) {
        PadAsk which;
        which.what = PadAsk::What::AsideBox;
        which.row = made->number;
        which.among = among;
        which.about = tr("Set aside: of which box? Its peg");
        m_entry->pad().askLater(which);
    }
    PadAsk why;
    why.what = PadAsk::What::AsideWhy;
    why.row = made->number;
    why.about = tr("Set aside, why?");
    m_entry->pad().askLater(why);
}

void HoneyRoomPlace::askOfPile() {
    for (const SetAside& aside : pile()) {
        PadAsk settle;
        settle.what = PadAsk::What::Settle;
        settle.row = aside.id.number;
        settle.about = tr("%1: what became of it?").arg(pileText(aside));
        m_entry->pad().askLater(settle);
    }
}

}  // namespace combwright
