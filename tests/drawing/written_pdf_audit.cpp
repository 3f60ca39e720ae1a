// Every sample written as PDF and read back by programs that others wrote: mutool paints it, qpdf checks its
// structure, poppler reads its words. A program that is not installed is said so. The audit is itself held
// against faults planted in sheets and in files.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <functional>
#include <set>
#include <sstream>

#include <catch2/catch.hpp>
#include <unistd.h>

#include "drawing/draw.hpp"
#include "pieces.hpp"
#include "studied.hpp"
#include "writers/pdf.hpp"
#include "written_pdf.hpp"

using namespace rayfleck;
using namespace rayfleck::testing;
using drawing::Ink;
using drawing::Pen;
using drawing::Role;

namespace {

bool lacking(const std::string& program) {
    if (std::system(("command -v " + program + " >/dev/null 2>&1").c_str()) == 0) return false;
    WARN("skipped: " << program << " is not installed");
    return true;
}

/// A folder of this process alone, gone when it ends: tests of several builds may run at the same time.
std::filesystem::path folder() {
    struct Own {
        std::filesystem::path path = std::filesystem::temp_directory_path() /
                                     ("rayfleck_test_written_pdf_" + std::to_string(::getpid()));
        Own() { std::filesystem::create_directories(path); }
        ~Own() {
            std::error_code ignored;
            std::filesystem::remove_all(path, ignored);
        }
    };
    static const Own own;
    return own.path;
}

std::string stored(const std::string& name, const std::string& bytes) {
    const auto path = folder() / name;
    std::ofstream(path, std::ios::binary) << bytes;
    return path.string();
}

struct Answer {
    int status = 0;
    std::string words;
};
Answer ask(const std::string& command, const std::string& name) {
    const auto path = folder() / (name + ".answer");
    Answer answer;
    answer.status = std::system((command + " >'" + path.string() + "' 2>&1").c_str());
    std::ostringstream words;
    words << std::ifstream(path).rdbuf();
    answer.words = words.str();
    return answer;
}

/// name  of the file it goes through; tests of one program may run at the same time
PdfAudit audited(const std::string& bytes, const std::string& name) {
    const std::string file = stored(name + ".pdf", bytes);
    return audit_pdf(bytes, ask("mutool trace '" + file + "'", name + ".trace").words);
}

std::string told(const PdfAudit& audit) {
    std::string all;
    for (std::size_t i = 0; i < audit.faults.size() && i < 40; ++i) all += audit.faults[i] + "\n";
    return all;
}

drawing::Set drawn(const BuiltPiece& built, const std::string& sheet = "") {
    drawing::Wishes wishes;
    wishes.sheet = sheet;
    return drawing::draw({built.model, built.findings, built.cut_list}, wishes);
}

bool reported(const PdfAudit& audit, const std::string& rule) {
    for (const std::string& fault : audit.faults)
        if (fault.find(rule) != std::string::npos) return true;
    return false;
}

/// An odd set, spoilt, written and audited.
bool reported(const std::string& name, const std::function<void(drawing::Set&)>& spoil,
              const std::string& rule) {
    static const drawing::Set sound = drawn(odd_shapes());
    drawing::Set set = sound;
    spoil(set);
    return reported(audited(writers::write_pdf(set), name), rule);
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    REQUIRE(from.size() == to.size());
    for (std::size_t i = at; i != std::string::npos; i = text.find(from, i)) text.replace(i, from.size(), to);
    return text;
}

} // namespace

TEST_CASE("every sample passes the audit of its written PDF") {
    if (lacking("mutool")) return;
    int dimensions = 0, templates = 0;
    for (const std::string& file : sample_files()) {
        const auto sample = studied_sample(file);
        REQUIRE(sample);
        for (const char* sheet : {"", "A4"}) {
            drawing::Wishes wishes;
            wishes.sheet = sheet;
            wishes.texts = &sample->texts;
            const auto set = drawing::draw(
                {sample->model, sample->findings, sample->cut_list, nullptr, &sample->lumber}, wishes);
            const std::string name = "sample-" + file + "-" + sheet;
            const PdfAudit audit = audited(writers::write_pdf(set), name);
            INFO(file << " on " << (*sheet ? sheet : "its own sheet") << "\n" << told(audit));
            CHECK(audit.faults.empty());
            CHECK(audit.pages == static_cast<int>(set.sheets.size()));
            CHECK(audit.texts > 50);
            CHECK(audit.strokes > 50);
            dimensions += audit.dimensions;
            templates += audit.templates;
        }
    }
    // What is measured on paper against its figure.
    CHECK(dimensions > 500);
    CHECK(templates > 20);
}

TEST_CASE("the audit of a written PDF speaks of every fault planted in it") {
    if (lacking("mutool")) return;
    const auto first = [](drawing::Set& set) -> drawing::Sheet& { return set.sheets.front(); };
    CHECK_FALSE(reported(
        "sound", [](drawing::Set&) {}, ":"));
    CHECK(reported(
        "d1", [&](drawing::Set& s) { first(s).width = 300; }, "D1"));
    CHECK(reported(
        "d2",
        [&](drawing::Set& s) {
            first(s).items.push_back(drawing::Stroke{{{5, 60}, {120, 60}}, Pen::thin});
        },
        "D2: a line"));
    CHECK(reported(
        "d2-text",
        [&](drawing::Set& s) {
            first(s).items.push_back(drawing::Text{{3, 100}, "aside"});
        },
        "D2: `aside`"));
    CHECK(reported(
        "d2-frame", [&](drawing::Set& s) { first(s).items.erase(first(s).items.begin()); }, "D2: no frame"));
    CHECK(reported(
        "d33",
        [&](drawing::Set& s) {
            first(s).items.push_back(drawing::Text{{100, 60}, "small", 2.2});
        },
        "D33"));
    CHECK(reported(
        "d34",
        [&](drawing::Set& s) {
            for (const double x : {100.0, 103.0}) first(s).items.push_back(drawing::Text{{x, 60}, "twice"});
        },
        "D34"));
    CHECK(reported(
        "d35",
        [&](drawing::Set& s) {
            first(s).items.push_back(drawing::Stroke{{{400, 12}, {250, 40}}, Pen::thin});
        },
        "D35"));
    CHECK(reported(
        "d40-bar",
        [](drawing::Set& s) {
            for (drawing::Sheet& sheet : s.sheets)
                for (drawing::Item& item : sheet.items)
                    if (auto* stroke = std::get_if<drawing::Stroke>(&item);
                        stroke && sheet.full_size && stroke->points.size() == 2 &&
                        stroke->points[1].x - stroke->points[0].x == 100)
                        stroke->points[1].x -= 0.5;
        },
        "D40: no bar of 100 mm"));
    CHECK(reported(
        "d40",
        [](drawing::Set& s) {
            for (drawing::Sheet& sheet : s.sheets) sheet.full_size = false;
        },
        "PrintScaling"));
    // A figure that its line does not bear out: its lines stand 250 apart.
    CHECK(reported(
        "d39",
        [](drawing::Set& s) {
            for (drawing::Item& item : s.sheets.front().items)
                if (auto* text = std::get_if<drawing::Text>(&item); text && text->words == "250")
                    text->words = "255";
        },
        "D39: `255`"));
    // Widths and dashes are no matter of the set; they are spoilt in the file.
    const std::string plain = writers::write_pdf(drawn(odd_shapes()), {false, {}});
    CHECK(reported(audited(replaced(plain, "\n1.417 w\n", "\n1.217 w\n"), "d6"), "D6"));
    CHECK(reported(audited(replaced(plain, "[8.504 2.126]", "[8.504 4.126]"), "d8"), "D8"));
    CHECK(reported(audited(replaced(plain, "\n0.709 w\n", "\n1.417 w\n"), "d7"), "D7"));
}

TEST_CASE("the PDF of every sample is sound for qpdf and its words are read by poppler") {
    for (const std::string& file : sample_files()) {
        const auto sample = studied_sample(file);
        REQUIRE(sample);
        const auto set =
            drawing::draw({sample->model, sample->findings, sample->cut_list, nullptr, &sample->lumber}, {});
        const std::string bytes = writers::write_pdf(set), path = stored("sound-" + file + ".pdf", bytes);
        INFO(file);
        // The bar of the project: a piece of 40 parts stays under 1 MB.
        CHECK(bytes.size() < 1000000);
        if (!lacking("qpdf")) {
            const Answer answer = ask("qpdf --check '" + path + "'", "qpdf-" + file);
            INFO(answer.words);
            CHECK(answer.status == 0);
            CHECK(answer.words.find("WARNING") == std::string::npos);
        }
        if (!lacking("pdfinfo")) {
            const Answer answer = ask("pdfinfo '" + path + "'", "pdfinfo-" + file);
            CHECK(answer.words.find("Pages:           " + std::to_string(set.sheets.size()) + "\n") !=
                  std::string::npos);
        }
        if (!lacking("pdffonts")) {
            const Answer answer = ask("pdffonts '" + path + "'", "pdffonts-" + file);
            INFO(answer.words);
            CHECK(answer.words.find(" no ") == std::string::npos); // embedded, in part, searchable
        }
        if (lacking("pdftotext")) continue;
        // Every word that was set is found, fractions and all.
        const Answer answer = ask("pdftotext -raw '" + path + "' -", "pdftotext-" + file);
        std::istringstream in(answer.words);
        std::set<std::string> read;
        for (std::string word; in >> word;) read.insert(word);
        std::string missing;
        for (const drawing::Sheet& sheet : set.sheets)
            for (const drawing::Item& item : sheet.items)
                if (const auto* text = std::get_if<drawing::Text>(&item); text && text->turn == 0) {
                    std::istringstream words(text->words);
                    for (std::string word; words >> word;)
                        if (!read.contains(word) && answer.words.find(word) == std::string::npos)
                            missing += word + "\n";
                }
        INFO(missing);
        CHECK(missing.empty());
    }
}
