// The honey room by the number pad alone: `14 ⏎ 21.4 ⏎` weighs the box on peg 14, `/3 ⏎ 13.0 ⏎
// 17.2 ⏎` is bucket 3, `+` a load spun. Gloves and knuckles hit ten digits and six keys, so nothing
// here needs a letter. This reads keys and lines and knows what is asked next; it does nothing
// itself: whoever shows the line does the deed, and everything is read back large.
#pragma once

#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "core/units/known.h"
#include "core/units/mass.h"

namespace combwright {

/// What a key on the number pad types: a digit, '.', '/', '+', '-', '*', '\n' or '\b'. With Num
/// Lock off the pad sends arrows, Home, Insert and Delete; they are digits and point all the same.
/// Nothing for a key that is none of these.
/// @param key    of Qt::Key
/// @param onPad  it came from the number pad
/// @param text   what the key types by itself
std::optional<QChar> padKey(int key, bool onPad, const QString& text);

/// A box as the pad knows it: by its peg.
struct PadBox {
    int peg = 0;         ///< 0: without one
    QString mark;        ///< painted on it, else what it is known as
    bool known = false;  ///< false: nobody knows which box it is; it gets a line of its own
    std::optional<Mass> gross, wet;
    bool spun = false;          ///< frames of it were spun
    std::int64_t unspun = 0;    ///< frames of it no load kept has spun; 0 where no loads are kept
    std::optional<Mass> empty;  ///< what such a box weighs without honey
    bool stray = false;         ///< nobody clipped that peg
    std::int64_t row = 0;       ///< of a choice: its line in the run
};

/// What must be known of the room to ask rightly.
struct PadRoom {
    /// The box on a peg today; nothing where nobody clipped that number. Peg 0: the box without a
    /// peg that is to be weighed wet.
    std::function<std::optional<PadBox>(int peg)> onPeg;
    /// Whether that is too near what the box weighed full to be its wet weight.
    std::function<bool(const PadBox& box, Mass wet)> heavyForWet;
    /// What a bucket holds at most.
    std::optional<Mass> bucketHolds;
    /// What the next box without a peg is known as.
    QString withoutPeg;
    int slotCount = 12;
    /// A bare number is the weight of what was chosen otherwise, not a peg.
    bool bareIsMass = false;
    /// Nothing is asked while a load spins.
    bool spinning = false;
};

struct PadAsk {
    enum class What {
        Nothing,
        Full,
        Wet,
        StillWet,   ///< whether a wet weight near the full one is meant so; `mass`
        NotSpun,    ///< whether it is the wet weight, with frames of it not spun; `mass`
        StillFull,  ///< whether a full weight like an empty box's is meant so; `mass`
        Stray,      ///< whether a box on a peg nobody clipped is a box nobody knows; `mass`
        OverBrim,   ///< whether a bucket holds more than it can; `mass`
        Frames,     ///< how many are in a box nobody knows
        BucketMass,
        BucketWater,
        Cappings,
        Scrapings,
        AsideBox,  ///< of which box of the load a frame was set aside: the peg
        AsideWhy,  ///< why a frame was set aside, 1 to 6
        Settle,    ///< what became of frames set aside, 1 to 5
        RunEmpty,  ///< whether drum, gate and strainer are run empty before another lot
        Close,     ///< whether the day is closed
    };
    What what = What::Nothing;
    PadBox box = {};
    int bucket = 0;
    std::optional<Known<Mass>> mass = {};
    std::optional<double> water = {};  ///< of a box: typed with the mass, per cent
    std::optional<Mass> most = {};     ///< of OverBrim: what a bucket holds
    QString about = {};                ///< from AsideBox on: said by who asks
    std::int64_t row = 0;  ///< of AsideBox, AsideWhy and Settle: what in the file is meant
    std::vector<PadBox> among = {};  ///< of AsideBox: what may be chosen
};

/// What a key or a line comes to.
struct PadDeed {
    enum class What {
        NotPad,   ///< no line of the pad's: the letter keyboard's grammar reads it
        NotRead,  ///< `notRead` says what, nothing is done
        Asks,     ///< nothing is done yet, see ask()
        Left,     ///< what was asked stays unknown
        Weigh,
        Frames,
        Bucket,
        Cappings,
        Scrapings,
        Gate,
        Clock,
        Plus,  ///< the load was spun and ran smooth, else the head's next thing
        Walked,
        Stopped,  ///< of the load kept as walked just before
        Aside,
        AsideBox,  ///< `box` is the one chosen
        AsideWhy,
        Settle,
        Close,
        TakeBack,
        Feel,
        Seen,     ///< the cautions of the day
        NextRun,  ///< the next open run is shown
        DayLog,   ///< the log of the day is opened
    };
    What what = What::NotPad;
    PadBox box = {};
    bool wet = false;
    std::optional<Known<Mass>> mass = {};  ///< without a value: nobody knows
    std::optional<double> water = {};      ///< of a box or a bucket, per cent
    int number = 0;                        ///< of the bucket; frames; the digit of a choice
    QString letters = {};                  ///< h, m, l, slot by slot
    QString notRead = {};                  ///< a whole sentence
};

class PadLine {
  public:
    const PadAsk& ask() const { return m_ask; }
    void setAsk(const PadAsk& ask) { m_ask = ask; }
    /// What was asked is let go; nothing was written down.
    void forget() { m_ask = {}; }

    /// Whether that key acts at once instead of going into the line.
    bool acts(QChar key, const QString& typed) const;
    /// A key that acts at once.
    PadDeed press(QChar key);
    /// Enter, with what stands in the line.
    PadDeed enter(const QString& typed, const PadRoom& room);

  private:
    PadDeed begin(const QString& typed, const PadRoom& room);
    PadDeed weigh(const QString& typed, const PadRoom& room);
    PadDeed weighFull(PadDeed deed, const PadAsk& asked);
    PadDeed weighWet(const PadDeed& deed, const PadAsk& asked, const PadRoom& room);
    PadDeed stray(const QString& typed, const PadRoom& room);
    PadDeed bucket(const QString& typed, const PadRoom& room);
    PadDeed asideBox(const QString& typed);
    PadDeed choice(const QString& typed, const PadRoom& room, PadDeed::What what, int most);
    PadDeed choosePeg(int peg, const PadRoom& room);
    PadDeed asks(const PadAsk& ask);

    PadAsk m_ask;
    bool m_walked = false;  ///< the key before was "it walked"
};

/// Whether a line is one of frames by feel.
bool isFelt(const QString& typed);
/// The letters typed by feel, "//321" or "//hml": one of h, m, l a frame. Nothing where another
/// sign is among them or they are more than there are slots.
std::optional<QString> feltLetters(const QString& typed, int slotCount);

/// What the line asks, large: "M07 on peg 14: full, kg". Empty where nothing is asked.
QString askedText(const PadAsk& ask);
/// What is read back where it was left: its subject, and what stays open.
QString leftText(const PadAsk& ask);
/// The signs that answer it: "⏎ alone leaves it unknown".
QString answersText(const PadAsk& ask);
/// "6 frames of M07 on peg 14 are not spun".
QString notSpunText(const PadBox& box);
/// "21.4 kg" as it was typed, "unknown" without a value.
QString padMassText(const Known<Mass>& mass);
/// "M07 on peg 14, 21.4 kg full; was 19.8".
QString weighedText(const PadBox& box, const Known<Mass>& mass, bool wet);
/// "M07 on peg 14"; a box nobody knows by what it is known as.
QString calledText(const PadBox& box);

}  // namespace combwright
