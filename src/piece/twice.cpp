// What may be said once only: a phrase of a part, an option of a joint.
//
// A part has one wood, one sawing, one way in which its length runs. Said a second time, one of the two would
// be passed over in silence, so the second is an error that names both places. Sizes count one by one
// (`size 20 x 60` and `30 thick` both tell the thickness), face and edge apart. Only a part's own phrases are
// compared: what `like` takes over gives way to them. Left out: phrases that may come several times (places,
// tapers, bores, notes), and those that are compared where they are read (outlines).

#include <algorithm>

#include "piece/elaboration.hpp"

namespace rayfleck::piece {
namespace {

/// What a phrase tells, as the words of a message; several for the sizes.
struct Tells {
    std::vector<std::string> operator()(const syntax::WoodIs&) const { return {"wood"}; }
    std::vector<std::string> operator()(const syntax::SawnIs& says) const {
        std::vector<std::string> all;
        if (!says.word.empty()) all.emplace_back("sawing");
        if (says.rings) all.emplace_back("angle of the rings");
        return all;
    }
    std::vector<std::string> operator()(const syntax::PithAt&) const { return {"place of the pith"}; }
    std::vector<std::string> operator()(const syntax::BarkIs& says) const {
        return {says.edge ? "bark edge" : "bark face"};
    }
    std::vector<std::string> operator()(const syntax::StockIs&) const { return {"stock"}; }
    std::vector<std::string> operator()(const syntax::SizeIs& says) const {
        std::vector<std::string> all;
        for (const auto& size : says.sizes)
            all.emplace_back(size.first == syntax::SizeOf::thick  ? "thickness"
                             : size.first == syntax::SizeOf::wide ? "width"
                                                                  : "length");
        return all;
    }
    std::vector<std::string> operator()(const syntax::RunsAlong&) const { return {"way of the length"}; }
    std::vector<std::string> operator()(const syntax::FaceLooks& says) const {
        return {says.edge ? "face edge" : "face side"};
    }
    std::vector<std::string> operator()(const syntax::PointToPoint&) const { return {"two end points"}; }
    std::vector<std::string> operator()(const syntax::GrainAt&) const { return {"grain angle"}; }
    std::vector<std::string> operator()(const syntax::GluedUp&) const { return {"glue-up"}; }
    std::vector<std::string> operator()(const syntax::CarriesIs&) const { return {"load"}; }
    template <class Other> std::vector<std::string> operator()(const Other&) const { return {}; }
};

} // namespace

bool says_once(Elaboration& e, const syntax::PartIs& says) {
    std::map<std::string, Span> told;
    bool sound = true;
    for (const syntax::Phrase& phrase : says.phrases)
        for (const std::string& what : std::visit(Tells{}, phrase.says)) {
            const auto [first, fresh] = told.emplace(what, phrase.span);
            if (fresh) continue;
            sound = false;
            findings::Finding& f = e.error("said-twice", phrase.span,
                                           "the " + what + " of `" + says.name.text + "` is told twice");
            f.labels.push_back({first->second, "the first time"});
            f.mend = "leave one of them out";
        }
    return sound;
}

bool says_once(Elaboration& e, const std::vector<OptionGiven>& options, const std::string& kind) {
    std::map<std::string, Span> told;
    bool sound = true;
    for (const OptionGiven& option : options) {
        const std::string word = option.words.empty() ? "" : option.words.substr(0, option.words.find(' '));
        // A joint is glued or dry.
        const auto [first, fresh] = told.emplace(word == "dry" ? "glued" : word, option.span);
        if (fresh) continue;
        sound = false;
        const std::string what = word.empty()                       ? "the name of the hardware"
                                 : word == "glued" || word == "dry" ? "glued or dry"
                                                                    : "`" + word + "`";
        findings::Finding& f =
            e.error("said-twice", option.span, what + " of this `" + kind + "` is told twice");
        f.labels.push_back({first->second, "the first time"});
        f.mend = "leave one of them out, or write a joint of its own for the other";
    }
    return sound;
}

} // namespace rayfleck::piece
