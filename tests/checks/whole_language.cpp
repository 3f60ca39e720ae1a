// The samples together use the whole language: every phrase, statement and form of arithmetic, every copies
// clause, every joint, and every option of every joint but those that say the same of each.
//
// A phrase that no sample needs is one that nobody has tried on a real piece. Joints and their options are
// read from the table of the piece room, as docs tests do, so that a new one asks for a sample.

#include <algorithm>
#include <map>
#include <regex>
#include <set>
#include <string>

#include <catch2/catch.hpp>

#include "findings/finding.hpp"
#include "forms_used.hpp"
#include "joinery/kinds.hpp"
#include "source/text.hpp"
#include "studied.hpp"
#include "syntax/parse.hpp"

using namespace rayfleck;
using namespace rayfleck::checks_tests;

namespace {

const std::string root = RAYFLECK_ROOT;

/// What the samples use, and the files that they name.
const FormsUsed& used_by_the_samples() {
    static const FormsUsed used = [] {
        FormsUsed out;
        source::Texts texts;
        findings::Findings findings;
        std::vector<std::string> paths = pieces_in(root + "/samples");
        std::set<std::string> seen(paths.begin(), paths.end());
        for (std::size_t i = 0; i < paths.size(); ++i) {
            const int number = texts.add({paths[i], bytes_of(paths[i])});
            const syntax::Tree tree = syntax::parse(texts, number, findings);
            take(tree.statements, out);
            for (const syntax::Statement& statement : tree.statements)
                if (const auto* bring = std::get_if<syntax::BringIn>(&statement.says)) {
                    const std::string path = root + "/samples/" + bring->path.text;
                    if (seen.insert(path).second) paths.push_back(path);
                }
        }
        REQUIRE(findings.empty());
        return out;
    }();
    return used;
}

using Found = std::sregex_iterator;

/// `bridle` and the words of its options, as src/piece/joins.cpp has them.
std::map<std::string, std::set<std::string>> options_of_joints() {
    const std::string text = bytes_of(root + "/src/piece/joins.cpp");
    std::map<std::string, std::string> words;
    static const std::regex word("([a-z_]+)\\{\"([a-z-]+)\"[,}]");
    for (Found i(text.begin(), text.end(), word), end; i != end; ++i) words[(*i)[1]] = (*i)[2];
    std::map<std::string, std::set<std::string>> out;
    static const std::regex kind("\\{\"([a-z -]+)\",\\s*\\{([a-z_,\\s]+)\\}");
    static const std::regex name("[a-z_]+");
    for (Found i(text.begin(), text.end(), kind), end; i != end; ++i) {
        const std::string list = (*i)[2];
        for (Found j(list.begin(), list.end(), name); j != end; ++j) out[(*i)[1]].insert(words.at(j->str()));
    }
    return out;
}

/// `1 screw` is the option `screws`, `set 4 from top` is `set`.
std::string option_word(const std::string& written, const std::set<std::string>& known) {
    const std::string first = written.substr(0, written.find(' '));
    return known.contains(first + "s") ? first + "s" : first;
}

/// What phrases and statements may say besides, as the walk tells it.
const std::vector<std::string> further_forms{"PART at COPY",
                                             "size of PART: thickness",
                                             "size of PART: width",
                                             "size of PART: length",
                                             "flat sawn",
                                             "rift sawn",
                                             "quarter sawn",
                                             "rings at ANGLE",
                                             "bark face",
                                             "bark edge",
                                             "heart face",
                                             "heart edge",
                                             "face side",
                                             "face edge",
                                             "between PART",
                                             "between PART and PART",
                                             "between ... DIRECTION",
                                             "centred on",
                                             "centred on ... DIRECTION",
                                             "centred between",
                                             "centred DIRECTION",
                                             "set back ... of PART",
                                             "set back ... from SIDE",
                                             "overhanging ... all round",
                                             "overhanging ... at SIDE",
                                             "over PART",
                                             "under PART",
                                             "splayed",
                                             "raked",
                                             "canted",
                                             "leaning two ways",
                                             "laminated of",
                                             "carries books",
                                             "carries kg",
                                             "carries ... per m",
                                             "carries ... per ft",
                                             "carries ... in the middle",
                                             "glued up of COUNT staves",
                                             "glued up of staves at most",
                                             "bark faces alternating",
                                             "bark faces together",
                                             "taper two faces",
                                             "chamfer",
                                             "bevel",
                                             "round-over",
                                             "ovolo",
                                             "ogee",
                                             "cove",
                                             "bead",
                                             "shaped edge: two sizes",
                                             "edges: all edges",
                                             "edges: long edges",
                                             "edges: end edges",
                                             "edges: SIDE edges",
                                             "edges: SIDE SIDE edge",
                                             "miter ANGLE",
                                             "compound miter",
                                             "miter: long to SIDE",
                                             "crosscut",
                                             "rip",
                                             "resaw",
                                             "saw cut at ANGLE towards SIDE",
                                             "bore: through",
                                             "bore: SIZE deep",
                                             "bore: row of",
                                             "groove: stopped",
                                             "rabbet: stopped",
                                             "curve ... by",
                                             "curve ... through",
                                             "curve ... from ... to",
                                             "outline: bulging left",
                                             "outline: bulging right",
                                             "outline: curve through several points",
                                             "turned: square to",
                                             "turned: smooth",
                                             "turned: diameter",
                                             "copies: row spaced",
                                             "copies: row from ... to",
                                             "copies: two clauses",
                                             "units mm",
                                             "units in",
                                             "units ... to",
                                             "climate REGION",
                                             "climate ... humidity",
                                             "climate ... moisture",
                                             "climate ... at ... C",
                                             "climate ... at ... F",
                                             "rod: COUNT lines NAME between",
                                             "part like",
                                             "join: note",
                                             "join: option with SIDE",
                                             "join: name of a fitting",
                                             "hardware: off",
                                             "hardware: on",
                                             "hardware: to",
                                             "accept ... on PART",
                                             "takes: must be given",
                                             "takes: may be given",
                                             "make: copies",
                                             "board: by its stock",
                                             "board: by its sizes",
                                             "price per board foot",
                                             "price per m3",
                                             "price per piece"};

/// Said of every joint in the same way, so that one joint is enough to try them.
const std::set<std::string> alike{"glued", "dry"};

/// A second word for a size of that joint: `6 deep` of a tongue is `6 long`.
const std::set<std::pair<std::string, std::string>> second_words{
    {"tongue and groove", "deep"}, {"dado", "wide"}, {"sliding dovetail", "wide"}, {"groove", "thick"}};

} // namespace

TEST_CASE("the samples use every form of the language") {
    const FormsUsed& used = used_by_the_samples();
    for (const auto* forms : {&forms_of_tables(), &further_forms})
        for (const std::string& form : *forms) {
            INFO("no sample uses: " << form);
            CHECK(used.forms.contains(form));
        }
}

TEST_CASE("the samples use every kind of joint with each of its options") {
    const FormsUsed& used = used_by_the_samples();
    const auto joints = options_of_joints();
    CHECK(joints.size() == joinery::all_kinds().size());
    std::set<std::pair<std::string, std::string>> found;
    std::set<std::string> words;
    for (const auto& [kind, written] : used.options)
        if (const auto joint = joints.find(kind); joint != joints.end()) {
            const std::string word = option_word(written, joint->second);
            found.emplace(kind, word);
            words.insert(word);
        }
    for (const auto& [kind, options] : joints) {
        CAPTURE(kind);
        CHECK(used.joints.contains(kind));
        for (const std::string& option : options) {
            if (second_words.contains({kind, option})) continue;
            INFO("no sample uses its option: " << option);
            CHECK((alike.contains(option) ? words.contains(option) : found.contains({kind, option})));
        }
    }
}

TEST_CASE("a text with one part uses few forms") {
    source::Texts texts;
    findings::Findings findings;
    const std::string text = "part shelf\n  wood cherry, rings at 30 degrees\n  rip front edge to 2cm\n";
    FormsUsed used;
    take(syntax::parse(texts, texts.add({"shelf.fleck", text}), findings).statements, used);
    CHECK(findings.empty());
    CHECK(used.forms == std::set<std::string>{"arithmetic: a name", "arithmetic: a number", "number: cm",
                                              "number: degrees", "phrase: saw cut", "phrase: sawn, rings",
                                              "phrase: wood", "rings at ANGLE", "rip", "statement: part"});
}
