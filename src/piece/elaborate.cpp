// From trees to the piece: the order of the work.
//
// Names are gathered first, over all files; recipes are opened; then every part is placed, which works out
// whatever lines, values and other parts it hangs on. Requirements, joints and settings follow. No error
// stops the rest.

#include "piece/elaborate.hpp"

#include <algorithm>
#include <stdexcept>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

/// One instance as a part in its own scope; nothing when its place is unknown.
std::optional<Part> part_of(Elaboration& e, Instance& instance) {
    const Pose& pose = pose_of(e, instance);
    Part part;
    part.span = instance.part->header;
    for (const Scope* scope = instance.part->scope; scope != nullptr && scope->made != nullptr;
         scope = scope->made->scope) {
        const std::string& recipe = scope->made->says->recipe.text;
        if (e.shipped.contains(recipe) && !e.recipes.contains(recipe)) part.made_by = scope->made->header;
    }
    if (!pose.known) {
        // What is said of its wood may be faulty all the same.
        describe_wood(e, instance, part);
        return std::nullopt;
    }
    part.frame = pose.frame;
    part.length = pose.size[0];
    part.width = pose.size[1];
    part.thickness = pose.size[2];
    part.upright = pose.upright;
    if (const auto edge = looks_high(e, instance, pose.readings[1].direction, true))
        part.face_edge_high = *edge == pose.readings[1].high;
    describe_wood(e, instance, part);
    part.shaping = pose.trims;
    shape(e, instance, part);
    return part;
}

void make_parts(Elaboration& e, Scope& scope, Piece& piece) {
    const std::vector<PartRef> refs = all_parts(e, scope);
    if (static_cast<int>(refs.size()) > limits.parts) {
        e.error("too-many", refs.back().instance->part->header,
                "the piece has more than " + std::to_string(limits.parts) + " parts");
        return;
    }
    std::map<Instance*, std::optional<Part>> made;
    for (const PartRef& ref : refs) {
        auto found = made.find(ref.instance);
        if (found == made.end()) found = made.emplace(ref.instance, part_of(e, *ref.instance)).first;
        if (!found->second) continue;
        std::optional<Part> part = carried(e, ref, *found->second);
        if (!part) {
            for (const Direction d : directions)
                if (ref.flipped[static_cast<std::size_t>(index_of(d))] &&
                    ref.instance->part->scope->rods[static_cast<std::size_t>(index_of(d))].empty() &&
                    !e.lines_may_be_lost)
                    e.error("no-rod", ref.instance->part->header,
                            "without a rod " + text(d) + " there is nothing to mirror `" +
                                ref.instance->part->name + "` about")
                        .mend = "lay out a rod, as in `rod " + text(d) + " " + text(side_of(d, false)) +
                                " 0, " + text(side_of(d, true)) + " 400`";
            continue;
        }
        part->id = static_cast<int>(piece.parts.size());
        part->name = ref.name;
        part->base = ref.base;
        part->copy = ref.copy;
        piece.parts.push_back(std::move(*part));
    }
}

void make_rods(Elaboration& e, Scope& scope, Piece& piece) {
    for (const Direction d : directions) {
        Rod rod;
        rod.direction = d;
        for (const auto& line : scope.rods[static_cast<std::size_t>(index_of(d))])
            if (const auto at = line_at(e, *line)) rod.lines.push_back({line->name, *at, line->span});
        std::stable_sort(rod.lines.begin(), rod.lines.end(),
                         [](const Line& a, const Line& b) { return a.at < b.at; });
        piece.rods.push_back(std::move(rod));
    }
}

/// Values and lines that nothing used may still be faulty.
void work_out_all(Elaboration& e) {
    for (std::size_t i = 0; i < e.scopes.size(); ++i) {
        Scope& scope = *e.scopes[i];
        for (const auto& [name, value] : scope.values) value_of(e, *value);
        for (const auto& rod : scope.rods)
            for (const auto& line : rod) line_at(e, *line);
    }
}

void collect_recipes(Elaboration& e) {
    for (const int file : e.project.recipes) {
        if (file < 0 || file >= static_cast<int>(e.project.trees.size())) continue;
        for (const syntax::Statement& statement : e.project.trees[static_cast<std::size_t>(file)].statements)
            if (const auto* recipe = std::get_if<syntax::RecipeIs>(&statement.says))
                e.shipped.emplace(recipe->name.text, &statement);
    }
}

const syntax::SizesAre* table_of(const Project& project, int file, std::vector<int>& seen) {
    if (file < 0 || file >= static_cast<int>(project.trees.size()) ||
        std::find(seen.begin(), seen.end(), file) != seen.end())
        return nullptr;
    seen.push_back(file);
    for (const syntax::Statement& statement : project.trees[static_cast<std::size_t>(file)].statements) {
        if (const auto* sizes = std::get_if<syntax::SizesAre>(&statement.says)) return sizes;
        if (const auto* bring = std::get_if<syntax::BringIn>(&statement.says))
            if (const auto found = project.brought.find(bring->path.text); found != project.brought.end())
                if (const auto* sizes = table_of(project, found->second, seen)) return sizes;
    }
    return nullptr;
}

} // namespace

std::vector<std::string> size_names(const Project& project) {
    std::vector<std::string> names;
    std::vector<int> seen;
    if (const syntax::SizesAre* table = table_of(project, project.main, seen))
        for (const auto& row : table->rows)
            if (std::find(names.begin(), names.end(), row.name.text) == names.end())
                names.push_back(row.name.text);
    return names;
}

std::vector<std::shared_ptr<const wood::OwnWood>> own_woods(const Project& project, int file,
                                                            findings::Findings& findings) {
    Elaboration e(project, findings);
    read_own_woods(e, file);
    findings.sort();
    return e.own_woods;
}

Piece elaborate(const Project& project, const std::optional<std::string>& size,
                findings::Findings& findings) {
    Elaboration e(project, findings);
    Piece piece;
    if (project.main < 0 || project.main >= static_cast<int>(project.trees.size())) {
        e.error("no-text", {}, "there is no text to elaborate");
        for (const Direction d : directions) piece.rods.push_back({d, {}});
        return piece;
    }
    e.size = size;
    note_losses(e);
    read_units(e);
    piece.manner = e.manner;
    collect_recipes(e);
    gather_own_woods(e);
    piece.shop.woods = e.own_woods;
    e.scopes.push_back(std::make_unique<Scope>());
    Scope& scope = *e.scopes.front();
    e.gathered.insert(project.main);
    gather(e, scope, project.trees[static_cast<std::size_t>(project.main)].statements);
    spread_lines(e, scope);
    if (size && e.size_name.empty() && !e.values_may_be_lost) {
        Span start;
        start.file = project.main;
        e.error("unknown-size", start,
                "the piece has no table of sizes, so there is no size `" + *size + "`");
    }
    for (std::size_t i = 0; i < scope.mades.size(); ++i) open_recipe(e, *scope.mades[i]);
    piece.size_name = e.size_name;

    work_out_all(e);
    make_rods(e, scope, piece);
    make_parts(e, scope, piece);
    read_requirements(e, scope);
    std::map<std::string, int> ids;
    for (const Part& part : piece.parts) ids[part.name] = part.id;
    read_joins(e, scope, ids, piece);
    read_settings(e, scope, piece);
    findings.sort();
    return piece;
}

measure::Box box_of(const Part& part) {
    const double l = part.length.value(), w = part.width.value(), t = part.thickness.value();
    measure::Box box{part.frame.origin, part.frame.origin};
    for (int i = 0; i < 8; ++i) {
        const Point p = part.frame.out({i & 1 ? l : 0, i & 2 ? w : 0, i & 4 ? t : 0});
        for (int d = 0; d < 3; ++d) {
            box.low[d] = std::min(box.low[d], p[d]);
            box.high[d] = std::max(box.high[d], p[d]);
        }
    }
    return box;
}

} // namespace rayfleck::piece
