#include "core/actions/honey/complaints.h"

namespace combwright {

Result<void> demandComplaint(const Read& file, const Complaint& complaint) {
    const auto bottling = file.find(complaint.bottling);
    if (bottling && complaint.on < bottling->on)
        return Refusal{Code::BeforeItBegan,
                       "bottling",
                       {{"name", bottling->code.text()}, {"since", isoText(bottling->on)}}};
    if (!complaint.closed) return {};
    if (complaint.became.empty()) return Refusal{Code::Missing, "became", {}};
    if (*complaint.closed < complaint.on)
        return Refusal{Code::BeforeItBegan, "on", {{"since", isoText(complaint.on)}}};
    return {};
}

const Fields& NoteComplaint::fields() {
    static const Fields all =
        describe(field<&NoteComplaint::on>("on"), field<&NoteComplaint::bottling>("bottling"),
                 field<&NoteComplaint::what>("what"), field<&NoteComplaint::who>("who"));
    return all;
}

Result<Id<Complaint>> NoteComplaint::perform(Write& file) const {
    Complaint complaint{{}, on, bottling, what, who, std::nullopt, {}};
    if (auto ok = demandComplaint(file, complaint); !ok) return ok.error();
    return file.add(complaint);
}

const Fields& CloseComplaint::fields() {
    static const Fields all =
        describe(field<&CloseComplaint::on>("on"), field<&CloseComplaint::complaint>("complaint"),
                 field<&CloseComplaint::became>("became"));
    return all;
}

Result<Id<Complaint>> CloseComplaint::perform(Write& file) const {
    auto said = file.find(complaint);
    if (!said) return Refusal{Code::NotFound, "complaint", {}};
    if (said->closed) return Refusal{Code::OtherAction, "complaint", {{"action", "amend"}}};
    said->closed = on;
    said->became = became;
    if (auto ok = demandComplaint(file, *said); !ok) return ok.error();
    file.change(*said);
    return said->id;
}

}  // namespace combwright
