#include "ui/shell/photos/photos_dialog.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>

#include "core/storage/queries/names.h"
#include "core/storage/queries/yards.h"
#include "core/words/words.h"
#include "ui/shell/photos/photo_scaling.h"

namespace combwright {

PhotosDialog::PhotosDialog(Session& session, QWidget* parent, const GoTo& at)
    : QDialog(parent), m_session(session) {
    const Look& look = session.look();
    setObjectName(QStringLiteral("photos"));
    setWindowTitle(tr("Photos"));
    auto* down = new QVBoxLayout(this);
    down->setContentsMargins(look.space(24), look.space(16), look.space(24), look.space(16));
    down->setSpacing(look.space(8));
    auto* across = new QHBoxLayout;
    across->setSpacing(look.space(16));
    auto* side = new QVBoxLayout;
    m_list = new QListWidget(this);
    m_list->setObjectName(QStringLiteral("photos_list"));
    m_list->setAccessibleName(tr("Photos, the newest day first"));
    m_list->setMinimumHeight(look.space(120));
    side->addWidget(m_list, 1);
    auto* title = new QLabel(tr("The next photo is of"), this);
    title->setFont(look.font(TextSize::Head, true));
    side->addWidget(title);
    auto* form = new QFormLayout;
    m_day = new QLineEdit(fromUtf8(isoText(at.on.value_or(session.clock().today()))), this);
    m_yard = new QComboBox(this);
    m_yard->addItem(tr("no yard"), QString());
    session.reading([&] {
        for (const Yard& yard : openYards(session.read()))
            m_yard->addItem(fromUtf8(yard.name.text()), fromUtf8(yard.name.text()));
    });
    m_hive = new QLineEdit(this);
    session.reading([&] {
        const auto yard = at.yard ? session.read().find(*at.yard) : std::nullopt;
        if (yard) m_yard->setCurrentIndex(m_yard->findData(fromUtf8(yard->name.text())));
        const auto hive = at.hive ? session.read().find(*at.hive) : std::nullopt;
        if (hive) m_hive->setText(fromUtf8(hive->mark.text()));
    });
    m_sheet = new QLineEdit(this);
    m_sheet->setPlaceholderText(tr("if it shows one"));
    m_note = new QLineEdit(this);
    const auto row = [&](const QString& text, const char* name, QWidget* field) {
        field->setObjectName(QLatin1String(name));
        field->setAccessibleName(text);
        form->addRow(text, field);
    };
    row(tr("Day"), "photo_day", m_day);
    row(tr("Yard"), "photo_yard", m_yard);
    row(tr("Hive"), "photo_hive", m_hive);
    row(tr("Paper sheet"), "photo_sheet", m_sheet);
    row(tr("Note"), "photo_note", m_note);
    side->addLayout(form);
    across->addLayout(side, 2);
    m_picture = new QLabel(this);
    m_picture->setObjectName(QStringLiteral("photo_picture"));
    m_picture->setAlignment(Qt::AlignCenter);
    m_picture->setMinimumSize(look.space(360), look.space(280));
    m_picture->setWordWrap(true);
    across->addWidget(m_picture, 5);
    down->addLayout(across, 1);
    m_told = new QLabel(this);
    m_told->setObjectName(QStringLiteral("photos_told"));
    m_told->setWordWrap(true);
    down->addWidget(m_told);
    auto* buttons = new QDialogButtonBox(this);
    auto* add = new QPushButton(tr("Attach photos…"), this);
    add->setObjectName(QStringLiteral("photos_attach"));
    add->setProperty("primary", true);
    add->setAutoDefault(false);
    add->setEnabled(session.readingOnly().isEmpty());
    m_remove = new QPushButton(tr("Take this one out"), this);
    m_remove->setObjectName(QStringLiteral("photos_remove"));
    m_remove->setAutoDefault(false);
    buttons->addButton(add, QDialogButtonBox::ActionRole);
    buttons->addButton(m_remove, QDialogButtonBox::ActionRole);
    buttons->addButton(QDialogButtonBox::Close)->setAutoDefault(false);
    down->addWidget(buttons);
    connect(add, &QPushButton::clicked, this, &PhotosDialog::choose);
    connect(m_remove, &QPushButton::clicked, this, &PhotosDialog::removeCurrent);
    connect(m_list, &QListWidget::currentRowChanged, this, &PhotosDialog::showCurrent);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    resize(look.space(920), look.space(600));
    std::optional<Id<Photo>> newest;
    session.reading([&] {
        const auto ofHive =
            at.hive ? photosOf(session.read(), std::nullopt, at.hive) : std::vector<Photo>();
        if (!ofHive.empty()) newest = ofHive.back().id;
    });
    fill(newest);
    m_list->setFocus();
}

QString PhotosDialog::textOf(const Photo& photo) const {
    QStringList of;
    if (photo.hive) of << fromUtf8(nameOf(m_session.read(), Hive::table, photo.hive->number));
    if (photo.yard) of << fromUtf8(nameOf(m_session.read(), Yard::table, photo.yard->number));
    if (!photo.sheet.empty()) of << tr("sheet %1").arg(fromUtf8(photo.sheet));
    if (!photo.note.empty()) of << fromUtf8(photo.note);
    if (of.isEmpty()) of << fromUtf8(photo.name.text());
    return tr("%1: %2").arg(dayText(photo.on), of.join(QStringLiteral(", ")));
}

void PhotosDialog::fill(std::optional<Id<Photo>> shown) {
    m_list->clear();
    m_session.reading([&] {
        auto photos = photosOf(m_session.read(), std::nullopt);
        std::stable_sort(photos.begin(), photos.end(),
                         [](const Photo& a, const Photo& b) { return a.on > b.on; });
        for (const Photo& photo : photos) {
            auto* item = new QListWidgetItem(textOf(photo), m_list);
            item->setSizeHint(QSize(0, m_session.look().space(28)));
            item->setToolTip(item->text());
            item->setData(Qt::UserRole, static_cast<qlonglong>(photo.id.number));
            if (shown && photo.id == *shown) m_list->setCurrentItem(item);
        }
    });
    if (m_list->currentRow() < 0 && m_list->count() > 0) m_list->setCurrentRow(0);
    showCurrent();
}

std::optional<Photo> PhotosDialog::current() const {
    const QListWidgetItem* item = m_list->currentItem();
    std::optional<Photo> photo;
    if (item)
        m_session.reading([&] {
            photo = m_session.read().find(Id<Photo>{item->data(Qt::UserRole).toLongLong()});
        });
    return photo;
}

void PhotosDialog::showCurrent() {
    const auto photo = current();
    m_remove->setEnabled(photo && m_session.readingOnly().isEmpty());
    m_shown = {};
    if (!photo) {
        m_picture->setText(
            tr("No photo yet. Attach one of the day, of a hive, or of the paper "
               "sheet that was written in the yard."));
        return;
    }
    std::optional<Bytes> jpeg;
    m_session.reading([&] { jpeg = pictureOf(m_session.read().database(), photo->digest.text()); });
    if (!jpeg || !m_shown.loadFromData(jpeg->data(), static_cast<uint>(jpeg->size()), "JPEG")) {
        m_picture->setText(tr("The picture of %1 is not in this file. Attach it again; its link "
                              "stays.")
                               .arg(fromUtf8(photo->name.text())));
        return;
    }
    m_picture->setAccessibleName(textOf(*photo));
    m_picture->setPixmap(
        m_shown.scaled(m_picture->size(), Qt::KeepAspectRatio, Qt::SmoothTransformation));
}

void PhotosDialog::resizeEvent(QResizeEvent* event) {
    QDialog::resizeEvent(event);
    if (!m_shown.isNull())
        m_picture->setPixmap(
            m_shown.scaled(m_picture->size(), Qt::KeepAspectRatio, Qt::SmoothTransformation));
}

std::optional<PhotoSaid> PhotosDialog::said() {
    const auto day = parseDay(m_day->text().trimmed().toStdString());
    if (!day) {
        m_told->setText(
            sentence(Refusal{Code::NotADay, "on", {{"value", m_day->text().toStdString()}}}));
        return std::nullopt;
    }
    PhotoSaid said{*day, {}};
    said.sheet = m_sheet->text().trimmed().toStdString();
    said.note = m_note->text().trimmed().toStdString();
    const std::string yard = m_yard->currentData().toString().toStdString();
    const std::string hive = m_hive->text().trimmed().toStdString();
    std::optional<Refusal> refusal;
    m_session.reading([&] {
        if (!yard.empty()) {
            const auto found =
                findNamed(m_session.read(), Yard::table, NameQuery{.name = yard, .on = *day});
            if (found)
                said.yard = Id<Yard>{*found};
            else
                refusal = found.error();
        }
        if (hive.empty() || refusal) return;
        NameQuery query{.name = hive, .on = *day};
        if (!yard.empty()) query.yard = yard;
        const auto found = findNamed(m_session.read(), Hive::table, query);
        if (found)
            said.hive = Id<Hive>{*found};
        else
            refusal = found.error();
    });
    if (!refusal) return said;
    m_told->setText(sentence(*refusal));
    return std::nullopt;
}

int PhotosDialog::attach(const QStringList& paths) {
    auto of = said();
    if (!of) return 0;
    QStringList failed;
    std::optional<Id<Photo>> last;
    int attached = 0;
    for (const QString& path : paths) {
        QString trouble;
        const auto jpeg = scaledPhoto(path, trouble);
        if (!jpeg) {
            failed << tr("%1: %2").arg(QFileInfo(path).fileName(), trouble);
            continue;
        }
        of->name = QFileInfo(path).fileName().toStdString();
        const bool kept = m_session.together([&](Season& season) -> Result<void> {
            const auto made = attachPhoto(season, *of, Bytes(jpeg->begin(), jpeg->end()));
            if (!made) return made.error();
            last = *made;
            return {};
        });
        if (kept)
            ++attached;
        else
            failed << tr("%1: %2").arg(QFileInfo(path).fileName(), m_session.lastTold());
    }
    m_told->setText(failed.isEmpty() ? tr("%1 attached.").arg(attached)
                                     : tr("%1 attached. Not attached: %2")
                                           .arg(attached)
                                           .arg(failed.join(QStringLiteral("; "))));
    fill(last);
    return attached;
}

void PhotosDialog::choose() {
    const QStringList paths = QFileDialog::getOpenFileNames(
        this, tr("Which photos?"), {},
        tr("Pictures (*.jpg *.jpeg *.png *.webp *.tif *.tiff);;All files (*)"));
    if (!paths.isEmpty()) attach(paths);
}

void PhotosDialog::removeCurrent() {
    const auto photo = current();
    if (!photo) return;
    if (m_session.run(RemovePhoto{m_session.clock().today(), photo->id}))
        m_told->setText(tr("Taken out. Undo brings it back, picture and all."));
    fill();
}

}  // namespace combwright
