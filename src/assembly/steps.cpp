// A step is a run of moves that a maker makes in one go: the same way in, the same hold, onto the same stand.
// A small frame whose members all come along one line is one step as a whole. Sub-assemblies that are made
// alike, of parts of the same sizes by the same joints, are told once with the number of times.

#include "assembly/steps.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "assembly/wording.hpp"

namespace rayfleck::assembly {
namespace {

using measure::dot;

/// So many moves of like parts at most in one picture.
constexpr std::size_t most_moves = 40;
/// And of so many different names.
constexpr std::size_t most_names = 6;
/// A sub-assembly of so many parts at most is one step, if all come along one line.
constexpr std::size_t small = 6;

/// What makes two sub-assemblies alike: sizes and number of cuts of the parts, kinds of joints between them.
struct Likeness {
    std::vector<std::tuple<measure::Length, measure::Length, measure::Length, std::size_t>> parts;
    std::vector<std::string> joints;
    friend bool operator==(const Likeness&, const Likeness&) = default;
};

Likeness likeness_of(const std::vector<int>& parts, const Ways& ways) {
    Likeness likeness;
    for (const int p : parts) {
        const joinery::Made& made = ways.model().made[static_cast<std::size_t>(p)];
        likeness.parts.emplace_back(made.thickness, made.width, made.length, made.cuts.size());
    }
    std::sort(likeness.parts.begin(), likeness.parts.end());
    const PartSet set = PartSet::of(ways.parts(), parts);
    for (const joinery::Joint& joint : ways.model().joints)
        if (set.has(joint.a) && set.has(joint.b)) likeness.joints.push_back(joint.kind);
    std::sort(likeness.joints.begin(), likeness.joints.end());
    return likeness;
}

class Writing {
  public:
    Writing(const Ways& ways, Order& order) : ways_(ways), order_(order) {}

    void all(const Node& tree) {
        work_on(tree, -1, true);
        for (Step& step : order_.steps)
            if (step.sub_assembly >= 0)
                step.copies = static_cast<int>(
                    order_.sub_assemblies[static_cast<std::size_t>(step.sub_assembly)].copies.size());
        hand_out_hardware();
        for (std::size_t i = 0; i < order_.steps.size(); ++i) {
            Step& step = order_.steps[i];
            step.number = static_cast<int>(i) + 1;
            if (step.sub_assembly >= 0)
                step.copies = static_cast<int>(
                    order_.sub_assemblies[static_cast<std::size_t>(step.sub_assembly)].copies.size());
            put_into_words(step, order_, ways_, warned_);
        }
    }

  private:
    /// One link of the chain from the first part to the whole.
    struct Link {
        const Node* node = nullptr;
        std::vector<int> moves; ///< into Order::moves, once they are written
    };

    static bool made_first(const Node& node) { return node.breaks >= Class::laid_on; }

    /// Writes moves and, if told, steps of a node.
    void work_on(const Node& node, int sub_assembly, bool with_steps) {
        std::vector<Link> chain;
        const Node* start = &node;
        for (; start->base; start = start->base.get()) {
            // A base that is made like what comes to it later (the other end frame) is made like that one.
            if (!chain.empty() && is_made_like_a_coming(*start, chain)) break;
            chain.push_back({start, {}});
        }
        std::reverse(chain.begin(), chain.end());
        for (const Link& link : chain)
            if (made_first(*link.node)) make_comings(*link.node, with_steps);
        if (start->base) make(*start, with_steps);
        std::size_t told = 0;
        const bool one_step = sub_assembly >= 0 && fits_one_step(chain);
        for (std::size_t i = 0; i < chain.size(); ++i) {
            if (!made_first(*chain[i].node)) {
                // What is made now stands before its own move, behind all that came before.
                if (with_steps && has_new_sub_assembly(*chain[i].node))
                    tell(chain, told, i, sub_assembly, one_step), told = i;
                make_comings(*chain[i].node, with_steps);
            }
            for (const Coming& coming : chain[i].node->comings) {
                chain[i].moves.push_back(static_cast<int>(order_.moves.size()));
                order_.moves.push_back(coming.move);
            }
        }
        if (with_steps) tell(chain, told, chain.size(), sub_assembly, one_step);
    }

    bool has_new_sub_assembly(const Node& node) const {
        return std::any_of(node.comings.begin(), node.comings.end(), [&](const Coming& coming) {
            return coming.node->base &&
                   std::find(likenesses_.begin(), likenesses_.end(),
                             likeness_of(coming.node->parts, ways_)) == likenesses_.end();
        });
    }

    bool is_made_like_a_coming(const Node& node, const std::vector<Link>& chain) const {
        const Likeness likeness = likeness_of(node.parts, ways_);
        return std::any_of(chain.begin(), chain.end(), [&](const Link& link) {
            return std::any_of(
                link.node->comings.begin(), link.node->comings.end(), [&](const Coming& coming) {
                    return coming.node->parts.size() == node.parts.size() && coming.node->base &&
                           likeness_of(coming.node->parts, ways_) == likeness;
                });
        });
    }

    /// The sub-assemblies that come in a link.
    void make_comings(const Node& node, bool with_steps) {
        for (const Coming& coming : node.comings)
            if (coming.node->base) make(*coming.node, with_steps);
    }

    void make(const Node& node, bool with_steps) {
        Likeness likeness = likeness_of(node.parts, ways_);
        const auto known = std::find(likenesses_.begin(), likenesses_.end(), likeness);
        if (known != likenesses_.end()) {
            const int number = static_cast<int>(known - likenesses_.begin());
            work_on(node, number, false);
            order_.sub_assemblies[static_cast<std::size_t>(number)].copies.push_back(node.parts);
            return;
        }
        // Its own sub-assemblies come first, so its number is given now and its name is kept in order.
        const int number = static_cast<int>(order_.sub_assemblies.size());
        likenesses_.push_back(std::move(likeness));
        order_.sub_assemblies.push_back({"", {node.parts}});
        work_on(node, number, with_steps);
        order_.sub_assemblies[static_cast<std::size_t>(number)].name = name_for(node.parts);
    }

    std::string name_for(const std::vector<int>& parts) {
        const std::string shared = shared_name(ways_.model(), parts);
        const bool taken = std::any_of(order_.sub_assemblies.begin(), order_.sub_assemblies.end(),
                                       [&](const SubAssembly& sub) { return sub.name == shared; });
        if (!shared.empty() && !taken) return shared;
        // I and O are left out, as on drawings.
        static const std::string letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
        const std::size_t n = letters_used_++;
        return n < letters.size()
                   ? std::string(1, letters[n])
                   : std::string(1, letters[n % letters.size()]) + std::to_string(n / letters.size());
    }

    static bool fits_one_step(const std::vector<Link>& chain) {
        if (chain.empty() || chain.size() >= small) return false;
        const Vector line = chain.front().node->comings.front().move.direction;
        for (const Link& link : chain) {
            if (link.node->comings.size() != 1 || !made_first(*link.node)) return false;
            if (std::abs(dot(link.node->comings.front().move.direction, line)) < 0.999) return false;
        }
        return true;
    }

    /// Names of the parts that come in some links.
    std::size_t names_in(const std::vector<Link>& chain, std::size_t from, std::size_t past) const {
        std::vector<std::string> names;
        for (std::size_t i = from; i < past; ++i)
            for (const Coming& coming : chain[i].node->comings)
                names.push_back(
                    ways_.model().made[static_cast<std::size_t>(coming.move.parts.front())].part->base);
        std::sort(names.begin(), names.end());
        return static_cast<std::size_t>(std::unique(names.begin(), names.end()) - names.begin());
    }

    /// The link goes on with what the one before it did.
    bool goes_on(const Link& before, const Link& link) const {
        if (link.node->comings.size() != 1 || before.node->comings.size() != 1) return false;
        const Coming &one = before.node->comings.front(), &other = link.node->comings.front();
        if (one.move.hold != other.move.hold) return false;
        const bool single = one.move.parts.size() == 1 && other.move.parts.size() == 1;
        const bool alike = likeness_of(one.move.parts, ways_) == likeness_of(other.move.parts, ways_);
        if (!single && !alike) return false;
        // The second of a pair comes from the other side.
        const double turn = dot(one.move.direction, other.move.direction);
        if (turn < 0.999 && !(alike && turn < -0.999)) return false;
        // The member that closes a frame onto what came just before it is a step of its own.
        const PartSet came = PartSet::of(ways_.parts(), one.move.parts);
        const bool onto_that = std::any_of(other.move.joints.begin(), other.move.joints.end(), [&](int j) {
            const Bond& bond = ways_.bonds()[static_cast<std::size_t>(j)];
            return came.has(bond.a) || came.has(bond.b);
        });
        const auto base = [&](const Move& move) {
            return ways_.model().made[static_cast<std::size_t>(move.parts.front())].part->base;
        };
        return !onto_that || base(one.move) == base(other.move);
    }

    void tell(const std::vector<Link>& chain, std::size_t from, std::size_t past, int sub_assembly,
              bool one_step) {
        for (std::size_t i = from; i < past;) {
            std::size_t end = i + 1;
            std::size_t moves = chain[i].moves.size();
            while (end < past && (one_step || (goes_on(chain[end - 1], chain[end]) && moves < most_moves &&
                                               names_in(chain, i, end + 1) <= most_names)))
                moves += chain[end++].moves.size();
            Step step;
            step.sub_assembly = sub_assembly;
            step.standing = order_.moves[static_cast<std::size_t>(chain[i].moves.front())].onto;
            for (; i < end; ++i)
                step.moves.insert(step.moves.end(), chain[i].moves.begin(), chain[i].moves.end());
            for (const int m : step.moves)
                step.hold = std::max(step.hold, order_.moves[static_cast<std::size_t>(m)].hold);
            order_.steps.push_back(std::move(step));
        }
    }

    /// Joints' own fittings go to the steps that close them; what the text names goes to the last step that
    /// has to do with one of its parts.
    void hand_out_hardware() {
        const joinery::Model& model = ways_.model();
        for (const joinery::HardwareItem& item : model.hardware) {
            const PartSet parts = PartSet::of(ways_.parts(), item.parts);
            if (item.from == "stated") {
                Step* last = nullptr;
                for (Step& step : order_.steps)
                    for (const int m : step.moves)
                        if (last == nullptr || concerns(order_.moves[static_cast<std::size_t>(m)], parts))
                            last = &step;
                if (last != nullptr) last->hardware.push_back({item.name, item.count});
                continue;
            }
            const auto of_item = [&](const joinery::Joint& joint) {
                // A model made by hand may have joints that no text asked for.
                const auto& asked = model.piece->joints;
                const auto wanted = static_cast<std::size_t>(joint.wanted);
                const std::string& kind = wanted < asked.size() ? asked[wanted].kind : joint.kind;
                return kind == item.from && parts.has(joint.a) && parts.has(joint.b);
            };
            double all = 0;
            for (const joinery::Joint& joint : model.joints)
                if (of_item(joint)) all += weight_of(joint);
            for (Step& step : order_.steps) {
                double here = 0;
                for (const int m : step.moves)
                    for (const int j : order_.moves[static_cast<std::size_t>(m)].joints)
                        if (of_item(model.joints[static_cast<std::size_t>(j)]))
                            here += weight_of(model.joints[static_cast<std::size_t>(j)]);
                // The joints of the other copies are like those of the first.
                const int count =
                    all > 0 ? static_cast<int>(std::lround(item.count * here * step.copies / all)) : 0;
                if (count > 0) step.hardware.push_back({item.name, count});
            }
        }
    }

    /// Brings one of the parts, or joins something to it.
    bool concerns(const Move& move, const PartSet& parts) const {
        return std::any_of(move.parts.begin(), move.parts.end(), [&](int p) { return parts.has(p); }) ||
               std::any_of(move.joints.begin(), move.joints.end(), [&](int j) {
                   const Bond& bond = ways_.bonds()[static_cast<std::size_t>(j)];
                   return parts.has(bond.a) || parts.has(bond.b);
               });
    }

    /// How many fittings a joint takes of those that its kind takes in all.
    static double weight_of(const joinery::Joint& joint) {
        for (const joinery::Size& size : joint.sizes)
            if (size.what.starts_with("number of") || size.what == "keys") return size.value;
        return 1;
    }

    const Ways& ways_;
    Order& order_;
    std::vector<Likeness> likenesses_; ///< of each sub-assembly
    std::size_t letters_used_ = 0;
    std::vector<int> warned_; ///< panels of which it is said that they stay dry
};

} // namespace

void write_steps(const Node& tree, const Ways& ways, Order& order) { Writing(ways, order).all(tree); }

} // namespace rayfleck::assembly
