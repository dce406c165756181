#include "core/storage/audit.h"

#include <map>
#include <set>

#include "core/model/frames/frame.h"
#include "core/storage/journal.h"
#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/storage/sqlite/storage_error.h"

namespace combwright {
namespace {

void demandWhole(const Database& database) {
    Statement check = database.prepare("PRAGMA integrity_check(1)");
    std::string said;
    for (check.run(); check.next();) said = check.text(0);
    if (said != "ok")
        throw StorageError(Trouble::Damaged, database.path(),
                           "its pages do not fit together · " + said);
    Statement references = database.prepare("PRAGMA foreign_key_check");
    if (references.run().next())
        throw StorageError(Trouble::Damaged, database.path(),
                           "a reference leads nowhere · " + references.text(0));
}

void auditHives(const Read& file, std::vector<AuditFinding>& findings) {
    for (const Yard& yard : openYards(file)) {
        std::set<std::string> marks;
        std::int64_t order = 0;
        for (const Hive& hive : openHives(file, yard.id)) {
            const std::string about = "hive " + hive.mark.text();
            if (!marks.insert(hive.mark.text()).second)
                findings.push_back({about, "its mark stands twice in yard " + yard.name.text()});
            if (hive.standOrder.value() != ++order)
                findings.push_back(
                    {about, "its place in walking order is not " + std::to_string(order)});
            std::int64_t level = 0;
            for (const Box& box : boxesOn(file, hive.id))
                if (!box.level || box.level->value() != level++)
                    findings.push_back({about, "its boxes do not count up from the floor"});
            if (file.where<Colony>({is("hive", hive.id), isUnknown("ended")}).size() > 1)
                findings.push_back({about, "two colonies live in it"});
        }
    }
    std::set<std::string> names;
    for (const Yard& yard : openYards(file))
        if (!names.insert(yard.name.text()).second)
            findings.push_back({"yard " + yard.name.text(), "its name stands twice"});
}

void auditBoxes(const Read& file, std::vector<AuditFinding>& findings) {
    std::map<std::int64_t, BoxMove> last;
    for (const BoxMove& move : file.all<BoxMove>()) last[move.box.number] = move;
    std::set<std::string> marks;
    for (const Box& box : file.all<Box>()) {
        const std::string about = "box " + nameOf(file, Box::table, box.id.number);
        const auto move = last.find(box.id.number);
        if (move == last.end())
            findings.push_back({about, "nothing says how it came here"});
        else if (move->second.toPlace != box.place || move->second.toHive != box.hive ||
                 move->second.toStack != box.stack)
            findings.push_back({about, "it is not where its last move left it"});
        if (inUse(box) && !box.mark.empty() && !marks.insert(box.mark).second)
            findings.push_back({about, "its mark is painted on two boxes"});
        if ((box.place == BoxPlace::OnHive) != box.level.has_value())
            findings.push_back({about, "a box on a hive needs a level, another must have none"});
    }
}

}  // namespace

std::vector<AuditFinding> audit(const Read& file) {
    demandWhole(file.database());
    std::vector<AuditFinding> findings;
    auditHives(file, findings);
    auditBoxes(file, findings);
    if (const auto broken = Journal(file.database()).firstBroken())
        findings.push_back({"journal " + std::to_string(*broken),
                            "its digest does not follow from the rows before: it was altered"});
    return findings;
}

}  // namespace combwright
