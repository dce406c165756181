#include "core/storage/salvage/salvage.h"

#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QTemporaryDir>
#include <algorithm>
#include <set>
#include <utility>

#include "core/storage/audit.h"
#include "core/storage/catalogue_seed.h"
#include "core/storage/hot_journal.h"
#include "core/storage/migrations.h"
#include "core/storage/pictures.h"
#include "core/storage/salvage/salvage_read.h"
#include "core/storage/season.h"
#include "core/storage/season_file.h"
#include "core/storage/sqlite/storage_error.h"
#include "core/storage/whole_file.h"
#include "core/storage/whole_rows.h"

namespace combwright {
namespace {

QString nameOf(const std::string& path) { return QString::fromStdString(path); }

Bytes bytesOfFile(const QString& path) {
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        throw StorageError(Trouble::NotWritable, path.toStdString(),
                           file.errorString().toStdString());
    const QByteArray all = file.readAll();
    return Bytes(all.begin(), all.end());
}

/// The file's bytes. Where a writer was killed, as they are once its half-done step was taken back
/// in a copy; the damaged file itself stays as it is.
Bytes bytesToSalvage(const std::string& path) {
    const QString beside = nameOf(journalPath(path));
    if (!QFileInfo::exists(beside) || isJournalOfAnother(path)) return bytesOfFile(nameOf(path));
    const QTemporaryDir aside;
    const QString copy = aside.filePath(QStringLiteral("copy"));
    if (!aside.isValid() || !QFile::copy(nameOf(path), copy) ||
        !QFile::copy(beside, nameOf(journalPath(copy.toStdString()))))
        throw StorageError(Trouble::NotWritable, copy.toStdString(), "a copy cannot be made");
    try {
        const Database writing = Database::open(copy.toStdString(), Database::Mode::ReadWrite);
        (void)writing.number("SELECT count(*) FROM sqlite_schema");
    } catch (const StorageError&) {
        // Too damaged for that: what there is is read as it lies.
    }
    return bytesOfFile(copy);
}

struct LeftOutRow {
    std::string table;
    Row row;
    std::string why;
};

/// The second half: which rows there are, after all places were asked, and the new file.
class SalvageWork {
  public:
    SalvageWork(SalvageRead read, const Database& fresh)
        : m_read(std::move(read)), m_shapes(tableShapes(fresh)) {}

    Salvaged decide() {
        for (const RecordType& type : recordTypes()) decideTable(shapeOf(type.table));
        demandReferences();
        m_done.pages = m_read.pages;
        m_done.brokenPages = m_read.brokenPages;
        m_done.steps = m_read.stepsAgreeing;
        m_done.stepsMissing = highestOf("journal") - m_read.stepsAgreeing;
        m_done.historyKept =
            m_read.historyWhole && m_leftOut.empty() && m_done.referencesCleared == 0;
        if (!m_done.historyKept) closeGaps();
        for (auto& [table, counts] : m_counts) {
            const auto rows = m_rows.find(table);
            counts.table = table;
            counts.saved =
                rows == m_rows.end() ? 0 : static_cast<std::int64_t>(rows->second.size());
            if (counts.saved + counts.leftOut + counts.unknown > 0) m_done.tables.push_back(counts);
        }
        return m_done;
    }

    WholeRows rows() const {
        WholeRows whole;
        for (const auto& [table, rows] : m_rows)
            for (const auto& [id, row] : rows) whole[table].push_back(row);
        return whole;
    }
    const SalvageRead& read() const { return m_read; }
    const std::vector<LeftOutRow>& leftOut() const { return m_leftOut; }

    std::int64_t highestOf(std::string_view table) const {
        std::int64_t highest = m_read.told.highest(table);
        if (const auto counted = m_read.highest.find(table); counted != m_read.highest.end())
            highest = std::max(highest, counted->second);
        if (const auto rows = m_rows.find(table); rows != m_rows.end() && !rows->second.empty())
            highest = std::max(highest, rows->second.rbegin()->first);
        return highest;
    }

  private:
    using RowsById = std::map<std::int64_t, Row>;

    const TableShape& shapeOf(std::string_view table) const {
        return *std::find_if(m_shapes.begin(), m_shapes.end(),
                             [&](const TableShape& shape) { return shape.name == table; });
    }

    std::optional<Row> toldRow(const TableShape& shape, std::int64_t id) const {
        if (m_read.told.of(shape.name, id) != ToldRows::Told::Whole) return std::nullopt;
        return shape.asRecord(m_read.told.row(shape.name, id));
    }

    /// A whole history overrules the table; a broken one only fills what the table lost.
    std::optional<Row> decideRow(const TableShape& shape, std::int64_t id, const ReadRow* there) {
        SalvagedTable& counts = m_counts[shape.name];
        if (m_read.told.isGone(shape.name, id) && (m_read.historyWhole || !there || there->isLoose))
            return std::nullopt;
        const auto read = there ? shape.asRecord(there->row) : std::nullopt;
        const auto told = toldRow(shape, id);
        if (!told) {
            // An old row on a page given free: a whole history would know it.
            const bool isOld = read && m_read.historyWhole && there->isLoose;
            return isOld ? std::nullopt : read;
        }
        if (!read) {
            // A table read to its end has it no more: the step that removed it is lost.
            if (!m_read.historyWhole && m_read.wholeTables.contains(shape.name))
                return std::nullopt;
            ++counts.madeAgain;
            return told;
        }
        if (!m_read.historyWhole || m_read.told.isAsBegun(shape.name, id)) return read;
        if (!saySame(*read, *told)) ++counts.mended;
        return told;
    }

    void decideTable(const TableShape& shape) {
        static const std::map<std::int64_t, ReadRow> none;
        const auto found = m_read.rows.find(shape.name);
        const auto& inTable = found == m_read.rows.end() ? none : found->second;
        std::set<std::int64_t> ids;
        for (const auto& [id, row] : inTable) ids.insert(id);
        m_read.told.each(shape.name, [&](std::int64_t id, const Row&) { ids.insert(id); });
        for (const std::int64_t id : ids) {
            const auto there = inTable.find(id);
            if (auto row = decideRow(shape, id, there == inTable.end() ? nullptr : &there->second))
                m_rows[shape.name].emplace(id, *std::move(row));
        }
        SalvagedTable& counts = m_counts[shape.name];
        if (m_read.historyWhole) return;
        const auto saved = m_rows.find(shape.name);
        const std::int64_t highest = highestOf(shape.name);
        for (std::int64_t id = 1; id <= highest; ++id)
            if ((saved == m_rows.end() || !saved->second.contains(id)) &&
                !m_read.told.isGone(shape.name, id))
                ++counts.unknown;
    }

    /// A row that points to what is lost stays, where it can do without; else it is written down
    /// beside the file. Again and again, for what points to it then has nothing either.
    void demandReferences() {
        for (bool changed = true; changed;) {
            changed = false;
            for (const RecordType& type : recordTypes()) {
                auto& rows = m_rows[std::string(type.table)];
                for (auto row = rows.begin(); row != rows.end();) {
                    if (pointsAtSomething(type, row->second)) {
                        ++row;
                        continue;
                    }
                    changed = true;
                    ++m_counts[std::string(type.table)].leftOut;
                    m_leftOut.push_back(
                        {std::string(type.table), row->second, "what it belongs to is lost"});
                    row = rows.erase(row);
                }
            }
        }
    }
    bool pointsAtSomething(const RecordType& type, Row& row) {
        const Fields& fields = type.fields();
        for (std::size_t i = 0; i < fields.size(); ++i) {
            const auto* to = std::get_if<std::int64_t>(&row[i]);
            if (fields[i].refersTo.empty() || !to) continue;
            const auto table = m_rows.find(fields[i].refersTo);
            if (table != m_rows.end() && table->second.contains(*to)) continue;
            if (!fields[i].optional) return false;
            Row without = row;
            without[i] = Value{};
            if (type.fits && !type.fits(without)) return false;
            row = std::move(without);
            ++m_done.referencesCleared;
        }
        return true;
    }

    template <class Record>
    std::vector<Record> savedOf() {
        std::vector<Record> records;
        for (const auto& [id, row] : m_rows[std::string(Record::table)])
            if (auto record = fromRow<Record>(row)) records.push_back(*std::move(record));
        return records;
    }

    /// Where hives of a yard or boxes of a hive are lost, those behind them move up, in the order
    /// they stood: their numbers count without a gap.
    void closeGaps() {
        std::map<std::int64_t, std::vector<Hive>> hives;
        for (Hive& hive : savedOf<Hive>())
            if (!hive.closed) hives[hive.yard.number].push_back(std::move(hive));
        for (auto& [yard, all] : hives)
            moveUp(
                all, 1, [](auto& hive) -> auto& { return hive.standOrder; });
        std::map<std::int64_t, std::vector<Box>> boxes;
        for (Box& box : savedOf<Box>())
            if (box.place == BoxPlace::OnHive && box.hive && box.level)
                boxes[box.hive->number].push_back(std::move(box));
        for (auto& [hive, all] : boxes)
            moveUp(
                all, 0, [](auto& box) -> auto& { return *box.level; });
    }
    template <class Record, class PlaceOf>
    void moveUp(std::vector<Record>& all, std::int64_t first, PlaceOf placeOf) {
        std::stable_sort(all.begin(), all.end(), [&](const Record& a, const Record& b) {
            return placeOf(a).value() < placeOf(b).value();
        });
        std::int64_t next = first;
        for (Record& each : all) {
            const Count place(next++);
            if (placeOf(each) == place) continue;
            placeOf(each) = place;
            m_rows[std::string(Record::table)][each.id.number] = toRow(each);
            ++m_done.movedUp;
        }
    }

    SalvageRead m_read;
    std::vector<TableShape> m_shapes;
    Salvaged m_done;
    std::map<std::string, SalvagedTable> m_counts;
    std::map<std::string, RowsById, std::less<>> m_rows;
    std::vector<LeftOutRow> m_leftOut;
};

/// Numbers once given are not given again, else a step taken back later would meet another record.
void keepNumbersCounting(const Database& file, const SalvageWork& work) {
    const auto raise = [&](std::string_view table) {
        const std::int64_t highest = work.highestOf(table);
        if (highest == 0) return;
        file.prepare("UPDATE sqlite_sequence SET seq = max(seq, ?) WHERE name = ?")
            .bind(highest)
            .bind(table)
            .run();
        file.prepare(
                "INSERT INTO sqlite_sequence (name, seq) SELECT ?, ? WHERE NOT EXISTS "
                "(SELECT 1 FROM sqlite_sequence WHERE name = ?)")
            .bind(table)
            .bind(highest)
            .bind(table)
            .run();
    };
    for (const RecordType& type : recordTypes()) raise(type.table);
}

void layPictures(const Database& file, const SalvageWork& work, Salvaged& done) {
    std::set<std::string> named;
    Statement photos = file.prepare("SELECT DISTINCT digest FROM photo");
    for (photos.run(); photos.next();) named.insert(photos.text(0));
    for (const std::string& digest : named) {
        const auto bytes = work.read().pictures.find(digest);
        if (bytes == work.read().pictures.end()) {
            ++done.picturesLost;
            continue;
        }
        layPicture(file, bytes->second);
        ++done.pictures;
    }
}

void putMark(const Database& file, const SalvageWork& work) {
    if (!work.read().copyMark) return;
    const Row& mark = *work.read().copyMark;
    Statement put = file.prepare(
        "INSERT INTO copy_mark (id, what, of_file, step, digest, on_day, name) "
        "VALUES (?, ?, ?, ?, ?, ?, ?)");
    for (const Value& value : mark) put.bind(value);
    put.run();
}

Result<void> writeWithHistory(const std::string& to, const SalvageWork& work, Salvaged& done) {
    const Database file = createSeasonFile(to);
    Transaction transaction(file);
    const Write write(file);
    if (auto put = putWholeRows(write, work.rows()); !put) return put;
    Journal journal(file);
    for (const auto& [seq, step] : work.read().steps) journal.putWhole(step);
    keepNumbersCounting(file, work);
    layPictures(file, work, done);
    putMark(file, work);
    transaction.commit();
    return {};
}

/// The history is broken, so it begins anew: with one step, which is all that was saved.
Result<void> writeAnew(const std::string& from, const std::string& to, const Clock& clock,
                       const SalvageWork& work, Salvaged& done) {
    {
        auto season = Season::create(to, clock);
        if (!season) return season.error();
        const QJsonObject line{
            {QStringLiteral("do"), QStringLiteral("load-season")},
            {QStringLiteral("on"), QString::fromStdString(isoText(clock.today()))},
            {QStringLiteral("file_name"), QFileInfo(nameOf(from)).fileName()}};
        const StepInfo info{"load-season",
                            QJsonDocument(line).toJson(QJsonDocument::Compact).toStdString(),
                            {},
                            {}};
        const WholeRows rows = work.rows();
        const auto put =
            season->perform(info, [&](Write& file) { return putWholeRows(file, rows); });
        if (!put) return put.error();
    }
    const Database file = Database::open(to, Database::Mode::ReadWrite);
    Transaction transaction(file);
    keepNumbersCounting(file, work);
    layPictures(file, work, done);
    putMark(file, work);
    transaction.commit();
    return {};
}

/// What could be read and has no place any more, a line each, so that nothing is thrown away.
std::string writeLeftOut(const std::string& to, const std::vector<LeftOutRow>& rows) {
    const std::string path = to + ".left-out.txt";
    std::string all;
    for (const LeftOutRow& left : rows) {
        std::string line = left.table;
        const Fields& fields = findRecordType(left.table)->fields();
        for (std::size_t i = 0; i < fields.size(); ++i) {
            if (const auto* number = std::get_if<std::int64_t>(&left.row[i]))
                line += ' ' + fields[i].key() + '=' + std::to_string(*number);
            else if (const auto* text = std::get_if<std::string>(&left.row[i]))
                line += ' ' + fields[i].key() + "=\"" + *text + '"';
        }
        line += " · " + left.why + '\n';
        all += line;
    }
    writeWholeFile(path, all);
    return path;
}

}  // namespace

bool Salvaged::isComplete() const { return historyKept && picturesLost == 0; }

Result<Salvaged> salvage(const std::string& from, const std::string& to, const Clock& clock) {
    if (QFileInfo::exists(nameOf(to))) return Refusal{Code::PathTaken, {}, {{"path", to}}};
    if (!QFileInfo(nameOf(from)).isFile())
        throw StorageError(Trouble::NotThere, from, "no such file");
    if (const Recognised kind = recognise(from);
        kind.kind == FileKind::Ours && kind.version > migrations().back().step)
        throw StorageError(Trouble::Newer, from, std::to_string(kind.version));

    const Database fresh = createSeasonFile(":memory:");
    {
        Transaction transaction(fresh);
        Write write(fresh);
        seedCatalogue(write);
        transaction.commit();
    }
    SalvageRead read = readForSalvage(bytesToSalvage(from), fresh);
    if (!read.isSeason) throw StorageError(Trouble::NotOurs, from, "nothing in it is of a season");

    SalvageWork work(std::move(read), fresh);
    Salvaged done = work.decide();
    makeUnderItsName(to, [&](const std::string& part) {
        auto written = done.historyKept ? writeWithHistory(part, work, done)
                                        : writeAnew(from, part, clock, work, done);
        // Rows that point to each other were seen to before; this is a fault of ours.
        if (!written)
            throw StorageError(Trouble::Failed, to,
                               "what was saved does not fit together · " + written.error().field);
        if (!done.historyKept)
            done.disagreeing = static_cast<std::int64_t>(
                audit(Read(Database::open(part, Database::Mode::ReadOnly))).size());
        if (!work.leftOut().empty()) done.leftOutFile = writeLeftOut(to, work.leftOut());
    });
    return done;
}

}  // namespace combwright
