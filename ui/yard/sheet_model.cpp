#include "ui/yard/sheet_model.h"

#include <QScopeGuard>

#include "core/actions/yard/sheet.h"
#include "core/places/pages/yard/yard_sheet_page.h"
#include "core/words/read_back.h"
#include "core/words/shorthand.h"
#include "core/words/typed_words.h"
#include "core/words/words.h"
#include "ui/yard/mind_tone.h"

namespace combwright {
namespace {

/// So long nobody typed before the hives beside the one just written of are read anew.
constexpr int restAfterMs = 700;

}  // namespace

SheetModel::SheetModel(Session& session, QObject* parent)
    : QAbstractTableModel(parent), m_session(session) {
    // What is half typed is about hives of the season that was open and must not reach another.
    connect(&session, &Session::seasonChanged, this, [this] {
        beginResetModel();
        m_typing.clear();
        m_drafts = {};
        m_sheet = {};
        m_restLater.stop();
        endResetModel();
    });
    m_restLater.setSingleShot(true);
    m_restLater.setInterval(restAfterMs);
    connect(&m_restLater, &QTimer::timeout, this, &SheetModel::reloadAll);
}

void SheetModel::show(Id<Yard> yard, Day on) {
    beginResetModel();
    m_typing.clear();
    m_yard = yard;
    m_on = on;
    m_sheet = {};
    m_session.reading([&] { m_sheet = yardSheet(m_session.read(), yard, on); });
    m_drafts.show(m_session.drafts(),
                  QStringLiteral("yard-sheet %1 %2").arg(yard.number).arg(fromUtf8(isoText(on))));
    endResetModel();
    Q_EMIT sheetChanged();
}

void SheetModel::reload() {
    if (!m_session.hasSeason()) return;
    // One line in a yard of forty hives: the next is typed before all forty are asked for again.
    if (m_keeping && *m_keeping > 0 && reloadRow(*m_keeping))
        m_restLater.start();
    else
        reloadAll();
}

bool SheetModel::reloadRow(int row) {
    YardSheet fresh = m_sheet;
    bool read = false;
    const auto readRow = [&] { read = readHiveAnew(m_session.read(), fresh, rowAt(row).hive.id); };
    if (!m_session.reading(readRow) || !read) return false;
    ++m_reloads;
    m_sheet = std::move(fresh);
    rowChanged(row);
    Q_EMIT sheetChanged();
    return true;
}

void SheetModel::settle() {
    if (m_restLater.isActive()) reloadAll();
}

void SheetModel::reloadAll() {
    m_restLater.stop();
    if (!m_session.hasSeason()) return;
    YardSheet fresh;
    if (!m_session.reading([&] { fresh = yardSheet(m_session.read(), m_yard, m_on); })) return;
    ++m_reloads;
    const bool sameRows = fresh.rows.size() == m_sheet.rows.size();
    // While a row is kept the editor stands on it; a reset would take it away under the hands.
    if (!sameRows) {
        beginResetModel();
        m_sheet = std::move(fresh);
        endResetModel();
    } else {
        // Only what reads differently is measured and painted anew.
        const auto before = shownRows();
        m_sheet = std::move(fresh);
        const auto after = shownRows();
        for (int row = 0; row < rowCount(); ++row)
            if (before[static_cast<std::size_t>(row)] != after[static_cast<std::size_t>(row)])
                rowChanged(row);
    }
    Q_EMIT sheetChanged();
}

std::vector<SheetModel::ShownRow> SheetModel::shownRows() const {
    std::vector<ShownRow> rows(static_cast<std::size_t>(rowCount()));
    for (int row = 0; row < rowCount(); ++row)
        for (int column = 0; column < ColumnCount; ++column) {
            const QModelIndex at = index(row, column);
            rows[static_cast<std::size_t>(row)].push_back({textOf(at), toneOf(at), isOlder(at)});
        }
    return rows;
}

void SheetModel::rowChanged(int row) {
    Q_EMIT dataChanged(index(row, 0), index(row, ColumnCount - 1));
}

int SheetModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() || m_sheet.rows.empty() ? 0 : static_cast<int>(m_sheet.rows.size()) + 1;
}

int SheetModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : static_cast<int>(ColumnCount);
}

QString SheetModel::lineOf(int row) const {
    if (const auto typing = m_typing.find(row); typing != m_typing.end()) return typing->second;
    return keptLineOf(row);
}

QString SheetModel::draftKey(int row) const {
    return row == 0 ? QStringLiteral("all")
                    : QStringLiteral("hive %1").arg(rowAt(row).hive.id.number);
}

QString SheetModel::draftOf(int row) const {
    const QString draft = m_drafts.offered(draftKey(row));
    return draft == lineOf(row) ? QString() : draft;
}

bool SheetModel::takeDraft(int row) {
    const QString draft = draftOf(row);
    if (draft.isEmpty()) return false;
    setTyping(row, draft);
    return true;
}

void SheetModel::discard(int row) {
    m_typing.erase(row);
    m_drafts.drop(draftKey(row));
    m_session.forgetRefusal();
    rowChanged(row);
}

QString SheetModel::keptLineOf(int row) const {
    if (row == 0) return m_sheet.visit ? fromUtf8(m_sheet.visit->all) : QString();
    const auto& today = rowAt(row).today;
    return today ? fromUtf8(today->line) : QString();
}

void SheetModel::setTyping(int row, const QString& text) {
    m_typing[row] = text;
    if (m_restLater.isActive()) m_restLater.start();
    m_drafts.typed(draftKey(row), text, keptLineOf(row));
    // Only what a letter can change: the rest of the row is as it was.
    Q_EMIT dataChanged(index(row, LineColumn), index(row, ReadBackColumn));
}

SheetLine SheetModel::typedLine(int row) const {
    if (row == 0) return readShorthand(sheetInEnglish(lineOf(0)).toStdString());
    return readShorthand(m_sheet.visit ? m_sheet.visit->all : std::string(),
                         sheetInEnglish(lineOf(row)).toStdString());
}

bool SheetModel::keep(int row) {
    const auto typing = m_typing.find(row);
    if (typing == m_typing.end()) return true;
    const QString text = sheetInEnglish(typing->second.simplified());
    const bool wasThere = row > 0 && rowAt(row).today.has_value();
    const StepNote note{wasThere ? m_why.toStdString() : std::string(),
                        "visit " + m_sheet.yard.name.text() + " " + isoText(m_on)};
    bool kept = true;
    const int reloads = m_reloads;
    m_keeping = row;
    const auto done = qScopeGuard([this] { m_keeping.reset(); });
    if (row == 0) {
        const bool same = m_sheet.visit ? text.toStdString() == m_sheet.visit->all : text.isEmpty();
        if (!same) {
            RecordVisit visit{.on = m_on,
                              .yard = m_yard,
                              .begun = {},
                              .ended = {},
                              .all = text.toStdString(),
                              .note = {}};
            kept = m_session.run(visit, note).has_value();
        }
    } else if (text.isEmpty()) {
        // An empty line is no look at all: leaving it makes none, clearing one takes it out again.
        if (wasThere)
            kept =
                m_session.run(StrikeLine{.on = m_on, .hive = rowAt(row).hive.id}, note).has_value();
    } else if (!wasThere || text.toStdString() != rowAt(row).today->line) {
        kept =
            m_session
                .run(WriteLine{.on = m_on, .hive = rowAt(row).hive.id, .line = text.toStdString()},
                     note)
                .has_value();
    }
    if (!kept) return false;
    m_typing.erase(row);
    // A line left empty does not take away what is offered in it.
    if (!text.isEmpty() || wasThere) m_drafts.kept(draftKey(row));
    // Whoever listens to the season has read the sheet by now; then only this row, which was still
    // being typed in, reads differently.
    if (m_reloads == reloads)
        reload();
    else
        rowChanged(row);
    return true;
}

bool SheetModel::keepAll() {
    // Keeping one row reloads the sheet; the list of rows is taken beforehand.
    std::vector<int> rows;
    for (const auto& [row, text] : m_typing) rows.push_back(row);
    bool all = true;
    for (const int row : rows) all = keep(row) && all;
    return all;
}

QString SheetModel::mindTextOf(const YardSheetRow& row) const {
    QStringList texts;
    for (const Mind& mind : row.minds) texts << mindText(mind, m_on);
    return texts.join(QStringLiteral("\n"));
}

QString SheetModel::saidBack(int row) const {
    if (row == 0) return readBackForAll(sheetInEnglish(lineOf(0)).toStdString());
    const std::string all = m_sheet.visit ? m_sheet.visit->all : std::string();
    // Measuring and painting a cell ask for it several times with every letter.
    std::pair<std::string, QString> asked{all, lineOf(row)};
    if (asked != m_saidOf) {
        m_said = readBackTyped(all, sheetInEnglish(asked.second).toStdString());
        m_saidOf = std::move(asked);
    }
    return m_said;
}

QString SheetModel::offerOf(int row) const {
    const QString draft = draftOf(row);
    if (draft.isEmpty()) return {};
    return tr("%1   typed before and not kept: → takes it, Esc drops it").arg(draft);
}

QString SheetModel::withOwnDay(const QString& value, Day on, const YardSheetRow& row) const {
    return row.last && row.last->on == on ? value : tr("%1 · %2").arg(value, dayAndMonth(on));
}

QString SheetModel::textOf(const QModelIndex& index) const {
    const int row = index.row();
    if (row == 0) {
        switch (index.column()) {
            case HiveColumn:
                return tr("all:");
            case LineColumn:
                return lineOf(0);
            case ReadBackColumn: {
                if (const QString offer = offerOf(0); !offer.isEmpty()) return offer;
                const QString said = saidBack(0);
                return said.isEmpty() ? tr("Touches only hives marked opened. Then put right the "
                                           "few that differ.")
                                      : said;
            }
            default:
                return {};
        }
    }
    const YardSheetRow& hive = rowAt(row);
    switch (index.column()) {
        case HiveColumn:
            return fromUtf8(hive.hive.mark.text());
        case OpenedColumn:
            if (lineOf(row).isEmpty()) return {};
            switch (typedLine(row).seen.looked) {
                case Looked::Opened:
                    return QStringLiteral("✓");
                case Looked::LidOnly:
                    return tr("lid");
                case Looked::NotOpened:
                    return tr("no");
                case Looked::FoundDead:
                    return tr("dead");
            }
            return {};
        case EggsColumn:
            if (!hive.lastEggs) return {};
            return withOwnDay(hive.lastEggs->value ? tr("eggs") : tr("none"), hive.lastEggs->on,
                              hive);
        case BroodColumn:
            if (!hive.lastBrood) return {};
            return withOwnDay(framesText(hive.lastBrood->value), hive.lastBrood->on, hive);
        case StoresColumn:
            if (!hive.lastStores) return {};
            return withOwnDay(framesText(hive.lastStores->value), hive.lastStores->on, hive);
        case SupersBeforeColumn:
            return QString::number(hive.supersBefore);
        case LineColumn:
            return lineOf(row);
        case ReadBackColumn:
            if (const QString offer = offerOf(row); !offer.isEmpty()) return offer;
            return lineOf(row).isEmpty() ? QString() : saidBack(row);
        case SupersColumn:
            return hive.supersNow == hive.supersBefore
                       ? QString::number(hive.supersNow)
                       : QStringLiteral("%1 → %2").arg(hive.supersBefore).arg(hive.supersNow);
        case MindColumn:
            return mindTextOf(hive);
        default:
            return {};
    }
}

bool SheetModel::isOlder(const QModelIndex& index) const {
    if (index.row() == 0) return false;
    const YardSheetRow& row = rowAt(index.row());
    const auto older = [&row](const auto& known) {
        return known && (!row.last || known->on != row.last->on);
    };
    return (index.column() == EggsColumn && older(row.lastEggs)) ||
           (index.column() == BroodColumn && older(row.lastBrood)) ||
           (index.column() == StoresColumn && older(row.lastStores));
}

Tone SheetModel::toneOf(const QModelIndex& index) const {
    if (index.column() >= EggsColumn && index.column() <= SupersBeforeColumn) return Tone::Muted;
    if (index.row() == 0) return Tone::Muted;
    if (index.column() == ReadBackColumn && !draftOf(index.row()).isEmpty()) return Tone::Muted;
    if (index.column() != MindColumn) return Tone::Ink;
    for (const Mind& mind : rowAt(index.row()).minds)
        if (const Tone tone = mindTone(mind.kind); tone != Tone::Ink) return tone;
    return Tone::Ink;
}

QString SheetModel::queenColourOf(int row) const {
    if (row < 1 || row > static_cast<int>(m_sheet.rows.size())) return {};
    const auto& lives = rowAt(row).lives;
    // A colour that is only her year's is on no queen.
    return lives && lives->queen && lives->queen->marked == true ? fromUtf8(lives->colour)
                                                                 : QString();
}

QVariant SheetModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid()) return {};
    const Look& look = m_session.look();
    switch (role) {
        case Qt::DisplayRole:
            return textOf(index);
        case Qt::EditRole:
            return index.column() == LineColumn ? lineOf(index.row()) : QString();
        case queenColourRole:
            return index.column() == HiveColumn ? queenColourOf(index.row()) : QString();
        case Qt::AccessibleTextRole:
            if (const QString colour = queenColourOf(index.row());
                index.column() == HiveColumn && !colour.isEmpty())
                return tr("Hive: %1, queen marked %2")
                    .arg(textOf(index), choiceText(colour.toStdString()));
            return QStringLiteral("%1: %2").arg(
                headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                textOf(index));
        case Qt::ForegroundRole:
            return look.tone(toneOf(index));
        case Qt::FontRole:
            return look.font(
                index.column() == MindColumn || isOlder(index) ? TextSize::Note : TextSize::Body,
                index.column() == HiveColumn && index.row() > 0);
        case Qt::TextAlignmentRole: {
            const bool middle =
                index.column() >= OpenedColumn && index.column() <= SupersBeforeColumn;
            return QVariant::fromValue(Qt::Alignment(
                Qt::AlignVCenter |
                (middle || index.column() == SupersColumn ? Qt::AlignHCenter : Qt::AlignLeft)));
        }
        default:
            return {};
    }
}

QVariant SheetModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(
            Qt::AlignBottom |
            ((section >= OpenedColumn && section <= SupersBeforeColumn) || section == SupersColumn
                 ? Qt::AlignHCenter
                 : Qt::AlignLeft)));
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case HiveColumn:
            return tr("Hive");
        case OpenedColumn:
            return tr("opened");
        case EggsColumn:
            return tr("last:\neggs");
        case BroodColumn:
            return tr("last:\nbrood");
        case StoresColumn:
            return tr("last:\nstores");
        case SupersBeforeColumn:
            return tr("last:\nsupers");
        case LineColumn:
            return tr("What you saw");
        case ReadBackColumn:
            return tr("Read back");
        case SupersColumn:
            return tr("Supers");
        case MindColumn:
            return tr("To mind");
        default:
            return {};
    }
}

Qt::ItemFlags SheetModel::flags(const QModelIndex& index) const {
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (index.column() == LineColumn) flags |= Qt::ItemIsEditable;
    return flags;
}

}  // namespace combwright
