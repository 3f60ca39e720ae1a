// See json.hpp. The lumber plan stands in lumber_json.cpp.

#include "writers/json.hpp"

#include <array>

#include "checks/season_table.hpp"
#include "writers/json_values.hpp"

namespace rayfleck::writers {
namespace {

using measure::Vector;
using writers::mm;

Json mm(Vector v) { return Json::array({mm(v.x), mm(v.y), mm(v.z)}); }
Json mm(solid::Point2 p) { return Json::array({mm(p.x), mm(p.y)}); }
Json direction(Vector v) { return Json::array({plain(v.x), plain(v.y), plain(v.z)}); }
Json mm(const measure::Box& box) { return {{"low", mm(box.low)}, {"high", mm(box.high)}}; }
Json plane(const measure::Plane& p) { return {{"normal", direction(p.normal)}, {"offset_mm", mm(p.offset)}}; }

Json place(const source::Span& span, const source::Texts& texts) {
    if (span.file < 0 || span.file >= texts.count()) return nullptr;
    const source::Text& text = texts[span.file];
    const source::Place from = text.place(span.begin), to = text.place(span.end);
    return {{"file", text.name()},
            {"line", from.line},
            {"column", from.column},
            {"end_line", to.line},
            {"end_column", to.column}};
}

Json finding_of(const findings::Finding& finding, const source::Texts& texts) {
    Json json{
        {"name", finding.name},
        {"severity", findings::name(finding.severity)},
        {"message", finding.message},
        {"limit", finding.limit},
        {"mend", finding.mend},
        {"place", place(finding.span, texts)},
        {"labels", Json::array()},
        {"parts", finding.parts},
        {"at_mm", finding.at ? mm(*finding.at) : Json(nullptr)},
        {"accepted_because", finding.accepted_because ? Json(*finding.accepted_because) : Json(nullptr)}};
    for (const findings::Label& label : finding.labels)
        json["labels"].push_back({{"text", label.text}, {"place", place(label.span, texts)}});
    return json;
}

Json findings_of(const findings::Findings& all, const source::Texts& texts) {
    Json json = Json::array();
    for (const findings::Finding& finding : all) json.push_back(finding_of(finding, texts));
    return json;
}

struct Counts {
    int errors = 0, faults = 0, cautions = 0, notes = 0, accepted = 0;
    void add(const findings::Finding& finding) {
        if (finding.accepted_because) {
            ++accepted;
            return;
        }
        switch (finding.severity) {
        case findings::Severity::error:
            ++errors;
            break;
        case findings::Severity::fault:
            ++faults;
            break;
        case findings::Severity::caution:
            ++cautions;
            break;
        case findings::Severity::note:
            ++notes;
            break;
        }
    }
    Json json() const {
        return {{"errors", errors},
                {"faults", faults},
                {"cautions", cautions},
                {"notes", notes},
                {"accepted", accepted}};
    }
};

Json side(const piece::LocalSide& s) {
    static constexpr std::array<const char*, 3> axes{"length", "width", "thickness"};
    return {{"axis", axes[static_cast<std::size_t>(s.axis)]}, {"end", s.high ? "high" : "low"}};
}

Json outline(const solid::Outline& o) {
    Json edges = Json::array();
    for (const solid::Edge2& edge : o.edges) {
        Json json{{"to_mm", mm(edge.to)}};
        if (edge.centre) {
            json["centre_mm"] = mm(*edge.centre);
            json["anticlockwise"] = edge.anticlockwise;
        }
        edges.push_back(std::move(json));
    }
    return {{"start_mm", mm(o.start)}, {"edges", std::move(edges)}};
}

Json frame(const measure::Frame& f) {
    return {{"origin_mm", mm(f.origin)},
            {"length", direction(f.x)},
            {"width", direction(f.y)},
            {"thickness", direction(f.z)}};
}

/// A cut's shape, in the part's own frame; `shape` says which keys follow.
struct ShapeOfCut {
    Json operator()(const piece::PlaneCut& cut) const {
        Json json{{"shape", "plane"}, {"plane", plane(cut.plane)}};
        if (cut.miter) json["miter_degrees"] = plain(cut.miter->in_degrees());
        if (cut.bevel) json["bevel_degrees"] = plain(cut.bevel->in_degrees());
        return json;
    }
    Json operator()(const piece::EdgeCut& cut) const {
        return {{"shape", "edge"},
                {"profile", cut.profile},
                {"first", side(cut.first)},
                {"second", side(cut.second)},
                {"on_first_mm", mm(cut.on_first)},
                {"on_second_mm", mm(cut.on_second)}};
    }
    Json operator()(const piece::BoreCut& cut) const {
        Json json{{"shape", "bore"},
                  {"face", side(cut.face)},
                  {"centre_mm", mm(cut.centre)},
                  {"diameter_mm", mm(cut.diameter)}};
        json["deep_mm"] = cut.deep ? mm(*cut.deep) : Json(nullptr);
        if (cut.direction) json["direction"] = direction(*cut.direction);
        return json;
    }
    Json operator()(const piece::BoxCut& cut) const { return {{"shape", "box"}, {"box_mm", mm(cut.box)}}; }
    Json operator()(const piece::PrismCut& cut) const {
        return {{"shape", "prism"},
                {"frame", frame(cut.frame)},
                {"outline", outline(cut.outline)},
                {"from_mm", mm(cut.from)},
                {"to_mm", mm(cut.to)}};
    }
    Json operator()(const piece::TurnedCut& cut) const {
        Json stations = Json::array();
        for (const solid::Station& station : cut.profile)
            stations.push_back({{"at_mm", mm(station.x)},
                                {"diameter_mm", mm(2 * station.radius)},
                                {"smooth", station.smooth}});
        return {{"shape", "turned"}, {"stations", std::move(stations)}};
    }
};

Json notes_of(const std::vector<piece::Note>& notes) {
    Json json = Json::array();
    for (const piece::Note& note : notes) json.push_back(note.text);
    return json;
}

Json part_of(const joinery::Made& made, const source::Texts& texts) {
    const piece::Part& part = *made.part;
    Json json{
        {"name", part.name}, {"base", part.base}, {"copy", part.copy}, {"place", place(part.span, texts)}};
    if (part.species != nullptr)
        json["wood"] = {{"id", part.species->id},
                        {"name", part.species->trade_name},
                        {"sheet", part.species->is_sheet()}};
    else
        json["wood"] = nullptr;
    json["sawn"] = wood::text(part.sawn);
    json["sawn_stated"] = part.sawn_stated;
    json["rings_degrees"] = plain(part.rings.in_degrees());
    json["grain_degrees"] = plain(part.grain.in_degrees());
    json["bark"] = part.bark ? side(*part.bark) : Json(nullptr);
    json["face_edge"] = part.face_edge_high ? "high" : "low";
    json["stock"] = part.stock;
    json["loose"] = part.loose;
    json["body"] = size(part.thickness, part.width, part.length);
    json["blank"] = size(made.thickness, made.width, made.length);
    json["blank_box_mm"] = mm(made.blank);
    json["frame"] = frame(part.frame);
    if (part.outline) json["outline"] = outline(*part.outline);
    if (part.glue_up) {
        Json glued{{"laminated", part.glue_up->laminated}, {"alternating", part.glue_up->alternating}};
        glued["count"] = part.glue_up->count ? Json(*part.glue_up->count) : Json(nullptr);
        glued["at_most_wide_mm"] =
            part.glue_up->at_most_wide ? mm(*part.glue_up->at_most_wide) : Json(nullptr);
        json["glue_up"] = std::move(glued);
    }
    Json cuts = Json::array();
    for (const piece::Cut& cut : made.cuts) {
        Json one{{"word", cut.word},
                 {"joint", cut.joint >= 0 ? Json(cut.joint) : Json(nullptr)},
                 {"remark", cut.remark}};
        one.update(std::visit(ShapeOfCut{}, cut.shape));
        one["place"] = place(cut.span, texts);
        cuts.push_back(std::move(one));
    }
    json["cuts"] = std::move(cuts);
    json["solid"] = {{"volume_mm3", number(made.solid.volume, 100)},
                     {"surface_mm2", number(made.solid.surface, 100)},
                     {"centroid_mm", mm(made.solid.centroid)},
                     {"box_mm", mm(made.solid.box)},
                     {"bodies", made.solid.bodies},
                     {"watertight", made.solid.watertight()}};
    json["notes"] = notes_of(part.notes);
    return json;
}

Json names(const joinery::Model& model, const std::vector<int>& parts) {
    Json json = Json::array();
    for (const int index : parts) json.push_back(model.made[static_cast<std::size_t>(index)].part->name);
    return json;
}

Json name_of(const joinery::Model& model, int part) {
    return model.made[static_cast<std::size_t>(part)].part->name;
}

Json joints_of(const joinery::Model& model, const source::Texts& texts) {
    Json json = Json::array();
    for (const joinery::Joint& joint : model.joints) {
        Json sizes = Json::array();
        for (const joinery::Size& s : joint.sizes)
            sizes.push_back(
                {{"what", s.what}, {"value", plain(s.value)}, {"unit", s.unit}, {"from", s.from}});
        json.push_back({{"a", name_of(model, joint.a)},
                        {"b", name_of(model, joint.b)},
                        {"kind", joint.kind},
                        {"at_mm", mm(joint.at)},
                        {"assembly", direction(joint.assembly)},
                        {"sizes", std::move(sizes)},
                        {"place", place(joint.span, texts)}});
    }
    return json;
}

Json contacts_of(const joinery::Model& model) {
    static constexpr std::array<const char*, 3> holds{"glued", "fastened", "free"};
    Json json = Json::array();
    for (const joinery::Contact& contact : model.contacts) {
        Json slides = Json::array(), held = Json::array();
        for (const Vector& v : contact.may_slide) slides.push_back(direction(v));
        for (const Vector& p : contact.held_at) held.push_back(mm(p));
        json.push_back({{"a", name_of(model, contact.a)},
                        {"b", name_of(model, contact.b)},
                        {"joint", contact.joint >= 0 ? Json(contact.joint) : Json(nullptr)},
                        {"hold", holds[static_cast<std::size_t>(contact.hold)]},
                        {"plane", plane(contact.plane)},
                        {"area_mm2", number(contact.area, 100)},
                        {"may_slide", std::move(slides)},
                        {"room_mm", mm(contact.room)},
                        {"held_at_mm", std::move(held)}});
    }
    return json;
}

Json order_of(const joinery::Model& model, const assembly::Order& order) {
    static constexpr std::array<const char*, 4> holds{"loose", "dry", "fastened", "glued"};
    Json moves = Json::array(), subs = Json::array(), steps = Json::array(), locks = Json::array();
    for (const assembly::Move& move : order.moves)
        moves.push_back({{"parts", names(model, move.parts)},
                         {"onto", names(model, move.onto)},
                         {"direction", direction(move.direction)},
                         {"distance_mm", mm(move.distance)},
                         {"joints", move.joints},
                         {"hold", holds[static_cast<std::size_t>(move.hold)]},
                         {"at_once", move.at_once >= 0 ? Json(move.at_once) : Json(nullptr)}});
    for (const assembly::SubAssembly& sub : order.sub_assemblies) {
        Json copies = Json::array();
        for (const auto& copy : sub.copies) copies.push_back(names(model, copy));
        subs.push_back({{"name", sub.name}, {"copies", std::move(copies)}});
    }
    for (const assembly::Step& step : order.steps) {
        Json hardware = Json::array();
        for (const assembly::Fitting& fitting : step.hardware)
            hardware.push_back({{"name", fitting.name}, {"count", fitting.count}});
        steps.push_back({{"number", step.number},
                         {"title", step.title},
                         {"sub_assembly", step.sub_assembly >= 0 ? Json(step.sub_assembly) : Json(nullptr)},
                         {"copies", step.copies},
                         {"standing", names(model, step.standing)},
                         {"moves", step.moves},
                         {"hold", holds[static_cast<std::size_t>(step.hold)]},
                         {"hardware", std::move(hardware)},
                         {"words", step.words}});
    }
    for (const assembly::Lock& lock : order.locks)
        locks.push_back({{"parts", names(model, lock.parts)}, {"joints", lock.joints}});
    return {{"moves", std::move(moves)},
            {"sub_assemblies", std::move(subs)},
            {"steps", std::move(steps)},
            {"locks", std::move(locks)}};
}

Json cut_list_of(const joinery::Model& model, const cutlist::CutList& list) {
    Json rows = Json::array(), totals = Json::array(), hardware = Json::array();
    for (const cutlist::Row& row : list.rows)
        rows.push_back({{"reference", row.reference},
                        {"name", row.name},
                        {"count", row.count},
                        {"parts", names(model, row.parts)},
                        {"mirrored", names(model, row.mirrored)},
                        {"wood", row.wood},
                        {"sawn", row.sawn},
                        {"stock", row.stock},
                        {"finished", size(row.thickness, row.width, row.length)},
                        {"rough", size(row.rough_thickness, row.rough_width, row.rough_length)},
                        {"volume_m3", plain(row.volume_m3)},
                        {"board_feet", plain(row.board_feet)},
                        {"area_m2", plain(row.area_m2)},
                        {"weight_kg", row.weight_kg > 0 ? number(row.weight_kg, 1000) : Json(nullptr)},
                        {"finish_area_m2", plain(row.finish_area_m2)},
                        {"joinery", row.joinery},
                        {"remark", row.remark}});
    for (const cutlist::CutList::Total& total : list.totals)
        totals.push_back(
            {{"wood", total.wood},
             {"volume_m3", plain(total.volume_m3)},
             {"board_feet", plain(total.board_feet)},
             {"area_m2", plain(total.area_m2)},
             {"weight_kg", total.weight_kg > 0 ? number(total.weight_kg, 1000) : Json(nullptr)}});
    for (const joinery::HardwareItem& item : list.hardware)
        hardware.push_back({{"name", item.name},
                            {"count", item.count},
                            {"parts", names(model, item.parts)},
                            {"from", item.from}});
    return {{"rows", std::move(rows)},
            {"totals", std::move(totals)},
            {"hardware", std::move(hardware)},
            {"finish_area_m2", plain(list.finish_area_m2)}};
}

Json rods_of(const piece::Piece& piece) {
    static constexpr std::array<const char*, 3> directions{"across", "deep", "up"};
    Json json = Json::array();
    for (const piece::Rod& rod : piece.rods) {
        Json lines = Json::array();
        for (const piece::Line& line : rod.lines)
            lines.push_back({{"name", line.name}, {"at_mm", mm(line.at)}});
        json.push_back({{"direction", directions[static_cast<std::size_t>(rod.direction)]},
                        {"lines", std::move(lines)}});
    }
    return json;
}

/// How the piece moves through the year; see checks/season_table.hpp.
Json seasons_of(const joinery::Model& model) {
    const checks::SeasonTable table = checks::season_table(model);
    const auto maybe = [](const std::optional<double>& mm) { return mm ? Json(plain(*mm)) : Json(nullptr); };
    Json moving = Json::array(), openings = Json::array(), miters = Json::array();
    for (const checks::MovingPart& row : table.parts)
        moving.push_back({{"parts", names(model, row.parts)},
                          {"width_mm", plain(row.width)},
                          {"to_driest_mm", plain(row.dry)},
                          {"to_dampest_mm", plain(row.damp)},
                          {"hollow_mm", plain(row.hollow)},
                          {"out_of_square_mm", plain(row.out_of_square)},
                          {"free", row.where},
                          {"needs_mm", maybe(row.needs)},
                          {"room_mm", maybe(row.room)},
                          {"leave_mm", maybe(row.leave)}});
    constexpr std::array<const char*, 3> ways{"across", "deep", "up"};
    for (const checks::OpeningRoom& opening : table.openings)
        openings.push_back({{"part", model.made[static_cast<std::size_t>(opening.part)].part->name},
                            {"direction", ways[static_cast<std::size_t>(opening.axis)]},
                            {"to_driest_mm", plain(opening.dry)},
                            {"to_dampest_mm", plain(opening.damp)},
                            {"gap_mm", plain(opening.gap)},
                            {"leave_mm", plain(opening.leave)}});
    for (const checks::MiterOpening& miter : table.miters)
        miters.push_back({{"joint", miter.joint},
                          {"opens_driest_mm", plain(miter.dry)},
                          {"opens_dampest_mm", plain(miter.damp)}});
    return {{"parts", std::move(moving)}, {"openings", std::move(openings)}, {"miters", std::move(miters)}};
}

} // namespace

Json cut_list_value(const joinery::Model& model, const cutlist::CutList& list) {
    return cut_list_of(model, list);
}

std::string write_json(const joinery::Model& model, const findings::Findings& findings,
                       const cutlist::CutList& cut_list, const source::Texts& texts,
                       const assembly::Order* order, const lumber::Plan* plan) {
    const piece::Piece& piece = *model.piece;
    Json parts = Json::array();
    for (const joinery::Made& made : model.made) parts.push_back(part_of(made, texts));
    Counts counts;
    for (const findings::Finding& finding : findings) counts.add(finding);
    const Json json{{"schema", json_schema},
                    {"program", "rayfleck"},
                    {"title", piece.title},
                    {"size", piece.size_name},
                    {"units", measure::name(piece.manner.unit)},
                    {"climate",
                     {{"basis", piece.climate.basis},
                      {"stated", piece.climate_stated},
                      {"driest_percent", plain(piece.climate.driest.in_percent())},
                      {"dampest_percent", plain(piece.climate.dampest.in_percent())}}},
                    {"made_at_percent", plain(piece.made_at.in_percent())},
                    {"rods", rods_of(piece)},
                    {"parts", std::move(parts)},
                    {"joints", joints_of(model, texts)},
                    {"contacts", contacts_of(model)},
                    {"assembly", order_of(model, order ? *order : assembly::order(model))},
                    {"cut_list", cut_list_of(model, cut_list)},
                    {"lumber", plan != nullptr ? lumber_value(*plan, {{&model, &cut_list}}) : Json(nullptr)},
                    {"seasons", seasons_of(model)},
                    {"findings", findings_of(findings, texts)},
                    {"counts", counts.json()},
                    {"notes", notes_of(piece.notes)}};
    return text_of(json);
}

std::string write_findings_json(const std::vector<Checked>& all) {
    Json texts = Json::array();
    Counts counts;
    int unreadable = 0;
    for (const Checked& checked : all) {
        Json one{{"file", checked.file}, {"title", checked.title}, {"sizes", checked.sizes}};
        one["unreadable"] = checked.unreadable ? Json(*checked.unreadable) : Json(nullptr);
        one["findings"] = Json::array();
        if (checked.unreadable) ++unreadable;
        if (checked.findings != nullptr && checked.texts != nullptr) {
            one["findings"] = findings_of(*checked.findings, *checked.texts);
            for (const findings::Finding& finding : *checked.findings) counts.add(finding);
        }
        texts.push_back(std::move(one));
    }
    Json totals = counts.json();
    totals["unreadable"] = unreadable;
    return text_of({{"schema", json_schema},
                    {"program", "rayfleck"},
                    {"texts", std::move(texts)},
                    {"counts", std::move(totals)}});
}

} // namespace rayfleck::writers
