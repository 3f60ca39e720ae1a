#pragma once
// A wood that the tables lack, with the figures that a maker tells in the shop file.
//
// Published tables know some fifty woods; a workshop uses others: a local fruit tree, a batch whose movement
// was measured on its own offcuts. Such a wood has the same figures as any other, with one difference: they
// are the maker's own, and everything that quotes them says so. Its movement is computed from its total
// shrinkage (Wood Handbook, Eq 13-3), since nobody tells a coefficient. What is not told stays unknown, and
// checks that need it stay silent or say what they used instead.

#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "wood/species.hpp"

namespace rayfleck::wood {

/// Where every figure of such a wood comes from.
inline constexpr std::string_view own_figure = "the maker's own figure";

/// A wood of the shop. Neither copied nor moved: its species looks into the texts that it owns.
class OwnWood {
  public:
    OwnWood(std::string name, Kind kind);
    OwnWood(const OwnWood&) = delete;
    OwnWood& operator=(const OwnWood&) = delete;

    const Species& species() const { return species_; }
    /// To fill in its figures; id, names and kind are set.
    Species& figures() { return species_; }

  private:
    std::string name_, id_;
    Species species_;
};

using OwnWoods = std::vector<std::shared_ptr<const OwnWood>>;

/// A figure as the maker tells it.
/// unit  a literal of the program, as a Figure prints it
Figure own(double value, std::string_view unit);

/// One of the shop's own woods, else one of the tables. A shop's own wood goes before a published one of the
/// same name.
const Species* find(std::string_view name, std::span<const std::shared_ptr<const OwnWood>> own);

/// A figure that a maker may tell, with the name and the units in which it is told.
struct OwnFigure {
    std::string_view name;
    struct Unit {
        std::string_view name; ///< as typed; empty where a bare number is meant
        double times;          ///< what it is multiplied by for the unit of the tables
    };
    std::span<const Unit> units;
    std::string_view unit; ///< of the tables
    double least, most; ///< in that unit; what lies outside is no wood. Our own choice, no published source
    std::optional<Figure> Species::*field;
};
std::span<const OwnFigure> own_figures();

} // namespace rayfleck::wood
