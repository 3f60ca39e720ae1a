#pragma once
// One independent problem, solved as well as the effort allows.

#include "cutting/pattern.hpp"

namespace rayfleck::cutting {

struct Answer {
    Solution solution;
    Cost bound = 0;
    std::int64_t work = 0; ///< units
};

/// `work`: units to spend at most, besides the first plan.
Answer solve(const Model& model, std::int64_t work);

/// Whether a part of this type can be cut out of the bare sheet at all.
bool fits_alone(const Model& model, const Type& type, std::size_t sheet);

} // namespace rayfleck::cutting
