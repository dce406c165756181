// What the form makes of what was typed: how the day would close, and the deeds that keep it.
#include <algorithm>

#include "core/actions/honey_room/asides.h"
#include "core/places/honey/bucket_sheet.h"
#include "core/storage/queries/names.h"
#include "core/words/bucket_line.h"
#include "core/words/day_words.h"
#include "core/words/figures.h"
#include "core/words/room_line.h"
#include "core/words/words.h"
#include "ui/honey_room/box_water.h"
#include "ui/honey_room/close_day_form.h"

namespace combwright {
namespace {

bool nothingIn(const QLineEdit* edit) { return edit->text().trimmed().isEmpty(); }

std::optional<double> readGrams(const QLineEdit* edit) {
    const auto mass = typedReading(edit->text());
    return mass ? mass->middle() : std::nullopt;
}

/// The box a mark means; one nobody knows by what it is called, its frames behind: "tag lost 9".
struct TaggedBox {
    std::string name;
    std::optional<Count> frames;
    std::optional<Id<Box>> box;
};

TaggedBox taggedBox(const Read& file, const QString& text, Day on) {
    const auto boxOf = [&](const QString& name) -> std::optional<Id<Box>> {
        const auto box =
            findNamed(file, Box::table, NameQuery{.name = name.toStdString(), .on = on});
        return box ? std::optional(Id<Box>{*box}) : std::nullopt;
    };
    const QString typed = text.trimmed();
    TaggedBox tagged{typed.toStdString(), std::nullopt, boxOf(typed)};
    if (tagged.box) return tagged;
    const qsizetype blank = typed.lastIndexOf(QLatin1Char(' '));
    bool isNumber = false;
    const int frames = blank > 0 ? QStringView(typed).mid(blank + 1).toInt(&isNumber) : 0;
    if (!isNumber || frames < 1 || frames > 72) return tagged;
    const QString name = typed.left(blank).trimmed();
    return {name.toStdString(), Count(frames), boxOf(name)};
}

/// A reading as it is kept; what was emptied is not known any more.
Known<Mass> typedOrUnknown(const QLineEdit* edit) {
    return typedReading(edit->text())
        .value_or(Known<Mass>{std::nullopt, std::nullopt, How::Unknown});
}

}  // namespace

bool CloseDayForm::isIn(const BoxRow& row) const {
    return row.mark ? !nothingIn(row.mark) : !row.in || row.in->isChecked();
}

QString CloseDayForm::unspunHere() const {
    if (!m_run || m_session.read().where<SpinLoad>({is("extraction", *m_run)}).empty()) return {};
    QStringList parts;
    for (const BoxRow& row : m_boxes) {
        if (row.mark || !isIn(row)) continue;
        const std::int64_t left = row.box.left().value_or(0);
        if (left > 0)
            parts << (left == 1 ? tr("1 frame of %1").arg(fromUtf8(row.box.mark))
                                : tr("%1 frames of %2").arg(left).arg(fromUtf8(row.box.mark)));
    }
    return parts.join(QStringLiteral(", "));
}

Day CloseDayForm::day() const {
    return dayInWords(m_day->text().toStdString(), m_session.clock().today())
        .value_or(m_session.clock().today());
}

QLineEdit* CloseDayForm::unreadableBox(QString& why) const {
    for (const BoxRow& row : m_boxes) {
        if (row.in && !row.in->isChecked()) continue;
        for (QLineEdit* edit : {row.full, row.wet})
            if (!nothingIn(edit) && !typedReading(edit->text())) {
                why = tr("%1: “%2” is no weight in %3.")
                          .arg(edit->accessibleName(), edit->text(), massUnit());
                return edit;
            }
        if (!nothingIn(row.water) && !typedNumber(row.water->text())) {
            why = tr("%1: “%2” is no number.").arg(row.water->accessibleName(), row.water->text());
            return row.water;
        }
        const auto box = [&] {
            return row.mark ? taggedBox(m_session.read(), row.mark->text(), day()).box
                            : row.box.box;
        };
        if (!nothingIn(row.water) && !(row.mark && nothingIn(row.mark)) && !box()) {
            why = waterOfUnknownBox(row.mark ? row.mark->text().trimmed() : fromUtf8(row.box.mark));
            return row.water;
        }
        const bool said = !nothingIn(row.full) || !nothingIn(row.wet) || !nothingIn(row.water);
        if (row.mark && nothingIn(row.mark) && said) {
            why = tr("Which box is that? Its mark, or “tag lost”.");
            return row.mark;
        }
    }
    return nullptr;
}

QLineEdit* CloseDayForm::unreadableBucket(QString& why) const {
    if (const TypedBuckets line = readBuckets(m_bucketLine->text()); !line.notRead.isEmpty()) {
        why = tr("Buckets: “%1” is no bucket. As one says it: 6 full, 1 half; or 6 13.0.")
                  .arg(line.notRead);
        return m_bucketLine;
    }
    for (const BucketRow& row : m_buckets) {
        if (!nothingIn(row.mass) && !typedLevel(row.mass->text()) &&
            !typedReading(row.mass->text())) {
            why = tr("%1: “%2” is no weight in %3.")
                      .arg(row.mass->accessibleName(), row.mass->text(), massUnit());
            return row.mass;
        }
        if (!nothingIn(row.water) && !typedNumber(row.water->text())) {
            why = tr("%1: “%2” is no number.").arg(row.water->accessibleName(), row.water->text());
            return row.water;
        }
        if (row.name && nothingIn(row.name) && !nothingIn(row.mass)) {
            why = tr("Which bucket is that? Its mark, or “all”.");
            return row.name;
        }
    }
    if (nothingIn(m_cappings) || cappingsTyped(m_session.read(), m_cappings->text(), day()))
        return nullptr;
    why = tr("%1: “%2” is no weight in %3, and no level as half or 60 %.")
              .arg(tr("Wet cappings"), m_cappings->text(), massUnit());
    return m_cappings;
}

QLineEdit* CloseDayForm::unreadable(QString& why) const {
    if (QLineEdit* box = unreadableBox(why)) return box;
    if (QLineEdit* bucket = unreadableBucket(why)) return bucket;
    if (!dayInWords(m_day->text().toStdString(), m_session.clock().today())) {
        why = tr("“%1” is no day.").arg(m_day->text());
        return m_day;
    }
    if (m_lot && nothingIn(m_lot)) {
        why = tr("The lot needs a name.");
        return m_lot;
    }
    return nullptr;
}

void CloseDayForm::judgeBoxes(DayTyped& day) {
    m_judged.clear();
    for (std::size_t i = 0; i < m_boxes.size(); ++i) {
        const BoxRow& row = m_boxes[i];
        if (!isIn(row)) continue;
        const QString mark = row.mark ? row.mark->text().trimmed() : fromUtf8(row.box.mark);
        m_judged.push_back(i);
        day.boxes.push_back({mark.toStdString(),
                             row.box.hive.empty() ? std::nullopt : std::optional(row.box.hive),
                             readGrams(row.full), readGrams(row.wet)});
        for (const QLineEdit* edit : {row.full, row.wet})
            if (const auto reading = typedReading(edit->text()); reading && reading->value)
                day.how = weaker(day.how, reading->how);
    }
}

std::vector<BucketToFill> CloseDayForm::bucketsOfLine() const {
    std::vector<std::string> besides;
    for (const BucketRow& row : m_buckets)
        if (row.name) besides.push_back(row.name->text().trimmed().toStdString());
    return bucketsToFill(m_session.read(), readBuckets(m_bucketLine->text()), day(), besides,
                         m_run);
}

void CloseDayForm::judgeBuckets(DayTyped& day) {
    const auto add = [&](const Known<Mass>& net) {
        if (!net.value) return;
        day.bucketsG = day.bucketsG.value_or(0) + static_cast<double>(net.value->grams());
        day.how = weaker(day.how, net.how);
    };
    const auto filled = bucketsOfLine();
    for (const BucketToFill& each : filled) add(each.net);
    m_filled->setText(filledText(filled));
    m_filled->setVisible(!filled.empty());
    for (const BucketRow& row : m_buckets) {
        if (const auto level = typedLevel(row.mass->text()))
            add(massAtLevel(m_session.read(), *level, this->day()));
        else if (const auto reading = typedReading(row.mass->text()))
            add(*reading);
    }
    const auto cappings = cappingsTyped(m_session.read(), m_cappings->text(), this->day());
    if (!cappings || !cappings->value) return;
    day.cappingsG = static_cast<double>(cappings->value->grams());
    day.how = weaker(day.how, cappings->how);
}

void CloseDayForm::judge() {
    if (!m_how || !m_cappings) return;
    QString why;
    if (unreadable(why)) {
        m_outlook = {false, why, {}};
        return sayBad(why);
    }
    DayTyped day;
    judgeBoxes(day);
    judgeBuckets(day);
    for (const PileRow& row : m_pile)
        if (row.became->currentIndex() == 0) day.onPile += row.pile.aside.frames.value();
    m_outlook = closingOutlook(day);
    m_how->setText(m_outlook.text);
    QPalette palette = this->palette();
    palette.setColor(QPalette::WindowText,
                     m_session.look().tone(m_outlook.closes ? Tone::Ink : Tone::Warn));
    m_how->setPalette(palette);
    m_close->setEnabled(m_outlook.closes);
}

void CloseDayForm::sayBad(const QString& text) {
    if (!m_how) return;
    m_how->setText(text);
    QPalette palette = this->palette();
    palette.setColor(QPalette::WindowText, m_session.look().tone(Tone::Bad));
    m_how->setPalette(palette);
    m_close->setEnabled(false);
}

Result<void> CloseDayForm::keepBox(Season& season, Id<Extraction> run, const BoxRow& row) const {
    WeighBox weigh;
    weigh.on = day();
    weigh.run = run;
    weigh.box = row.box.box;
    if (row.mark) {
        const TaggedBox tagged = taggedBox(season.read(), row.mark->text(), weigh.on);
        weigh.box = tagged.box;
        weigh.frames = tagged.frames;
        if (!weigh.box) weigh.knownAs = tagged.name;
    } else if (!weigh.box) {
        weigh.knownAs = row.box.entry ? row.box.entry->knownAs : row.box.mark;
    }
    if (row.full->text() != row.typedFull) weigh.gross = typedOrUnknown(row.full);
    if (row.wet->text() != row.typedWet) weigh.wet = typedOrUnknown(row.wet);
    // How full it was judged on the hive: shares by eye follow it, and so does the eye's own proof.
    if (!row.box.entry || !row.box.entry->filled)
        weigh.filled = fillOfBox(season.read(), row.box, weigh.on);
    const bool nothingNew = row.box.entry && !weigh.gross && !weigh.wet && !weigh.filled;
    if (!nothingNew)
        if (const auto done = perform(season, weigh); !done) return done.error();
    if (!weigh.box || row.water->text() == row.typedWater) return {};
    return keepBoxWater(season, *weigh.box, typedNumber(row.water->text()), weigh.on);
}

Result<void> CloseDayForm::keepBuckets(Season& season, Id<Extraction> run) const {
    FillBucket fill;
    fill.on = day();
    fill.run = run;
    for (const BucketToFill& each : bucketsOfLine()) {
        fill.bucket = *Name::of(each.mark);
        fill.net = each.net;
        if (const auto done = perform(season, fill); !done) return done.error();
    }
    for (const BucketRow& row : m_buckets) {
        if (nothingIn(row.mass) && nothingIn(row.water)) continue;
        fill.bucket = *Name::of((row.name ? row.name->text() : row.mark).trimmed().toStdString());
        const auto level = typedLevel(row.mass->text());
        fill.net = level ? std::optional(massAtLevel(season.read(), *level, fill.on))
                         : typedReading(row.mass->text());
        fill.water.reset();
        if (const auto water = typedNumber(row.water->text()))
            fill.water = WaterContent::roundedPercent(*water);
        if (const auto done = perform(season, fill); !done) return done.error();
    }
    const auto mass = cappingsTyped(season.read(), m_cappings->text(), fill.on);
    if (!mass) return {};
    WeighCappings weigh;
    weigh.on = fill.on;
    weigh.run = run;
    weigh.cappings = mass;
    if (const auto done = perform(season, weigh); !done) return done.error();
    return {};
}

Result<void> CloseDayForm::keepPile(Season& season) const {
    for (const PileRow& row : m_pile) {
        if (row.became->currentIndex() == 0) continue;
        SettleAside settle;
        settle.on = day();
        settle.aside = row.pile.aside.id;
        settle.became = static_cast<AsideBecame>(row.became->currentIndex() - 1);
        if (const auto done = perform(season, settle); !done) return done.error();
    }
    return {};
}

Result<void> CloseDayForm::keepAll(Season& season, bool close) {
    std::optional<Id<Extraction>> run = m_run;
    if (!run) {
        OpenRun open;
        open.on = day();
        open.run = *Name::of(m_lot->text().trimmed().toStdString());
        if (m_yard->currentIndex() > 0) open.yard = Id<Yard>{m_yard->currentData().toLongLong()};
        const auto made = perform(season, open);
        if (!made) return made.error();
        run = *made;
    }
    for (const BoxRow& row : m_boxes)
        if (isIn(row))
            if (auto done = keepBox(season, *run, row); !done) return done.error();
    if (auto done = keepBuckets(season, *run); !done) return done.error();
    if (auto done = keepPile(season); !done) return done.error();
    if (close) {
        CloseRun deed;
        deed.on = day();
        deed.run = *run;
        if (const auto done = perform(season, deed); !done) return done.error();
    }
    m_kept = run;
    return {};
}

void CloseDayForm::keep(bool close) {
    QString why;
    if (QLineEdit* bad = unreadable(why)) {
        sayBad(why);
        bad->setFocus();
        return bad->selectAll();
    }
    if (close && !m_outlook.closes) {
        if (m_outlook.lacking && *m_outlook.lacking < m_judged.size()) {
            const BoxRow& row = m_boxes[m_judged[*m_outlook.lacking]];
            (nothingIn(row.full) ? row.full : row.wet)->setFocus();
        }
        for (const PileRow& row : m_pile)
            if (row.became->currentIndex() == 0) {
                row.became->setFocus();
                break;
            }
        return sayBad(m_outlook.text);
    }
    if (const QString left = unspunHere(); close && !left.isEmpty() && left != m_unspunAsked) {
        m_unspunAsked = left;
        m_how->setText(left.startsWith(QStringLiteral("1 ")) && !left.contains(QLatin1Char(','))
                           ? tr("%1 was not spun: close all the same? + again closes.").arg(left)
                           : tr("%1 were not spun: close all the same? + again closes.").arg(left));
        QPalette palette = this->palette();
        palette.setColor(QPalette::WindowText, m_session.look().tone(Tone::Warn));
        return m_how->setPalette(palette);
    }
    if (!m_session.together([&](Season& season) { return keepAll(season, close); })) {
        m_kept.reset();
        return;
    }
    m_session.tell(close ? tr("The run is closed: %1").arg(m_outlook.text)
                         : tr("Kept; the run stays open."));
    accept();
}

}  // namespace combwright
