#pragma once
// A small set of sheets with every kind of item, and the outside programs that look at what the writers make
// of it.

#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>

#include "drawing/sheet.hpp"

namespace demo {

using namespace rayfleck::drawing;

inline Stroke line(Point2 a, Point2 b, Pen pen, Ink ink = Ink::black) {
    return {{a, b}, pen, ink, Role::edge};
}

inline Set with(const Item& item) {
    Sheet sheet;
    sheet.items.push_back(item);
    Set set;
    set.sheets.push_back(sheet);
    return set;
}

inline Set set() {
    Set set;
    set.title = "Côté table Ø 60";
    set.creator = "rayfleck";
    Sheet first;
    first.title = "Général — elevation";
    auto& items = first.items;
    items.push_back(Stroke{
        {{20, 10}, {287, 10}, {287, 200}, {20, 200}, {20, 10}}, Pen::visible, Ink::black, Role::frame});
    items.push_back(
        Fill{{{{30, 150}, {90, 150}, {90, 180}, {30, 180}}, {{40, 155}, {60, 155}, {60, 175}, {40, 175}}},
             Ink::pale});
    const Pen pens[] = {Pen::visible, Pen::hidden, Pen::thin, Pen::centre, Pen::cutting_plane, Pen::phantom};
    for (int i = 0; i < 6; ++i) items.push_back(line({110, 180.0 - 6 * i}, {210, 180.0 - 6 * i}, pens[i]));
    items.push_back(Stroke{
        {{220, 150}, {250, 150}, {250, 180}, {220, 180}, {220, 150}}, Pen::hidden, Ink::black, Role::edge});
    const Ink inks[] = {Ink::black, Ink::grey, Ink::red, Ink::amber, Ink::blue, Ink::green, Ink::pale};
    for (int i = 0; i < 7; ++i)
        items.push_back(
            Fill{{{{220.0 + 8 * i, 135}, {226.0 + 8 * i, 135}, {226.0 + 8 * i, 141}, {220.0 + 8 * i, 141}}},
                 inks[i]});
    double y = 138;
    for (const char* words : {"17-5/8", "SIDE TABLE 3'-6-1/2\"", "Ø 60 × 12° ±1/64",
                              "4× R 1/2, 8/4 stock, sheet 1/3", "(23-15/16)", "Łącznik ≤ 3-3/4"}) {
        items.push_back(Text{{30, y}, words, 3.5, Typeface::lettering});
        items.push_back(Text{{110, y}, words, 2.5, Typeface::sans});
        items.push_back(Text{{165, y}, words, 2.5, Typeface::sans_bold});
        y -= 10;
    }
    items.push_back(Text{{30, y}, "Čárka, Nguyễn, Ёлка, άλφα, ½ ⅜ ⌀ ✓ ☐ → − ″ <&> 木", 2.5, Typeface::sans});
    items.push_back(Text{{240, 80}, "7-1/16", 2.5, Typeface::lettering, Ink::black, 90});
    items.push_back(line({241, 75}, {241, 105}, Pen::thin));
    items.push_back(line({200, 40}, {280, 40}, Pen::thin));
    items.push_back(Text{{235, 41}, "17-5/8", 2.5, Typeface::lettering});
    items.push_back(Text{{200, 70}, "SIDE TABLE", 3.5, Typeface::lettering});
    items.push_back(Text{{250, 60}, "at 30°", 2.5, Typeface::sans, Ink::red, 30});
    items.push_back(Link{{30, 20}, {60, 30}, 1});
    items.push_back(Text{{30, 24}, "to the template", 2.5, Typeface::sans, Ink::blue});
    set.sheets.push_back(first);
    Sheet second;
    second.title = "Template";
    second.width = 210, second.height = 297;
    second.full_size = true;
    second.items.push_back(line({20, 50}, {120, 50}, Pen::visible));
    second.items.push_back(Text{{20, 55}, "this line is 100 mm long", 2.5, Typeface::sans_bold});
    set.sheets.push_back(second);
    return set;
}

inline std::filesystem::path folder() {
    const auto path = std::filesystem::temp_directory_path() / "rayfleck_test_writers";
    std::filesystem::create_directories(path);
    return path;
}

/// Each caller has its own name: tests of one program run at the same time.
inline std::string store(const std::string& name, const std::string& bytes) {
    const auto path = folder() / name;
    std::ofstream(path, std::ios::binary) << bytes;
    return path.string();
}

inline bool has_program(const std::string& name) {
    return std::system(("command -v " + name + " >/dev/null 2>&1").c_str()) == 0;
}

struct Answer {
    int status = 0;
    std::string words;
};

/// What a program says, on both its outputs.
inline Answer ask(const std::string& command, const std::string& name) {
    const auto path = folder() / (name + ".answer");
    Answer answer;
    answer.status = std::system((command + " >'" + path.string() + "' 2>&1").c_str());
    std::ostringstream words;
    words << std::ifstream(path).rdbuf();
    answer.words = words.str();
    return answer;
}

} // namespace demo
