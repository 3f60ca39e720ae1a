#pragma once
// Sheets with defects filled section by section, strips and parts set between the defects.

#include <vector>

#include "cutting/pattern.hpp"
#include "cutting/strip_fill.hpp"

namespace rayfleck::cutting {

class AroundDefects {
  public:
    AroundDefects(const Model& model, int sheet);

    /// A pattern of high value that can be cut as it is. `worth`: what a clear sheet would be worth by
    /// length.
    Pattern build(const Prices& prices, double worth, std::int64_t& work);

  private:
    struct Clear {
        Measure u = 0, length = 0; ///< room for parts, kerf included
    };
    struct Choice {
        Section section;
        double value = 0;
    };

    std::vector<Clear> clear(Measure u, Measure length, Measure v, Measure width) const;
    std::vector<Strip> stack(Measure u, Measure length, std::int64_t& value, std::int64_t& work) const;
    void refill(Section& section, Prices& prices, std::int64_t& work);

    const Model& model_;
    int number_;
    const Sheet& sheet_;
    std::vector<Measure> lengths_; ///< of sections that are tried
    std::vector<Measure> at_v_;    ///< where strips may begin or end
    StripFill fill_, small_;
};

} // namespace rayfleck::cutting
