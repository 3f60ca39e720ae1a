#pragma once
// Leaves that are filled with blocks, each at the highest free place of the first leaf that has room for it.

#include <string>
#include <vector>

#include "drawing/sheets.hpp"

namespace rayfleck::drawing {

class FillingLeaves {
  public:
    struct Filled {
        Leaf leaf;
        FreeSpace space;
        std::string first, last; ///< letters that stand on it; empty where none does
    };

    /// document_type, scale  of every leaf
    /// air                   kept free round each block, mm
    FillingLeaves(const Job& job, std::string document_type, std::string scale, double air)
        : job_(job), document_type_(std::move(document_type)), scale_(std::move(scale)), air_(air) {}

    /// Puts one of the shapes, the first that finds room; a new leaf is begun where no leaf has any. A block
    /// that no leaf could hold takes one for itself.
    /// letter  of what stands there; empty for none
    void stand(const std::vector<Block>& shapes, const std::string& letter = {});

    std::size_t count() const { return filled_.size(); }
    std::vector<Filled>& filled() { return filled_; }

    /// Leaves that blocks of these sizes need, 0 when one is larger than a leaf.
    static std::size_t needed(const Job& job, const std::vector<Rect>& sizes, double air);

  private:
    static FreeSpace fresh_space(const Job& job);
    static std::optional<Point2> take(FreeSpace& space, double width, double height, double air);
    bool place(Filled& on, const Block& block);

    const Job& job_;
    std::string document_type_, scale_;
    double air_;
    std::vector<Filled> filled_;
};

} // namespace rayfleck::drawing
