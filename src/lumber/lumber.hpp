#pragma once
// The lumber plan: which blank comes out of which board, what has to be bought, in what order to cut.
//
// The rough sizes of the cut list become blanks (glued-up parts their staves, laminated ones their layers,
// thin ones put together to be resawn); blanks are sorted to the boards that suit them in wood, thickness and
// sawing; the room `cutting` lays them out under the cuts that a shop makes: end trim, crosscut, straighten
// an edge, rip, crosscut; for sheets rip first. Boards on hand go before bought ones, and nothing is laid
// over their flaws. Parts that match come from one board, as neighbours, or out of one thickness. Then all
// cuts of all boards are put in order machine by machine. Sizes are counted in whole tenths of a millimetre,
// to the nearest. Left out: staves of different widths in one panel, and the face that is flattened first
// (the thickness allowance pays for it).

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "cutlist/cutlist.hpp"
#include "cutting/cutting.hpp"
#include "joinery/model.hpp"

namespace rayfleck::lumber {

using measure::Length;

/// A piece to be planned together with others.
struct Source {
    const joinery::Model* model = nullptr;
    const cutlist::CutList* cut_list = nullptr;
};

/// What a blank becomes: a part, or a stave or layer of one.
struct Leaf {
    std::size_t row = 0; ///< into CutList::rows
    int part = 0;        ///< index into their Model::made
    int reference = 0;
    std::string name, instance; ///< as in Placement, of this one alone
    std::string turn;           ///< `bark side up`: how a stave lies in its panel; empty: not told
    Length thickness;           ///< rough, of this one alone
    bool whole = true;          ///< the part itself, no stave or layer of it
};

/// One blank in its place. Board frame: x along the board from its left end, y across from its lower edge,
/// end trims included.
struct Placement {
    std::size_t source = 0; ///< index into the pieces planned
    std::size_t row = 0;    ///< index into their CutList::rows
    int part = 0;           ///< index into their Model::made: the part that the blank becomes, or belongs to
    int reference = 0;      ///< the row's number in the balloons
    std::string name;       ///< `long apron`
    std::string instance;   ///< A, B ... for the parts of a row; `A2` is the second stave or layer of part A;
                            ///< `A+B` are resawn out of one
    Length x, y, along, across; ///< where it lies, rough
    Length thickness;           ///< rough, of all leaves with the kerfs between
    std::vector<Leaf> leaves;   ///< at least one; several are resawn out of it, from the face side
    bool turned = false;        ///< its length runs across the board (only sheets without face grain)
};

/// One cut through the whole piece on the saw. The line is drawn at `at`; the blade runs on the far side of
/// it, away from the stop or fence, and takes the kerf there.
struct Cut {
    int number = 0; ///< 1, 2, 3 ... on its board, in the order in which they are made
    enum class Direction { crosscut, rip };
    Direction direction = Direction::crosscut;
    enum class Work {
        square,     ///< squares an end
        straighten, ///< takes `kerf` off the lower edge, so that it runs true along the fence
        shave, ///< takes `kerf` off the lower edge or the left end, less than a saw would, to where it is
               ///< clear
        sever, ///< parts the piece in two
    } work = Work::sever;
    int stage = 1;                                      ///< of the cutting room; see there
    Length piece_x, piece_y, piece_length, piece_width; ///< what lies on the saw
    Length at;                                          ///< of x (crosscut) or y (rip), in the board frame
    Length kerf;
    Length fence;              ///< from the piece's left end or lower edge to the line
    std::string near;          ///< names of the blanks between stop or fence and blade; empty: waste
    bool offcut = false;       ///< what lies there is no blank, but worth keeping
    bool waste_beyond = false; ///< nothing beyond the blade is worth anything
    std::string words;         ///< for the bench
};

/// What is left over.
struct Offcut {
    Length x, y, length, width;
    bool worth_keeping = false; ///< as large as the shop file says, or 50 x 300 mm: our own choice
};

/// What is told of a board on hand, where nothing may be cut: a knot, a split, sapwood, checks.
struct Flaw {
    std::string kind;
    bool round = false;
    Length x, y, length, width;
};

/// A board or sheet in use.
struct Board {
    std::string name; ///< as in the shop file: `C1`, `C2 (2nd of 2)`; bought ones `buy 1`, `buy 2` ...
    std::string mark; ///< of the shop file's `board` statement; empty when bought
    bool on_hand = false;
    bool sheet = false;
    std::string wood, sawn, stock; ///< sawn may be empty: not known
    Length thickness, width, length;
    std::vector<Placement> placements;
    std::vector<Cut> cuts;
    std::vector<Offcut> offcuts;
    std::vector<Flaw> flaws;
    std::vector<std::string> remarks;
};

/// Boards that are alike, to be bought.
struct Purchase {
    std::string wood, sawn, stock;
    Length thickness, width, length; ///< width is a typical one where the yard sells random widths
    bool random_width = false;
    bool sheet = false;
    int count = 0;
    double board_feet = 0, volume_m3 = 0, area_m2 = 0; ///< of all
    bool priced = false;
    double each = 0, cost = 0; ///< in the shop file's money, to the hundredth; 0 without a price
    double per_unit = 0;       ///< as the shop file tells it, of one unit
    std::string per;           ///< board foot, m3, m2, piece
    std::string words;         ///< the whole line, for the yard
};

/// Parts that cannot be sawn from anything, and why.
struct Missing {
    std::size_t source = 0, row = 0;
    int reference = 0;
    std::string name;
    int count = 0; ///< of blanks
    std::string reason, remedy;
};

/// What is done with one setting of a machine, on all boards.
struct Step {
    int number = 0;
    enum class Doing { square, crosscut, straighten, shave, rip, resaw, plane } doing = Doing::square;
    std::string machine;           ///< `table saw`
    std::optional<Length> setting; ///< of the fence or stop to the near side of the blade; of the planer
    struct On {
        std::size_t board = 0;
        std::vector<int> cuts;         ///< their numbers; none for resawing and planing
        std::vector<std::string> gets; ///< what each cut yields, or the blanks worked on
    };
    std::vector<On> on;
    std::vector<std::string> cautions;
    std::string what;  ///< `set the fence to 63 mm and rip`
    std::string brief; ///< `fence 63 mm`
    std::string words; ///< the whole step
};

struct Plan {
    std::vector<Step> steps;   ///< in the order of the work, machine by machine
    std::vector<Board> boards; ///< on hand first, in the order of the shop file, then bought ones
    std::vector<Purchase> purchases;
    std::vector<Missing> missing;
    std::vector<std::string>
        remarks; ///< of the whole plan: panels that were given staves, woods without price

    double finished_m3 = 0; ///< of the finished parts' blanks that have a place
    double rough_m3 = 0;    ///< of the placed blanks
    double used_m3 = 0;     ///< of all boards in use
    double kept_m3 = 0;     ///< of offcuts worth keeping
    double finished_yield() const { return used_m3 > 0 ? finished_m3 / used_m3 : 0; }
    double rough_yield() const { return used_m3 > 0 ? rough_m3 / used_m3 : 0; }

    std::string currency; ///< as printed behind money; empty: none is told

    double cost = 0;             ///< of all purchases that have a price
    double bound = 0;            ///< no plan of the same blanks, stock and order of saws costs less; proved
    bool all_priced = true;      ///< no purchase is without a price
    bool proven_optimal = false; ///< in the plan's own measure: money, then area of boards on hand
    /// How far its measure may lie above the best: (measure - proved least) / proved least; 0 when proved
    /// best, infinite where nothing is proved.
    double gap = 0;
    Length kerf_rip, kerf_crosscut, end_trim;
};

/// Work for each kind of wood; the first good plan and a little more.
inline constexpr cutting::Effort usual_effort{20};

/// The plan of one piece. The same model and effort give the same plan.
Plan plan(const joinery::Model& model, const cutlist::CutList& cut_list,
          cutting::Effort effort = usual_effort);
/// Of several pieces together: one lot of boards. The shop is that of the first piece that names boards or
/// prices, else of the first.
Plan plan(const std::vector<Source>& sources, cutting::Effort effort = usual_effort);

/// `3 A`, with the number of its piece in front where there are several: `P2 3 A`.
std::string mark_of(const Placement& placement, bool several);
/// `3 long apron A`, with the number of its piece in front where there are several: `P2 3 long apron A`.
std::string label_of(const Placement& placement, bool several);

/// Boards on hand when all is cut, as a shop file that the shop's own may bring in: boards not touched, and
/// offcuts worth keeping under marks of their own. In millimetres.
std::string inventory_after(const Plan& plan, const piece::Shop& shop);

/// The shop that `plan` of these pieces uses; null without pieces.
const piece::Shop* shop_of(const std::vector<Source>& sources);

} // namespace rayfleck::lumber
