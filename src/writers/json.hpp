#pragma once
// The model and the findings for other programs, as JSON. docs/json.md describes every key.
//
// An interface, not a dump: a schema number that grows when a key changes its meaning or goes away, the unit
// in the name of every measured key, names of parts instead of numbers that shift, keys in a fixed order.
// Numbers are rounded to 0.0001 mm and to six decimals otherwise, so that the same piece gives the same
// bytes.

#include <optional>
#include <string>
#include <vector>

#include "assembly/assembly.hpp"
#include "cutlist/cutlist.hpp"
#include "findings/finding.hpp"
#include "joinery/model.hpp"
#include "lumber/lumber.hpp"
#include "source/text.hpp"

namespace rayfleck::writers {

constexpr int json_schema = 1;

/// One piece with its parts, cuts, joints, contacts, order of assembly, cut list, lumber plan and findings;
/// ends with a line end. order  null: found anew plan   null: the key `lumber` is null too
std::string write_json(const joinery::Model& model, const findings::Findings& findings,
                       const cutlist::CutList& cut_list, const source::Texts& texts,
                       const assembly::Order* order = nullptr, const lumber::Plan* plan = nullptr);

/// What `check` has to say of one text.
struct Checked {
    std::string file;                             ///< as the user named it
    std::string title;                            ///< empty when it did not compile so far, or holds no piece
    std::vector<std::string> sizes;               ///< of its table of sizes, all checked
    std::optional<std::string> unreadable;        ///< why the file could not be read
    const findings::Findings* findings = nullptr; ///< nothing when unreadable
    const source::Texts* texts = nullptr;
};

/// The findings of all texts of one run, counted; ends with a line end.
std::string write_findings_json(const std::vector<Checked>& all);

} // namespace rayfleck::writers
