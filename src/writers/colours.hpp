#pragma once
// What each ink looks like. All but pale and white stay darker than mid-grey, so a sheet copied in black and
// white loses nothing; the shades themselves are a house choice.

#include "drawing/sheet.hpp"

namespace rayfleck::writers {

/// Shares of red, green and blue light, 0 to 1.
struct Colour {
    double red = 0, green = 0, blue = 0;
    friend bool operator==(const Colour&, const Colour&) = default;
};

constexpr Colour colour_of(drawing::Ink ink) {
    switch (ink) {
    case drawing::Ink::black:
        return {0, 0, 0};
    case drawing::Ink::grey:
        return {0.48, 0.48, 0.48};
    case drawing::Ink::red:
        return {0.70, 0.08, 0.08};
    case drawing::Ink::amber:
        return {0.66, 0.40, 0.00};
    case drawing::Ink::blue:
        return {0.10, 0.28, 0.60};
    case drawing::Ink::green:
        return {0.10, 0.42, 0.18};
    case drawing::Ink::pale:
        return {0.93, 0.92, 0.89};
    case drawing::Ink::white:
        return {1, 1, 1};
    }
    return {};
}

} // namespace rayfleck::writers
