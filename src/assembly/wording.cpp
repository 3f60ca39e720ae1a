// Sentences are made for moves that differ in nothing but the copy; so a row of slats is one sentence.

#include "assembly/wording.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>

namespace rayfleck::assembly {
namespace {

using measure::norm;

const piece::Part& part_of(const joinery::Model& model, int part) {
    return *model.made[static_cast<std::size_t>(part)].part;
}

std::string joined(const std::vector<std::string>& words) {
    std::string all;
    for (std::size_t i = 0; i < words.size(); ++i)
        all += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    return all;
}

void add_once(std::vector<std::string>& words, const std::string& word) {
    if (std::find(words.begin(), words.end(), word) == words.end()) words.push_back(word);
}
void add_once(std::vector<int>& parts, int part) {
    if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
}

/// Where it comes from, when it moves along one of the piece's axes: `above`.
std::string from_where(Vector direction) {
    constexpr const char* words[3][2] = {
        {"the right", "the left"}, {"the back", "the front"}, {"above", "below"}};
    for (int axis = 0; axis < 3; ++axis)
        if (std::abs(direction[axis]) > 0.999) return words[axis][direction[axis] > 0];
    return "";
}

bool starts(const std::string& kind, std::string_view with) {
    return kind.compare(0, with.size(), with) == 0;
}

/// The copy of a sub-assembly that consists of exactly these parts.
const SubAssembly* sub_of(const Order& order, const std::vector<int>& parts) {
    for (const SubAssembly& sub : order.sub_assemblies)
        for (const auto& copy : sub.copies)
            if (copy == parts) return &sub;
    return nullptr;
}

std::string called(const SubAssembly& sub) {
    return sub.name.size() == 1 ? "sub-assembly " + sub.name : sub.name;
}

/// What one or several moves say when only the copies differ.
struct Sentence {
    std::string verb, preposition, tail;
    std::vector<std::string> from; ///< `the left`, `above`: where they come from
    std::vector<int> movers;       ///< single parts
    std::vector<std::string> subs; ///< names of sub-assemblies, one for each that moves
    std::vector<int> onto;
    std::vector<std::string> kinds;

    bool same_but_for_copies(const Sentence& other, const joinery::Model& model) const {
        const auto name = [&](const Sentence& s) {
            return s.movers.empty() ? s.subs.front() : part_of(model, s.movers.front()).base;
        };
        return verb == other.verb && preposition == other.preposition && tail == other.tail &&
               movers.empty() == other.movers.empty() && name(*this) == name(other) && kinds == other.kinds;
    }
};

/// How parts are named in a step: in one that is done several times by what they are, without the words that
/// tell this copy.
class Naming {
  public:
    Naming(const joinery::Model& model, const Step& step, const Order& order)
        : model_(model), several_(step.copies > 1) {
        if (!several_) return;
        const SubAssembly& sub = order.sub_assemblies[static_cast<std::size_t>(step.sub_assembly)];
        own_words_ = shared_name(model, sub.copies.front());
    }
    std::string operator()(const std::vector<int>& parts) const {
        if (!several_) return named(model_, parts);
        std::vector<std::string> bases;
        std::map<std::string, int> count;
        for (const int p : parts) {
            std::string base = part_of(model_, p).base;
            if (!own_words_.empty() && starts(base, own_words_ + " ")) base.erase(0, own_words_.size() + 1);
            add_once(bases, base);
            ++count[base];
        }
        for (std::string& base : bases)
            if (count[base] > 1) base += " (" + std::to_string(count[base]) + " off)";
        return joined(bases);
    }

  private:
    const joinery::Model& model_;
    bool several_;
    std::string own_words_;
};

std::string text_of(const Sentence& sentence, const Naming& named) {
    std::string who = named(sentence.movers);
    if (!sentence.subs.empty()) {
        who = sentence.subs.front();
        if (sentence.subs.size() > 1) who += " (" + std::to_string(sentence.subs.size()) + " off)";
    }
    std::string text = sentence.verb + " " + who;
    if (!sentence.onto.empty()) text += " " + sentence.preposition + " " + named(sentence.onto);
    std::string kinds;
    for (const std::string& kind : sentence.kinds) kinds += (kinds.empty() ? "" : "; ") + kind;
    if (!kinds.empty()) text += " (" + kinds + ")";
    text += sentence.tail;
    if (!sentence.from.empty()) text += ", from " + joined(sentence.from);
    return text;
}

/// Hinges and the like that the text names go from the one to the other.
bool is_tied_by_hardware(const Move& move, const joinery::Model& model) {
    const auto among = [](const std::vector<int>& some, const std::vector<int>& all) {
        return std::any_of(some.begin(), some.end(),
                           [&](int p) { return std::binary_search(all.begin(), all.end(), p); });
    };
    return std::any_of(model.hardware.begin(), model.hardware.end(), [&](const joinery::HardwareItem& item) {
        return item.from == "stated" && among(item.parts, move.parts) && among(item.parts, move.onto);
    });
}

/// What the move says of its joints that are held in that way; nothing when there are none.
void say(std::vector<Sentence>& all, const Move& move, Hold hold, const Order& order, const Ways& ways) {
    const joinery::Model& model = ways.model();
    const PartSet movers = PartSet::of(ways.parts(), move.parts);
    Sentence sentence;
    bool goes_in = false, buttons = false, slots = false, screws = false, laid_on = true;
    for (const int j : move.joints) {
        const Bond& bond = ways.bonds()[static_cast<std::size_t>(j)];
        if (bond.hold != hold) continue;
        const std::string& kind = model.joints[static_cast<std::size_t>(j)].kind;
        const bool a_moves = movers.has(bond.a);
        goes_in = goes_in || a_moves;
        buttons = buttons || kind == "buttons";
        slots = slots || kind == "slotted screws";
        screws = screws || kind == "screws";
        laid_on = laid_on && bond.laid_on;
        add_once(sentence.onto, a_moves ? bond.b : bond.a);
        if (kind != "glue" && kind != "buttons" && kind != "screws") add_once(sentence.kinds, kind);
    }
    if (sentence.onto.empty() && hold != Hold::loose) return;
    std::sort(sentence.onto.begin(), sentence.onto.end());
    switch (hold) {
    case Hold::glued:
        sentence.verb = "Glue";
        sentence.preposition = laid_on ? "on" : goes_in ? "into" : "onto";
        break;
    case Hold::fastened:
        sentence.verb = buttons ? "Hold" : screws || slots ? "Screw" : "Peg";
        sentence.preposition = "to";
        if (buttons) sentence.tail = " with buttons";
        break;
    case Hold::dry:
        sentence.verb = "Fit";
        sentence.preposition = goes_in ? "into" : "over";
        sentence.tail = ", dry";
        break;
    case Hold::loose:
        sentence.verb = is_tied_by_hardware(move, model) ? "Fix" : "Set";
        sentence.tail = " in place";
        break;
    }
    if (hold == move.hold)
        if (const std::string from = from_where(move.direction); !from.empty()) sentence.from = {from};
    if (move.parts.size() == 1)
        sentence.movers = move.parts;
    else if (const SubAssembly* sub = sub_of(order, move.parts))
        sentence.subs.push_back(called(*sub));
    else
        sentence.movers = move.parts;
    for (Sentence& known : all)
        if (known.same_but_for_copies(sentence, model)) {
            for (const int p : sentence.movers) add_once(known.movers, p);
            known.subs.insert(known.subs.end(), sentence.subs.begin(), sentence.subs.end());
            for (const int p : sentence.onto) add_once(known.onto, p);
            for (const std::string& from : sentence.from) add_once(known.from, from);
            std::sort(known.onto.begin(), known.onto.end());
            return;
        }
    all.push_back(std::move(sentence));
}

/// Panels that sit in a groove without glue and must be able to move.
std::vector<int> floating(const Step& step, const Order& order, const Ways& ways) {
    std::vector<int> panels;
    for (const int m : step.moves)
        for (const int j : order.moves[static_cast<std::size_t>(m)].joints) {
            const joinery::Joint& joint = ways.model().joints[static_cast<std::size_t>(j)];
            const wood::Species* species = part_of(ways.model(), joint.a).species;
            if (ways.bonds()[static_cast<std::size_t>(j)].hold == Hold::dry && starts(joint.kind, "groove") &&
                species != nullptr && !species->is_sheet())
                add_once(panels, joint.a);
        }
    std::sort(panels.begin(), panels.end());
    return panels;
}

/// A move that closes a ring of glued joints: two of them at least, in parts that already hang together.
bool closes_a_frame(const Step& step, const Order& order, const Ways& ways) {
    for (const int m : step.moves) {
        const Move& move = order.moves[static_cast<std::size_t>(m)];
        std::vector<int> met;
        for (const int j : move.joints) {
            const Bond& bond = ways.bonds()[static_cast<std::size_t>(j)];
            if (class_of(bond) != Class::let_in) continue;
            add_once(met, std::binary_search(move.onto.begin(), move.onto.end(), bond.a) ? bond.a : bond.b);
        }
        if (met.size() > 1) return true;
    }
    return false;
}

} // namespace

std::string named(const joinery::Model& model, const std::vector<int>& parts) {
    std::vector<std::string> bases;
    std::map<std::string, std::vector<int>> of_base;
    for (const int p : parts) {
        const std::string& base = part_of(model, p).base;
        add_once(bases, base);
        of_base[base].push_back(p);
    }
    std::vector<std::string> words;
    for (const std::string& base : bases) {
        const std::vector<int>& some = of_base[base];
        words.push_back(some.size() == 1 ? part_of(model, some.front()).name
                                         : base + " (" + std::to_string(some.size()) + " off)");
    }
    return joined(words);
}

std::string shared_name(const joinery::Model& model, const std::vector<int>& parts) {
    std::vector<std::string> shared;
    bool first = true, differ = false;
    for (const int p : parts) {
        std::istringstream in(part_of(model, p).base);
        std::vector<std::string> words;
        for (std::string word; in >> word;) words.push_back(word);
        if (first) {
            shared = words;
        } else {
            std::size_t same = 0;
            while (same < shared.size() && same < words.size() && shared[same] == words[same]) ++same;
            differ = differ || same < words.size() || same < shared.size();
            shared.resize(same);
        }
        first = false;
    }
    // What is left over may only tell where: `long` of long apron and long panel is no name.
    for (const char* where : {"long",  "short",  "low",   "high",  "top",   "bottom", "front", "back", "left",
                              "right", "inner",  "outer", "upper", "lower", "middle", "other", "side", "end",
                              "wide",  "narrow", "small", "large", "hind",  "fore",   "cross"})
        if (!shared.empty() && shared.back() == where) return "";
    if (!differ || shared.empty()) return "";
    std::string name;
    for (const std::string& word : shared) name += (name.empty() ? "" : " ") + word;
    // `peg` of peg and peg rail names one of its parts.
    for (const int p : parts)
        if (part_of(model, p).base == name) return "";
    return name;
}

void put_into_words(Step& step, const Order& order, const Ways& ways, std::vector<int>& warned) {
    const joinery::Model& model = ways.model();
    const Naming naming(model, step, order);
    std::vector<Sentence> sentences;
    bool at_once = false;
    for (const int m : step.moves) {
        const Move& move = order.moves[static_cast<std::size_t>(m)];
        at_once = at_once || move.at_once >= 0;
        if (move.joints.empty()) say(sentences, move, Hold::loose, order, ways);
        for (const Hold hold : {Hold::glued, Hold::fastened, Hold::dry})
            say(sentences, move, hold, order, ways);
    }
    std::vector<std::string> who;
    std::vector<int> single;
    for (const int m : step.moves) {
        const Move& move = order.moves[static_cast<std::size_t>(m)];
        const SubAssembly* sub = move.parts.size() > 1 ? sub_of(order, move.parts) : nullptr;
        if (sub != nullptr)
            add_once(who, called(*sub));
        else
            single.insert(single.end(), move.parts.begin(), move.parts.end());
    }
    if (!single.empty()) add_once(who, naming(single));
    step.title = joined(who);
    if (step.sub_assembly >= 0) {
        const SubAssembly& sub = order.sub_assemblies[static_cast<std::size_t>(step.sub_assembly)];
        step.title = called(sub) + (step.copies > 1 ? ", " + std::to_string(step.copies) + " times" : "") +
                     ": " + step.title;
    }
    step.title.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(step.title.front())));
    for (const Sentence& sentence : sentences) step.words.push_back(text_of(sentence, naming) + ".");
    if (at_once) step.words.push_back("All at once, each a little at a time.");
    std::vector<int> panels = floating(step, order, ways);
    panels.erase(
        std::remove_if(panels.begin(), panels.end(),
                       [&](int p) { return std::find(warned.begin(), warned.end(), p) != warned.end(); }),
        panels.end());
    warned.insert(warned.end(), panels.begin(), panels.end());
    if (!panels.empty())
        step.words.push_back("No glue in the grooves of " + naming(panels) +
                             ": the wood must be free to move.");
    if (closes_a_frame(step, order, ways)) step.words.push_back("Measure the diagonals: they must be equal.");
    std::vector<int> told;
    for (const int m : step.moves)
        for (const int j : order.moves[static_cast<std::size_t>(m)].joints) {
            const int wanted = model.joints[static_cast<std::size_t>(j)].wanted;
            if (std::find(told.begin(), told.end(), wanted) != told.end()) continue;
            told.push_back(wanted);
            if (wanted < 0 || wanted >= static_cast<int>(model.piece->joints.size())) continue;
            for (const piece::Note& note : model.piece->joints[static_cast<std::size_t>(wanted)].notes)
                step.words.push_back(note.text);
        }
}

} // namespace rayfleck::assembly
