// See arguments.hpp. The only file that knows the library for command lines. It tells what is missing or too
// much; near words are ours, because a mistyped command is the first thing that a newcomer meets.

#include "commands/arguments.hpp"

#include <algorithm>
#include <filesystem>
#include <map>

#include <CLI/CLI.hpp>
#include <fmt/format.h>

namespace rayfleck::commands {
namespace {

using FailOn = std::optional<findings::Severity>;

constexpr const char* about = "Rayfleck reads a piece of furniture written as text, finds what the wood "
                              "would not stand, and writes the paper\n"
                              "for the bench: drawings, cut list and a page of warnings.";

constexpr const char* overview = R"(To begin:
  rayfleck start stool                     writes stool.fleck, a small piece to change
  rayfleck check stool.fleck               tells what is wrong with it
  rayfleck compile stool.fleck -o out      writes out/stool.pdf, out/stool.csv, out/stool.json
  rayfleck lumber stool.fleck              tells what to buy and what to cut from which board
  rayfleck explain                         lists every check; with a name, teaches one
  rayfleck wood cherry --width 300mm       the figures of a wood, and how far a board moves

Exit status: 0 nothing at or above the failing level, 1 findings at or above it, 2 the text does not compile,
3 wrong usage, or a file that cannot be read or written.
`rayfleck COMMAND --help` tells more of a command.
)";

constexpr const char* compile_examples = R"(Examples:
  rayfleck compile side-table.fleck -o out         every size in the table, one PDF each
  rayfleck compile cabinet.fleck --size tall       that size alone: cabinet-tall.pdf
  rayfleck compile a.fleck b.fleck --revision B --date 2024-03-01
  generate-piece | rayfleck compile - -o out       reads standard input

Files are replaced whole: where a text has errors or the disk is full, the old ones stay as they were.
)";

constexpr const char* check_examples = R"(Examples:
  rayfleck check designs                           every *.fleck in the folder and below
  rayfleck check designs --fail-on caution         cautions fail too, for a strict shop
  rayfleck check designs --format json > findings.json
  rayfleck check side-table.fleck --fail-on never  only errors of the text fail

A finding can be accepted in the text, with a reason: accept short-grain on ear because "it carries nothing"
)";

constexpr const char* lumber_examples = R"(Examples:
  rayfleck lumber side-table.fleck                 the first size of its table, or the piece itself
  rayfleck lumber side-table.fleck stool.fleck     one lot of boards for both
  rayfleck lumber chest.fleck --effort 5000        looks longer for less waste; the same every time
  rayfleck lumber side-table.fleck stool.fleck -o out   cut lists, plan, steps and labels of both as PDF, CSV,
                                                   JSON, SVG, and the boards left as out/lumber-rack.fleck
  rayfleck lumber chest.fleck --inventory > rack.fleck  the boards that are left, as a shop file

The bound is proved: no plan of the same blanks, boards and order of saws costs less.
)";

constexpr const char* explain_examples = R"(Examples:
  rayfleck explain                                 every check with a line
  rayfleck explain short-grain                     what goes wrong, why, the figures, how to mend it
)";

constexpr const char* wood_examples = R"(Examples:
  rayfleck wood                                    every wood with its gravity and shrinkage
  rayfleck wood cherry                             all figures with their sources
  rayfleck wood "white oak" --width 18in           how far a board of that width moves through the year
  rayfleck wood beech --width 450 --from 6 --to 14 between two moistures, in percent
  rayfleck wood hornbeam --shop shop.fleck         a wood that the shop file tells with figures of its own
  rayfleck wood how much does a 300 mm flat-sawn cherry board move from 35 % to 65 %
)";

const std::vector<std::string> command_names{"compile", "check", "lumber", "explain", "start", "wood"};
const std::vector<std::string> sheet_names{"A4", "A3", "A2", "Letter", "Tabloid"};

/// What a misspelt word was probably meant to be, as the end of a sentence.
std::string nearest(const std::string& word, const std::vector<std::string>& known) {
    const auto near = findings::near_word(word, known);
    return near ? fmt::format("; the nearest is {}", *near) : "";
}

/// One of a few words, with the near word where it is none of them.
template <typename Value>
CLI::Option* add_choice(CLI::App& app, const std::string& name, Value& value,
                        std::map<std::string, Value> choices, const std::string& words) {
    std::vector<std::string> known;
    for (const auto& [word, ignored] : choices) known.push_back(word);
    const auto take = [&value, choices = std::move(choices), known, name](const std::string& word) {
        const auto found = choices.find(word);
        if (found == choices.end())
            throw CLI::ValidationError(
                name, fmt::format("{} is none of {}{}", word, fmt::join(known, ", "), nearest(word, known)));
        value = found->second;
    };
    return app.add_option_function<std::string>(name, take, words)->type_name("WORD");
}

void add_shared(CLI::App& app, Arguments& arguments) {
    add_choice<Colour>(app, "--color,--colour", arguments.colour,
                       {{"auto", Colour::automatic}, {"always", Colour::always}, {"never", Colour::never}},
                       "Colour of messages: auto, always, never; auto heeds NO_COLOR");
}

void add_failing(CLI::App& app, FailOn& fail_on) {
    add_choice<FailOn>(app, "--fail-on", fail_on,
                       {{"note", findings::Severity::note},
                        {"caution", findings::Severity::caution},
                        {"fault", findings::Severity::fault},
                        {"never", std::nullopt}},
                       "Least severity that gives exit status 1: note, caution, fault (usual), never");
}

/// The option that an unexpected word was meant to be.
std::vector<std::string> options_of(const CLI::App& app) {
    std::vector<std::string> names;
    for (const CLI::Option* option : app.get_options())
        for (const std::string& name : option->get_lnames()) names.push_back("--" + name);
    return names;
}

std::string unknown_command(const std::string& word) {
    std::string text =
        fmt::format("rayfleck: there is no command {}{}\n", word, nearest(word, command_names));
    if (std::filesystem::path(word).extension() == ".fleck")
        text = fmt::format("rayfleck: say what to do with {}: `rayfleck compile {}` or `rayfleck check {}`\n",
                           word, word, word);
    return text + "`rayfleck --help` lists the commands\n";
}

/// A misspelt option, or one word too many.
std::string unexpected(const CLI::App& command, const std::string& word) {
    const std::string bare = word.substr(0, word.find('='));
    return fmt::format("{} does not belong here{}", word, nearest(bare, options_of(command)));
}

} // namespace

Arguments read_arguments(const std::vector<std::string>& words) {
    Arguments arguments;
    CompileWish compile;
    CheckWish check;
    LumberWish lumber;
    ExplainWish explain;
    StartWish start;
    WoodWish wood;

    CLI::App app(about, "rayfleck");
    app.footer(overview);
    app.require_subcommand(0, 1);
    app.set_help_flag("-h,--help", "Tells how to use it");
    bool version = false;
    app.add_flag("--version", version, "Tells the version");

    CLI::App* to_compile =
        app.add_subcommand("compile", "Drawings, cut list and warnings page of each piece");
    to_compile->footer(compile_examples);
    to_compile->add_option("FILE", compile.files, "Texts to compile; - reads standard input")
        ->required()
        ->type_name("");
    to_compile->add_option("-o,--output", compile.folder, "Folder for the files written; made when missing")
        ->type_name("DIR");
    to_compile->add_option("--size", compile.size, "One size of the piece's table of sizes")
        ->type_name("NAME");
    std::map<std::string, std::string> sheets;
    for (const std::string& name : sheet_names) sheets[name] = name;
    add_choice<std::string>(*to_compile, "--sheet", compile.drawing.sheet, sheets,
                            "Size of the sheets: A4, A3, A2, Letter, Tabloid; else the shop's");
    to_compile->add_option("--revision", compile.drawing.revision, "Revision for the title block")
        ->type_name("TEXT");
    to_compile->add_option("--date", compile.drawing.date, "Date for the title block, as it shall be printed")
        ->type_name("TEXT");
    to_compile
        ->add_option("--number", compile.drawing.identification, "Drawing number; else made from the title")
        ->type_name("TEXT");
    to_compile->add_flag("--svg", compile.pictures, "Every sheet and every board of the plan as SVG too");
    to_compile->add_flag("--lists", compile.lists,
                         "Hardware, blanks, purchases and steps at the machines as CSV too");
    to_compile->add_flag("--brief", compile.brief, "One line for each finding");
    to_compile->add_flag("-q,--quiet", compile.quiet, "Do not name the files written");
    add_failing(*to_compile, compile.fail_on);

    CLI::App* to_check = app.add_subcommand("check", "Findings only, for the terminal and for CI");
    to_check->footer(check_examples);
    to_check
        ->add_option("PATH", check.paths, "Texts, or folders to search for *.fleck; - reads standard input")
        ->required()
        ->type_name("");
    add_choice<Format>(*to_check, "--format", check.format, {{"text", Format::text}, {"json", Format::json}},
                       "text on standard error (usual), or json on standard output");
    to_check->add_flag("--brief", check.brief, "One line for each finding");
    add_failing(*to_check, check.fail_on);

    CLI::App* to_lumber =
        app.add_subcommand("lumber", "What to buy, what to cut from which board, what is left");
    to_lumber->footer(lumber_examples);
    to_lumber->add_option("FILE", lumber.files, "Texts to plan together; - reads standard input")
        ->required()
        ->type_name("");
    to_lumber->add_option("--size", lumber.size, "One size of the pieces' tables of sizes; else the first")
        ->type_name("NAME");
    to_lumber
        ->add_option("--effort", lumber.effort,
                     "Work for each wood, about a thousandth of a second each; usually 20")
        ->type_name("N")
        ->check(CLI::Range(0, most_effort));
    to_lumber
        ->add_option("-o,--output", lumber.folder,
                     "Writes sheets, lists and a picture of each board into this folder")
        ->type_name("DIR");
    to_lumber->add_flag("--inventory", lumber.inventory, "Only the boards left, as lines of a shop file");

    CLI::App* to_explain = app.add_subcommand("explain", "One check: what goes wrong, why, how to mend it");
    to_explain->footer(explain_examples);
    to_explain->add_option("NAME", explain.name, "A check; without one, lists them all")->type_name("");

    CLI::App* to_start = app.add_subcommand("start", "Writes a small piece that compiles, to begin from");
    to_start->add_option("NAME", start.name, "Name of the piece; NAME.fleck is written")
        ->required()
        ->type_name("");

    CLI::App* to_wood = app.add_subcommand("wood", "The woods, their figures, and how far a board moves");
    to_wood->footer(wood_examples);
    std::vector<std::string> asked;
    to_wood->add_option("NAME", asked, "A wood, or a question in words; without either, lists all woods")
        ->type_name("");
    to_wood->add_option("--width", wood.width, "Width of the board: 300mm, 30cm, 12in; usually 100mm")
        ->type_name("WIDTH");
    to_wood->add_option("--shop", wood.shop, "A shop file, for the woods that it tells of its own")
        ->type_name("FILE");
    to_wood->add_option("--from", wood.from, "Moisture at the start, percent; else of wood in 35 % humidity")
        ->type_name("PERCENT");
    to_wood->add_option("--to", wood.to, "Moisture at the end, percent; else of wood in 60 % humidity")
        ->type_name("PERCENT");

    const std::vector<CLI::App*> commands{to_compile, to_check, to_lumber, to_explain, to_start, to_wood};
    for (CLI::App* command : commands) {
        command->set_help_flag("-h,--help", "Tells how to use it");
        command->get_formatter()->column_width(28);
        add_shared(*command, arguments);
        // What is not known comes back as extra words, so that the near word can be told.
        command->allow_extras(false);
    }
    app.get_formatter()->column_width(28);

    if (words.empty()) {
        arguments.wish = Misused{app.help()};
        return arguments;
    }
    if (words[0].front() != '-' &&
        std::find(command_names.begin(), command_names.end(), words[0]) == command_names.end()) {
        arguments.wish = Misused{unknown_command(words[0])};
        return arguments;
    }
    CLI::App* chosen = &app;
    for (CLI::App* command : commands)
        if (command->get_name() == words[0]) chosen = command;
    try {
        std::vector<std::string> backwards(words.rbegin(), words.rend()); // as the library takes them
        app.parse(backwards);
    } catch (const CLI::CallForHelp&) {
        arguments.wish = Answer{chosen == &app ? app.help() : chosen->help("rayfleck")};
        return arguments;
    } catch (const CLI::ParseError& error) {
        std::string text = error.what();
        if (error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ExtrasError))
            for (const std::string& word : chosen->remaining(true)) {
                text = unexpected(*chosen, word);
                break;
            }
        arguments.wish = Misused{fmt::format("rayfleck: {}\n`rayfleck{} --help` tells how to use it\n", text,
                                             chosen == &app ? "" : " " + chosen->get_name())};
        return arguments;
    }
    if (version)
        arguments.wish = Answer{"rayfleck " RAYFLECK_VERSION "\n"};
    else if (to_compile->parsed())
        arguments.wish = std::move(compile);
    else if (to_check->parsed())
        arguments.wish = std::move(check);
    else if (to_lumber->parsed())
        arguments.wish = std::move(lumber);
    else if (to_explain->parsed())
        arguments.wish = std::move(explain);
    else if (to_start->parsed())
        arguments.wish = std::move(start);
    else if (to_wood->parsed()) {
        for (const std::string& word : asked) wood.name += (wood.name.empty() ? "" : " ") + word;
        arguments.wish = std::move(wood);
    } else
        arguments.wish = Misused{app.help()};
    return arguments;
}

} // namespace rayfleck::commands
