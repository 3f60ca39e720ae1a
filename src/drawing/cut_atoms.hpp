#pragma once
// One cut as a feature, before equal cuts are put together: how each sort of cut is told. One file for each
// sort.

#include "drawing/part_features.hpp"

namespace rayfleck::drawing {

/// A feature with one place.
struct Atom {
    Feature feature;
    measure::Point at;            ///< low corner, or centre of a bore, in the gauge's frame
    std::array<bool, 3> placed{}; ///< which of the three places are told
    measure::Box box;             ///< round it, in the gauge's frame
};

/// What the cuts of one part are told with.
struct Telling {
    const Job& job;
    const joinery::Made& made;
    int part = 0;
    GaugeFrame gauge;

    std::string figure(double mm) const { return job.figure(mm); }
    std::string degrees(double angle) const;
    /// The body in the gauge's frame: the blank less what joints leave standing beyond it.
    measure::Box body() const;
    bool grown(int axis, bool far) const;
    /// A figure that stands in the words.
    void add(Feature& feature, const std::string& what, double value, const std::string& shown) const {
        feature.record.figures.push_back({what, value, shown});
    }
    /// A figure of a column; what is printed is settled with the table.
    void add(Feature& feature, const std::string& what, double value) const {
        feature.record.figures.push_back({what, value, figure(value)});
    }
};

/// Gives nothing for a box that is no box within the blank.
std::optional<Atom> hollow_atom(const Telling& telling, const piece::Cut& cut, const measure::Box& own);
Atom bore_atom(const Telling& telling, const piece::Cut& cut, const piece::BoreCut& bore);
/// Tenons, tongues and tails that the waste round them leaves; `taken` tells of each cut whether it is told
/// by them.
std::vector<Atom> tongue_atoms(const Telling& telling, std::vector<bool>& taken);
/// Shoulders that do not lie square, with the tenon that they leave.
std::vector<Atom> shoulder_atoms(const Telling& telling, std::vector<bool>& taken);
/// across_the_end  told as a cut across the end, whichever way it lies
std::optional<Atom> plane_atom(const Telling& telling, const piece::Cut& cut, const solid::Plane& own,
                               bool across_the_end = false);
std::optional<Atom> prism_atom(const Telling& telling, const piece::Cut& cut, const piece::PrismCut& prism);
std::vector<Atom> moulding_atoms(const Telling& telling);
Atom turned_atom(const Telling& telling, const piece::Cut& cut, const piece::TurnedCut& turned);
/// The blank, with its outline if it has one.
Feature blank_feature(const Telling& telling);

/// The profile with the round tenons, or the straight ends for square ones, that the blank has beyond it; x
/// from the near end.
std::vector<solid::Station> stations_with_what_stands(const Telling& telling,
                                                      std::vector<solid::Station> profile);
/// The outline of the body, drawn out where joints leave something standing beyond it; in the part's own
/// frame.
solid::Outline outline_with_what_stands(const Telling& telling);

/// `leaning 12.0° to the far end, 3.0° to the back`, with the two figures; for a direction into the wood
/// through a side across `axis`. Nothing to tell when it is square.
std::string leaning_words(const Telling& telling, Feature& feature, measure::Vector direction, int axis);

} // namespace rayfleck::drawing
