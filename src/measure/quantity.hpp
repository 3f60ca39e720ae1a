#pragma once
// Angles, moisture and strain: three numbers that must not be mixed up, so three types.

#include <compare>
#include <numbers>

namespace rayfleck::measure {

/// An angle. Kept in degrees, the unit of saw settings; geometry takes radians.
class Angle {
  public:
    constexpr Angle() = default;
    static constexpr Angle degrees(double d) { return Angle(d); }
    static constexpr Angle radians(double r) { return Angle(r * 180.0 / std::numbers::pi); }
    constexpr double in_degrees() const { return degrees_; }
    constexpr double in_radians() const { return degrees_ * std::numbers::pi / 180.0; }
    friend constexpr auto operator<=>(Angle, Angle) = default;
    constexpr Angle operator-() const { return Angle(-degrees_); }

  private:
    explicit constexpr Angle(double degrees) : degrees_(degrees) {}
    double degrees_ = 0;
};

/// Moisture content: mass of water in percent of the oven-dry mass of the wood.
class Moisture {
  public:
    constexpr Moisture() = default;
    static constexpr Moisture percent(double p) { return Moisture(p); }
    constexpr double in_percent() const { return percent_; }
    friend constexpr auto operator<=>(Moisture, Moisture) = default;

  private:
    explicit constexpr Moisture(double percent) : percent_(percent) {}
    double percent_ = 0;
};

/// Change of a length divided by the length; positive when the wood swells.
class Strain {
  public:
    constexpr Strain() = default;
    static constexpr Strain ratio(double r) { return Strain(r); }
    constexpr double in_ratio() const { return ratio_; }
    friend constexpr auto operator<=>(Strain, Strain) = default;
    friend constexpr Strain operator+(Strain a, Strain b) { return Strain(a.ratio_ + b.ratio_); }
    friend constexpr Strain operator-(Strain a, Strain b) { return Strain(a.ratio_ - b.ratio_); }

  private:
    explicit constexpr Strain(double ratio) : ratio_(ratio) {}
    double ratio_ = 0;
};

} // namespace rayfleck::measure
