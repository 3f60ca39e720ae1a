#pragma once
// Pieces for the tests of joinery: written as text, read by the rooms before this one, built into a model.
//
// Volumes and areas in the tests are worked out by hand from the sizes in the text; a case states only what
// it needs.

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

#include "findings/show.hpp"
#include "joinery/model.hpp"
#include "piece/elaborate.hpp"
#include "solid/solid.hpp"
#include "source/text.hpp"
#include "syntax/parse.hpp"

namespace rayfleck::joinery {

/// A piece and its model; the piece stays where it is, because the model points into it.
struct Built {
    source::Texts texts;
    findings::Findings findings;
    piece::Piece piece;
    Model model;

    const Made& made(const std::string& name) const {
        for (const Made& made : model.made)
            if (made.part->name == name) return made;
        throw std::runtime_error("no part " + name);
    }
    double volume(const std::string& name) const { return made(name).solid.volume; }
    double all_volume() const {
        double sum = 0;
        for (const Made& made : model.made) sum += made.solid.volume;
        return sum;
    }
    std::size_t clashes() const { return solid::clashes(model.placed()).size(); }
    /// Area of all contacts of two parts that are held in this way.
    double area(const std::string& a, const std::string& b, Hold hold) const {
        double sum = 0;
        for (const Contact& contact : model.contacts)
            if (contact.hold == hold && is_between(contact, a, b)) sum += contact.area;
        return sum;
    }
    std::vector<const Contact*> contacts(const std::string& a, const std::string& b) const {
        std::vector<const Contact*> found;
        for (const Contact& contact : model.contacts)
            if (is_between(contact, a, b)) found.push_back(&contact);
        return found;
    }
    double size(const std::string& what, std::size_t joint = 0) const {
        for (const Size& size : model.joints.at(joint).sizes)
            if (size.what == what) return size.value;
        throw std::runtime_error("no size " + what);
    }
    std::string from(const std::string& what, std::size_t joint = 0) const {
        for (const Size& size : model.joints.at(joint).sizes)
            if (size.what == what) return size.from;
        throw std::runtime_error("no size " + what);
    }
    /// All findings as `name: message`, one a line.
    std::string said() const {
        std::string all;
        for (const findings::Finding& finding : findings) all += finding.name + ": " + finding.message + "\n";
        return all;
    }
    bool sound() const {
        return findings.empty() && std::all_of(model.made.begin(), model.made.end(), [](const Made& made) {
                   return made.solid.watertight() && made.solid.bodies == 1;
               });
    }

  private:
    bool is_between(const Contact& contact, const std::string& a, const std::string& b) const {
        const std::string& one = model.made[static_cast<std::size_t>(contact.a)].part->name;
        const std::string& other = model.made[static_cast<std::size_t>(contact.b)].part->name;
        return (one == a && other == b) || (one == b && other == a);
    }
};

/// Rods with a line every so often, so that cases can place parts by bare numbers.
inline const std::string on_rods =
    "piece \"case\"\nunits mm\nclimate 6% to 12% moisture\nrod across left 0, right 1000\n"
    "rod deep front 0, back 1000\nrod up floor 0, ceiling 1000\n";

inline std::unique_ptr<Built> build_text(const std::string& text) {
    auto built = std::make_unique<Built>();
    const int file = built->texts.add(source::Text("case.fleck", text));
    piece::Project project;
    project.trees.push_back(syntax::parse(built->texts, file, built->findings));
    project.main = 0;
    built->piece = piece::elaborate(project, std::nullopt, built->findings);
    built->model = build(built->piece, built->findings);
    return built;
}
inline std::unique_ptr<Built> build_case(const std::string& text) { return build_text(on_rods + text); }

} // namespace rayfleck::joinery
