// The bucket or tank one is at, drawn with its level and its water over the words of its card.
#pragma once

#include <QWidget>

#include "core/places/honey/honey_store.h"
#include "ui/drawing/bucket.h"
#include "ui/drawing/lettering.h"
#include "ui/shell/session.h"

namespace combwright {

class VesselPicture : public QWidget {
    Q_OBJECT

  public:
    VesselPicture(Session& session, QWidget* parent);
    void show(const StoredHoney& honey, Day on);

  protected:
    void paintEvent(QPaintEvent*) override;

  private:
    void sizes();

    Session& m_session;
    BucketView m_bucket;
    TextLine m_amount;  ///< how much is in it, with the letter of how that is known
    QString m_state;    ///< what holds it back, in a few words
    Tone m_tone = Tone::Ink;
};

}  // namespace combwright
