// The lumber plan as JSON: boards with what lies in them, steps at the machines, purchases, what is missing,
// sums.

#include "writers/lumber_json.hpp"
#include "writers/json_values.hpp"

namespace rayfleck::writers {
namespace {

std::string part_of(const std::vector<lumber::Source>& sources, std::size_t source, int part) {
    return sources[source].model->made[static_cast<std::size_t>(part)].part->name;
}

Json board_of(const lumber::Board& board, const std::vector<lumber::Source>& sources) {
    Json json{{"name", board.name},   {"on_hand", board.on_hand},
              {"mark", board.mark},   {"sheet", board.sheet},
              {"wood", board.wood},   {"sawn", board.sawn},
              {"stock", board.stock}, {"size", size(board.thickness, board.width, board.length)}};
    Json placements = Json::array(), cuts = Json::array(), offcuts = Json::array();
    for (const lumber::Placement& at : board.placements) {
        Json leaves = Json::array();
        for (const lumber::Leaf& leaf : at.leaves)
            leaves.push_back({{"reference", leaf.reference},
                              {"name", leaf.name},
                              {"instance", leaf.instance},
                              {"part", part_of(sources, at.source, leaf.part)},
                              {"rough_thickness_mm", mm(leaf.thickness)},
                              {"turn", leaf.turn}});
        Json one{{"reference", at.reference},
                 {"name", at.name},
                 {"instance", at.instance},
                 {"part", part_of(sources, at.source, at.part)},
                 {"x_mm", mm(at.x)},
                 {"y_mm", mm(at.y)},
                 {"along_mm", mm(at.along)},
                 {"across_mm", mm(at.across)},
                 {"rough_thickness_mm", mm(at.thickness)},
                 {"turned", at.turned},
                 {"leaves", std::move(leaves)}};
        if (sources.size() > 1) one["piece"] = sources[at.source].model->piece->title;
        placements.push_back(std::move(one));
    }
    for (const lumber::Cut& cut : board.cuts)
        cuts.push_back({{"number", cut.number},
                        {"direction", cut.direction == lumber::Cut::Direction::rip ? "rip" : "crosscut"},
                        {"work", cut.work == lumber::Cut::Work::square       ? "square"
                                 : cut.work == lumber::Cut::Work::straighten ? "straighten"
                                 : cut.work == lumber::Cut::Work::shave      ? "shave"
                                                                             : "sever"},
                        {"waste_beyond", cut.waste_beyond},
                        {"piece",
                         {{"x_mm", mm(cut.piece_x)},
                          {"y_mm", mm(cut.piece_y)},
                          {"length_mm", mm(cut.piece_length)},
                          {"width_mm", mm(cut.piece_width)}}},
                        {"line_mm", mm(cut.at)},
                        {"kerf_mm", mm(cut.kerf)},
                        {"fence_mm", mm(cut.fence)},
                        {"words", cut.words}});
    for (const lumber::Offcut& offcut : board.offcuts)
        offcuts.push_back({{"x_mm", mm(offcut.x)},
                           {"y_mm", mm(offcut.y)},
                           {"length_mm", mm(offcut.length)},
                           {"width_mm", mm(offcut.width)},
                           {"worth_keeping", offcut.worth_keeping}});
    json["placements"] = std::move(placements);
    json["cuts"] = std::move(cuts);
    json["offcuts"] = std::move(offcuts);
    json["flaws"] = Json::array();
    for (const lumber::Flaw& flaw : board.flaws)
        json["flaws"].push_back({{"kind", flaw.kind},
                                 {"round", flaw.round},
                                 {"x_mm", mm(flaw.x)},
                                 {"y_mm", mm(flaw.y)},
                                 {"length_mm", mm(flaw.length)},
                                 {"width_mm", mm(flaw.width)}});
    json["remarks"] = board.remarks;
    return json;
}

Json steps_of(const lumber::Plan& plan) {
    static constexpr const char* doing[] = {"square", "crosscut", "straighten", "shave",
                                            "rip",    "resaw",    "plane"};
    Json steps = Json::array();
    for (const lumber::Step& step : plan.steps) {
        Json on = Json::array();
        for (const lumber::Step::On& one : step.on)
            on.push_back({{"board", plan.boards[one.board].name}, {"cuts", one.cuts}, {"gets", one.gets}});
        steps.push_back({{"number", step.number},
                         {"doing", doing[static_cast<std::size_t>(step.doing)]},
                         {"machine", step.machine},
                         {"setting_mm", step.setting ? mm(*step.setting) : Json(nullptr)},
                         {"on", std::move(on)},
                         {"cautions", step.cautions},
                         {"words", step.words}});
    }
    return steps;
}

} // namespace

Json lumber_value(const lumber::Plan& plan, const std::vector<lumber::Source>& sources) {
    Json boards = Json::array(), purchases = Json::array(), missing = Json::array();
    for (const lumber::Board& board : plan.boards) boards.push_back(board_of(board, sources));
    for (const lumber::Purchase& line : plan.purchases)
        purchases.push_back({{"wood", line.wood},
                             {"sawn", line.sawn},
                             {"stock", line.stock},
                             {"sheet", line.sheet},
                             {"size", size(line.thickness, line.width, line.length)},
                             {"random_width", line.random_width},
                             {"count", line.count},
                             {"board_feet", plain(line.board_feet)},
                             {"volume_m3", plain(line.volume_m3)},
                             {"area_m2", plain(line.area_m2)},
                             {"each", line.priced ? number(line.each, 100) : Json(nullptr)},
                             {"cost", line.priced ? number(line.cost, 100) : Json(nullptr)},
                             {"per", line.per},
                             {"per_unit", line.priced ? number(line.per_unit, 100) : Json(nullptr)},
                             {"words", line.words}});
    for (const lumber::Missing& gone : plan.missing)
        missing.push_back({{"reference", gone.reference},
                           {"name", gone.name},
                           {"count", gone.count},
                           {"reason", gone.reason},
                           {"remedy", gone.remedy}});
    return {{"boards", std::move(boards)},
            {"steps", steps_of(plan)},
            {"purchases", std::move(purchases)},
            {"missing", std::move(missing)},
            {"remarks", plan.remarks},
            {"currency", plan.currency},
            {"cost", number(plan.cost, 100)},
            {"bound", number(plan.bound, 100)},
            {"all_priced", plan.all_priced},
            {"proven_optimal", plan.proven_optimal},
            {"gap", plain(plan.gap)},
            {"finished_m3", plain(plan.finished_m3)},
            {"rough_m3", plain(plan.rough_m3)},
            {"used_m3", plain(plan.used_m3)},
            {"kept_m3", plain(plan.kept_m3)},
            {"kerf_rip_mm", mm(plan.kerf_rip)},
            {"kerf_crosscut_mm", mm(plan.kerf_crosscut)},
            {"end_trim_mm", mm(plan.end_trim)}};
}

std::string write_lumber_json(const lumber::Plan& plan, const std::vector<lumber::Source>& sources) {
    Json pieces = Json::array();
    for (const lumber::Source& source : sources)
        pieces.push_back({{"title", source.model->piece->title},
                          {"size", source.model->piece->size_name},
                          {"cut_list", cut_list_value(*source.model, *source.cut_list)}});
    std::vector<const cutlist::CutList*> lists;
    for (const lumber::Source& source : sources) lists.push_back(source.cut_list);
    return text_of({{"schema", json_schema},
                    {"program", "rayfleck"},
                    {"pieces", std::move(pieces)},
                    {"together", cut_list_value(*sources.front().model, cutlist::together(lists))},
                    {"lumber", lumber_value(plan, sources)}});
}

} // namespace rayfleck::writers
