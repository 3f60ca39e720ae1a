// What the text says of the wood of a part: species, sawing, bark and heart, stock, glue-up, grain, load,
// notes.

#include <fmt/format.h>

#include "piece/elaboration.hpp"
#include "wood/beam.hpp"

namespace rayfleck::piece {
namespace {

using syntax::Phrase;

void unknown_wood(Elaboration& e, const std::string& word, Span span) {
    const std::vector<std::string> meanings = wood::meanings(word);
    if (meanings.size() > 1) {
        std::string list;
        for (std::size_t i = 0; i < meanings.size() && i < 8; ++i) list += (i ? ", " : "") + meanings[i];
        e.error("unknown-wood", span, "`" + word + "` may mean several woods").mend = "say which: " + list;
        return;
    }
    findings::Finding& f = e.error("unknown-wood", span, "there is no wood `" + word + "` in the tables");
    const auto near = findings::near_word(word, names_of_woods(e));
    f.mend = near ? "did you mean `" + *near + "`?"
                  : "`rayfleck wood` lists the woods; a shop file may add its own, as in `wood " + word +
                        ", radial shrinkage 4 %, tangential shrinkage 8 %`";
}

void read_wood(Elaboration& e, const syntax::WoodIs& says, const Context& c, Part& part) {
    const Expression& x = says.wood;
    std::string word;
    Span span = x.span;
    if (x.kind == Expression::Kind::name) {
        // A value of that name goes before a wood of that name.
        ValueEntry* value = find_value(*c.scope, x.word);
        if (!value) {
            word = x.word;
        } else {
            const Quantity q = value_of(e, *value);
            if (!q.known()) return;
            if (q.kind != Quantity::Kind::text) {
                e.error("not-a-text", x.span,
                        "`" + x.word + "` is " + what_it_is(q) + ", where a wood is wanted");
                return;
            }
            word = q.text;
            span = value->expression ? value->expression->span : x.span;
        }
    } else {
        const auto text = text_of(e, x, c);
        if (!text) return;
        word = *text;
    }
    part.species = wood::find(word, e.own_woods);
    if (!part.species) unknown_wood(e, word, span);
}

void read_sawn(Elaboration& e, const syntax::SawnIs& says, const Context& c, Part& part, bool& rings_told) {
    if (!says.word.empty()) {
        part.sawn = says.word == "quarter" ? wood::Sawn::quarter
                    : says.word == "rift"  ? wood::Sawn::rift
                                           : wood::Sawn::flat;
        part.sawn_stated = true;
        if (!rings_told) part.rings = wood::ring_angle(part.sawn);
    }
    if (!says.rings) return;
    const auto degrees = degrees_of(e, *says.rings, c);
    if (!degrees) return;
    if (*degrees < -90 || *degrees > 90) {
        e.error("out-of-range", says.rings->span,
                "the rings lie between 0 (flat) and 90 degrees (quarter) to the wide face");
        return;
    }
    rings_told = true;
    part.rings_stated = true;
    part.rings = measure::Angle::degrees(*degrees);
    if (!part.sawn_stated) part.sawn = wood::sawn_at(part.rings);
    part.sawn_stated = true;
}

void read_bark(Elaboration& e, Instance& instance, const syntax::BarkIs& says, Part& part) {
    const int wanted = says.edge ? 1 : 2;
    const std::string what = std::string(says.heart ? "heart" : "bark") + (says.edge ? " edge" : " face");
    const Pose& pose = pose_of(e, instance);
    // Which way its faces look hangs on its place.
    if (!pose.known) return;
    const auto fits = [&](Side side) {
        const auto d = direction_of(side);
        return d && pose.readings[static_cast<std::size_t>(wanted)].direction == *d;
    };
    std::optional<LocalSide> side;
    if (direction_of(says.towards.side)) {
        if (fits(says.towards.side)) side = own_side(e, instance, says.towards);
    } else {
        for (const LocalSide& one : own_sides(e, instance, says.towards))
            if (one.axis == wanted) side = one;
    }
    if (!side) {
        const Direction d = pose.readings[static_cast<std::size_t>(wanted)].direction;
        e.error("bark-looks-elsewhere", says.towards.span,
                "the " + what + " of `" + instance.part->name + "` cannot look " + text(says.towards.side) +
                    ": its " + (says.edge ? "edges" : "faces") + " look " + text(side_of(d, false)) +
                    " and " + text(side_of(d, true)))
            .mend = "write " + text(side_of(d, false)) + " or " + text(side_of(d, true)) + ", or say `bark " +
                    (says.edge ? "face" : "edge") + "`";
        return;
    }
    if (says.heart) side->high = !side->high;
    part.bark = side;
}

void read_stock(Elaboration& e, const syntax::StockIs& says, Part& part) {
    const auto lumber = wood::lumber_named(says.stock.text);
    if (lumber) {
        part.stock = lumber->name;
        return;
    }
    part.stock = says.stock.text;
    findings::Finding& f =
        e.error("unknown-stock", says.stock.span, "there is no stock `" + says.stock.text + "`");
    f.mend = wood::looks_like_lumber(says.stock.text)
                 ? "the lumber standards have no such size; give the size itself, as in `size 20 x 60`"
                 : "stock is named as in the yard: 4/4, 8/4, 2x4";
}

void read_glue_up(Elaboration& e, const syntax::GluedUp& says, const Context& c, Part& part) {
    GlueUp glue;
    glue.laminated = says.thick;
    glue.alternating = says.faces == "alternating";
    glue.same_side = says.faces == "together";
    if (says.at_most_wide) {
        const auto wide = length_of(e, *says.at_most_wide, c);
        if (!wide) return;
        if (*wide <= Length()) {
            e.error("no-size", says.at_most_wide->span, "a stave cannot be " + e.shown(*wide) + " wide");
            return;
        }
        glue.at_most_wide = wide;
    }
    if (says.count) {
        glue.count = count_of(e, *says.count, c, says.thick ? "the number of layers" : "the number of staves",
                              limits.copies);
        if (!glue.count) return;
    }
    part.glue_up = glue;
}

void read_grain(Elaboration& e, const syntax::GrainAt& says, const Context& c, Part& part) {
    const auto degrees = degrees_of(e, says.angle, c);
    if (!degrees) return;
    if (*degrees < -90 || *degrees > 90) {
        e.error("out-of-range", says.angle.span, "grain lies between -90 and 90 degrees to the length");
        return;
    }
    part.grain = measure::Angle::degrees(*degrees);
}

/// The heaviest load that a text may tell, kg.
constexpr double heaviest_load = 100000;

void read_carries(Elaboration& e, const syntax::CarriesIs& says, Span span, const Context& c, Part& part) {
    constexpr double gravity = 9.80665, kg_per_lb = 0.45359237, mm_per_ft = 304.8;
    Carries carries;
    carries.span = span;
    if (says.books) {
        carries.newtons = wood::book_load.value * kg_per_lb * gravity / mm_per_ft;
        carries.per_mm = true;
        carries.words = "books";
        part.carries = carries;
        return;
    }
    const auto amount = number_of(e, says.amount, c, "a weight");
    if (!amount) return;
    const double kg = amount->value() * (says.pounds ? kg_per_lb : 1);
    if (!(kg > 0 && kg <= heaviest_load)) {
        e.error("out-of-range", says.amount.span, "a load is more than nothing and at most 100 t").mend =
            "write `carries 25 kg`";
        return;
    }
    carries.newtons = kg * gravity / (says.per_metre ? 1000 : says.per_foot ? mm_per_ft : 1);
    carries.per_mm = says.per_metre || says.per_foot;
    carries.in_the_middle = says.in_the_middle;
    carries.words = fmt::format("{:.6g} {}{}{}", amount->value(), says.pounds ? "lb" : "kg",
                                says.per_metre  ? " per m"
                                : says.per_foot ? " per ft"
                                                : "",
                                says.in_the_middle ? " in the middle" : "");
    part.carries = carries;
}

} // namespace

void describe_wood(Elaboration& e, Instance& instance, Part& part) {
    Context c;
    c.scope = instance.part->scope;
    c.self = &instance;
    bool rings_told = false, wood_told = false;
    const Phrase* pith = nullptr;
    part.grain_span = instance.part->header;
    for (const Phrase* phrase : instance.part->phrases) {
        if (const auto* wood = std::get_if<syntax::WoodIs>(&phrase->says)) {
            wood_told = true;
            read_wood(e, *wood, c, part);
        } else if (const auto* sawn = std::get_if<syntax::SawnIs>(&phrase->says)) {
            read_sawn(e, *sawn, c, part, rings_told);
        } else if (std::holds_alternative<syntax::PithAt>(phrase->says)) {
            pith = phrase;
        } else if (const auto* bark = std::get_if<syntax::BarkIs>(&phrase->says)) {
            read_bark(e, instance, *bark, part);
        } else if (const auto* stock = std::get_if<syntax::StockIs>(&phrase->says)) {
            read_stock(e, *stock, part);
        } else if (const auto* glue = std::get_if<syntax::GluedUp>(&phrase->says)) {
            read_glue_up(e, *glue, c, part);
        } else if (const auto* grain = std::get_if<syntax::GrainAt>(&phrase->says)) {
            read_grain(e, *grain, c, part);
            part.grain_span = phrase->span;
        } else if (std::holds_alternative<syntax::RunsAlong>(phrase->says)) {
            if (part.grain_span == instance.part->header) part.grain_span = phrase->span;
        } else if (const auto* carries = std::get_if<syntax::CarriesIs>(&phrase->says)) {
            read_carries(e, *carries, phrase->span, c, part);
        } else if (std::holds_alternative<syntax::SapwoodAllowed>(phrase->says)) {
            part.sapwood_allowed = true;
        } else if (std::holds_alternative<syntax::Loose>(phrase->says)) {
            part.loose = true;
        } else if (const auto* note = std::get_if<syntax::NoteIs>(&phrase->says)) {
            part.notes.push_back({note->text.text, note->text.span});
        }
    }
    // What follows from it is compared with what is told of rings and bark.
    if (pith != nullptr) read_pith(e, instance, std::get<syntax::PithAt>(pith->says), pith->span, c, part);
    part.size_from_stock = size_is_of_stock(instance, 2) || size_is_of_stock(instance, 1);
    if (!wood_told && !instance.quiet)
        e.error("no-wood", instance.part->header,
                "it is not told what `" + instance.part->name + "` is made of")
            .mend = "write `wood cherry`, or any wood that `rayfleck wood` lists";
}

} // namespace rayfleck::piece
