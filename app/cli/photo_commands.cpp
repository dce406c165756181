#include <QFile>
#include <QFileInfo>
#include <QJsonArray>
#include <QJsonObject>

#include "app/cli/groups.h"
#include "app/cli/season_asked.h"
#include "core/actions/photos/photos.h"
#include "core/exchange/or_null.h"
#include "core/storage/queries/names.h"
#include "core/words/words.h"

namespace combwright::cli {
namespace {

QString nameOrNone(const Read& file, std::string_view table, std::optional<std::int64_t> id) {
    return id ? fromUtf8(nameOf(file, table, *id)) : QString();
}

QJsonObject photoObject(const Read& file, const Photo& photo) {
    const QString hive = photo.hive ? nameOrNone(file, Hive::table, photo.hive->number) : QString();
    const QString yard = photo.yard ? nameOrNone(file, Yard::table, photo.yard->number) : QString();
    return {{QStringLiteral("photo"), static_cast<qint64>(photo.id.number)},
            {QStringLiteral("on"), fromUtf8(isoText(photo.on))},
            {QStringLiteral("name"), fromUtf8(photo.name.text())},
            {QStringLiteral("yard"), orNull(yard.toStdString())},
            {QStringLiteral("hive"), orNull(hive.toStdString())},
            {QStringLiteral("of_sheet"), orNull(photo.sheet)},
            {QStringLiteral("note"), orNull(photo.note)},
            {QStringLiteral("width"), static_cast<qint64>(photo.width.value())},
            {QStringLiteral("height"), static_cast<qint64>(photo.height.value())},
            {QStringLiteral("size_bytes"), static_cast<qint64>(photo.sizeBytes.value())},
            {QStringLiteral("digest"), fromUtf8(photo.digest.text())},
            {QStringLiteral("there"), pictureOf(file.database(), photo.digest.text()).has_value()}};
}

int listPhotos(Context& context) {
    const Season season = seasonToRead(context);
    QJsonArray list;
    for (const Photo& photo : photosOf(season.read(), std::nullopt)) {
        const QJsonObject each = photoObject(season.read(), photo);
        list.append(each);
        if (context.json()) continue;
        QTextStream& out = context.streams.out;
        out << fromUtf8(isoText(photo.on)) << "  " << fromUtf8(photo.name.text());
        for (const char* key : {"yard", "hive", "of_sheet", "note"})
            if (const QString text = each.value(QLatin1String(key)).toString(); !text.isEmpty())
                out << "  " << text;
        if (!each.value(QLatin1String("there")).toBool()) out << "  (its picture is missing)";
        out << '\n';
    }
    if (context.json()) printJson(context, QJsonObject{{QStringLiteral("photos"), list}});
    return Done;
}

Result<std::int64_t> namedWith(const Context& context, const Read& file, const char* option,
                               std::string_view table) {
    const std::string called = context.arguments.value(option)->toStdString();
    NameQuery query{.name = called, .on = context.clock.today()};
    if (table == Hive::table)
        if (const auto yard = context.arguments.value("yard")) query.yard = yard->toStdString();
    return findNamed(file, table, query);
}

int attachOne(Context& context) {
    const QString path = *context.arguments.value("attach");
    QFile picture(path);
    if (!picture.open(QIODevice::ReadOnly))
        return misused(context, QStringLiteral("the picture %1 cannot be read").arg(path));
    // One byte more than may be is enough to be refused by.
    const QByteArray read = picture.read(static_cast<qint64>(mostPictureBytes) + 1);
    Season season = Season::open(context.arguments.positional.front().toStdString(), context.clock,
                                 Database::Mode::ReadWrite);
    PhotoSaid said{context.clock.today(), QFileInfo(path).fileName().toStdString()};
    if (context.arguments.has("yard")) {
        const auto yard = namedWith(context, season.read(), "yard", Yard::table);
        if (!yard) return refuse(context, yard.error());
        said.yard = Id<Yard>{*yard};
    }
    if (context.arguments.has("hive")) {
        const auto hive = namedWith(context, season.read(), "hive", Hive::table);
        if (!hive) return refuse(context, hive.error());
        said.hive = Id<Hive>{*hive};
    }
    said.sheet = context.arguments.value("sheet").value_or(QString()).toStdString();
    said.note = context.arguments.value("note").value_or(QString()).toStdString();
    const auto made = attachPhoto(season, said, Bytes(read.begin(), read.end()));
    if (!made) return refuse(context, made.error());
    if (context.json())
        printJson(context, photoObject(season.read(), *season.read().find(*made)));
    else
        context.streams.out << "Attached as photo " << made->number << ".\n";
    return Done;
}

int runPhotos(Context& context) {
    if (context.arguments.has("attach")) return attachOne(context);
    for (const char* option : {"yard", "hive", "sheet", "note"})
        if (context.arguments.has(option))
            return misused(context,
                           QStringLiteral("--%1 goes with --attach").arg(QLatin1String(option)));
    return listPhotos(context);
}

}  // namespace

std::vector<Command> photoCommands() {
    return {{"photos",
             "FILE",
             "the photos in a season; or one more attached, of the day",
             1,
             1,
             {{"attach", "PICTURE.jpg", "attach this JPEG, at most a million bytes"},
              {"yard", "NAME", "of this yard"},
              {"hive", "MARK", "of this hive"},
              {"sheet", "TEXT", "of this paper sheet"},
              {"note", "TEXT", "with this note"}},
             &runPhotos}};
}

}  // namespace combwright::cli
