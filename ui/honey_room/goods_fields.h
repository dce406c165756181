// Fields that several forms about jars and goods have: honey to fill from, a kind, a filling, and a
// line for each kind, which together are the line one would type.
#pragma once

#include <QComboBox>
#include <QLineEdit>
#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "core/actions/honey/goods_line.h"
#include "core/places/goods/goods_ahead.h"
#include "ui/shell/session.h"
#include "ui/shell/small_form.h"

namespace combwright {

/// Buckets and lots with honey in them, "B1 of Hill 27, 13.9 kg", the ready ones as they come.
void offerHoney(QComboBox* box, const Read& file, Day on);
std::optional<Vessel> honeyChosen(const QComboBox* box);
void chooseHoney(QComboBox* box, const Vessel& vessel);

/// Fillings up to a day, the newest first, after the words for none where there are any.
void offerFillings(QComboBox* box, const Read& file, Day on, const QString& none);

/// A count for each kind: "12", and behind it what a goods line knows, "12 of L27-4-2 at 8".
class KindLines {
  public:
    /// The fields are called `name`_1 and so on.
    KindLines(SmallForm& form, const std::vector<GoodsKind>& kinds, const char* name,
              const QString& example, bool noted = false);
    /// What stands below the line of a kind, where lines are noted.
    void note(SmallForm& form, std::size_t at, const QString& text) const;
    /// "29 #1, 3 #2", behind what stands in `before`; empty where nothing is typed.
    std::string inLine(const QLineEdit* before = nullptr) const;
    void whenTyped(QWidget* context, const std::function<void()>& look) const;
    const std::vector<QLineEdit*>& fields() const { return m_fields; }

  private:
    std::vector<GoodsKind> m_kinds;
    std::vector<QLineEdit*> m_fields;
    std::vector<QLabel*> m_notes;
};

/// "12 of L27" typed for kind #3 is "12 #3 of L27" in a line.
std::string withKind(const std::string& typed, Id<GoodsKind> kind);

/// As it was read, for what follows of it.
std::vector<GoodsAhead> aheadOf(const std::vector<GoodsMeant>& meant);

/// A line of words nobody has to fill in.
QLineEdit* mayStayEmpty(SmallForm& form, const QString& label, const char* name);

}  // namespace combwright
