#pragma once
// The bench: where the joints of one piece are laid out before anything is carved.
//
// Each joint kind (one file each) asks its options, decides its sizes and then says four things: what is cut
// from either part, what of a part must stand beyond its body (tenon, tongue, tail), which contacts it holds
// and how, and what hardware it needs. Shoulders are not cut at once: all that stands at one end of a part is
// collected first, so that two tenons at one end, or the tongues at the corner of a panel, do not cut each
// other off.

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "joinery/meeting.hpp"
#include "joinery/model.hpp"
#include "wood/figure.hpp"

namespace rayfleck::joinery {

/// The options of one statement `join`, by their words.
class Options {
  public:
    explicit Options(const piece::JointWanted& wanted) : wanted_(&wanted) {}
    bool has(std::string_view word) const { return find(word) != nullptr; }
    /// The option that begins with the word; `glued` also finds `glued at`, `glued in the middle`.
    const piece::OptionGiven* find(std::string_view word) const;
    /// First length of the option, if it has one.
    std::optional<Length> length(std::string_view word) const;
    std::optional<double> number(std::string_view word) const;
    std::optional<std::string> quoted() const;

  private:
    const piece::JointWanted* wanted_;
};

/// What stands at one side of a part beyond its shoulder. Boxes are in the part's own frame; only their two
/// axes across the side are used, the rest is told as distances beyond the body's side.
struct Standing {
    LocalSide side;
    int joint = -1;
    std::string word;              ///< of the cuts that leave it: `tenon cheek`
    Box window;                    ///< the part of the section for which this joint answers
    double shoulder = 0;           ///< distance of the shoulder beyond the body's side; < 0: cut back
    std::optional<Plane> slanting; ///< shoulder plane in the part's own frame, when not square
    struct Tongue {
        Box section;   ///< what stays (other two axes)
        double to = 0; ///< as far as this beyond the body's side
    };
    std::vector<Tongue> tongues;
};

/// How a joint holds the places where its two parts touch.
struct HoldRule {
    int joint = -1;
    Hold hold = Hold::glued;
    std::vector<Vector> may_slide;
    double room = 0;
    std::vector<Point> held_at;
    /// Stretches along a direction of the piece that are held differently (glued in the middle only).
    struct Stretch {
        Vector along;
        double from = 0, to = 0; ///< dot(along, point), mm
        Hold hold = Hold::glued;
    };
    std::vector<Stretch> stretches;
};

/// One joint that is being made: A goes into B.
struct Pair {
    int a = 0, b = 0;
    const piece::JointWanted* wanted = nullptr;
    int wanted_index = 0;
};

class Bench {
  public:
    Bench(const piece::Piece& piece, Model& model, findings::Findings& findings);

    const piece::Piece& piece() const { return *piece_; }
    const piece::Part& part(int id) const { return piece_->parts[static_cast<std::size_t>(id)]; }
    /// Centre of all bodies, for `inside` and `outside`.
    Point centre() const { return centre_; }
    /// Direction of the piece in which a side lies; inside and outside as seen from the part's middle.
    Vector towards(syntax::Side side, int part_id) const;
    bool in_inches() const;
    /// A default that differs between metric and inch shops.
    Length either(Length metric, Length inch) const { return in_inches() ? inch : metric; }

    /// gives  the joint's index in the model
    int start(const Pair& pair, const std::string& kind, Vector assembly, Point at);
    std::size_t joint_count() const { return model_->joints.size(); }
    Joint& joint(int index) const { return model_->joints[static_cast<std::size_t>(index)]; }
    /// Notes a size, stated or from a rule, and gives it back.
    Length size(int joint, const std::string& what, std::optional<Length> stated, Length rule,
                const std::string& from) const;
    void note_size(int joint, const std::string& what, double value, const std::string& unit,
                   const std::string& from) const;

    void cut(int part_id, int joint, const std::string& word,
             std::variant<piece::PlaneCut, piece::EdgeCut, piece::BoreCut, piece::BoxCut, piece::PrismCut,
                          piece::TurnedCut>
                 shape,
             const std::string& remark = "");
    /// Takes a box given in the frame of part `in` away from part `from`: a BoxCut where axes agree, else a
    /// prism.
    void cut_box(int from, int joint, const std::string& word, int in, Box box,
                 const std::string& remark = "");
    /// Takes a prism (frame as seen from part `in`) away from part `from`.
    void cut_prism(int from, int joint, const std::string& word, int in, const Frame& frame,
                   const solid::Outline& outline, double low, double high, const std::string& remark = "");
    /// Bores part `part_id` from a point of the piece in a direction of the piece.
    void bore(int part_id, int joint, const std::string& word, Point from, Vector direction, double diameter,
              std::optional<double> deep, const std::string& remark = "");

    /// The blank must reach at least this far beyond the body's side.
    void grow(int part_id, LocalSide side, Length by);
    Length grown(int part_id, LocalSide side) const;
    void stand(int part_id, Standing standing);
    const std::vector<Standing>& standing(int part_id) const {
        return work_[static_cast<std::size_t>(part_id)].standing;
    }
    std::vector<piece::Cut>& cuts(int part_id) { return work_[static_cast<std::size_t>(part_id)].cuts; }
    const std::vector<piece::Cut>& cuts(int part_id) const {
        return work_[static_cast<std::size_t>(part_id)].cuts;
    }
    /// A profile of the part's end that takes the place of its square end (round tenon on a turned part).
    struct RoundEnd {
        LocalSide side;
        double radius = 0, from = 0, to = 0;
    };
    void round_end(int part_id, RoundEnd end) {
        work_[static_cast<std::size_t>(part_id)].round_ends.push_back(end);
    }
    const std::vector<RoundEnd>& round_ends(int part_id) const {
        return work_[static_cast<std::size_t>(part_id)].round_ends;
    }

    void hold(HoldRule rule) { rules_.push_back(std::move(rule)); }
    const std::vector<HoldRule>& rules() const { return rules_; }
    void hardware(const Pair& pair, const std::string& name, int count);

    /// A joint that cannot be made as asked.
    findings::Finding& refuse(const Pair& pair, const std::string& name, const std::string& message,
                              const std::string& mend);

    /// Movement of a part over a distance, along a direction of the piece, through the piece's climate: the
    /// greater of swelling and shrinking from the moisture at which it was made. mm, >= 0
    double movement(int part_id, Vector direction, double distance) const;

  private:
    struct Work {
        std::vector<piece::Cut> cuts;
        std::vector<Standing> standing;
        std::vector<RoundEnd> round_ends;
        Length grown[3][2];
    };
    const piece::Piece* piece_;
    Model* model_;
    findings::Findings* findings_;
    Point centre_;
    std::vector<Work> work_;
    std::vector<HoldRule> rules_;
};

/// How the pair meets; where A's section misses B the maker is told that this joint has no place.
std::optional<Meeting> meeting_for(Bench& bench, const Pair& pair, Prefer prefer);

/// Reads `glued`, `glued in the middle`, `glued at SIDE`, `dry` into the rule. Stretches lie along `along`
/// (piece's frame, unit) on either side of the middle of, or from an end of, the reach from `low` to `high`.
void read_glue(const Bench& bench, const Options& options, HoldRule& rule, Vector along, double low,
               double high);

/// Fits A's end to B's surface where that leans or has been tapered away; nothing where it is square and
/// touches.
void butt(Bench& bench, const Pair& pair, int joint, const Meeting& meeting);

/// "1/3 of the thickness of the piece that is cut, 20 mm; Practical Building Construction ..."
std::string from_rule(const wood::Proportion& rule);
std::string from_rule(const wood::Figure& rule);
/// A rule of ours that stands in no publication.
std::string from_custom(const std::string& words);

/// An axis rectangle as an outline, anticlockwise.
solid::Outline rectangle(double low_x, double low_y, double high_x, double high_y);
solid::Outline polygon(const std::vector<solid::Point2>& points);

/// Round the whole number of a size for a hardware name: `8`, `6.35`, `5/16`.
std::string hardware_size(const Bench& bench, double mm);

} // namespace rayfleck::joinery
